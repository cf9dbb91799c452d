package org.benchtrail.ticket.document;

import static org.benchtrail.ticket.form.FieldGroup.answer;
import static org.benchtrail.ticket.form.FieldGroup.special;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.SummaryDraft;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.document.DocumentRequirement;
import org.benchtrail.core.method.document.EffortDraft;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Lesson;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.core.method.document.Sureness;
import org.benchtrail.ticket.form.FormContext;
import org.benchtrail.ticket.form.Posting;
import org.benchtrail.ticket.form.SheetForm;

/** What the ticket leaves behind, signed by its assignee and, for a trainee, by a mentor. */
public final class DocumentForms {
    private static final SheetForm DOCUMENT = SheetForm.of(
                    "document",
                    answer("cause", CauseNamed.class).offering(DocumentForms::supportedTheory),
                    answer("summary", SummaryWritten.class).showing(sheet -> Optional.of(SummaryDraft.of(sheet))),
                    answer("knowledge", KnowledgeLinked.class, DocumentForms::confirmedIfNamed),
                    answer("effort", EffortRecorded.class).ifFilled("minutes").offering(DocumentForms::effort),
                    // last: it stands under all that was signed for
                    special("sign", Signed.class, posting -> posting.add(new Signed(Signatory.ASSIGNEE)))
                            .when(DocumentForms::isSigned))
            .fields("sign");

    private static final SheetForm MENTOR = SheetForm.of(
            "mentor", special("mentor", Signed.class, posting -> posting.add(new Signed(Signatory.MENTOR))));

    public static final List<SheetForm> ALL = List.of(DOCUMENT, MENTOR);

    private DocumentForms() {}

    /** The cause is first taken for what the supported theory says, known in the way in which the record shows it. */
    private static Map<String, String> supportedTheory(JobSheet sheet, FormContext context) {
        Map<String, String> offered = new HashMap<>();
        sheet.activeTheory().map(StandingFact::fact).ifPresent(theory -> {
            offered.put("cause", theory.text());
            if (theory.causeId() != null) {
                offered.put("causeId", theory.causeId());
            }
            Sureness.shownBy(sheet).ifPresent(sureness -> offered.put("sureness", sureness.name()));
        });
        return offered;
    }

    /** Who closes the ticket signs it, unless the signature stands and nothing of what it is for has changed. */
    private static boolean isSigned(Posting posting) {
        boolean closing = posting.form().text("then").equals("move");
        boolean due = !posting.acts().isEmpty() || !DocumentRequirement.isSignedByAssignee(posting.sheet());
        return posting.form().has("sign") || (closing && due);
    }

    private static Map<String, String> effort(JobSheet sheet, FormContext context) {
        return Map.of("minutes", Long.toString(EffortDraft.minutes(sheet)));
    }

    /** A ticket that names the known cause which it confirms confirms one. */
    private static Map<String, ?> confirmedIfNamed(Posting posting) {
        boolean named = posting.form().has("knowledge.known") && !posting.form().has("knowledge.learned");
        return named ? Map.of("learned", Lesson.CONFIRMED) : Map.of();
    }
}

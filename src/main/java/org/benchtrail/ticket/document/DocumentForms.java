package org.benchtrail.ticket.document;

import static org.benchtrail.ticket.form.FieldGroup.answer;
import static org.benchtrail.ticket.form.FieldGroup.special;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.SummaryDraft;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.document.EffortDraft;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Lesson;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.core.method.theorize.TheoryStated;
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
                    special("sign", Signed.class, posting -> posting.add(new Signed(Signatory.ASSIGNEE)))
                            .when(posting -> posting.form().has("sign")))
            .fields("sign");

    private static final SheetForm MENTOR = SheetForm.of(
            "mentor", special("mentor", Signed.class, posting -> posting.add(new Signed(Signatory.MENTOR))));

    public static final List<SheetForm> ALL = List.of(DOCUMENT, MENTOR);

    private DocumentForms() {}

    /** The cause is first taken for what the supported theory says. */
    private static Map<String, String> supportedTheory(JobSheet sheet, FormContext context) {
        return sheet.activeTheory()
                .map(StandingFact::fact)
                .map(DocumentForms::cause)
                .orElse(Map.of());
    }

    private static Map<String, String> cause(TheoryStated theory) {
        return theory.causeId() == null
                ? Map.of("cause", theory.text())
                : Map.of("cause", theory.text(), "causeId", theory.causeId());
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

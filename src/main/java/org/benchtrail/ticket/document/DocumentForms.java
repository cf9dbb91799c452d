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
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.ticket.form.Posting;
import org.benchtrail.ticket.form.SheetForm;

/** What the ticket leaves behind, signed by its assignee and, for a trainee, by a mentor. */
public final class DocumentForms {
    private static final SheetForm DOCUMENT = SheetForm.of(
                    "document",
                    answer("cause", CauseNamed.class)
                            .when(posting -> !isOnlyOffered(posting))
                            .showing(DocumentForms::supportedTheory),
                    answer("summary", SummaryWritten.class).showing(sheet -> Optional.of(SummaryDraft.of(sheet))),
                    answer("knowledge", KnowledgeLinked.class),
                    answer("effort", EffortRecorded.class).ifFilled("minutes"),
                    special("sign", Signed.class, posting -> posting.add(new Signed(Signatory.ASSIGNEE)))
                            .when(posting -> posting.form().has("sign")))
            .fields("sign");

    private static final SheetForm MENTOR = SheetForm.of(
            "mentor", special("mentor", Signed.class, posting -> posting.add(new Signed(Signatory.MENTOR))));

    public static final List<SheetForm> ALL = List.of(DOCUMENT, MENTOR);

    private DocumentForms() {}

    /** The cause is first taken for what the supported theory says. */
    private static Optional<Map<String, String>> supportedTheory(JobSheet sheet) {
        return sheet.activeTheory().map(StandingFact::fact).map(DocumentForms::cause);
    }

    private static Map<String, String> cause(TheoryStated theory) {
        Map<String, String> cause = new HashMap<>(Map.of("cause", theory.text()));
        if (theory.causeId() != null) {
            cause.put("causeId", theory.causeId());
        }
        return cause;
    }

    /** Whether the cause is still the one that the form offers by itself: it is named when the technician says how it is known. */
    private static boolean isOnlyOffered(Posting posting) {
        return !posting.form().text("then").equals("move")
                && !posting.form().has("cause.sureness")
                && posting.sheet()
                        .activeTheory()
                        .filter(t -> t.fact().text().equals(posting.form().text("cause.cause")))
                        .isPresent();
    }
}

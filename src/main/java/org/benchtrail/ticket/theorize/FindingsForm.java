package org.benchtrail.ticket.theorize;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.ticket.form.FieldGroup;
import org.benchtrail.ticket.form.Posting;
import org.benchtrail.ticket.form.SheetForm;
import org.benchtrail.ticket.identify.EvidenceForm;

/** The questions that the causes are told apart by. */
public final class FindingsForm {
    private static final String KNOWN = "known";
    private static final String ANSWER = "answer.";

    public static final SheetForm FORM = SheetForm.of(
                    "findings", FieldGroup.special(KNOWN, FindingAnswered.class, FindingsForm::answers))
            .with(EvidenceForm.GROUPS)
            .fields(ANSWER, EvidenceForm.LIMIT);

    private FindingsForm() {}

    /** Recorded where the answer is another than the one that stands. */
    private static void answers(Posting posting) {
        Map<String, String> standing = new HashMap<>();
        posting.sheet()
                .all(FindingAnswered.class)
                .forEach(n -> standing.put(n.fact().finding(), n.fact().value()));
        for (String finding : posting.form().filled(ANSWER)) {
            String value = posting.form().text(ANSWER + finding);
            Optional<Finding> asked = posting.context().model().flatMap(m -> SheetEvidence.finding(m, finding));
            if (asked.isEmpty()) {
                posting.form().refuse(ANSWER + finding, "The catalogue has no such question for this category.");
            } else if (!value.equals(standing.get(finding))) {
                posting.record(
                        KNOWN,
                        FindingAnswered.class,
                        Map.of("finding", finding, "question", asked.get().label(), "value", value));
            }
        }
    }
}

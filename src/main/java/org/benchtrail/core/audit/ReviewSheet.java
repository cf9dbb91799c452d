package org.benchtrail.core.audit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.ReviewQuestion;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;

/**
 * What is asked of one ticket: the requirements of every step that it left, each with what its gate said and what it rests on.
 *
 * @param entries number of the last entry that is looked at
 */
public record ReviewSheet(int entries, List<Row> rows) {

    /**
     * @param unasked why the gate asked nothing; empty if it did
     * @param cited entries of the round that counts which the answer usually rests on
     */
    public record Row(
            Requirement requirement,
            Requirement.State gate,
            String unasked,
            ReviewQuestion question,
            List<Integer> cited) {
        public String code() {
            return requirement.code();
        }
    }

    public ReviewSheet {
        rows = List.copyOf(rows);
    }

    /** @param sheet as it was when the ticket ended */
    public static ReviewSheet of(JobSheet sheet, Policy policy) {
        Situation end = new Situation(
                sheet, policy, sheet.latest(Fact.class).orElseThrow().stamp().at(), Move.CLOSE, "");
        List<Row> rows = new ArrayList<>();
        for (Requirement requirement : Requirements.all()) {
            if (isReached(sheet, requirement.step())) {
                ReviewQuestion question = requirement.review();
                rows.add(new Row(
                        requirement,
                        requirement.status(end).state(),
                        requirement.unasked(end),
                        question,
                        cited(sheet, requirement.step(), question)));
            }
        }
        return new ReviewSheet(sheet.entries(), rows);
    }

    /** Of a closed ticket every step counts, of a cancelled one those that it had left; identify always. */
    private static boolean isReached(JobSheet sheet, Step step) {
        return sheet.course().standing() == Standing.CLOSED || step == Step.IDENTIFY || step.isBefore(sheet.step());
    }

    private static List<Integer> cited(JobSheet sheet, Step step, ReviewQuestion question) {
        int since = step == Step.IDENTIFY ? sheet.course().openedAt() : 0;
        return question.restsOn().stream()
                .flatMap(kind -> sheet.all(kind).stream())
                .filter(f -> f.isAfter(since) && (step == Step.IDENTIFY || f.round() == sheet.round()))
                .map(StandingFact::entry)
                .distinct()
                .sorted()
                .toList();
    }

    /** What is not marked yet: first what was asked. */
    public List<Row> open(AuditLot.Review review) {
        return rows.stream()
                .filter(r -> !review.marks().containsKey(r.code()))
                .sorted(Comparator.comparing(r -> !r.unasked().isEmpty()))
                .toList();
    }

    public Optional<Row> row(String requirement) {
        return rows.stream().filter(r -> r.code().equals(requirement)).findFirst();
    }
}

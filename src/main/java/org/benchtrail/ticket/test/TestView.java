package org.benchtrail.ticket.test;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.platform.Option;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.ticket.PresenceNote;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.ticket.theorize.QuestionsView;
import org.benchtrail.ticket.theorize.RankingView;
import org.jspecify.annotations.Nullable;

/**
 * The checks of this round.
 *
 * @param theory that is tested; empty if none is
 * @param toMake the checks without a result
 * @param refuted whether the latest conclusive result rules the theory out, so that the way leads back
 */
public record TestView(String theory, List<Check> checks, List<Check> toMake, boolean refuted) {

    /**
     * A check.
     *
     * @param toTake the cautions that are not acknowledged yet
     * @param taken the others, by their titles
     * @param seen its result; null while it is to be made
     * @param finding id of the question of the catalogue that it answers; empty if none
     * @param measured whether that is answered by measuring
     * @param bounded whether a certain reading is expected, which then decides
     * @param answers to choose from, if not
     * @param presence what is told of a mentor's presence; null where none is needed
     */
    public record Check(
            int entry,
            String what,
            String expectation,
            List<Caution> toTake,
            String taken,
            @Nullable Seen seen,
            String finding,
            boolean measured,
            boolean bounded,
            List<Option> answers,
            @Nullable PresenceNote presence) {

        public boolean isReady() {
            return toTake.isEmpty();
        }

        /** Whether an answer to its question says what was seen. */
        public boolean isAnswerable() {
            return !finding.isEmpty() && !measured;
        }

        public boolean isMade() {
            return seen != null;
        }
    }

    public record Seen(String observation, String outcome) {}

    /** What stands before the ids of the fields of a check's form: nothing for the one that was sent last. */
    public String prefix(FormValues fill, int entry) {
        return fill.is("result.check", entry) ? "" : "check-" + entry + "-";
    }

    public static TestView of(Viewing viewing, @Nullable QuestionsView questions) {
        JobSheet sheet = viewing.sheet();
        List<Check> checks = sheet.ofRound(CheckPlanned.class).stream()
                .map(c -> check(c, viewing, questions))
                .toList();
        return new TestView(
                sheet.activeTheory().map(t -> t.fact().text()).orElse(""),
                checks,
                checks.stream().filter(c -> !c.isMade()).toList(),
                isRefuted(sheet));
    }

    private static Check check(StandingFact<CheckPlanned> check, Viewing viewing, @Nullable QuestionsView questions) {
        JobSheet sheet = viewing.sheet();
        CheckPlanned fact = check.fact();
        Set<Caution> open = CautionsAcknowledged.open(sheet, check, fact.cautions());
        Optional<RankingView.Question> asked = Optional.ofNullable(questions).stream()
                .flatMap(q -> q.all().stream())
                .filter(q -> q.id().equals(fact.finding()))
                .findFirst();
        return new Check(
                check.entry(),
                fact.what(),
                expectation(fact),
                List.copyOf(open),
                CautionsAcknowledged.titles(EnumCopies.less(Caution.class, fact.cautions(), open)),
                sheet.result(check.entry()).map(TestView::seen).orElse(null),
                fact.finding() == null ? "" : fact.finding(),
                asked.map(RankingView.Question::reading).orElse(false),
                fact.expected() != null,
                asked.map(RankingView.Question::values).orElse(List.of()),
                PresenceNote.of(viewing, check.entry(), fact.cautions()));
    }

    private static String expectation(CheckPlanned check) {
        String reading = check.expected() == null ? "" : check.expected().words();
        return Stream.of(check.expectation(), reading).filter(s -> !s.isEmpty()).collect(Collectors.joining("; "));
    }

    private static Seen seen(StandingFact<ResultRecorded> result) {
        return new Seen(result.fact().observation(), result.fact().outcome().words());
    }

    private static boolean isRefuted(JobSheet sheet) {
        return sheet.ofRound(ResultRecorded.class).stream()
                .map(r -> r.fact().outcome())
                .filter(o -> o != CheckOutcome.INCONCLUSIVE)
                .reduce((a, b) -> b)
                .filter(o -> o == CheckOutcome.REFUTES)
                .isPresent();
    }
}

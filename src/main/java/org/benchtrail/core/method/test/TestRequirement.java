package org.benchtrail.core.method.test;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.ReviewQuestion;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.CautionsAcknowledged;

/** What test asks for. */
public enum TestRequirement implements Requirement {
    EXPECTATION_FIRST(
            false,
            "Expectation",
            "A check whose expectation was written before its result",
            TestRequirement::expectation,
            ReviewQuestion.major("Was the expectation a real one: could it have failed?", CheckPlanned.class)),
    RESULT_RECORDED(
            false,
            "Result",
            "Its result, and what that says about the theory",
            TestRequirement::result,
            ReviewQuestion.major("Does what was seen lead to that result?", ResultRecorded.class)),
    THEORY_SUPPORTED(
            false,
            "Support",
            "The last clear check supports this move",
            TestRequirement::supported,
            ReviewQuestion.major(
                    "Does the last check tell this theory from the others?", CheckPlanned.class, ResultRecorded.class)),
    INVASIVE_GUARDED(
            false,
            "Precautions",
            "Invasive checks only with data protected, hazards cleared, cautions taken",
            TestRequirement::invasive,
            ReviewQuestion.critical(
                    "Were the precautions taken before the device was opened or changed?",
                    CheckPlanned.class,
                    CautionsAcknowledged.class)) {
        @Override
        public String unasked(Situation s) {
            boolean any = s.sheet().ofRound(ResultRecorded.class).stream()
                    .map(r -> r.fact().check())
                    .flatMap(check -> s.sheet().all(CheckPlanned.class, c -> c.entry() == check).stream())
                    .anyMatch(c -> c.fact().invasive() || !c.fact().cautions().isEmpty());
            return any ? "" : "No check of this round opens or changes the device, or calls for a precaution.";
        }
    };

    private final Row row;

    TestRequirement(
            boolean waivable, String word, String title, Function<Situation, String> gap, ReviewQuestion review) {
        row = new Row(waivable, word, title, gap, review);
    }

    @Override
    public Step step() {
        return Step.TEST;
    }

    @Override
    public Row row() {
        return row;
    }

    /** Checks of the active theory, made in this round, with the expectation written first. */
    private static List<StandingFact<CheckPlanned>> counting(JobSheet sheet) {
        int active = sheet.activeTheory().map(StandingFact::entry).orElse(-1);
        return sheet.all(
                CheckPlanned.class,
                c -> c.round() == sheet.round()
                        && c.fact().theory() == active
                        && !c.fact().expectation().isEmpty());
    }

    private static List<StandingFact<ResultRecorded>> results(JobSheet sheet) {
        List<Integer> checks = counting(sheet).stream().map(StandingFact::entry).toList();
        return sheet.all(ResultRecorded.class, r -> checks.contains(r.fact().check()) && isAfter(sheet, r));
    }

    /** Whether the check stood as it is, in an earlier request, when its result was recorded. */
    private static boolean isAfter(JobSheet sheet, StandingFact<ResultRecorded> result) {
        return sheet.latest(CheckPlanned.class, c -> c.entry() == result.fact().check())
                .filter(c -> c.isSettledBefore(result.entry()))
                .filter(c -> !c.lastStamp().sameRequest(result.stamp()))
                .isPresent();
    }

    private static String expectation(Situation s) {
        return counting(s.sheet()).isEmpty()
                ? "Plan a check of the active theory and write what you expect to see before you make it."
                : "";
    }

    private static String result(Situation s) {
        return results(s.sheet()).isEmpty()
                ? "Make the check and record what was seen, and whether it supports the theory or rules it out."
                : "";
    }

    private static String supported(Situation s) {
        CheckOutcome wanted = s.move() == Move.REFUTE ? CheckOutcome.REFUTES : CheckOutcome.SUPPORTS;
        Optional<CheckOutcome> latest = results(s.sheet()).stream()
                .map(r -> r.fact().outcome())
                .filter(o -> o != CheckOutcome.INCONCLUSIVE)
                .reduce((earlier, later) -> later);
        if (latest.isPresent() && latest.get() == wanted) {
            return "";
        }
        if (latest.isEmpty()) {
            return "No check has settled the theory yet: make one that does.";
        }
        return wanted == CheckOutcome.SUPPORTS
                ? "The latest check rules the theory out: go back to theorize with another one."
                : "The latest check supports the theory: it cannot be ruled out on that.";
    }

    private static String invasive(Situation s) {
        return s.sheet().ofRound(ResultRecorded.class).stream()
                .map(r -> CheckGuard.lacked(s, r))
                .filter(lacking -> !lacking.isEmpty())
                .findFirst()
                .orElse("");
    }
}

package org.benchtrail.core.method;

import java.util.List;
import java.util.Optional;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;

/** What test lacks. */
final class TestGaps {
    private TestGaps() {}

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
        return sheet.all(
                ResultRecorded.class,
                r -> checks.contains(r.fact().check()) && r.entry() > r.fact().check());
    }

    static String expectation(Situation s) {
        return counting(s.sheet()).isEmpty()
                ? "Plan a check of the active theory and write what you expect to see before you make it."
                : "";
    }

    static String result(Situation s) {
        return results(s.sheet()).isEmpty()
                ? "Make the check and record what was seen, and whether it supports the theory or rules it out."
                : "";
    }

    static String supported(Situation s) {
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

    static String invasive(Situation s) {
        return s.sheet().ofRound(ResultRecorded.class).stream()
                .map(r -> guard(s.sheet().before(r.entry()), r.fact().check(), s))
                .filter(lacking -> !lacking.isEmpty())
                .findFirst()
                .orElse("");
    }

    /** What keeps that check from being made now; nothing for one that neither opens nor changes anything. */
    static String guard(JobSheet sheet, int check, Situation s) {
        Situation then = new Situation(sheet, s.policy(), s.now(), s.move());
        return sheet.latest(CheckPlanned.class, c -> c.entry() == check)
                .map(planned -> guard(planned, then))
                .orElse("");
    }

    private static String guard(StandingFact<CheckPlanned> check, Situation then) {
        if (!check.fact().cautions().isEmpty() && !acknowledged(then.sheet(), check)) {
            return "Read the cautions of the check and acknowledge them before you make it.";
        }
        if (!check.fact().invasive()) {
            return "";
        }
        Requirement.Status hazards = Requirement.HAZARDS_SCREENED.status(then);
        Requirement.Status data = Requirement.DATA_PROTECTED.status(then);
        return hazards.sentence().isEmpty() ? data.sentence() : hazards.sentence();
    }

    private static boolean acknowledged(JobSheet sheet, StandingFact<CheckPlanned> check) {
        return PlanGaps.acknowledged(sheet, check, Integer.MAX_VALUE)
                .containsAll(check.fact().cautions());
    }
}

package org.benchtrail.core.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What holds acts back: conditions of questions, needs, risk, hazards, the threshold. */
class RepairGateTest {
    private static final Finding DEAD = Invented.answer("dead", 0.3, 1);
    private static final Finding LOAD =
            Invented.applies(Invented.answer("load", 0.2, 2), new Condition("dead", List.of("no")));

    private static Cause grave(double weight, Risk risk, boolean reversible, String... needs) {
        Repair r = new Repair("replace", 5, 1, 0.95, 0, risk, reversible, List.of(needs));
        return Invented.cause("grave", weight, r, Invented.yes("dead", 0.9), Invented.yes("load", 0.5));
    }

    private static final Cause MILD =
            Invented.cause("mild", 1, Invented.repair(30, 0.9), Invented.yes("load", 0.9), Invented.yes("dead", 0.05));

    private static Advice advise(Cause grave, Evidence e, BenchSituation s) {
        CauseCategory c = Invented.category(240, List.of(DEAD, LOAD), List.of(grave, MILD));
        Model m = new Model(c, ModelSettings.STANDARD);
        return new NextTest(m, PlanSettings.STANDARD.withPrune(false)).advise(Ranking.of(m, e), s);
    }

    private static List<String> offered(Advice a) {
        return a.actions().stream()
                .filter(x -> x.type() == Action.Type.TEST)
                .map(Action::id)
                .sorted()
                .toList();
    }

    private static boolean offersRepair(Advice a, String id) {
        return a.actions().stream().anyMatch(x -> x.type() == Action.Type.REPAIR && x.id().equals(id));
    }

    @Test
    void questionThatWaits_isOfferedOnlyAfterItsAnswer() {
        Cause grave = grave(1, Risk.NONE, true);
        Evidence no = Evidence.NONE.with(Invented.report("dead", "no", 0.95, 1));
        assertEquals(List.of("dead"), offered(advise(grave, Evidence.NONE, BenchSituation.PLAIN)));
        assertEquals(List.of("load"), offered(advise(grave, no, BenchSituation.PLAIN)));
        Evidence yes = Evidence.NONE.with(Invented.report("dead", "yes", 0.95, 1));
        assertEquals(List.of(), offered(advise(grave, yes, BenchSituation.PLAIN)));
        Evidence changed = no.with(Invented.report("dead", "yes", 0.95, 2));
        assertEquals(List.of(), offered(advise(grave, changed, BenchSituation.PLAIN)), "the latest answer holds");
        Evidence again = yes.remeasured(Invented.report("dead", "no", 0.95, 3));
        assertEquals(List.of("load"), offered(advise(grave, again, BenchSituation.PLAIN)));
        Evidence unknown = Evidence.NONE.with(Invented.report("dead", Report.UNKNOWN, 0.95, 1));
        assertEquals(
                List.of(),
                offered(advise(grave, unknown, BenchSituation.PLAIN)),
                "unknown is no answer, but was asked");
    }

    @Test
    void highRisk_needsBeliefOrConfirmation() {
        for (Cause grave : List.of(grave(8, Risk.HIGH, true), grave(8, Risk.NONE, false))) {
            Advice a = advise(grave, Evidence.NONE, BenchSituation.PLAIN);
            assertFalse(offersRepair(a, "grave"));
            assertEquals(
                    List.of("confirm it first: look at it, about 5 min"),
                    a.blocked().get(0).reasons());
            BenchSituation confirmed = new BenchSituation(Set.of(), Set.of("grave"), Set.of(), Map.of());
            assertTrue(offersRepair(advise(grave, Evidence.NONE, confirmed), "grave"));
        }
        Evidence dead = Evidence.NONE.with(Invented.report("dead", "yes", 0.98, 1));
        Advice sure = advise(grave(30, Risk.HIGH, true), dead, BenchSituation.PLAIN);
        assertTrue(offersRepair(sure, "grave"), "believed to more than 0.9");
        assertFalse(offersRepair(advise(grave(4, Risk.HIGH, true), Evidence.NONE, BenchSituation.PLAIN), "grave"));
    }

    @Test
    void needs_areMetFirst_whateverTheBelief() {
        Cause grave = grave(500, Risk.NONE, true, "backup-done");
        Advice a = advise(grave, Evidence.NONE, BenchSituation.PLAIN);
        assertFalse(offersRepair(a, "grave"));
        assertEquals(List.of("first: backup done"), a.blocked().get(0).reasons());
        BenchSituation met = new BenchSituation(Set.of("backup-done"), Set.of(), Set.of(), Map.of());
        assertEquals(
                "grave",
                advise(grave, Evidence.NONE, met).recommended().orElseThrow().id());
    }

    /** It is prepared instead, and nothing less probable is advised in its place. */
    @Test
    void gatedRepair_isNeverRecommended() {
        int prepared = 0;
        for (int w = 1; w < 400; w += 7) {
            Cause grave = grave(w, Risk.HIGH, false, "backup-done");
            Evidence dead = Evidence.NONE.with(Invented.report("dead", "yes", 0.98, 1));
            Advice advice = advise(grave, dead, BenchSituation.PLAIN);
            Action first = advice.recommended().orElseThrow();
            assertFalse(first.type() == Action.Type.REPAIR && first.id().equals("grave"));
            if (first.type() == Action.Type.PREPARE) {
                prepared++;
                Advice.Preparation p = advice.preparation().orElseThrow();
                assertEquals("grave", p.repair());
                assertEquals(List.of("backup-done"), p.needs());
                assertEquals(30, p.needMinutes());
            }
        }
        assertTrue(prepared > 20, "prepared " + prepared);
    }

    @Test
    void hazard_comesBeforeAnyRanking() {
        BenchSituation smoke = new BenchSituation(Set.of(), Set.of(), Set.of("burnt smell"), Map.of());
        Advice a = advise(grave(1, Risk.NONE, true), Evidence.NONE, smoke);
        assertTrue(a.recommended().isEmpty());
        assertEquals(List.of(), a.actions());
        assertEquals(Set.of("burnt smell"), a.hazards());
    }

    @Test
    void setUp_andRisk_areChargedInMinutes() {
        BenchSituation closed = new BenchSituation(Set.of(), Set.of(), Set.of(), Map.of("dead", 7.0));
        Cause grave = grave(1, Risk.MEDIUM, true);
        Action plain =
                advise(grave, Evidence.NONE, BenchSituation.PLAIN).bestTest().orElseThrow();
        Action withSetUp = advise(grave, Evidence.NONE, closed).bestTest().orElseThrow();
        assertEquals(7, withSetUp.minutes() - plain.minutes(), 1e-12);
        assertEquals(7, withSetUp.expectedMinutes() - plain.expectedMinutes(), 1e-9);
        assertEquals(5 + 1 + 15, RepairOrder.minutes(grave.repair(), PlanSettings.STANDARD), 1e-12);
    }

    @Test
    void threshold_isTwoMinutesOrTwoPercent() {
        Advice a = advise(grave(1, Risk.NONE, true), Evidence.NONE, BenchSituation.PLAIN);
        assertEquals(Math.max(2, 0.02 * a.planMinutes()), a.threshold(), 1e-12);
        Action test = a.bestTest().orElseThrow();
        double x = a.bestOther().orElseThrow().expectedMinutes() - test.expectedMinutes();
        boolean enough = x >= a.threshold();
        assertEquals(enough, a.recommended().orElseThrow().type() == Action.Type.TEST);
        assertEquals(enough ? OptionalLong.of(Math.round(x)) : OptionalLong.empty(), a.saves(test));
        assertTrue(
                a.bestThree().size() == 3 && a.bestThree().get(0) == a.actions().get(0));
    }

    @Test
    void dearTest_isNotRecommended() {
        CauseCategory c = Invented.category(
                240,
                List.of(Invented.timed(DEAD, 200)),
                List.of(
                        Invented.cause("a", 1, Invented.repair(10, 0.9), Invented.yes("dead", 0.9)),
                        Invented.cause("b", 1, Invented.repair(12, 0.9))));
        Model m = new Model(c, ModelSettings.STANDARD);
        Advice a = new NextTest(m, PlanSettings.STANDARD).advise(Ranking.of(m, Evidence.NONE), BenchSituation.PLAIN);
        assertEquals("a", a.recommended().orElseThrow().id());
    }

    @Test
    void sharedRepair_thatCoversMost_isTheBetterAct() {
        CauseCategory plain = Invented.category(
                240,
                List.of(),
                List.of(
                        Invented.cause("a", 1, Invented.repair(20, 0.9)),
                        Invented.cause("b", 1, Invented.repair(20, 0.9))));
        SharedRepair both = new SharedRepair("both", Invented.repair(25, 0.95), Map.of("a", 0.95, "b", 0.95));
        CauseCategory c = new CauseCategory("c", "c", 240, List.of(), List.of(), plain.causes(), List.of(both));
        Model m = new Model(c, ModelSettings.STANDARD.withUnlisted(0));
        NextTest next = new NextTest(m, PlanSettings.STANDARD);
        Advice a = next.advise(Ranking.of(m, Evidence.NONE), BenchSituation.PLAIN);
        assertEquals("both", a.recommended().orElseThrow().id());
        double[] left = {0.5 * 0.05, 0.5 * 0.05, 0};
        double expected = 25.5 + Belief.bestSubset(next.repairs(), left, new boolean[2]);
        assertEquals(expected, a.recommended().orElseThrow().expectedMinutes(), 1e-9);
        Evidence failed = Evidence.NONE.with(new FailedRepair("both", 1, Invented.T0));
        assertFalse(offersRepair(next.advise(Ranking.of(m, failed), BenchSituation.PLAIN), "both"));
    }
}

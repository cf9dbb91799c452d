package org.benchtrail.core.diagnosis;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.LongStream;
import org.benchtrail.BesideOthers;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Laws of the ranking and its explanation on random tickets; a failing seed is in the test's name. */
@BesideOthers
class RankingPropertyTest {
    private static final double EXACT = 1e-12;

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 150);
    }

    private record Ticket(Model model, Evidence evidence, Ranking ranking) {
        static Ticket of(long seed) {
            return of(seed, ModelSettings.STANDARD);
        }

        static Ticket of(long seed, ModelSettings settings) {
            CauseCategory c = Invented.random(seed, 3 + (int) (seed % 9), 5 + (int) (seed % 11), true);
            return of(c, Invented.evidence(seed, c, 9), settings);
        }

        static Ticket of(CauseCategory c, Evidence e, ModelSettings settings) {
            Model m = new Model(c, settings);
            return new Ticket(m, e, Ranking.of(m, e));
        }

        Ticket with(Evidence e) {
            return of(model.category(), e, model.settings());
        }

        double p(String cause) {
            return ranking.probability(cause);
        }
    }

    private static void assertSame(Ticket a, Ticket b, double tolerance) {
        for (int i = 0; i <= a.model.size(); i++) {
            assertEquals(a.p(a.model.id(i)), b.p(a.model.id(i)), tolerance, a.model.id(i));
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void posterior_isThatOfTheFormulasAsWritten(long seed) {
        Ticket t = Ticket.of(seed, ModelSettings.STANDARD.withBeta(seed % 2 == 0 ? 1 : 0.7));
        assertArrayEquals(Belief.posterior(t.model, t.evidence), t.ranking.probabilities(), EXACT);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void probabilities_sumToOneInsideTheUnitInterval(long seed) {
        double[] p = Ticket.of(seed).ranking.probabilities();
        double sum = 0;
        for (double x : p) {
            assertTrue(x > 0 && x < 1, "p " + x);
            sum += x;
        }
        assertEquals(1, sum, EXACT);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void permutingCausesFindingsAndReports_permutesTheResult(long seed) {
        Ticket t = Ticket.of(seed);
        CauseCategory c = t.model.category();
        Random r = new Random(seed);
        CauseCategory mixed = new CauseCategory(
                c.id(),
                c.title(),
                c.escalateMinutes(),
                c.groups(),
                shuffled(c.findings(), r),
                shuffled(c.causes(), r),
                List.of());
        Evidence e = new Evidence(shuffled(t.evidence.reports(), r), t.evidence.failedRepairs());
        assertSame(t, Ticket.of(mixed, e, t.model.settings()), EXACT);
    }

    private static <T> List<T> shuffled(List<T> list, Random r) {
        List<T> copy = new ArrayList<>(list);
        Collections.shuffle(copy, r);
        return copy;
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void unknownOrWorthlessReports_changeNothing(long seed) {
        Ticket t = Ticket.of(seed);
        for (Finding f : t.model.category().findings()) {
            Report blank = new Report("x", f.id(), Report.UNKNOWN, 0.95, Invented.T0, false);
            Report inapplicable = new Report("y", f.id(), Report.NOT_APPLICABLE, 0.95, Invented.T0, false);
            Report worthless = new Report("z", f.id(), f.values().get(1), 0, Invented.T0, false);
            Ticket more = t.with(t.evidence.with(blank).with(inapplicable).with(worthless));
            assertSame(t, more, EXACT);
            assertEquals(Surprise.of(t.ranking).z(), Surprise.of(more.ranking).z(), EXACT);
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void bothExplanations_addUpToTheLogOdds(long seed) {
        Ticket t = Ticket.of(seed);
        Explanation why = new Explanation(t.ranking);
        String first = t.ranking.all().get(0).cause();
        String second = t.ranking.all().get(1).cause();
        double odds = Decibans.ofOdds(t.p(first) / t.p(second));
        assertEquals(odds, why.leaderAgainstRunnerUp().total(), 1e-9);
        for (int i = 0; i <= t.model.size(); i++) {
            String id = t.model.id(i);
            Explanation.Weighing account = why.waterfall(id);
            double sum = account.terms().stream()
                    .mapToDouble(Explanation.Term::decibans)
                    .sum();
            assertEquals(Decibans.ofProbability(t.p(id)), sum, 1e-9);
            assertEquals(t.ranking.decibans(id), sum, 1e-9);
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void whatIfWrong_isTheChangeOfLogOddsWithoutTheFinding(long seed) {
        Ticket t = Ticket.of(seed);
        String leader = t.ranking.leader();
        for (Explanation.Term term : new Explanation(t.ranking).whatIfWrong(leader)) {
            Ticket without = t.with(t.evidence.without(term.id()));
            double odds = Decibans.ofProbability(t.p(leader)) - Decibans.ofProbability(without.p(leader));
            assertEquals(odds, term.decibans(), 1e-9);
            boolean flips = new Explanation(t.ranking).flips().contains(term.id());
            assertEquals(flips, !without.ranking.leader().equals(leader));
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void oppositeReportsOfEqualReliability_cancel(long seed) {
        Ticket t = Ticket.of(seed);
        for (Finding f : unasked(t)) {
            if (f.values().size() == 2 && f.group() == null) {
                Evidence both = t.evidence
                        .with(Invented.report(f.id(), f.values().get(0), 0.8, 100))
                        .with(Invented.report(f.id(), f.values().get(1), 0.8, 101));
                assertSame(t, t.with(both), EXACT);
            }
        }
    }

    private static List<Finding> unasked(Ticket t) {
        return t.model.category().findings().stream()
                .filter(f ->
                        t.evidence.reports().stream().noneMatch(r -> r.finding().equals(f.id())))
                .toList();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void repeatedReports_moveAPairOneWay_andNeverBeyondTheTable(long seed) {
        Ticket t = Ticket.of(seed);
        Finding f = t.model.category().findings().get(0);
        String value = f.values().get(1);
        for (int a = 0; a < t.model.size(); a++) {
            int b = (a + 1) % t.model.size();
            double end = Decibans.ofOdds(Belief.p(t.model, 0, a, 1) / Belief.p(t.model, 0, b, 1));
            double last = 0;
            Evidence e = Evidence.NONE;
            for (int k = 0; k < 6; k++) {
                e = e.with(Invented.report(f.id(), value, 0.8, k));
                double now = Observed.of(t.model, e).get(0).decibans(t.model, a, b);
                if (f.values().size() == 2) {
                    assertTrue(Math.signum(end) * (now - last) >= -1e-9, "moves back at " + k);
                    assertTrue(Math.abs(now) <= Math.abs(end) + 1e-9, "beyond the table");
                }
                last = now;
            }
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void oneBinaryFinding_neverWeighsMoreThan99ToOne(long seed) {
        Ticket t = Ticket.of(seed);
        double bound = 10 * Math.log10(99) + 1e-9;
        for (Observed o : t.ranking.observed()) {
            for (int a = 0; a <= t.model.size() && t.model.table(o.finding()).size() == 2; a++) {
                for (int b = 0; b <= t.model.size(); b++) {
                    assertTrue(Math.abs(o.decibans(t.model, a, b)) <= bound);
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void raisingTheProbabilityOfWhatWasSeen_raisesTheCause(long seed) {
        CauseCategory c = Invented.category(
                240,
                List.of(Invented.answer("f", 0.2, 1)),
                List.of(
                        Invented.cause("a", 1, Invented.repair(5, 0.9), Invented.yes("f", 0.1 + 0.005 * seed)),
                        Invented.cause("b", 1 + seed, Invented.repair(5, 0.9))));
        CauseCategory raised = Invented.category(
                240,
                c.findings(),
                List.of(
                        Invented.cause("a", 1, Invented.repair(5, 0.9), Invented.yes("f", 0.12 + 0.005 * seed)),
                        c.causes().get(1)));
        Evidence e = Evidence.NONE.with(Invented.report("f", "yes", 0.9, 1));
        assertTrue(Ticket.of(raised, e, ModelSettings.STANDARD).p("a")
                > Ticket.of(c, e, ModelSettings.STANDARD).p("a"));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void multiplyingAllWeights_changesNothing(long seed) {
        Ticket t = Ticket.of(seed);
        CauseCategory c = t.model.category();
        List<Cause> heavier =
                c.causes().stream().map(x -> weighed(x, 37.5 * x.weight())).toList();
        CauseCategory scaled =
                new CauseCategory(c.id(), c.title(), c.escalateMinutes(), c.groups(), c.findings(), heavier, List.of());
        assertSame(t, Ticket.of(scaled, t.evidence, t.model.settings()), EXACT);
    }

    private static Cause weighed(Cause x, double weight) {
        return new Cause(
                x.id(), x.name(), weight, x.deviations(), x.confirm(), x.confirmMinutes(), x.repair(), x.caution());
    }

    /** The unlisted cause then predicts the product of the marginals, so it gains exactly the conflict of the evidence. */
    @ParameterizedTest
    @MethodSource("seeds")
    void withoutUniformShare_theUnlistedCauseGainsExactlyTheConflict(long seed) {
        CauseCategory plain = Invented.random(seed, 4, 8, true);
        List<Finding> ungrouped =
                plain.findings().stream().map(f -> Invented.grouped(f, null)).toList();
        CauseCategory c = new CauseCategory("c", "c", 240, List.of(), ungrouped, plain.causes(), List.of());
        Evidence e = new Evidence(Invented.evidence(seed, c, 8).reports(), List.of());
        Ticket t = Ticket.of(c, e, ModelSettings.STANDARD.withEpsilon(0));
        double prior = Decibans.ofProbability(0.05);
        double conflict = Surprise.of(t.ranking).conflict();
        assertEquals(prior + conflict, t.ranking.decibans(Model.UNLISTED), 1e-9);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void failedRepair_lowersItsCauseAndKeepsTheOthersRatios(long seed) {
        Ticket t = Ticket.of(seed);
        String tried = t.ranking.topListed();
        Ticket then = t.with(t.evidence.with(new FailedRepair(tried, 0.5, Invented.T0)));
        assertTrue(then.p(tried) < t.p(tried));
        double ratio = then.p(Model.UNLISTED) / t.p(Model.UNLISTED);
        for (Cause c : t.model.category().causes()) {
            if (!c.id().equals(tried)) {
                assertEquals(ratio, then.p(c.id()) / t.p(c.id()), 1e-9 * ratio);
            }
        }
    }

    @Test
    void pairOfCopiesInAGroup_weighsAsOne() {
        Finding a = Invented.grouped(Invented.answer("a", 0.1, 1), "g");
        Finding b = Invented.grouped(Invented.answer("b", 0.1, 1), "g");
        List<Cause> causes = List.of(
                Invented.cause("x", 1, Invented.repair(5, 0.9), Invented.yes("a", 0.8), Invented.yes("b", 0.8)),
                Invented.cause("y", 3, Invented.repair(5, 0.9)));
        CauseCategory c =
                new CauseCategory("c", "c", 240, List.of(new Group("g", 1)), List.of(a, b), causes, List.of());
        Evidence one = Evidence.NONE.with(Invented.report("a", "yes", 0.9, 1));
        Evidence two = one.with(Invented.report("b", "yes", 0.9, 2));
        Ticket t = Ticket.of(c, one, ModelSettings.STANDARD);
        assertSame(t, t.with(two), EXACT);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void sameInput_sameBits(long seed) {
        Ticket a = Ticket.of(seed);
        Ticket b = Ticket.of(seed);
        assertArrayEquals(a.ranking.probabilities(), b.ranking.probabilities(), 0);
        Advice x = new NextTest(a.model, PlanSettings.STANDARD).advise(a.ranking, BenchSituation.PLAIN);
        Advice y = new NextTest(b.model, PlanSettings.STANDARD).advise(b.ranking, BenchSituation.PLAIN);
        assertEquals(x, y);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void remeasuredAfterAChange_countsAsIfMeasuredOnce(long seed) {
        Ticket t = Ticket.of(seed);
        Finding f = t.model.category().findings().get(0);
        Report last = Invented.report(f.id(), f.values().get(1), 0.95, 500);
        Ticket replaced = t.with(t.evidence.remeasured(last));
        assertSame(t.with(t.evidence.without(f.id()).with(last)), replaced, EXACT);
        assertEquals(
                t.evidence.reports().size() + 1, replaced.evidence.reports().size());
    }

    @Test
    void aSharedRepairThatFailed_lowersAllItCovers() {
        CauseCategory c = Invented.category(
                240,
                List.of(Invented.answer("f", 0.2, 1)),
                List.of(
                        Invented.cause("a", 1, Invented.repair(5, 0.9)),
                        Invented.cause("b", 1, Invented.repair(5, 0.9)),
                        Invented.cause("c", 2, Invented.repair(5, 0.9))));
        SharedRepair both = new SharedRepair("s", Invented.repair(20, 0.9), Map.of("a", 0.75, "b", 0.5));
        CauseCategory shared =
                new CauseCategory(c.id(), c.title(), 240, List.of(), c.findings(), c.causes(), List.of(both));
        Evidence e = Evidence.NONE.with(new FailedRepair("s", 0.5, Invented.T0));
        Ticket t = Ticket.of(shared, e, ModelSettings.STANDARD.withUnlisted(0));
        double all = 0.25 * 0.25 + 0.25 * 0.5 + 0.5;
        assertEquals(0.25 * 0.25 / all, t.p("a"), EXACT);
        assertEquals(0.25 * 0.5 / all, t.p("b"), EXACT);
    }
}

package org.benchtrail.core.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.benchtrail.BesideOthers;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Laws of the plan and of the next best act; references are exhaustive searches. A failing seed is in the test's name. */
@BesideOthers
class PlanPropertyTest {
    private static final PlanSettings ALL =
            PlanSettings.STANDARD.withPrune(false).withFloor(Floor.NONE);

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 150);
    }

    private static double[] weights(Random r, int n) {
        return IntStream.rangeClosed(0, n).mapToDouble(i -> r.nextDouble()).toArray();
    }

    private static RepairOrder repairs(Random r, int n) {
        double[] minutes =
                IntStream.range(0, n).mapToDouble(i -> 1 + 90 * r.nextDouble()).toArray();
        double[] fix = IntStream.range(0, n)
                .mapToDouble(i -> 0.5 + 0.49 * r.nextDouble())
                .toArray();
        return new RepairOrder(minutes, fix, 20 + 400 * r.nextDouble());
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void bestPrefix_isTheOptimumOverAllOrderedSubsets(long seed) {
        Random r = new Random(seed);
        int n = 2 + r.nextInt(5);
        RepairOrder order = repairs(r, n);
        double[] w = weights(r, n);
        boolean[] done = new boolean[n];
        done[0] = r.nextBoolean();
        double best = Belief.bestSubset(order, w, done);
        assertEquals(best, order.planMinutes(w, done), 1e-9);
        assertEquals(best, order.plan(w, done).minutes(), 1e-9);
    }

    /** With nothing but sure repairs, the order is the best of all n! orders. */
    @ParameterizedTest
    @MethodSource("seeds")
    void sureRepairsOnly_bestOfAllOrders(long seed) {
        Random r = new Random(seed);
        int n = 2 + r.nextInt(5);
        double[] minutes =
                IntStream.range(0, n).mapToDouble(i -> 1 + r.nextInt(60)).toArray();
        double[] fix = new double[n];
        Arrays.fill(fix, 1);
        RepairOrder order = new RepairOrder(minutes, fix, 1e9);
        double[] w = weights(r, n);
        w[n] = 0;
        double best = bestOrder(order, w, new ArrayList<>(), n);
        assertEquals(best, order.planMinutes(w, new boolean[n]), 1e-9 * best);
    }

    private static double bestOrder(RepairOrder order, double[] w, List<Integer> chosen, int n) {
        if (chosen.size() == n) {
            return order.prefixMinutes(w, chosen.stream().mapToInt(i -> i).toArray())[n];
        }
        double best = Double.POSITIVE_INFINITY;
        for (int i = 0; i < n; i++) {
            if (!chosen.contains(i)) {
                chosen.add(i);
                best = Math.min(best, bestOrder(order, w, chosen, n));
                chosen.remove(chosen.size() - 1);
            }
        }
        return best;
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void planMinutes_areHomogeneousAndConcave(long seed) {
        Random r = new Random(seed);
        int n = 3 + r.nextInt(20);
        RepairOrder order = repairs(r, n);
        boolean[] done = new boolean[n];
        double[] a = weights(r, n);
        double[] b = weights(r, n);
        double[] sum = IntStream.rangeClosed(0, n).mapToDouble(i -> a[i] + b[i]).toArray();
        double[] triple = Arrays.stream(a).map(x -> 3 * x).toArray();
        double whole = order.planMinutes(sum, done);
        assertEquals(3 * order.planMinutes(a, done), order.planMinutes(triple, done), 1e-9 * whole);
        assertTrue(order.planMinutes(a, done) + order.planMinutes(b, done) <= whole + 1e-9);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void everyTest_isWorthWhatSortingAfreshSays(long seed) {
        CauseCategory c = Invented.random(seed, 3 + (int) (seed % 30), 12, true);
        Model m = new Model(c, ModelSettings.STANDARD);
        PlanSettings settings = ALL.withPlannedReliability(seed % 2 == 0 ? 1 : 0.9);
        Evidence e = Invented.evidence(seed, c, 5);
        Ranking ranking = Ranking.of(m, e);
        NextTest next = new NextTest(m, settings);
        Advice advice = next.advise(ranking, BenchSituation.PLAIN);
        boolean[] done = new boolean[m.size()];
        e.failedRepairs().forEach(f -> done[m.index(f.repair())] = true);
        for (Action a : advice.actions()) {
            if (a.type() == Action.Type.TEST) {
                double slow = a.minutes();
                for (double[] w : answers(m, ranking, a.id(), settings.plannedReliability())) {
                    slow += next.repairs().planMinutes(w, done);
                }
                assertEquals(slow, a.expectedMinutes(), 1e-9);
                assertTrue(a.expectedMinutes() <= a.minutes() + advice.planMinutes() + 1e-9, "a free test never hurts");
            }
        }
        double other = advice.bestOther().orElseThrow().expectedMinutes();
        assertEquals(advice.planMinutes(), other, 1e-9, "the plan is the better of its first repair and escalating");
    }

    private static List<double[]> answers(Model m, Ranking ranking, String finding, double rho) {
        int f = m.findingIndex(finding);
        int size = m.table(f).size();
        List<double[]> all = new ArrayList<>();
        for (int v = 0; v < size; v++) {
            double[] w = ranking.probabilities();
            for (int i = 0; i < w.length; i++) {
                w[i] *= rho * Belief.p(m, f, i, v) + (1 - rho) / size;
            }
            all.add(w);
        }
        return all;
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void pruning_changesNoRecommendation(long seed) {
        CauseCategory c = Invented.random(seed, 3 + (int) (seed % 20), 15, true);
        Model m = new Model(c, ModelSettings.STANDARD);
        Ranking ranking = Ranking.of(m, Invented.evidence(seed, c, 7));
        Advice all = new NextTest(m, ALL.withThreshold(0, 0)).advise(ranking, BenchSituation.PLAIN);
        Advice pruned = new NextTest(m, ALL.withThreshold(0, 0).withPrune(true)).advise(ranking, BenchSituation.PLAIN);
        assertEquals(all.recommended(), pruned.recommended());
        assertTrue(pruned.actions().size() <= all.actions().size());
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void raisingMinutes_neverMakesATestMorePreferred_norDearEscalationMoreEscalating(long seed) {
        CauseCategory c = Invented.random(seed, 6, 6, false);
        Ranking ranking = Ranking.of(new Model(c, ModelSettings.STANDARD), Evidence.NONE);
        Advice before = new NextTest(ranking.model(), ALL).advise(ranking, BenchSituation.PLAIN);
        List<Finding> slower = c.findings().stream()
                .map(f -> f.id().equals("f0") ? Invented.timed(f, f.minutes() + 5) : f)
                .toList();
        Advice after =
                advise(new CauseCategory("s", "s", c.escalateMinutes(), c.groups(), slower, c.causes(), List.of()));
        if (!isRecommended(before, "f0")) {
            assertTrue(!isRecommended(after, "f0"));
        }
        CauseCategory dear =
                new CauseCategory("d", "d", 3 * c.escalateMinutes(), c.groups(), c.findings(), c.causes(), List.of());
        if (!isRecommended(before, Action.ESCALATE_ID)) {
            assertTrue(!isRecommended(advise(dear), Action.ESCALATE_ID));
        }
    }

    private static Advice advise(CauseCategory c) {
        Model m = new Model(c, ModelSettings.STANDARD);
        return new NextTest(m, ALL).advise(Ranking.of(m, Evidence.NONE), BenchSituation.PLAIN);
    }

    private static boolean isRecommended(Advice a, String id) {
        return a.recommended().orElseThrow().id().equals(id);
    }

    /** A hundred small problems solved exactly: bounds of the optimum, and how near the advice comes to it. */
    @Test
    void advice_staysNearTheExactOptimum() {
        double sum = 0;
        for (long seed = 1; seed <= 100; seed++) {
            SmallWorld world = new SmallWorld(seed, 4, 5, ModelSettings.STANDARD);
            double optimum = world.optimum();
            double followed = world.followed(Policies.advised(SmallWorld.PLAN))[0];
            String at = "seed " + seed;
            assertTrue(world.lowerBound() <= optimum + 1e-9, at);
            assertTrue(optimum <= world.planMinutes() + 1e-9 && world.planMinutes() <= 240 + 1e-9, at);
            assertTrue(followed >= optimum - 1e-9, at);
            assertTrue(followed / optimum <= 1.15, at + ": " + followed / optimum);
            sum += followed / optimum;
        }
        assertTrue(sum / 100 <= 1.04, "mean ratio " + sum / 100);
    }

    @Test
    void lookingTwoStepsAhead_isNoWorseOnAverage() {
        double one = 0;
        double two = 0;
        for (long seed = 201; seed <= 230; seed++) {
            SmallWorld world = new SmallWorld(seed, 4, 5, ModelSettings.STANDARD);
            one += world.followed(Policies.advised(SmallWorld.PLAN.withThreshold(0, 0)))[0] / world.optimum();
            two += world.followed(Policies.advised(
                            SmallWorld.PLAN.withThreshold(0, 0).withLookahead(6)))[0]
                    / world.optimum();
        }
        assertTrue(two <= one, "two steps " + two / 30 + ", one step " + one / 30);
        assertTrue(two / 30 >= 1 - 1e-9, "nothing beats the optimum");
    }

    /** Sure repairs of all causes but a speck: a difference of masses would keep no digit. */
    @Test
    void allButNothingLeft_keepsItsDigits() {
        double[] minutes = {10, 20};
        RepairOrder order = new RepairOrder(minutes, new double[] {1, 1}, 1e9);
        double[] w = {1, 1e-12, 0};
        assertEquals(10 + 1e-12 * 30, order.planMinutes(w, new boolean[2]), 1e-13);
        assertEquals(1, order.plan(w, new boolean[2]).repairs().get(1));
    }
}

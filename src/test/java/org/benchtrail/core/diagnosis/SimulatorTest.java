package org.benchtrail.core.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.BiFunction;
import org.benchtrail.BesideOthers;
import org.junit.jupiter.api.Test;

/**
 * Compares our advice with the habits it is to improve on. {@code -Dbenchtrail.simulator.tickets=20000} and {@code
 * -Dbenchtrail.simulator.problems=200} give a larger run.
 */
@BesideOthers
class SimulatorTest {
    private static final int TICKETS = Integer.getInteger("benchtrail.simulator.tickets", 600);
    private static final int PROBLEMS = Integer.getInteger("benchtrail.simulator.problems", 30);
    private static final long SEED = 20260105;

    private static Map<String, BiFunction<Model, Evidence, Action>> policies(PlanSettings plan) {
        Map<String, BiFunction<Model, Evidence, Action>> all = new LinkedHashMap<>();
        all.put("checklist", Policies::checklist);
        all.put("most frequent first", Policies::frequentFirst);
        all.put("advice", Policies.advised(plan));
        all.put("advice, two steps", Policies.advised(plan.withLookahead(6)));
        return all;
    }

    private static List<Simulator.Hidden> tickets() {
        Random r = new Random(SEED);
        List<Model> models = StarterJson.catalogue().categories().stream()
                .map(c -> new Model(c, ModelSettings.STANDARD))
                .toList();
        List<Simulator.Hidden> all = new ArrayList<>();
        for (int k = 0; k < TICKETS; k++) {
            all.add(Simulator.Hidden.draw(models.get(r.nextInt(models.size())), r));
        }
        return all;
    }

    @Test
    void starterCatalogue_adviceTakesLessThanChecklistAndHabit() {
        List<Simulator.Hidden> tickets = tickets();
        System.out.println("starter catalogue, " + TICKETS + " tickets, seed " + SEED + ", 95 % intervals");
        Map<String, Simulator.Summary> by = new LinkedHashMap<>();
        policies(Simulator.PLAN).forEach((name, policy) -> by.put(name, Simulator.run(name, tickets, policy)));
        by.values().forEach(s -> System.out.println(s.line()));
        Simulator.Summary advice = by.get("advice");
        for (String other : List.of("checklist", "most frequent first")) {
            assertTrue(savedAtLeast(by.get(other), advice) > 0, "advice against " + other + ", seed " + SEED);
        }
        assertTrue(
                advice.within(1).low() > by.get("most frequent first").within(1).high());
    }

    /** Lower end of the 95 % interval of the minutes saved on the same tickets. */
    private static double savedAtLeast(Simulator.Summary a, Simulator.Summary b) {
        List<Simulator.Outcome> difference = new ArrayList<>();
        for (int k = 0; k < TICKETS; k++) {
            double saved = a.outcomes().get(k).minutes() - b.outcomes().get(k).minutes();
            difference.add(new Simulator.Outcome(saved, 0, 0));
        }
        Simulator.Summary paired = new Simulator.Summary("", difference);
        return paired.minutes() - paired.halfWidth();
    }

    /** Exact expectations, no sampling: five causes and the unlisted one, five tests. */
    @Test
    void smallProblems_adviceIsNearestToTheExactOptimum() {
        Map<String, double[]> sums = new LinkedHashMap<>();
        double optima = 0;
        for (long seed = 1; seed <= PROBLEMS; seed++) {
            SmallWorld world = new SmallWorld(1000 + seed, 5, 5, ModelSettings.STANDARD);
            double optimum = world.optimum();
            optima += optimum;
            policies(SmallWorld.PLAN).forEach((name, policy) -> add(sums, name, world.followed(policy), optimum));
        }
        System.out.printf(
                Locale.ROOT,
                "small problems, %d from seed 1001, exact; optimum %.1f min; then minutes, tests, mean and worst ratio%n",
                PROBLEMS,
                optima / PROBLEMS);
        sums.forEach((name, s) -> System.out.printf(
                Locale.ROOT,
                "%-22s %6.1f min  %5.2f tests  %.4f  %.3f%n",
                name,
                s[0] / PROBLEMS,
                s[1] / PROBLEMS,
                s[2] / PROBLEMS,
                s[3]));
        assertTrue(sums.get("advice")[2] / PROBLEMS <= 1.04);
        for (String other : List.of("checklist", "most frequent first")) {
            assertTrue(sums.get("advice")[2] < sums.get(other)[2]);
        }
        sums.values().forEach(s -> assertTrue(s[2] / PROBLEMS >= 1 - 1e-12, "nothing beats the optimum"));
    }

    private static void add(Map<String, double[]> sums, String name, double[] minutesAndTests, double optimum) {
        double[] s = sums.computeIfAbsent(name, n -> new double[4]);
        double ratio = minutesAndTests[0] / optimum;
        s[0] += minutesAndTests[0];
        s[1] += minutesAndTests[1];
        s[2] += ratio;
        s[3] = Math.max(s[3], ratio);
    }

    /** The simulation agrees with the exact expectation of the same policy on the same problem. */
    @Test
    void simulatedMean_isTheExactExpectation() {
        SmallWorld world = new SmallWorld(77, 4, 4, ModelSettings.STANDARD);
        Random r = new Random(5);
        BiFunction<Model, Evidence, Action> policy = Policies::checklist;
        List<Simulator.Hidden> tickets = new ArrayList<>();
        for (int k = 0; k < 4000; k++) {
            tickets.add(Simulator.Hidden.draw(world.model, r));
        }
        Simulator.Summary s = Simulator.run("checklist", tickets, policy);
        assertEquals(world.followed(policy, Simulator.RHO)[0], s.minutes(), 2 * s.halfWidth());
    }
}

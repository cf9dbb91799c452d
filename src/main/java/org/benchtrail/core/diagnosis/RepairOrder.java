package org.benchtrail.core.diagnosis;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * In which order to repair and verify, and when to give up and escalate.
 *
 * <p>Order by probability times fix probability over minutes, descending; escalate after the prefix with the least expected
 * minutes. That prefix is the optimum over all ordered subsets of repairs (exchange argument), so the plan's minutes are a
 * minimum of linear functions of the belief: concave and homogeneous.
 *
 * <p>Shape: n minutes and fix probabilities; n+1 weights, the last for the unlisted cause, which only escalation settles.
 * <p>Units: minutes; weights are beliefs, not necessarily normalised.
 * <p>Source: J. B. Kadane, H. A. Simon, "Optimal strategies for a class of constrained sequential problems", Annals of
 * Statistics 3, 1975 (from memory, not checked); J. Kalagnanam, M. Henrion, "A comparison of decision analysis and expert rules for sequential
 * diagnosis", UAI 1988. Differs: escalation ends the plan.
 */
public final class RepairOrder {
    final double[] minutes;
    final double[] fix;
    final double escalateMinutes;
    private final int[] idRank;

    /**
     * @param minutes of each repair, verification included; above 0
     * @param fix probability that each repair removes its fault; in (0, 1]
     * @param escalateMinutes above 0
     */
    public RepairOrder(double[] minutes, double[] fix, double escalateMinutes) {
        this(minutes, fix, escalateMinutes, IntStream.range(0, minutes.length).toArray());
    }

    /** @param idRank place of each cause's id in alphabetical order; breaks ties */
    RepairOrder(double[] minutes, double[] fix, double escalateMinutes, int[] idRank) {
        if (minutes.length != fix.length || minutes.length != idRank.length) {
            throw new IllegalArgumentException(
                    "lengths differ: " + minutes.length + " minutes, " + fix.length + " fix");
        }
        this.minutes = minutes.clone();
        this.fix = fix.clone();
        this.escalateMinutes = escalateMinutes;
        this.idRank = idRank.clone();
    }

    /** With what each repair still needs. */
    static RepairOrder of(Model model, PlanSettings settings, Set<String> met) {
        List<Cause> causes = model.category().causes();
        return new RepairOrder(
                causes.stream()
                        .mapToDouble(c -> minutes(c.repair(), settings, met))
                        .toArray(),
                causes.stream().mapToDouble(c -> c.repair().fixProbability()).toArray(),
                model.category().escalateMinutes(),
                model.idRank());
    }

    static RepairOrder of(Model model, PlanSettings settings) {
        return of(model, settings, Set.of());
    }

    /** The same, where some repairs take no more than that. */
    RepairOrder atMost(double most, int[] causes) {
        double[] less = minutes.clone();
        for (int i : causes) {
            less[i] = Math.min(less[i], most);
        }
        return new RepairOrder(less, fix, escalateMinutes, idRank);
    }

    /** Minutes of a repair itself. */
    public static double minutes(Repair r, PlanSettings settings) {
        return r.minutes() + r.verifyMinutes() + r.partCost() * settings.minutesPerCost() + settings.minutes(r.risk());
    }

    /** Minutes of a repair, those of what it still needs included. */
    static double minutes(Repair r, PlanSettings settings, Set<String> met) {
        double risk = settings.minutes(Needs.risk(r, met)) - settings.minutes(r.risk());
        return minutes(r, settings) + risk + Needs.minutes(Needs.missing(r, met), settings);
    }

    /** Number of repairs, n. */
    public int size() {
        return minutes.length;
    }

    /**
     * What to do.
     *
     * @param repairs indices in order, up to where escalating is better; possibly none
     * @param minutes expected until the ticket ends, times the mass of the weights
     */
    public record Plan(List<Integer> repairs, double minutes) {}

    /**
     * @param weights n+1 of zero or more
     * @param done n, true for a repair that was tried already
     */
    public Plan plan(double[] weights, boolean[] done) {
        int[] order = order(weights, done);
        double[] cost = prefixMinutes(weights, order);
        int best = 0;
        for (int k = 1; k < cost.length; k++) {
            best = cost[k] < cost[best] ? k : best;
        }
        return new Plan(Arrays.stream(order, 0, best).boxed().toList(), cost[best]);
    }

    /** Expected minutes of the best plan, times the mass of the weights. */
    public double planMinutes(double[] weights, boolean[] done) {
        return least(weights, order(weights, done));
    }

    /** The same, with an order that is known. */
    double least(double[] weights, int[] order) {
        return Arrays.stream(prefixMinutes(weights, order)).min().orElseThrow();
    }

    /** Repairs not done, best first: weight times fix over minutes, ties by id. */
    int[] order(double[] weights, boolean[] done) {
        double[] ratio = new double[size()];
        for (int i = 0; i < ratio.length; i++) {
            ratio[i] = weights[i] * fix[i] / minutes[i];
        }
        return IntStream.range(0, size())
                .filter(i -> !done[i])
                .boxed()
                .sorted(Comparator.<Integer>comparingDouble(i -> -ratio[i]).thenComparingInt(i -> idRank[i]))
                .mapToInt(i -> i)
                .toArray();
    }

    /** Expected minutes of escalating after the first k repairs of the order, k = 0 to its length. */
    double[] prefixMinutes(double[] weights, int[] order) {
        double[] alive = alive(weights, order);
        double[] cost = new double[order.length + 1];
        double spent = 0;
        for (int k = 0; k <= order.length; k++) {
            cost[k] = spent + alive[k] * escalateMinutes;
            spent += k < order.length ? alive[k] * minutes[order[k]] : 0;
        }
        return cost;
    }

    /** Mass still unrepaired after the first k repairs. Sums only: a difference would lose all digits near zero. */
    private double[] alive(double[] weights, int[] order) {
        double[] alive = new double[order.length + 1];
        boolean[] inOrder = new boolean[weights.length];
        for (int i : order) {
            inOrder[i] = true;
        }
        double rest = 0;
        for (int i = weights.length - 1; i >= 0; i--) {
            rest += inOrder[i] ? 0 : weights[i];
        }
        for (int k = order.length; k >= 0; k--) {
            alive[k] = rest;
            rest += k > 0 ? weights[order[k - 1]] : 0;
        }
        double missed = 0;
        for (int k = 0; k < order.length; k++) {
            missed += weights[order[k]] * (1 - fix[order[k]]);
            alive[k + 1] += missed;
        }
        return alive;
    }
}

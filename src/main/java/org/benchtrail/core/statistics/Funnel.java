package org.benchtrail.core.statistics;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.BinomialDistribution;

/**
 * Shares of many units against their sizes, with limits that widen as a unit is smaller: a picture of chance, and no ranking.
 *
 * <p>Limits are drawn by interpolation between whole numbers; whether a unit is out is judged by its exact tail. Source:
 * Spiegelhalter, Statistics in Medicine 24 (2005) 1185-1202.
 *
 * @param target share that the limits are drawn for
 * @param units in the order in which they were given
 */
public record Funnel(double target, List<Unit> units) {
    private static final double OUT = 0.001;

    /** @param out whether its share is beyond what chance explains but once in a thousand, on that side */
    public record Unit(Proportion share, boolean out) {}

    public Funnel {
        units = List.copyOf(units);
    }

    /** Around the share of all units together. */
    public static Funnel of(List<Proportion> shares) {
        long hits = shares.stream().mapToLong(Proportion::hits).sum();
        long trials = shares.stream().mapToLong(Proportion::trials).sum();
        double target = new Proportion(hits, trials).share();
        List<Unit> units = new ArrayList<>();
        shares.forEach(share -> units.add(new Unit(share, isOut(share, target))));
        return new Funnel(target, units);
    }

    /** P(X >= r) below 0.001, or P(X <= r). */
    static boolean isOut(Proportion share, double target) {
        BinomialDistribution chance = BinomialDistribution.of((int) share.trials(), target);
        return chance.survivalProbability((int) share.hits() - 1) < OUT
                || chance.cumulativeProbability((int) share.hits()) < OUT;
    }

    /**
     * The limit at a tail probability for units of that size; may lie a little outside 0 to 1, where it is cut when drawn.
     *
     * @param target in (0, 1)
     * @param size at least 1
     * @param p in (0, 1)
     */
    public static double limit(double target, int size, double p) {
        BinomialDistribution chance = BinomialDistribution.of(size, target);
        int r = chance.inverseCumulativeProbability(p);
        if (chance.cumulativeProbability(r) <= p) {
            r++;
        }
        double at = chance.cumulativeProbability(r);
        double alpha = (at - p) / (at - chance.cumulativeProbability(r - 1));
        return (r - alpha) / size;
    }
}

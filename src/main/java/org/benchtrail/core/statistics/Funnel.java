package org.benchtrail.core.statistics;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.apache.commons.statistics.distribution.BinomialDistribution;

/**
 * Shares of many units against their sizes, with limits that widen as a unit is smaller: a picture of chance, and no ranking.
 *
 * <p>Limits are drawn by interpolation between whole numbers; whether a unit is out is judged by its exact tail. Source:
 * Spiegelhalter, Statistics in Medicine 24 (2005) 1185-1202. Where the units differ by more than chance, the limits are as much
 * wider, and a unit is out only if it is beyond those as well.
 *
 * @param target share that the limits are drawn for
 * @param units in the order in which they were given
 * @param dispersion mean square of the units' distances in standard deviations, the outermost tenth on each side drawn in
 */
public record Funnel(double target, List<Unit> units, Dispersion dispersion) {
    private static final double OUT = 0.001;
    private static final int TENTH = 10;

    /** @param out whether its share is beyond what chance explains but once in a thousand, on that side */
    public record Unit(Proportion share, boolean out) {}

    public Funnel {
        units = List.copyOf(units);
    }

    /**
     * Around the share of all units together.
     *
     * @param shares at least one hit and one that is none among all of them, or chance has nothing to vary
     */
    public static Funnel of(List<Proportion> shares) {
        double target = Proportion.together(shares).share();
        Dispersion dispersion = Dispersion.of(drawnIn(
                shares.stream().mapToDouble(s -> Dispersion.distance(s, target)).toArray()));
        List<Unit> units = new ArrayList<>();
        for (Proportion share : shares) {
            boolean beyond = share.share() < limit(target, share.trials(), OUT, dispersion)
                    || share.share() > limit(target, share.trials(), 1 - OUT, dispersion);
            units.add(new Unit(share, isOut(share, target) && (beyond || !dispersion.isMoreThanChance())));
        }
        return new Funnel(target, units, dispersion);
    }

    /**
     * Winsorised: the outermost tenth on each side counts as the one next to it, and at least one does, so that among few units a
     * single one that is far out does not widen the limits that it is held against.
     */
    private static double[] drawnIn(double[] distances) {
        double[] sorted = DoubleStream.of(distances).sorted().toArray();
        int last = sorted.length - 1;
        int tenth = Math.min(last / 2, Math.max(1, sorted.length / TENTH));
        return DoubleStream.of(distances)
                .map(z -> Math.max(sorted[tenth], Math.min(sorted[last - tenth], z)))
                .toArray();
    }

    /** The limit that is drawn: as wide as the units differ, and within 0 to 1. */
    public double drawn(long size, double p) {
        return Math.max(0, Math.min(1, limit(target, size, p, dispersion)));
    }

    private static double limit(double target, long size, double p, Dispersion dispersion) {
        return target + (limit(target, (int) size, p) - target) * dispersion.factor();
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
        BinomialSums chance = new BinomialSums(size, target);
        int r = chance.above(p);
        double at = chance.upTo(r);
        double alpha = (at - p) / (at - chance.upTo(r - 1));
        return (r - alpha) / size;
    }
}

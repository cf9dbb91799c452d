package org.benchtrail.core.statistics;

import java.util.stream.DoubleStream;

/**
 * How much shares differ, against what chance alone would make of them.
 *
 * @param phi mean of z², where z is a share's distance from the share of all in standard deviations; about 1 by chance
 * @param bound 1 + 2·√(2/k) for k shares: two standard deviations of a mean of k squares (by the variance 2 of χ² with one degree of
 *     freedom)
 */
public record Dispersion(double phi, double bound) {

    static Dispersion of(double... distances) {
        return new Dispersion(
                DoubleStream.of(distances).map(z -> z * z).average().orElse(0),
                1 + 2 * Math.sqrt(2.0 / distances.length));
    }

    /** z of a share around that of all; 0 where that is 0 or 1, since nothing can differ then. */
    static double distance(Proportion share, double mean) {
        double deviation = Math.sqrt(mean * (1 - mean) / share.trials());
        return deviation == 0 ? 0 : (share.share() - mean) / deviation;
    }

    public boolean isMoreThanChance() {
        return phi > bound;
    }

    /** By what limits are wider: √phi, or 1 where chance is enough. */
    public double factor() {
        return isMoreThanChance() ? Math.sqrt(phi) : 1;
    }
}

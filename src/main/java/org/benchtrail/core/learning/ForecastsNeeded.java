package org.benchtrail.core.learning;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * How many forecasts show a shift of the mean with 80 %, two-sided at 5 %. Source of the sums: NIST/SEMATECH e-Handbook of
 * Statistical Methods, 7.2.4.3, with both terms.
 *
 * @param variance of one forecast, mean of p (1 - p) if calibrated
 * @param aJob how many forecasts one job has
 * @param correlation between two of one job
 */
public record ForecastsNeeded(double variance, int aJob, double correlation) {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double SURE = NORMAL.inverseCumulativeProbability(0.975);
    private static final double SEEN = NORMAL.inverseCumulativeProbability(0.80);

    /** As if every forecast were a job of its own. */
    public static ForecastsNeeded independent(double variance) {
        return new ForecastsNeeded(variance, 1, 0);
    }

    /** By how much forecasts of one job tell less than as many of different ones. */
    public double design() {
        return 1 + (aJob - 1) * correlation;
    }

    /** To tell one group's mean from 0. */
    public int against0(double shift) {
        return (int) Math.ceil(exact(shift));
    }

    /** For each of two phases, to tell their means apart. */
    public int aPhase(double shift) {
        return (int) Math.ceil(2 * exact(shift));
    }

    private double exact(double shift) {
        return (SURE + SEEN) * (SURE + SEEN) * variance / (shift * shift) * design();
    }

    public int jobs(int forecasts) {
        return (forecasts + aJob - 1) / aJob;
    }

    /** The shift that so many jobs against as many others show. */
    public double shownBy(int jobs) {
        return (SURE + SEEN) * Math.sqrt(2 * variance * design() / (aJob * jobs));
    }

    /** Half of the 95 % interval of one person's mean. */
    public double halfWidth(int forecasts) {
        return SURE * Math.sqrt(variance * design() / forecasts);
    }

    /** Standard deviation of one person's change from so many jobs to as many others, where true changes differ by that much. */
    public double changeOf(int jobs, double spread) {
        return Math.sqrt(2 * variance * design() / (aJob * jobs) + spread * spread);
    }

    /** People whose change has to be seen, before the two or three that the t distribution asks for besides. */
    public double people(double shift, int jobs, double spread) {
        double change = (SURE + SEEN) * changeOf(jobs, spread) / shift;
        return change * change;
    }
}

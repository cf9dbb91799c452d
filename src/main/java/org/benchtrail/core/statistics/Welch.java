package org.benchtrail.core.statistics;

import org.apache.commons.statistics.distribution.TDistribution;
import org.benchtrail.core.Invalid;

/**
 * Difference of two means whose scatter may differ: Welch's t.
 *
 * <p>Source: Welch, Biometrika 34 (1947); NIST/SEMATECH e-Handbook 1.3.5.3. Assumes independent readings, roughly normal.
 *
 * @param difference mean of the second sample minus mean of the first
 * @param standardError of the difference, more than 0
 * @param degreesOfFreedom by Welch and Satterthwaite
 * @param t difference divided by its standard error
 * @param pValue two-sided: how often scatter alone would give a difference as large, were the means equal
 * @param interval of the difference
 */
public record Welch(
        double difference, double standardError, double degreesOfFreedom, double t, double pValue, Interval interval) {

    /**
     * Compares two samples.
     *
     * @throws Invalid if a sample has fewer than two readings or one that is not finite, or neither scatters at all
     */
    public static Welch of(double[] first, double[] second, double confidence) {
        return of(Sample.of("first", first), Sample.of("second", second), confidence);
    }

    /** Compares two samples by their summaries. */
    public static Welch of(Sample first, Sample second, double confidence) {
        Domain.confidence(confidence);
        double share1 = first.variance() / first.size();
        double share2 = second.variance() / second.size();
        double error = Math.sqrt(share1 + share2);
        if (!(error > 0)) {
            throw new Invalid(
                    "readings",
                    "The readings do not scatter at all, so nothing tells a change from chance: "
                            + "give more digits, or more readings.");
        }
        double degrees = (share1 + share2)
                / (share1 / (share1 + share2) * share1 / (first.size() - 1)
                        + share2 / (share1 + share2) * share2 / (second.size() - 1));
        return from(second.mean() - first.mean(), error, degrees, confidence);
    }

    private static Welch from(double difference, double error, double degrees, double confidence) {
        TDistribution distribution = TDistribution.of(degrees);
        double t = difference / error;
        double p = Math.min(1, 2 * distribution.survivalProbability(Math.abs(t)));
        double reach = error * distribution.inverseSurvivalProbability((1 - confidence) / 2);
        return new Welch(
                difference, error, degrees, t, p, new Interval(difference - reach, difference + reach, confidence));
    }
}

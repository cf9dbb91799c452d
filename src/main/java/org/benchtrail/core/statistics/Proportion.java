package org.benchtrail.core.statistics;

import java.util.List;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.benchtrail.core.Invalid;

/**
 * k of n: a share with its interval.
 *
 * <p>Source: NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.4.1 (Wilson 1927; Clopper and Pearson 1934).
 *
 * @param hits k, 0 to n
 * @param trials n, at least 1
 */
public record Proportion(long hits, long trials) {
    private static final NormalDistribution STANDARD_NORMAL = NormalDistribution.of(0, 1);

    public Proportion {
        new Invalid.Collector()
                .require(trials >= 1, "trials", "Give at least one trial.")
                .require(hits >= 0, "hits", "Give the number of hits as 0 or more.")
                .require(hits <= trials, "hits", "There cannot be more hits than trials.")
                .throwIfAny();
    }

    /** All of them as one. */
    public static Proportion together(List<Proportion> shares) {
        return new Proportion(
                shares.stream().mapToLong(Proportion::hits).sum(),
                shares.stream().mapToLong(Proportion::trials).sum());
    }

    public double share() {
        return (double) hits / trials;
    }

    /** Wilson's two-sided interval; never outside [0, 1]. Covers about the confidence on average. */
    public Interval wilson(double confidence) {
        double z = STANDARD_NORMAL.inverseSurvivalProbability((1 - Domain.confidence(confidence)) / 2);
        return new Interval(wilsonLower(z), wilsonUpper(z), confidence);
    }

    /** Wilson's one-sided lower bound: the share is at least this, with the confidence. */
    public double wilsonLowerBound(double confidence) {
        return wilsonLower(STANDARD_NORMAL.inverseSurvivalProbability(1 - Domain.confidence(confidence)));
    }

    /** Wilson's one-sided upper bound: the share is at most this, with the confidence. */
    public double wilsonUpperBound(double confidence) {
        return wilsonUpper(STANDARD_NORMAL.inverseSurvivalProbability(1 - Domain.confidence(confidence)));
    }

    /** Wilson's lower bound at a given z, 0 at k = 0. */
    double wilsonLower(double z) {
        return hits == 0 ? 0 : Math.max(0, wilsonCentre(z) - wilsonHalfWidth(z));
    }

    double wilsonUpper(double z) {
        return hits == trials ? 1 : Math.min(1, wilsonCentre(z) + wilsonHalfWidth(z));
    }

    private double wilsonCentre(double z) {
        return (share() + z * z / (2 * trials)) / (1 + z * z / trials);
    }

    private double wilsonHalfWidth(double z) {
        double variance = share() * (1 - share()) / trials + z * z / (4.0 * trials * trials);
        return Math.abs(z) * Math.sqrt(variance) / (1 + z * z / trials);
    }

    /** Clopper and Pearson's exact two-sided interval: covers at least the confidence, so it is the wider one. */
    public Interval clopperPearson(double confidence) {
        double tail = (1 - Domain.confidence(confidence)) / 2;
        double lower = hits == 0
                ? 0
                : BetaDistribution.of((double) hits, trials - hits + 1.0).inverseCumulativeProbability(tail);
        double upper = hits == trials
                ? 1
                : BetaDistribution.of(hits + 1.0, (double) (trials - hits)).inverseSurvivalProbability(tail);
        return new Interval(lower, upper, confidence);
    }

    /** The exact one-sided lower bound of Clopper and Pearson: the share is at least this, with the confidence. 0 at k = 0. */
    public double exactLowerBound(double confidence) {
        return hits == 0
                ? 0
                : BetaDistribution.of((double) hits, trials - hits + 1.0)
                        .inverseCumulativeProbability(1 - Domain.confidence(confidence));
    }
}

package org.benchtrail.core.measure;

import org.apache.commons.statistics.distribution.NormalDistribution;
import org.benchtrail.core.Invalid;

/** Probability that a true value lies within its limits, given what was read. */
public final class Conformance {
    private static final NormalDistribution STANDARD_NORMAL = NormalDistribution.of(0, 1);

    private Conformance() {}

    /**
     * Conformance probability Φ((upper − y)/u) − Φ((lower − y)/u), the true value taken as normal about the reading.
     *
     * <p>Units: all four in the same one. Source: JCGM 106:2012, clause 7.
     *
     * @param lower {@link Double#NEGATIVE_INFINITY} if there is none
     * @param upper {@link Double#POSITIVE_INFINITY} if there is none
     * @param u standard uncertainty, more than 0
     * @return in [0, 1]; computed from the nearer tail, so that small probabilities keep their digits
     * @throws Invalid if y is not finite, u not positive, or the limits are not in order
     */
    public static double probability(double y, double lower, double upper, double u) {
        if (!(u > 0) || Double.isInfinite(u)) {
            throw new Invalid("u", "Give the standard uncertainty as more than 0.");
        }
        if (!Double.isFinite(y) || !(lower < upper)) {
            throw new Invalid("limits", "Give a finite value and a lower limit below the upper one.");
        }
        return between((lower - y) / u, (upper - y) / u);
    }

    private static double between(double from, double to) {
        if (from == Double.NEGATIVE_INFINITY) {
            return STANDARD_NORMAL.cumulativeProbability(to);
        }
        return to == Double.POSITIVE_INFINITY
                ? STANDARD_NORMAL.survivalProbability(from)
                : STANDARD_NORMAL.probability(from, to);
    }
}

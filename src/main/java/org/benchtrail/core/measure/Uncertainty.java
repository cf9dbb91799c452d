package org.benchtrail.core.measure;

import org.apache.commons.statistics.distribution.TDistribution;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.statistics.Sample;

/**
 * Standard uncertainties: where they come from and how they are put together.
 *
 * <p>Source: JCGM 100:2008 (GUM), clauses 4.2.3, 4.3.7, 5.1.2 and annex G.4. Inputs are taken as uncorrelated.
 */
public final class Uncertainty {
    private static final double ROOT_OF_THREE = Math.sqrt(3);

    private Uncertainty() {}

    /** u = a/√3 of a quantity that lies anywhere within ± a with equal chance (GUM 4.3.7). Domain: a >= 0. */
    public static double rectangular(double halfWidth) {
        if (!(halfWidth >= 0) || Double.isInfinite(halfWidth)) {
            throw new Invalid("halfWidth", "Give the half-width as 0 or more.");
        }
        return halfWidth / ROOT_OF_THREE;
    }

    /**
     * u = s/√n of the mean of repeated readings (GUM 4.2.3).
     *
     * @param readings at least two, finite
     */
    public static double ofMean(double... readings) {
        Sample sample = Sample.of("readings", readings);
        return sample.deviation() / Math.sqrt(sample.size());
    }

    /** Combined u of uncorrelated contributions with sensitivity 1: root of the sum of squares (GUM 5.1.2). */
    public static double combine(double... contributions) {
        double sum = 0;
        for (double u : contributions) {
            sum = Math.hypot(sum, atLeastZero("contributions", u));
        }
        return sum;
    }

    /**
     * Combined u of uncorrelated contributions (GUM 5.1.2, equation 10): √Σ(cᵢuᵢ)².
     *
     * <p>Shape: both arrays have n entries, same order.
     */
    public static double combine(double[] sensitivities, double[] contributions) {
        requireSameLength(sensitivities, contributions);
        double sum = 0;
        for (int i = 0; i < contributions.length; i++) {
            sum = Math.hypot(sum, sensitivities[i] * atLeastZero("contributions", contributions[i]));
        }
        return sum;
    }

    /**
     * Effective degrees of freedom by Welch and Satterthwaite (GUM G.4.1, equation G.2b): u⁴/Σ(uᵢ⁴/νᵢ).
     *
     * @param contributions uᵢ already multiplied by their sensitivities; at least one is more than 0
     * @param degrees νᵢ > 0, {@link Double#POSITIVE_INFINITY} for one that is known exactly
     * @return possibly infinite; GUM G.4.1 rounds it down before a table is entered
     */
    public static double effectiveDegrees(double[] contributions, double[] degrees) {
        requireSameLength(contributions, degrees);
        double squares = 0;
        double shares = 0;
        for (int i = 0; i < contributions.length; i++) {
            if (!(degrees[i] > 0)) {
                throw new Invalid("degrees", "Give every degree of freedom as more than 0.");
            }
            double square = Math.pow(atLeastZero("contributions", contributions[i]), 2);
            squares += square;
            shares += square * square / degrees[i];
        }
        if (squares == 0) {
            throw new Invalid("contributions", "Every contribution is 0: there is no uncertainty to judge.");
        }
        return squares * squares / shares;
    }

    /**
     * Coverage factor k = t at the two-sided confidence (GUM G.3.2).
     *
     * @param confidence in (0, 1), such as 0.95
     */
    public static double coverageFactor(double degrees, double confidence) {
        if (!(degrees > 0) || !(confidence > 0 && confidence < 1)) {
            throw new Invalid("confidence", "Give degrees of freedom above 0 and a confidence between 0 and 1.");
        }
        return TDistribution.of(degrees).inverseSurvivalProbability((1 - confidence) / 2);
    }

    private static double atLeastZero(String field, double u) {
        if (!(u >= 0) || Double.isInfinite(u)) {
            throw new Invalid(field, "Give every standard uncertainty as 0 or more.");
        }
        return u;
    }

    private static void requireSameLength(double[] a, double[] b) {
        if (a.length != b.length || a.length == 0) {
            throw new Invalid(
                    "contributions",
                    "Give as many values in both rows, at least one: got " + a.length + " and " + b.length + ".");
        }
    }
}

package org.benchtrail.core.diagnosis;

import org.benchtrail.core.Invalid;

/**
 * How beliefs are computed.
 *
 * @param unlisted prior of the cause that is not in the list: 0.01 to 0.30, or 0 to have none
 * @param epsilon share of the uniform distribution in what the unlisted cause predicts; 0 to 1
 * @param clampLow smallest probability a table may hold; 0 with {@code clampHigh} 1 leaves tables as they are
 * @param clampHigh largest probability a table may hold
 * @param beta exponent on all evidence that calibration found; 0.3 to 1
 * @param everyTuple whether surprise takes several reports on one finding together, as is exact; otherwise it takes the
 *     first report's channel
 */
public record ModelSettings(
        double unlisted, double epsilon, double clampLow, double clampHigh, double beta, boolean everyTuple) {
    static final double LEAST_UNLISTED = 0.01;
    static final double MOST_UNLISTED = 0.30;
    static final double LEAST_BETA = 0.3;
    public static final ModelSettings STANDARD = new ModelSettings(0.05, 0.5, 0.01, 0.99, 1, true);

    /** @throws Invalid with every value outside its domain */
    public ModelSettings {
        new Invalid.Collector()
                .require(
                        unlisted == 0 || (unlisted >= LEAST_UNLISTED && unlisted <= MOST_UNLISTED),
                        "unlisted",
                        "give 0, or a prior from 0.01 to 0.30")
                .require(epsilon >= 0 && epsilon <= 1, "epsilon", "give a share from 0 to 1")
                .require(clampLow >= 0 && clampLow < 0.5, "clampLow", "give a probability from 0 to below 0.5")
                .require(clampHigh > 0.5 && clampHigh <= 1, "clampHigh", "give a probability above 0.5, at most 1")
                .require(beta >= LEAST_BETA && beta <= 1, "beta", "give an exponent from 0.3 to 1")
                .throwIfAny();
    }

    public ModelSettings withUnlisted(double prior) {
        return new ModelSettings(prior, epsilon, clampLow, clampHigh, beta, everyTuple);
    }

    public ModelSettings withEpsilon(double share) {
        return new ModelSettings(unlisted, share, clampLow, clampHigh, beta, everyTuple);
    }

    public ModelSettings withoutClamp() {
        return new ModelSettings(unlisted, epsilon, 0, 1, beta, everyTuple);
    }

    public ModelSettings withBeta(double exponent) {
        return new ModelSettings(unlisted, epsilon, clampLow, clampHigh, exponent, everyTuple);
    }

    public ModelSettings withEveryTuple(boolean exact) {
        return new ModelSettings(unlisted, epsilon, clampLow, clampHigh, beta, exact);
    }
}

package org.benchtrail.core.diagnosis;

/**
 * Weights of evidence in decibans: 10 log10 of an odds ratio. +3 doubles the odds, +10 makes them ten times as large.
 *
 * <p>Source: I. J. Good, "Weight of evidence: a brief survey", Bayesian Statistics 2, 1985.
 */
public final class Decibans {
    /** Decibans in one nat, 10 / ln 10. */
    static final double PER_NAT = 10 / StrictMath.log(10);

    private Decibans() {}

    /** @param odds above 0 */
    public static double ofOdds(double odds) {
        return PER_NAT * StrictMath.log(odds);
    }

    /** Log-odds of a probability; in (0, 1), and not within 1e-15 of either end. */
    public static double ofProbability(double p) {
        return ofOdds(p / (1 - p));
    }

    /** Log-odds of entry i against all others, from log weights in nats; exact where p is all but 0 or 1. */
    static double against(double[] score, int i) {
        return PER_NAT * (score[i] - logSumWithout(score, i));
    }

    private static double logSumWithout(double[] score, int left) {
        double max = Double.NEGATIVE_INFINITY;
        for (int j = 0; j < score.length; j++) {
            max = j == left ? max : Math.max(max, score[j]);
        }
        double sum = 0;
        for (int j = 0; j < score.length; j++) {
            sum += j == left ? 0 : StrictMath.exp(score[j] - max);
        }
        return max + StrictMath.log(sum);
    }
}

package org.benchtrail.core.statistics;

import org.benchtrail.core.Invalid;

/**
 * How good stated probabilities were, once the outcomes are known; smaller is better.
 *
 * <p>Shape: probabilities and outcomes have n >= 1 entries, same order; probabilities in [0, 1].
 */
public final class Scores {
    private Scores() {}

    /** Brier's score, mean of (p − o)², in [0, 1]. Brier's own of 1950 sums both classes and is twice as large. */
    public static double brier(double[] probabilities, boolean[] outcomes) {
        requireSameLength(probabilities, outcomes);
        double sum = 0;
        for (int i = 0; i < probabilities.length; i++) {
            double miss = ofOutcome(probabilities[i], outcomes[i]) - 1;
            sum += miss * miss;
        }
        return sum / probabilities.length;
    }

    /**
     * Logarithmic score, mean of −ln p(outcome), in nats.
     *
     * @return positive infinity if something was called impossible and happened, or certain and did not: nothing is clamped
     */
    public static double logarithmic(double[] probabilities, boolean[] outcomes) {
        requireSameLength(probabilities, outcomes);
        double sum = 0;
        for (int i = 0; i < probabilities.length; i++) {
            sum -= Math.log(ofOutcome(probabilities[i], outcomes[i]));
        }
        // 0.0 - log(1) is -0.0 after a subtraction from zero; a perfect score is plain zero.
        return sum / probabilities.length + 0.0;
    }

    private static double ofOutcome(double p, boolean happened) {
        Domain.probability("probabilities", p);
        return happened ? p : 1 - p;
    }

    private static void requireSameLength(double[] probabilities, boolean[] outcomes) {
        if (probabilities.length != outcomes.length || probabilities.length == 0) {
            throw new Invalid("outcomes", "Give one outcome for each probability, at least one.");
        }
    }
}

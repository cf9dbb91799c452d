package org.benchtrail.core.diagnosis;

/**
 * Leaky noisy-OR: an effect with several possible causes, each of which alone may fail to bring it about.
 *
 * <p>Source: J. Pearl, "Probabilistic Reasoning in Intelligent Systems", 1988; leak after M. Henrion, 1987 (from memory, not checked).
 */
public final class NoisyOr {
    private NoisyOr() {}

    /**
     * Probability of the effect.
     *
     * @param leak probability that it happens without any of the causes; in [0, 1]
     * @param strengths of the causes that are present: probability that each alone brings it about; in [0, 1]
     */
    public static double probability(double leak, double... strengths) {
        double absent = 1 - leak;
        for (double c : strengths) {
            absent *= 1 - c;
        }
        return 1 - absent;
    }

    /** Strength of a cause, from the probability of the effect given that cause and the leak; at least 0. */
    public static double strength(double given, double leak) {
        return Math.max(0, 1 - (1 - given) / (1 - leak));
    }
}

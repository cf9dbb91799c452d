package org.benchtrail.core.diagnosis;

/** How the numbers are said to a technician. */
public final class Words {
    private static final double ALMOST_CERTAIN = 0.95;

    private Words() {}

    /** Strength of a weight of evidence: "speaks strongly for it"; below 1 dB "makes no difference". */
    public static String strength(double decibans) {
        double size = Math.abs(decibans);
        if (size < 1) {
            return "makes no difference";
        }
        return "speaks " + adverb(size) + (decibans > 0 ? " for it" : " against it");
    }

    private static String adverb(double size) {
        if (size < 3) {
            return "slightly";
        }
        if (size < 7) {
            return "clearly";
        }
        return size <= 13 ? "strongly" : "very strongly";
    }

    /** A probability as "about 6 in 10"; never 0 or 100 percent. */
    public static String chance(double p) {
        if (p >= ALMOST_CERTAIN) {
            return "almost certain";
        }
        if (p < 0.05) {
            return "less than 1 in 20";
        }
        return p < 0.075 ? "about 1 in 20" : "about " + Math.min(9, Math.round(10 * p)) + " in 10";
    }
}

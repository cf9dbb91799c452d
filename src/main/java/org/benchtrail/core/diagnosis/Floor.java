package org.benchtrail.core.diagnosis;

/**
 * Which repairs are too improbable to be advised, however cheap. Our choice.
 *
 * @param least no repair below this probability is advised
 * @param share nor one below this share of the most probable cause's
 * @param smallLeast but a small one is, from this probability on
 * @param smallMinutes what is small: at most so long, without risk, and reversible
 */
public record Floor(double least, double share, double smallLeast, double smallMinutes) {
    public static final Floor STANDARD = new Floor(0.05, 0.1, 0.02, 5);
    public static final Floor NONE = new Floor(0, 0, 0, 0);

    /** @param p probability of what the repair covers
     * @param most that of the most probable cause, held ones included */
    boolean allows(double p, double most, double minutes, Repair repair) {
        return p >= Math.max(least, share * most)
                || (p >= smallLeast && minutes <= smallMinutes && repair.risk() == Risk.NONE && repair.reversible());
    }
}

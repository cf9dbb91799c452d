package org.benchtrail.core.bench;

/**
 * On which side of a limit a worked-out number lies. Sums of decimals in binary numbers are off in the last places, so that 81.7 m
 * and 18.3 m are not 100 m to the bit: what differs by less than a part in 10^12 lies on the limit.
 */
public final class Side {
    private static final double BLUR = 1e-12;

    private Side() {}

    public static boolean above(double value, double limit) {
        return value > limit && !meets(value, limit);
    }

    public static boolean below(double value, double limit) {
        return value < limit && !meets(value, limit);
    }

    /** 1 above the limit, -1 below it, 0 on it. */
    static int of(double value, double limit) {
        return above(value, limit) ? 1 : below(value, limit) ? -1 : 0;
    }

    /** What is left of {@code whole} after {@code part}; nothing, not a trace, where they meet. */
    public static double rest(double whole, double part) {
        return meets(whole, part) ? 0 : whole - part;
    }

    private static boolean meets(double value, double limit) {
        return Double.isFinite(limit) && Math.abs(value - limit) <= BLUR * Math.max(Math.abs(value), Math.abs(limit));
    }
}

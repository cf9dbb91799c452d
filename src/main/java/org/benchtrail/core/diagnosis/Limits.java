package org.benchtrail.core.diagnosis;

import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/**
 * The limits a reading is judged by. All numbers are in {@code unit}; conversion happens before.
 *
 * @param low values below it are out; inclusive; null if there is no lower limit
 * @param high values above it are out; inclusive; null if there is no upper limit
 * @param guard expanded measurement uncertainty assumed when the reading states none; zero or more
 * @param physicalMin a smaller reading is a mistake, not a finding; null if nothing is known
 * @param physicalMax a greater reading is a mistake, not a finding; null if nothing is known
 * @param nominal what low and high depend on, which are then null; null if they hold everywhere
 */
public record Limits(
        String unit,
        @Nullable Double low,
        @Nullable Double high,
        double guard,
        @Nullable Double physicalMin,
        @Nullable Double physicalMax,
        @Nullable Nominal nominal) {

    /** Limits that hold everywhere. */
    public Limits(
            String unit,
            @Nullable Double low,
            @Nullable Double high,
            double guard,
            @Nullable Double physicalMin,
            @Nullable Double physicalMax) {
        this(unit, low, high, guard, physicalMin, physicalMax, null);
    }

    /** The limits in one case of what they depend on. */
    public Limits in(Nominal.Case known) {
        return new Limits(unit, known.low(), known.high(), guard, physicalMin, physicalMax, null);
    }

    /** Trust that is left in a reading that lies exactly on its limit. */
    static final double TRUST_AT_LIMIT = 0.5;

    /** @throws Invalid if {@code x} is not a number or outside the physical range */
    void requirePlausible(double x) {
        Invalid.Collector problems = new Invalid.Collector();
        problems.require(Double.isFinite(x), "value", "enter a finite number of " + unit);
        problems.require(physicalMin == null || x >= physicalMin, "value", tooFar("least", physicalMin));
        problems.require(physicalMax == null || x <= physicalMax, "value", tooFar("most", physicalMax));
        problems.throwIfAny();
    }

    /** @throws Invalid if the limit depends on what is not known */
    void requireKnown() {
        if (nominal != null) {
            throw new Invalid("value", nominal.by().missing());
        }
    }

    private String tooFar(String end, @Nullable Double bound) {
        return "read it again: the " + end + " that is physically possible here is " + bound + " " + unit;
    }

    boolean isBelow(double x) {
        return low != null && x < low;
    }

    boolean isAbove(double x) {
        return high != null && x > high;
    }

    /** How far x lies beyond the nearer limit; negative within. */
    public double excess(double x) {
        double beneath = low == null ? Double.NEGATIVE_INFINITY : low - x;
        double beyond = high == null ? Double.NEGATIVE_INFINITY : x - high;
        return Math.max(beneath, beyond);
    }

    /**
     * Reliability of a reading near a limit: within the uncertainty of it, trust falls in proportion to the distance, down
     * to one half on the limit itself. Never raises {@code reliability}.
     *
     * @param uncertainty expanded uncertainty of this reading, same unit; zero falls back to {@link #guard}
     */
    double trust(double x, double uncertainty, double reliability) {
        double g = uncertainty > 0 ? uncertainty : guard;
        double distance = distance(x);
        if (g <= 0 || distance > g) {
            return reliability;
        }
        return Math.min(reliability, Math.max(TRUST_AT_LIMIT, reliability * distance / g));
    }

    private double distance(double x) {
        double toLow = low == null ? Double.POSITIVE_INFINITY : Math.abs(x - low);
        double toHigh = high == null ? Double.POSITIVE_INFINITY : Math.abs(x - high);
        return Math.min(toLow, toHigh);
    }
}

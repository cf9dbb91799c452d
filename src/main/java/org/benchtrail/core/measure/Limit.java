package org.benchtrail.core.measure;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/**
 * A lower and/or upper bound for a reading, with its source. Immutable: a judgement keeps the limit it was made by, whatever
 * becomes of the library afterwards.
 *
 * <p>Bounds are inclusive (a value equal to the limit conforms) unless {@link #exclusive()} says otherwise.
 */
public final class Limit {
    private final @Nullable BigDecimal lower;
    private final @Nullable BigDecimal upper;
    private final Unit unit;
    private final String source;
    private final boolean inclusive;
    // In the base unit, so that a reading in any unit of the dimension is judged by the same two doubles.
    private final double lowerBase;
    private final double upperBase;

    private Limit(@Nullable BigDecimal lower, @Nullable BigDecimal upper, Unit unit, String source, boolean inclusive) {
        new Invalid.Collector()
                .require(lower != null || upper != null, "lower", "Give a lower limit, an upper limit, or both.")
                .require(
                        lower == null || upper == null || lower.compareTo(upper) < 0,
                        "upper",
                        "The upper limit has to be above the lower one.")
                .require(!source.isBlank(), "source", "Say where the limit comes from: standard, nameplate or policy.")
                .throwIfAny();
        this.lower = lower;
        this.upper = upper;
        this.unit = unit;
        this.source = source.strip();
        this.inclusive = inclusive;
        this.lowerBase = lower == null ? Double.NEGATIVE_INFINITY : unit.toBase(lower);
        this.upperBase = upper == null ? Double.POSITIVE_INFINITY : unit.toBase(upper);
    }

    /**
     * A limit with a lower bound, an upper bound, or both.
     *
     * @throws Invalid if both bounds are missing, the lower is not below the upper, or the source is blank
     */
    public static Limit of(@Nullable BigDecimal lower, @Nullable BigDecimal upper, Unit unit, String source) {
        return new Limit(lower, upper, unit, source, true);
    }

    public static Limit between(String lower, String upper, Unit unit, String source) {
        return of(new BigDecimal(lower), new BigDecimal(upper), unit, source);
    }

    public static Limit atLeast(String lower, Unit unit, String source) {
        return of(new BigDecimal(lower), null, unit, source);
    }

    public static Limit atMost(String upper, Unit unit, String source) {
        return of(null, new BigDecimal(upper), unit, source);
    }

    /** The same limit, where a value equal to a bound does not conform. */
    public Limit exclusive() {
        return new Limit(lower, upper, unit, source, false);
    }

    public Optional<BigDecimal> lower() {
        return Optional.ofNullable(lower);
    }

    public Optional<BigDecimal> upper() {
        return Optional.ofNullable(upper);
    }

    public Unit unit() {
        return unit;
    }

    public String source() {
        return source;
    }

    public boolean isInclusive() {
        return inclusive;
    }

    /** The same bounds in another unit. */
    public Limit in(Unit other) {
        return new Limit(
                lower == null ? null : unit.convert(lower, other),
                upper == null ? null : unit.convert(upper, other),
                other,
                source,
                inclusive);
    }

    /** Whether it allows a value that the other, of the same dimension, forbids. */
    public boolean isLooserThan(Limit other) {
        return lowerBase < other.lowerBase
                || upperBase > other.upperBase
                || (inclusive && !other.inclusive && (lowerBase == other.lowerBase || upperBase == other.upperBase));
    }

    /** Plain comparison, without regard to uncertainty. */
    public boolean contains(Quantity quantity) {
        requireSameKind(quantity);
        return containsBase(quantity.toBase());
    }

    /** Judges a reading; see {@link Judgement#of}. */
    public Judgement judge(Reading reading, GuardBand policy) {
        return Judgement.of(reading, this, policy);
    }

    boolean containsBase(double value) {
        return inclusive ? value >= lowerBase && value <= upperBase : value > lowerBase && value < upperBase;
    }

    double lowerBase() {
        return lowerBase;
    }

    double upperBase() {
        return upperBase;
    }

    void requireSameKind(Quantity quantity) {
        if (quantity.unit().dimension() != unit.dimension()) {
            throw new Invalid(
                    "reading",
                    "The reading is a " + quantity.unit().dimension().words() + ", the limit a "
                            + unit.dimension().words() + ": give the reading in a unit such as " + unit.symbol() + ".");
        }
    }

    /** The bounds in words: "11.40 to 12.60 V", "at most 50 mV", "more than 10 %". */
    public String words() {
        if (lower != null && upper != null) {
            return lower.toPlainString() + " to " + upper.toPlainString() + " " + unit
                    + (inclusive ? "" : ", the ends excluded");
        }
        String bound = Objects.requireNonNullElse(lower, upper).toPlainString() + " " + unit;
        if (lower != null) {
            return (inclusive ? "at least " : "more than ") + bound;
        }
        return (inclusive ? "at most " : "less than ") + bound;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Limit that
                && Objects.equals(lower, that.lower)
                && Objects.equals(upper, that.upper)
                && unit.equals(that.unit)
                && source.equals(that.source)
                && inclusive == that.inclusive;
    }

    @Override
    public int hashCode() {
        return Objects.hash(lower, upper, unit, source, inclusive);
    }

    @Override
    public String toString() {
        return words() + " (" + source + ")";
    }
}

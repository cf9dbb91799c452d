package org.benchtrail.core.advice;

import java.math.BigDecimal;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Limits;
import org.benchtrail.core.method.test.ExpectedValue;
import org.jspecify.annotations.Nullable;

/** What a reading shows if a theory is right, as bounds by which the reading then decides. */
public final class ExpectedReading {
    /**
     * A value that the theory makes less likely than this gives no bounds: a reading that misses it says too little to rule
     * the theory out by itself (common practice, no source).
     */
    public static final double LIKELY = 0.8;

    private ExpectedReading() {}

    /**
     * The bounds of one of a finding's values. On the limit itself a reading is taken to be as expected.
     *
     * @param chance of that value if the theory is right, 0 to 1
     * @return empty for what is not measured, for a value on both sides of the limits, and for one that is not likely enough
     */
    public static Optional<ExpectedValue> of(Finding finding, String value, double chance) {
        Limits limits = finding.limits();
        if (finding.kind() != Finding.Kind.READING || limits == null || chance < LIKELY) {
            return Optional.empty();
        }
        return switch (value) {
            case Finding.BELOW -> bounds(null, limits.low(), limits);
            case Finding.ABOVE -> bounds(limits.high(), null, limits);
            case Finding.INSIDE -> bounds(limits.low(), limits.high(), limits);
            default -> Optional.empty();
        };
    }

    private static Optional<ExpectedValue> bounds(@Nullable Double lower, @Nullable Double upper, Limits limits) {
        if (lower == null && upper == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(new ExpectedValue(decimal(lower), decimal(upper), limits.unit()));
        } catch (Invalid e) {
            return Optional.empty(); // a unit that does not convert: nothing could be held against it
        }
    }

    private static @Nullable String decimal(@Nullable Double bound) {
        return bound == null
                ? null
                : BigDecimal.valueOf(bound).stripTrailingZeros().toPlainString();
    }
}

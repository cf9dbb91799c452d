package org.benchtrail.core.method.test;

import java.math.BigDecimal;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.measure.Limit;
import org.benchtrail.core.measure.Quantity;
import org.benchtrail.core.measure.Units;
import org.benchtrail.core.method.identify.MeasuredText;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * What a reading shows if the theory is right.
 *
 * @param lower lowest value, inclusive; null if there is none
 * @param upper highest value, inclusive; null if there is none
 */
public record ExpectedValue(
        @Nullable String lower, @Nullable String upper, String unit) {
    public ExpectedValue {
        FieldChecks t = new FieldChecks();
        unit = t.required("unit", unit, 40, "Give the unit of the expected value.");
        lower = MeasuredText.decimal(t, "lower", lower, unit);
        upper = MeasuredText.decimal(t, "upper", upper, unit);
        t.require(lower != null || upper != null, "lower", "Give the lowest or the highest value that is expected.");
        t.done();
        limit(lower, upper, unit);
    }

    /**
     * Whether the reading is what was expected.
     *
     * @throws Invalid if its unit does not convert
     */
    public boolean holds(ReadingRecorded reading) {
        return limit(lower, upper, unit).contains(Quantity.of(reading.value(), Units.read("unit", reading.unit())));
    }

    /** Such as "at most 50 mV". */
    public String words() {
        return limit(lower, upper, unit).words();
    }

    private static Limit limit(@Nullable String lower, @Nullable String upper, String unit) {
        return Limit.of(bound(lower), bound(upper), Units.read("unit", unit), "expected");
    }

    private static @Nullable BigDecimal bound(@Nullable String text) {
        return text == null ? null : new BigDecimal(text);
    }
}

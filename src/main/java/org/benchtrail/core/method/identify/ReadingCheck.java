package org.benchtrail.core.method.identify;

import java.math.BigDecimal;
import java.util.OptionalDouble;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.measure.Accuracy;
import org.benchtrail.core.measure.GuardBand;
import org.benchtrail.core.measure.Judgement;
import org.benchtrail.core.measure.Limit;
import org.benchtrail.core.measure.Quantity;
import org.benchtrail.core.measure.Reading;
import org.benchtrail.core.measure.Unit;
import org.benchtrail.core.measure.Units;
import org.jspecify.annotations.Nullable;

/** A recorded reading with the accuracy of its instrument, held against its limits. */
record ReadingCheck(Reading reading, Unit unit) {
    private static final String USUAL_GUARD = "2";

    /** @throws org.benchtrail.core.Invalid if the unit is not known or the accuracy does not fit the reading */
    static ReadingCheck of(String value, String unit, String accuracy) {
        Unit known = Units.read("unit", unit);
        Quantity quantity = Quantity.of(value, known);
        return new ReadingCheck(new Reading(quantity, Accuracy.parse("accuracy", accuracy, quantity)), known);
    }

    /** A reading held against the limit of another one; not judged if units do not convert or its accuracy is missing. */
    static ReadingVerdict held(ReadingRecorded now, ReadingRecorded limited) {
        if (now.unit().equals(limited.unit()) && now.accuracy() == null) {
            return limited.accuracy() == null
                    ? now.heldPlainly(limited.lower(), limited.upper())
                    : ReadingVerdict.NOT_JUDGED;
        }
        try {
            Limit limit = Limit.of(
                    bound(limited.lower()), bound(limited.upper()), Units.read("unit", limited.unit()), "as recorded");
            if (now.accuracy() != null) {
                Reading reading = of(now.value(), now.unit(), now.accuracy()).reading;
                return ReadingRecorded.verdict(limit.judge(reading, band(now.guard())));
            }
            boolean within = limit.contains(Quantity.of(now.value(), Units.read("unit", now.unit())));
            return limited.accuracy() == null && within ? ReadingVerdict.WITHIN : ReadingVerdict.NOT_JUDGED;
        } catch (Invalid e) {
            return ReadingVerdict.NOT_JUDGED; // of another kind, or in a unit that nobody knows
        }
    }

    /** @throws org.benchtrail.core.Invalid if limits or guard band cannot be judged by */
    void require(@Nullable String lower, @Nullable String upper, @Nullable String guard) {
        band(guard);
        if (lower != null || upper != null) {
            judge(lower, upper, guard);
        }
    }

    /** At least one of the limits is there. */
    Judgement judge(@Nullable String lower, @Nullable String upper, @Nullable String guard) {
        return Limit.of(bound(lower), bound(upper), unit, "as recorded").judge(reading, band(guard));
    }

    private static GuardBand band(@Nullable String guard) {
        try {
            return new GuardBand(Double.parseDouble(guard == null ? USUAL_GUARD : guard));
        } catch (NumberFormatException | Invalid e) {
            throw new Invalid("guard", "Give the guard band as 0 to 10 standard uncertainties; 2 is usual.");
        }
    }

    private static @Nullable BigDecimal bound(@Nullable String text) {
        return text == null ? null : new BigDecimal(text);
    }

    OptionalDouble standardUncertainty() {
        return reading.standardUncertainty(unit);
    }
}

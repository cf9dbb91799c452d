package org.benchtrail.core.method.identify;

import java.util.Objects;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.measure.Quantity;
import org.benchtrail.core.measure.TypedNumber;
import org.benchtrail.core.measure.Unit;
import org.benchtrail.core.measure.Units;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * A number that may have been typed with its unit.
 *
 * @param value plain decimal; empty if it could not be read, which is noted then
 * @param unit as typed in its own field, else as taken from the value; null if neither names one
 */
public record MeasuredText(String value, @Nullable String unit) {
    private static final String PLAIN = "[+-]?\\d{1,15}(\\.\\d{1,15})?";

    /** Notes on {@code t} what could not be read. */
    static MeasuredText of(FieldChecks t, @Nullable String value, @Nullable String unit) {
        boolean named = unit != null && !unit.isBlank();
        if (value == null || named || !namesUnit(value)) {
            return new MeasuredText(Objects.requireNonNullElse(decimal(t, "value", value, unit), ""), unit);
        }
        try {
            Quantity quantity = Quantity.parse("value", value, null);
            return new MeasuredText(
                    quantity.value().toPlainString(), quantity.unit().symbol());
        } catch (Invalid e) {
            e.problems().forEach(p -> t.require(false, p.field(), p.sentence()));
            return new MeasuredText("", "?"); // so that the unit is not asked for as well
        }
    }

    /** A plain decimal of the unit; what was typed with another unit of the same kind is converted. */
    public static @Nullable String decimal(FieldChecks t, String field, @Nullable String typed, @Nullable String unit) {
        if (typed == null || typed.isBlank()) {
            return null;
        }
        Optional<String> doubt = TypedNumber.doubt(typed.strip());
        if (doubt.isPresent()) {
            t.require(false, field, doubt.get());
            return null;
        }
        String plain = plain(typed);
        if (plain == null && unit != null && namesUnit(typed)) {
            plain = converted(typed, unit);
        }
        t.require(plain != null, field, "Write a plain decimal number such as 11.38, or one with a unit that fits.");
        return plain;
    }

    private static boolean namesUnit(String typed) {
        return !isTooLong(typed) && typed.strip().matches("(?s)[^\\p{L}\\d]*+\\d.*[\\p{L}%\u00b0]");
    }

    /** A text longer than a line is no number, whatever stands in it: it is not looked through. */
    private static boolean isTooLong(String typed) {
        return typed.length() > FieldChecks.LINE;
    }

    private static @Nullable String plain(String typed) {
        if (isTooLong(typed)) {
            return null;
        }
        String text = typed.strip().replace('\u2212', '-');
        if (!text.contains(".")) {
            text = text.replaceFirst(",(?=\\d+$)", ".");
        }
        if (!text.matches(PLAIN)) {
            return null;
        }
        return text.startsWith("+") ? text.substring(1) : text;
    }

    private static @Nullable String converted(String typed, String unit) {
        try {
            Unit known = Units.read("unit", unit);
            String plain = Quantity.parse("value", typed, known)
                    .to(known)
                    .value()
                    .stripTrailingZeros()
                    .toPlainString();
            return plain.matches(PLAIN) ? plain : null;
        } catch (Invalid e) {
            return null;
        }
    }
}

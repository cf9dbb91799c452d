package org.benchtrail.core.measure;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/**
 * A value with its unit, exact, and the text it was typed as.
 *
 * <p>Two quantities are equal if value (with its trailing zeros), unit and text are; {@link #isSameAmountAs} compares amounts.
 *
 * @param value exact decimal; trailing zeros are kept
 * @param typed the text as typed, stripped; for a quantity that nobody typed, its plain form
 */
public record Quantity(BigDecimal value, Unit unit, String typed) {
    private static final Pattern PARTS = Pattern.compile("(\\p{L}+) ?([0-9].*)");

    /** A quantity that nobody typed. */
    public static Quantity of(BigDecimal value, Unit unit) {
        return new Quantity(value, unit, value.toPlainString() + " " + unit.symbol());
    }

    /**
     * A quantity from a program: {@code of("11.38", VOLT)}.
     *
     * @throws NumberFormatException if the text is no Java decimal
     */
    public static Quantity of(String value, Unit unit) {
        return of(new BigDecimal(value), unit);
    }

    /** Reads "11.38 V", "11,38V", "450 mV", "212 °F"; see {@link TypedNumber} and {@link Units} for the rules. */
    public static Quantity parse(String text) {
        return parse("quantity", text, null);
    }

    /**
     * Reads what was typed into a field.
     *
     * @param field under which a refusal is reported
     * @param usual the unit the field asks for: taken if none was typed, and a typed one has to measure the same kind of
     *     quantity; null if the text has to name its unit
     * @throws Invalid if the text is empty, no finite number, ambiguous, or its unit is missing, unknown or of another kind
     */
    public static Quantity parse(String field, String text, @Nullable Unit usual) {
        TypedNumber number = TypedNumber.read(field, text);
        Matcher parts = PARTS.matcher(number.rest());
        if (parts.matches() && (usual == null || usual.dimension() == Dimension.TIME)) {
            return inParts(field, text.strip(), number.value(), parts, usual);
        }
        Unit unit = number.rest().isEmpty() ? usualOf(field, text, usual) : Units.read(field, number.rest(), usual);
        if (usual != null && usual.dimension() != unit.dimension()) {
            throw new Invalid(
                    field,
                    "'" + text.strip() + "' is a " + unit.dimension().words() + "; here a "
                            + usual.dimension().words() + " is asked for, such as one in " + usual.symbol() + ".");
        }
        return new Quantity(number.value(), unit, text.strip());
    }

    /** A time in two units or more, such as {@code 1 h 10} or {@code 2 d 3 h}: each part in the next smaller unit. */
    private static Quantity inParts(String field, String text, BigDecimal first, Matcher parts, @Nullable Unit usual) {
        Unit unit = Units.read(field, parts.group(1), usual);
        Unit next = Units.smaller(unit)
                .orElseThrow(() -> new Invalid(
                        field, "'" + text + "' is no single amount: type one number with its unit, such as '70 min'."));
        Quantity more = parse(field, parts.group(2).replaceFirst("(?<=[0-9]) ?m$", " min"), next);
        boolean fits = first.signum() >= 0 && more.value.signum() >= 0 && more.toBase() < unit.scale();
        if (!fits) {
            throw new Invalid(
                    field,
                    "In '" + text + "' the second part is no part of one " + unit.symbol()
                            + ": type one number with its unit, such as '70 min'.");
        }
        return new Quantity(unit.convert(first, more.unit).add(more.value), more.unit, text);
    }

    private static Unit usualOf(String field, String text, @Nullable Unit usual) {
        if (usual == null) {
            throw new Invalid(field, "Say the unit of '" + text.strip() + "', such as V, mV, °C or s.");
        }
        return usual;
    }

    /** The same amount in another unit; exact where the result has a finite decimal. */
    public Quantity to(Unit other) {
        return of(unit.convert(value, other), other);
    }

    /** The value in another unit as the nearest double, for calculating. */
    public double in(Unit other) {
        return unit.convert(value, other).doubleValue();
    }

    /** The same difference in another unit, as the nearest double: for uncertainties, rises and slopes. */
    public double asDifferenceIn(Unit other) {
        return unit.convertDifference(value, other).doubleValue();
    }

    public boolean isSameAmountAs(Quantity other) {
        return unit.dimension() == other.unit.dimension()
                && unit.convert(value, other.unit).compareTo(other.value) == 0;
    }

    /** One step of the last digit given: 0.01 V for 11.38 V. What a display's resolution looks like from its reading. */
    public Quantity lastDigit() {
        return of(BigDecimal.ONE.movePointLeft(value.scale()), unit);
    }

    double toBase() {
        return unit.toBase(value);
    }

    double differenceToBase() {
        return unit.differenceToBase(value);
    }

    /** Value and unit, such as {@code 11.38 V}. */
    @Override
    public String toString() {
        return value.toPlainString() + " " + unit.symbol();
    }
}

package org.benchtrail.core.measure;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.core.Invalid;

/**
 * A number as people type it, and what follows it.
 *
 * <p>Rules for the signs between digits:
 *
 * <ol>
 *   <li>Spaces (any width) and apostrophes group thousands; every group after the first has three digits.
 *   <li>Point and comma together: the last one is the decimal sign, the other groups thousands. {@code 1.234,5} and {@code
 *       1,234.5} are both 1234.5.
 *   <li>The same sign more than once groups thousands: {@code 1.234.567}.
 *   <li>A single point is the decimal sign, always: meters print {@code 3.312}.
 *   <li>A single comma is the decimal sign, unless one to three digits (not just 0) stand before it and exactly three behind:
 *       {@code 1,234} may be 1.234 or 1234 and is refused. {@code 1 234,567} and {@code 0,125} leave no doubt and are taken.
 * </ol>
 *
 * @param value exact; trailing zeros are kept, because 11.40 says more than 11.4
 * @param rest what follows the number, stripped; empty if nothing does
 */
public record TypedNumber(BigDecimal value, String rest) {
    private static final int LONGEST = 80;
    private static final int MOST_DIGITS = 40;
    private static final int LARGEST_EXPONENT = 30;

    private static final Pattern FORM =
            Pattern.compile("([+-]?) ?([0-9.,][0-9.,' ]*?)(?:[eE]([+-]?[0-9]{1,9}))? ?(?![0-9.,'])([^0-9.,' ].*)?");
    private static final Pattern GROUPS = Pattern.compile("[0-9]{1,3}(?:[ '][0-9]{3})+(?:[.,][0-9]+)?");
    private static final Pattern NOT_FINITE = Pattern.compile("(?i)[+-]?(nan|inf(inity)?|∞).*");

    /** @throws Invalid if the text does not begin with one number that can be read in one way only */
    public static TypedNumber read(String field, String text) {
        String tidy = tidy(field, text);
        Matcher form = FORM.matcher(tidy);
        if (!form.matches()) {
            throw new Invalid(field, notANumber(tidy));
        }
        BigDecimal digits = decimal(field, form.group(2).strip());
        BigDecimal value = digits.scaleByPowerOfTen(exponent(field, form.group(3)));
        String rest = form.group(4) == null ? "" : form.group(4).strip();
        return new TypedNumber(form.group(1).equals("-") ? value.negate() : value, rest);
    }

    /**
     * The number that a field asks for in a unit: what was typed in another one of the same kind is converted.
     *
     * @param unit symbol; empty for a pure number. One that the catalogue does not know has to be typed as it is asked for
     * @throws Invalid if it is no number, or in no unit or another kind of unit than is asked for
     */
    public static BigDecimal in(String unit, String field, String text) {
        Optional<Unit> known = Units.find(unit);
        if (known.isPresent()) {
            return Quantity.parse(field, text, known.get()).to(known.get()).value();
        }
        TypedNumber number = read(field, text);
        if (!number.rest.isEmpty() && !number.rest.equals(unit)) {
            throw new Invalid(
                    field,
                    "give the number" + (unit.isEmpty() ? " without a unit" : " in " + unit) + ", not in '"
                            + number.rest + "'");
        }
        return number.value;
    }

    private static String tidy(String field, String text) {
        if (text.length() > LONGEST) {
            throw new Invalid(
                    field, "Type one number with its unit, at most " + LONGEST + " characters such as '11.38 V'.");
        }
        StringBuilder out = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            out.append(alike(text.charAt(i)));
        }
        String tidy = out.toString().strip();
        if (tidy.isEmpty()) {
            throw new Invalid(field, "Nothing was typed: give a number with its unit, such as '11.38 V'.");
        }
        return tidy;
    }

    private static char alike(char c) {
        return switch (c) {
            case '\u2212', '\u2010', '\u2011', '\u2012', '\u2013', '\uFE63', '\uFF0D' -> '-';
            case '\u2019', '\u02BC' -> '\'';
            default -> Character.isWhitespace(c) || Character.isSpaceChar(c) ? ' ' : c;
        };
    }

    private static String notANumber(String tidy) {
        if (NOT_FINITE.matcher(tidy).matches()) {
            return "'" + tidy
                    + "' is not a value that can be measured: give a number with its unit, such as '11.38 V'.";
        }
        return "'" + tidy + "' does not begin with a number that can be read: type it like '11.38 V' or '11,38 V'.";
    }

    private static int exponent(String field, String typed) {
        if (typed == null) {
            return 0;
        }
        int exponent = Integer.parseInt(typed);
        if (Math.abs(exponent) > LARGEST_EXPONENT) {
            throw new Invalid(
                    field,
                    "The power of ten " + exponent + " is beyond anything measured here (at most " + LARGEST_EXPONENT
                            + "): check it.");
        }
        return exponent;
    }

    private static BigDecimal decimal(String field, String typed) {
        String plain = decimalPoint(field, typed, ungrouped(field, typed));
        if (plain.length() > MOST_DIGITS) {
            throw new Invalid(field, "'" + typed + "' has more digits than any instrument shows: shorten it.");
        }
        return new BigDecimal(plain.startsWith(".") ? "0" + plain : plain);
    }

    /** The digits without spaces and apostrophes; these have to stand at every third digit. */
    private static String ungrouped(String field, String typed) {
        if (typed.indexOf(' ') < 0 && typed.indexOf('\'') < 0) {
            return typed;
        }
        if (!GROUPS.matcher(typed).matches()) {
            throw new Invalid(
                    field, "'" + typed + "' has a space or apostrophe that does not group thousands: type one number.");
        }
        return typed.replaceAll("[ ']", "");
    }

    private static String decimalPoint(String field, String typed, String digits) {
        long points = digits.chars().filter(c -> c == '.').count();
        long commas = digits.chars().filter(c -> c == ',').count();
        char last = digits.lastIndexOf(',') > digits.lastIndexOf('.') ? ',' : '.';
        if (points > 0 && commas > 0) {
            return mixed(field, typed, digits, last);
        }
        if (points + commas > 1) {
            return thousands(field, typed, digits, last);
        }
        Optional<String> doubt = doubt(typed);
        if (doubt.isPresent()) {
            throw new Invalid(field, doubt.get());
        }
        return single(field, typed, digits.replace(',', '.'));
    }

    /** The question to ask where a number may be two: {@code 1,234}; empty if it leaves no doubt. */
    public static Optional<String> doubt(String typed) {
        return typed.matches("[1-9][0-9]{0,2},[0-9]{3}")
                ? Optional.of("'" + typed + "' can be read as " + typed.replace(',', '.') + " or as "
                        + typed.replace(",", "") + ": type it one of these two ways.")
                : Optional.empty();
    }

    private static String single(String field, String typed, String digits) {
        if (digits.endsWith(".")) {
            throw new Invalid(
                    field, "'" + typed + "' ends in a decimal sign: type the digits after it, or leave it out.");
        }
        return digits;
    }

    private static String mixed(String field, String typed, String digits, char decimal) {
        int at = digits.indexOf(decimal);
        if (at != digits.lastIndexOf(decimal) || at == digits.length() - 1) {
            throw new Invalid(field, jumbled(typed));
        }
        String whole = thousands(field, typed, digits.substring(0, at), decimal == ',' ? '.' : ',');
        return whole + '.' + digits.substring(at + 1);
    }

    private static String thousands(String field, String typed, String digits, char sign) {
        String quoted = Pattern.quote(String.valueOf(sign));
        if (!digits.matches("[0-9]{1,3}(?:" + quoted + "[0-9]{3})+")) {
            throw new Invalid(field, jumbled(typed));
        }
        return digits.replace(String.valueOf(sign), "");
    }

    private static String jumbled(String typed) {
        return "The points and commas in '" + typed
                + "' make no number: type it with one decimal sign, such as 1234.5.";
    }
}

package org.benchtrail.core.bench;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** How a number is written in a working: point as decimal mark, no grouping, so that it can be typed into a calculator as it stands. */
public final class Numeral {
    private static final int FULL = 9;

    private Numeral() {}

    /** The number with at most nine significant digits: what is put into a formula. */
    public static String of(double value) {
        return of(value, FULL);
    }

    /**
     * The number rounded half up to {@code digits} significant digits, trailing zeros dropped. Plain between 0.0001 and
     * 10^15, else with an exponent such as {@code 1e-14}.
     *
     * @throws IllegalArgumentException if the value is not finite or digits is not in 1 to 15
     */
    public static String of(double value, int digits) {
        if (!Double.isFinite(value) || digits < 1 || digits > 15) {
            throw new IllegalArgumentException(
                    "a finite value and 1 to 15 digits are needed: " + value + ", " + digits);
        }
        if (value == 0) {
            return "0";
        }
        BigDecimal rounded = BigDecimal.valueOf(value)
                .round(new MathContext(digits, RoundingMode.HALF_UP))
                .stripTrailingZeros();
        double size = Math.abs(value);
        return size >= 1e-4 && size < 1e15 ? rounded.toPlainString() : exponent(rounded);
    }

    private static String exponent(BigDecimal value) {
        int exponent = value.precision() - value.scale() - 1;
        return value.scaleByPowerOfTen(-exponent).toPlainString() + "e" + exponent;
    }

    /** A negative number in brackets, so that a sign never follows an operator. */
    public static String term(double value) {
        return value < 0 ? "(" + of(value) + ")" : of(value);
    }

    /** A quotient of two numbers, as it is keyed in. */
    public static String over(double left, double right) {
        return of(left) + " / " + of(right);
    }
}

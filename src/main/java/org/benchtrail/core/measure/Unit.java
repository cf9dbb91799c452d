package org.benchtrail.core.measure;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * A unit of the catalogue {@link Units}: how it is written and how it relates to the base unit of its dimension.
 *
 * <p>A value x in this unit is {@code (x + offset) * numerator / denominator} in the base unit (V, A, ohm, W, VA, Wh, Ah, Hz,
 * r/min, K, K/W, s, B, bit/s, m, Pa, %, dB, dBm, count). The offset is zero except for the Celsius and Fahrenheit scales.
 * The factor is a fraction because 5/9 has no finite decimal.
 *
 * <p>Own table instead of a units library: what is typed at a bench (decimal comma, {@code Mb/s}, {@code VDC}, counts, dBm)
 * has to be read by rules of ours anyway, and forty exact fractions are less than the adapting.
 *
 * @param symbol as it is written, such as {@code mV}; unique
 */
public record Unit(
        String symbol, Dimension dimension, BigDecimal offset, BigDecimal numerator, BigDecimal denominator) {

    public Unit {
        if (numerator.signum() <= 0 || denominator.signum() <= 0) {
            throw new IllegalArgumentException("factor of " + symbol + " must be > 0");
        }
    }

    /**
     * The same point on the scale, in another unit: 100 °C is 212 °F. Exact where the result has a finite decimal, otherwise
     * correct to 34 significant digits.
     *
     * @throws IllegalArgumentException if the dimensions differ
     */
    public BigDecimal convert(BigDecimal value, Unit to) {
        if (isSameScaleAs(to)) {
            return value;
        }
        return plain(scaled(value.add(offset), to).subtract(to.offset));
    }

    /**
     * The same difference, in another unit: a rise of 10 °C is a rise of 18 °F. Uncertainties, guard bands and slopes are
     * differences; the offset of a temperature scale does not belong in them.
     *
     * @throws IllegalArgumentException if the dimensions differ
     */
    public BigDecimal convertDifference(BigDecimal difference, Unit to) {
        return isSameScaleAs(to) ? difference : plain(scaled(difference, to));
    }

    /** Value in the base unit of the dimension, nearest double. Equal amounts give equal doubles, whatever unit they came in. */
    double toBase(BigDecimal value) {
        if (isBase()) {
            return value.doubleValue();
        }
        return quotient(value.add(offset).multiply(numerator), denominator).doubleValue();
    }

    double differenceToBase(BigDecimal difference) {
        if (isBase()) {
            return difference.doubleValue();
        }
        return quotient(difference.multiply(numerator), denominator).doubleValue();
    }

    /** How many base units one step of this unit is. */
    double scale() {
        return numerator.doubleValue() / denominator.doubleValue();
    }

    private boolean isBase() {
        return offset.signum() == 0 && isOne(numerator) && isOne(denominator);
    }

    private static boolean isOne(BigDecimal factor) {
        return factor.compareTo(BigDecimal.ONE) == 0;
    }

    private boolean isSameScaleAs(Unit to) {
        if (dimension != to.dimension) {
            throw new IllegalArgumentException(symbol + " is a " + dimension.words() + ", " + to.symbol + " is a "
                    + to.dimension.words() + ": neither can be turned into the other");
        }
        return symbol.equals(to.symbol);
    }

    private BigDecimal scaled(BigDecimal value, Unit to) {
        return quotient(value.multiply(numerator).multiply(to.denominator), denominator.multiply(to.numerator));
    }

    private static BigDecimal quotient(BigDecimal a, BigDecimal b) {
        if (isOne(b)) {
            return a;
        }
        // All denominators are 1, powers of ten, two and three: only a factor of three keeps the division from ending.
        BigDecimal rounded = a.divide(b, MathContext.DECIMAL128);
        return rounded.multiply(b).compareTo(a) == 0 ? rounded : exactOr(rounded, a, b);
    }

    private static BigDecimal exactOr(BigDecimal rounded, BigDecimal a, BigDecimal b) {
        try {
            return a.divide(b);
        } catch (ArithmeticException endless) {
            return rounded;
        }
    }

    private static BigDecimal plain(BigDecimal value) {
        BigDecimal stripped = value.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    @Override
    public String toString() {
        return symbol;
    }
}

package org.benchtrail.core.bench;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.Optional;
import org.benchtrail.core.measure.Share;

/** How a number is written in a working: point as decimal mark, no grouping, so that it can be typed into a calculator as it stands. */
public final class Numeral {
    private static final int FULL = 9;
    private static final int MOST_DIGITS = 15;
    private static final double LARGEST_WHOLE = 1e15;
    private static final double LEAST_PERCENT = 0.001;
    /** Seconds; below it a time is next to none. */
    private static final double LEAST_TIME = 0.0005;
    /** Seconds of a year of 365.25 days. */
    private static final double YEAR = 31_557_600;

    private static final double MOST_YEARS = 1000;
    /** Powers of ten that are exact in binary. */
    private static final double[] POWERS = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14
    };

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
        if (!Double.isFinite(value) || digits < 1 || digits > MOST_DIGITS) {
            throw new IllegalArgumentException(
                    "a finite value and 1 to 15 digits are needed: " + value + ", " + digits);
        }
        if (value == Math.rint(value) && Math.abs(value) < Math.min(LARGEST_WHOLE, Math.pow(10, digits))) {
            return Long.toString((long) value);
        }
        double size = Math.abs(value);
        if (size >= 1e-4 && size < 1e9 && digits <= FULL) {
            String plain = quick(size, digits);
            if (!plain.isEmpty()) {
                return value < 0 ? "-" + plain : plain;
            }
        }
        BigDecimal rounded = rounded(value, digits);
        return size >= 1e-4 && size < LARGEST_WHOLE ? rounded.toPlainString() : exponent(rounded);
    }

    /**
     * The usual case in long arithmetic, several times as quick; empty if the value lies so near to the middle between two
     * numbers that only its decimals tell which way it is rounded.
     */
    private static String quick(double size, int digits) {
        int place = digits - 1 - (int) Math.floor(Math.log10(size));
        double scaled = place >= 0 ? size * POWERS[place] : size / POWERS[-place];
        long whole = (long) scaled;
        double rest = scaled - whole;
        if (Math.abs(rest - 0.5) < 1e-5) {
            return "";
        }
        whole += rest > 0.5 ? 1 : 0;
        while (place > 0 && whole % 10 == 0) {
            whole /= 10;
            place--;
        }
        if (place <= 0) {
            return Long.toString(whole * (long) POWERS[-place]);
        }
        String text = Long.toString(whole);
        if (text.length() <= place) {
            text = "0".repeat(place + 1 - text.length()) + text;
        }
        return text.substring(0, text.length() - place) + "." + text.substring(text.length() - place);
    }

    private static BigDecimal rounded(double value, int digits) {
        return BigDecimal.valueOf(value)
                .round(new MathContext(digits, RoundingMode.HALF_UP))
                .stripTrailingZeros();
    }

    private static String exponent(BigDecimal value) {
        int exponent = value.precision() - value.scale() - 1;
        return value.scaleByPowerOfTen(-exponent).toPlainString() + "e" + exponent;
    }

    /** A negative number in brackets, so that a sign never follows an operator. */
    public static String term(double value) {
        return value < 0 ? "(" + of(value) + ")" : of(value);
    }

    /**
     * The fewest digits, at least {@code digits}, with which the value stands on the same side of every limit as it does
     * unrounded: what is above a limit is never written as if it lay on it.
     */
    public static int digitsBeside(double value, int digits, double... limits) {
        if (isFar(value, digits, limits)) {
            return digits;
        }
        int most = digits;
        while (most < MOST_DIGITS && !keepsSides(value, rounded(value, most).doubleValue(), limits)) {
            most++;
        }
        return most;
    }

    /** Whether every limit lies further off than rounding to so many digits can carry the value. */
    private static boolean isFar(double value, int digits, double... limits) {
        double most = Math.abs(value) * Math.pow(10, 1.0 - digits);
        for (double limit : limits) {
            if (!(Math.abs(value - limit) > most)) {
                return false;
            }
        }
        return true;
    }

    private static boolean keepsSides(double value, double written, double... limits) {
        for (double limit : limits) {
            if (Side.of(value, limit) != Side.of(written, limit)) {
                return false;
            }
        }
        return true;
    }

    /** The number with the digits of {@link #digitsBeside}. */
    public static String beside(double value, int digits, double... limits) {
        return of(value, digitsBeside(value, digits, limits));
    }

    /** How many digits of the value lead down to the second one of its uncertainty, which is above 0: from 1 to {@code most}. */
    public static int digitsWithin(double value, double uncertainty, int most) {
        double places = Math.floor(Math.log10(Math.abs(value))) - Math.floor(Math.log10(uncertainty)) + 2;
        return (int) Math.min(most, Math.max(1, places));
    }

    /** The number down to the second digit of its uncertainty: more would say more than is known, unless a limit is so near. */
    public static String within(double value, double uncertainty, double... limits) {
        if (!(uncertainty > 0)) {
            return beside(value, FULL, limits);
        }
        int place = (int) Math.floor(Math.log10(uncertainty)) - 1;
        BigDecimal kept = BigDecimal.valueOf(value).setScale(-place, RoundingMode.HALF_UP);
        if (!keepsSides(value, kept.doubleValue(), limits)) {
            return beside(value, Math.min(MOST_DIGITS, Math.max(2, kept.precision())), limits);
        }
        return kept.signum() == 0
                ? "0"
                : kept.setScale(Math.max(0, -place), RoundingMode.HALF_UP).toPlainString();
    }

    /** A share in percent: what is next to nothing, or next to all, is said so and never rounded to it, nor onto a limit. */
    public static String percent(double percent, double... limits) {
        return share(percent, 3, limits) + " %";
    }

    /** The same with so many digits, as it stands before its sign. */
    public static String share(double percent, int digits, double... limits) {
        if (percent < 0 && percent > -LEAST_PERCENT) {
            return "more than -" + of(LEAST_PERCENT);
        }
        Optional<String> edge = Share.edge(percent, LEAST_PERCENT, limits);
        if (edge.isPresent()) {
            return edge.get();
        }
        double nearest = Arrays.stream(limits).filter(limit -> limit > 0).min().orElse(0);
        if (percent > 0 && percent < LEAST_PERCENT && percent < nearest) {
            return "less than " + of(Math.min(nearest, LEAST_PERCENT));
        }
        double[] edges = Arrays.copyOf(limits, limits.length + 2);
        edges[limits.length] = 0;
        edges[limits.length + 1] = 100;
        return beside(percent, digits, edges);
    }

    /** A time in the unit in which people say it. */
    public static String duration(double seconds) {
        if (seconds > 0 && seconds < LEAST_TIME) {
            return "less than 1 ms";
        }
        if (seconds > 0 && seconds < 0.1) {
            return of(1000 * seconds, 3) + " ms";
        }
        if (seconds < 120) {
            return of(seconds, 3) + " s";
        }
        if (seconds < 7200) {
            return of(seconds / 60, 3) + " min";
        }
        if (seconds < 172_800) {
            return of(seconds / 3600, 3) + " h";
        }
        return seconds < 2 * YEAR ? of(seconds / 86_400, 3) + " d" : of(seconds / YEAR, 3) + " years";
    }

    /** The same with its "about", or as a bound where no figure would mean anything. */
    public static String about(double seconds) {
        if (seconds > MOST_YEARS * YEAR) {
            return "more than " + of(MOST_YEARS) + " years";
        }
        return seconds > 0 && seconds < LEAST_TIME ? duration(seconds) : "about " + duration(seconds);
    }

    /** A quotient of two numbers, as it is keyed in. */
    public static String over(double left, double right) {
        return of(left) + " / " + of(right);
    }
}

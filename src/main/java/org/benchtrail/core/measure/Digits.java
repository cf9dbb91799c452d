package org.benchtrail.core.measure;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers for sentences. Rounds for reading only; nothing is decided on a rounded value. */
final class Digits {
    private Digits() {}

    /** Rounded half up to so many significant digits, written without a power of ten; at most two for uncertainties (GUM 7.2.6). */
    static String significant(double value, int digits) {
        if (!Double.isFinite(value)) {
            return value > 0 ? "infinity" : value < 0 ? "minus infinity" : "unknown";
        }
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_UP));
        if (rounded.signum() == 0) {
            return "0";
        }
        int places = digits - (rounded.precision() - rounded.scale());
        return rounded.setScale(Math.max(0, places), RoundingMode.HALF_UP).toPlainString();
    }
}

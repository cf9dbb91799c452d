package org.benchtrail.catalogue;

import java.util.Locale;

/** Probabilities as figures of a table: percent with one decimal. */
public final class Percent {
    private Percent() {}

    public static String text(double p) {
        return String.format(Locale.ROOT, "%.1f %%", 100 * p);
    }

    /** A difference, signed, in percentage points. */
    public static String points(double difference) {
        String text = String.format(Locale.ROOT, "%+.1f", 100 * difference).replace('-', '\u2212');
        return text.substring(1).equals("0.0") ? "under 0.05" : text;
    }

    /** A decayed count of cases. */
    public static String cases(double count) {
        return count == 0 ? "0" : String.format(Locale.ROOT, "%.1f", count);
    }
}

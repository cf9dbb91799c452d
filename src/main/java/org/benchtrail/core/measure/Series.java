package org.benchtrail.core.measure;

import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/**
 * Values over time.
 *
 * <p>Shape: 1 to 100,000 times, strictly increasing, and as many values; all finite. Units: times in seconds; values in one unit
 * that the series does not know. Where the times were given as dates, they count from the first one.
 */
public final class Series {
    /** Most rows a series may have. */
    public static final int MOST_ROWS = 100_000;

    private final double[] times;
    private final double[] values;
    private final @Nullable Instant start;

    Series(double[] times, double[] values, @Nullable Instant start) {
        this.times = times;
        this.values = values;
        this.start = start;
    }

    /**
     * A series from a program or a posted body.
     *
     * @throws Invalid naming the first row that is not finite or whose time does not increase
     */
    public static Series of(double[] times, double[] values) {
        if (times.length != values.length) {
            throw new Invalid(
                    "values",
                    "Give as many values as times: got " + values.length + " values for " + times.length + " times.");
        }
        if (times.length == 0 || times.length > MOST_ROWS) {
            throw new Invalid("times", "Give 1 to " + MOST_ROWS + " rows; got " + times.length + ".");
        }
        for (int i = 0; i < times.length; i++) {
            requireRow(times, values, i);
        }
        return new Series(times.clone(), values.clone(), null);
    }

    private static void requireRow(double[] times, double[] values, int i) {
        if (!Double.isFinite(times[i]) || !Double.isFinite(values[i])) {
            throw new Invalid("rows[" + i + "]", "Row " + (i + 1) + ": time and value have to be finite numbers.");
        }
        if (i > 0 && times[i] <= times[i - 1]) {
            throw new Invalid("rows[" + i + "]", SeriesText.notLater(i + 1, times[i], times[i - 1]));
        }
    }

    /**
     * Reads pasted or CSV text: one row per line, a time and a value.
     *
     * <p>Fields are separated by tab, semicolon, comma, or spaces, the same in every row; a first line that is no row is taken
     * as a heading; blank lines are skipped; fields may stand in double quotes. Where the comma separates, the decimal sign is
     * the point; elsewhere both are decimal signs, and neither ever groups thousands. Times are seconds, or ISO 8601 dates with
     * time (with or without an offset; without, clock changes are not known), one kind throughout.
     *
     * @throws Invalid naming each row that cannot be taken, with the reason (the first twenty, then how many more)
     */
    public static Series parse(String text) {
        return new SeriesText().read(text);
    }

    public int size() {
        return times.length;
    }

    /** Time of row i in seconds. */
    public double time(int i) {
        return times[i];
    }

    public double value(int i) {
        return values[i];
    }

    public double[] times() {
        return times.clone();
    }

    public double[] values() {
        return values.clone();
    }

    /** Time from the first row to the last, in seconds. */
    public double span() {
        return times[times.length - 1] - times[0];
    }

    /** The instant of the first row; empty if the times were seconds or had no offset. */
    public Optional<Instant> start() {
        return Optional.ofNullable(start);
    }

    boolean isConstant() {
        return Arrays.stream(values).allMatch(v -> v == values[0]);
    }
}

package org.benchtrail.core.practice.job;

import org.jspecify.annotations.Nullable;

/**
 * What an act showed.
 *
 * @param value yes, no or unknown; of a measurement the number on the display
 * @param gauge null unless something was measured
 */
public record Seen(String value, @Nullable Gauge gauge) {
    public static final String UNKNOWN = "unknown";

    /** What a number belongs to. */
    public record Gauge(String quantity, String point, String instrument, String unit) {}

    public static Seen of(boolean yes) {
        return new Seen(yes ? "yes" : "no", null);
    }
}

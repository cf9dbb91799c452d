package org.benchtrail.audit;

import java.util.Locale;
import org.benchtrail.core.statistics.Interval;

/** Shares in words. */
final class Shares {
    private Shares() {}

    /** @param interval of the share, as a part of 1 */
    static String of(long hits, long all, Interval interval) {
        return String.format(
                Locale.ROOT,
                "%.1f %% (95 %% interval %.1f to %.1f)",
                100.0 * hits / all,
                100 * interval.lower(),
                100 * interval.upper());
    }
}

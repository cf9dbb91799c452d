package org.benchtrail.figures;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Step;
import org.jspecify.annotations.Nullable;

/**
 * What figures are made of.
 *
 * @param from first day, in the zone of the site's calendar
 * @param until last day
 * @param category null for all
 * @param place empty for all
 * @param step whose curve is drawn; null for the whole way from opening to closing
 */
record FigurePeriod(
        LocalDate from,
        LocalDate until,
        ZoneId zone,
        @Nullable Category category,
        String place,
        @Nullable Step step) {
    Instant begins() {
        return from.atStartOfDay(zone).toInstant();
    }

    /** The end of the last day. */
    Instant ends() {
        return until.plusDays(1).atStartOfDay(zone).toInstant();
    }

    boolean isFiltered() {
        return category != null || !place.isEmpty();
    }
}

package org.benchtrail.ticket;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.TemporalAdjusters;
import org.jspecify.annotations.Nullable;

/**
 * A stretch of time in which tickets are due.
 *
 * @param from its first moment; null for the beginning of time
 * @param before the first moment after it; null for no end
 */
public record DueWithin(@Nullable Instant from, @Nullable Instant before) {
    public static DueWithin past(Instant now) {
        return new DueWithin(null, now);
    }

    public static DueWithin future(Instant now) {
        return new DueWithin(now, null);
    }

    /** The day of that moment, from midnight to midnight. */
    public static DueWithin day(Instant now, ZoneId zone) {
        LocalDate day = now.atZone(zone).toLocalDate();
        return days(day, day.plusDays(1), zone);
    }

    /** The week of that moment, which begins on Monday. */
    public static DueWithin week(Instant now, ZoneId zone) {
        LocalDate monday = now.atZone(zone).toLocalDate().with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
        return days(monday, monday.plusWeeks(1), zone);
    }

    private static DueWithin days(LocalDate first, LocalDate after, ZoneId zone) {
        return new DueWithin(
                first.atStartOfDay(zone).toInstant(), after.atStartOfDay(zone).toInstant());
    }
}

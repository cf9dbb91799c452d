package org.benchtrail.core.site;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;

/**
 * The slow way: somebody stands before the clock on the wall, looks at it every minute, and keeps in mind the latest time that
 * it ever showed. Work is on if that time lies within the hours of its day. Knows nothing of changes of the clock beforehand.
 */
final class MinuteCounter {
    /** Long enough before for every clock that was put back to have caught up. */
    private static final long WARM_UP = 3 * 1440L;

    private MinuteCounter() {}

    /** For each minute from {@code start} on, whether it is worked. Both ends of everything lie on whole minutes. */
    static boolean[] worked(List<WorkingTime.Part> parts, Instant start, int minutes) {
        boolean[] worked = new boolean[minutes];
        LocalDateTime[] latest = new LocalDateTime[parts.size()];
        for (long i = -WARM_UP; i < minutes; i++) {
            Instant now = start.plus(i, ChronoUnit.MINUTES);
            int inForce = 0;
            for (int p = 0; p < parts.size(); p++) {
                LocalDateTime shown =
                        LocalDateTime.ofInstant(now, parts.get(p).calendar().zone());
                latest[p] = latest[p] == null || shown.isAfter(latest[p]) ? shown : latest[p];
                inForce = parts.get(p).from().isAfter(now) ? inForce : p;
            }
            if (i >= 0) {
                worked[(int) i] = isOn(parts.get(inForce).calendar(), latest[inForce]);
            }
        }
        return worked;
    }

    private static boolean isOn(WorkCalendar calendar, LocalDateTime shown) {
        int minute = shown.getHour() * 60 + shown.getMinute();
        boolean inHours = calendar.week().getOrDefault(shown.getDayOfWeek(), List.of()).stream()
                .anyMatch(s -> s.from() <= minute && minute < s.to());
        boolean off = calendar.holidays().stream()
                .anyMatch(h -> h.day().equals(shown.toLocalDate())
                        && h.off().from() <= minute
                        && minute < h.off().to());
        return inHours && !off;
    }
}

package org.benchtrail.core.site;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.benchtrail.core.Invalid;

/** Sums of working time, by a calendar that may have been changed: each one counts for the time in which it was in force. */
public final class WorkingTime {
    private static final int LONGEST_SEARCH = 36_525;

    /** No later moment has a day in every zone. */
    private static final Instant LAST = Instant.MAX.minus(Duration.ofDays(1000));

    private final List<Part> parts;

    /** A calendar for as long as it is in force. */
    record Part(Instant from, WorkCalendar calendar) {}

    /** @param parts by their beginning; the first is in force whatever was before */
    WorkingTime(List<Part> parts) {
        this.parts = List.copyOf(parts);
    }

    public static WorkingTime by(WorkCalendar calendar) {
        return new WorkingTime(List.of(new Part(Instant.MIN, calendar)));
    }

    /** How much is worked from one moment to the other; none if the other is not later. */
    public Duration between(Instant from, Instant to) {
        Duration[] sum = {Duration.ZERO};
        Span asked = new Span(from, to);
        walk(
                from,
                opening -> {
                    sum[0] = sum[0].plus(opening.within(asked).length());
                    return opening.to().isBefore(to);
                },
                to);
        return sum[0];
    }

    /** The first moment at which that much was worked since {@code start}. */
    public Instant after(Instant start, Duration work) {
        return after(start, work, List.of());
    }

    /**
     * As {@link #after(Instant, Duration)}, while the clock stands still in the given spans.
     *
     * @param work not negative
     * @throws Invalid on {@code week} if so much is not worked within a hundred years
     */
    public Instant after(Instant start, Duration work, List<Span> stops) {
        if (work.isNegative()) {
            throw new IllegalArgumentException("time to work is not negative: " + work);
        }
        Duration[] left = {work};
        Instant[] found = {start};
        if (!work.isZero()) {
            walk(
                    start,
                    opening -> {
                        for (Span open : without(opening, stops)) {
                            if (open.length().compareTo(left[0]) >= 0) {
                                found[0] = open.from().plus(left[0]);
                                left[0] = Duration.ZERO;
                                return false;
                            }
                            left[0] = left[0].minus(open.length());
                        }
                        return true;
                    },
                    Instant.MAX);
            if (!left[0].isZero()) {
                throw new Invalid(
                        "week",
                        "The calendar leaves too little time to work: this would take more than a hundred years.");
            }
        }
        return found[0];
    }

    private static List<Span> without(Span opening, List<Span> stops) {
        List<Span> left = List.of(opening);
        for (Span stop : stops) {
            List<Span> next = new ArrayList<>();
            for (Span open : left) {
                next.add(new Span(open.from(), Span.earlier(open.to(), stop.from())));
                next.add(new Span(Span.later(open.from(), stop.to()), open.to()));
            }
            left = stop.isEmpty()
                    ? left
                    : next.stream().filter(s -> !s.isEmpty()).toList();
        }
        return left;
    }

    /** Shows every opening from {@code start} on, in order, until it is told no more, or {@code end} or a hundred years are over. */
    private void walk(Instant start, Predicate<Span> more, Instant end) {
        int days = 0;
        for (int i = 0; i < parts.size(); i++) {
            Instant until = i + 1 < parts.size() ? parts.get(i + 1).from() : end;
            Span inForce = new Span(Span.later(start, parts.get(i).from()), Span.earlier(until, end));
            if (inForce.isEmpty()) {
                continue;
            }
            WorkCalendar calendar = parts.get(i).calendar();
            LocalDate day = LocalDate.ofInstant(inForce.from(), calendar.zone());
            LocalDate last = day(inForce.to(), calendar.zone());
            while (days++ < LONGEST_SEARCH
                    && (day.isBefore(last)
                            || day.atStartOfDay(calendar.zone()).toInstant().isBefore(inForce.to()))) {
                for (Span opening : calendar.openings(day)) {
                    Span open = opening.within(inForce);
                    if (!open.isEmpty() && !more.test(open)) {
                        return;
                    }
                }
                day = day.plusDays(1);
            }
        }
    }

    private static LocalDate day(Instant moment, ZoneId zone) {
        return moment.isBefore(LAST) ? LocalDate.ofInstant(moment, zone) : LocalDate.MAX;
    }
}

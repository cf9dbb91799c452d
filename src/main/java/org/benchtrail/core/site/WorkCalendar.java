package org.benchtrail.core.site;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;

/**
 * When a site works: hours of the week by the clock on its wall, less its holidays.
 *
 * <p>Where the clock is put forward or back, hours begin and end at the first moment at which the clock on the wall shows their
 * minute or a later one. So a night that is an hour longer has an hour more of work, one that is shorter an hour less, and hours
 * that touch each other touch on such a night too.
 *
 * @param week the hours of each day of the week, in order and not overlapping; a day on which nobody works may be left out
 * @param holidays by day
 */
public record WorkCalendar(ZoneId zone, Map<DayOfWeek, List<Shift>> week, List<Holiday> holidays) {
    private static final int MOST_HOLIDAYS = 1000;
    private static final int MOST_SHIFTS = 12;

    /** Every minute counts. */
    public static final WorkCalendar ROUND_THE_CLOCK = new WorkCalendar(
            ZoneId.of("UTC"),
            Arrays.stream(DayOfWeek.values())
                    .collect(Collectors.toMap(Function.identity(), day -> List.of(Shift.WHOLE_DAY))),
            List.of());

    /**
     * @throws Invalid on {@code week} if nobody ever works or hours of a day overlap, on {@code holidays} if there are more than
     *     1,000
     */
    public WorkCalendar {
        EnumMap<DayOfWeek, List<Shift>> ordered = new EnumMap<>(DayOfWeek.class);
        week.forEach((day, shifts) -> {
            if (!shifts.isEmpty()) {
                ordered.put(day, inOrder(day, shifts));
            }
        });
        if (ordered.isEmpty()) {
            throw new Invalid("week", "Give the hours of at least one day: without any, no ticket is ever due.");
        }
        if (holidays.size() > MOST_HOLIDAYS) {
            throw new Invalid("holidays", "Give at most 1,000 holidays; those of past years may go.");
        }
        week = Map.copyOf(ordered);
        holidays = holidays.stream()
                .sorted(Comparator.comparing(Holiday::day)
                        .thenComparing(h -> h.off().from()))
                .toList();
    }

    private static List<Shift> inOrder(DayOfWeek day, List<Shift> shifts) {
        List<Shift> ordered =
                shifts.stream().sorted(Comparator.comparingInt(Shift::from)).toList();
        for (int i = 1; i < ordered.size(); i++) {
            if (ordered.get(i).from() < ordered.get(i - 1).to()) {
                throw new Invalid(
                        "week", "The hours of " + day.name().toLowerCase(java.util.Locale.ROOT) + " overlap.");
            }
        }
        if (ordered.size() > MOST_SHIFTS) {
            throw new Invalid("week", "Give at most 12 stretches for a day.");
        }
        return ordered;
    }

    /** The hours of a day by the clock on the wall, less what is off. */
    public List<Shift> hours(LocalDate day) {
        List<Shift> left = week.getOrDefault(day.getDayOfWeek(), List.of());
        for (Holiday holiday : holidays) {
            if (holiday.day().equals(day)) {
                left = left.stream()
                        .flatMap(shift -> without(shift, holiday.off()).stream())
                        .toList();
            }
        }
        return left;
    }

    private static List<Shift> without(Shift shift, Shift off) {
        List<Shift> left = new ArrayList<>();
        if (shift.from() < Math.min(shift.to(), off.from())) {
            left.add(new Shift(shift.from(), Math.min(shift.to(), off.from())));
        }
        if (Math.max(shift.from(), off.to()) < shift.to()) {
            left.add(new Shift(Math.max(shift.from(), off.to()), shift.to()));
        }
        return left;
    }

    /** When it works on that day, in order; spans may touch. */
    List<Span> openings(LocalDate day) {
        return hours(day).stream()
                .map(shift -> new Span(moment(day, shift.from()), moment(day, shift.to())))
                .filter(span -> !span.isEmpty())
                .toList();
    }

    /** The first moment at which the clock on the wall shows that minute of that day, or a later one. */
    private Instant moment(LocalDate day, int minute) {
        LocalDateTime shown = day.atStartOfDay().plusMinutes(minute);
        ZoneOffsetTransition change = zone.getRules().getTransition(shown);
        if (change == null) {
            return shown.toInstant(zone.getRules().getOffset(shown));
        }
        return change.isGap() ? change.getInstant() : shown.toInstant(change.getOffsetBefore());
    }
}

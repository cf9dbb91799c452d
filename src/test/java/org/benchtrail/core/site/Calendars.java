package org.benchtrail.core.site;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Stream;

/** Calendars for tests. */
final class Calendars {
    static final List<String> ZONES = List.of(
            "Europe/Berlin",
            "America/New_York",
            "Australia/Lord_Howe",
            "America/Sao_Paulo",
            "Africa/Cairo",
            "Pacific/Apia",
            "Asia/Kathmandu",
            "UTC");

    private Calendars() {}

    /** The same hours on every day. */
    static WorkCalendar daily(String zone, String... hours) {
        Map<DayOfWeek, List<Shift>> week = new EnumMap<>(DayOfWeek.class);
        for (DayOfWeek day : DayOfWeek.values()) {
            week.put(day, Stream.of(hours).map(Shift::parse).toList());
        }
        return new WorkCalendar(ZoneId.of(zone), week, List.of());
    }

    /** Monday to Friday, eight to five, with the given holidays. */
    static WorkCalendar office(String zone, Holiday... holidays) {
        Map<DayOfWeek, List<Shift>> week = new EnumMap<>(DayOfWeek.class);
        for (DayOfWeek day : DayOfWeek.values()) {
            if (day.getValue() <= 5) {
                week.put(day, List.of(Shift.parse("08:00-17:00")));
            }
        }
        return new WorkCalendar(ZoneId.of(zone), week, List.of(holidays));
    }

    /** Some hours, begun and ended at any minute, night included; some days off within two weeks of {@code around}. */
    static WorkCalendar random(SplittableRandom dice, LocalDate around) {
        Map<DayOfWeek, List<Shift>> week = new EnumMap<>(DayOfWeek.class);
        for (DayOfWeek day : DayOfWeek.values()) {
            List<Shift> shifts = new ArrayList<>();
            int from = dice.nextInt(4) == 0 ? 0 : dice.nextInt(300);
            while (from < Shift.DAY && dice.nextInt(4) > 0) {
                int to = Math.min(Shift.DAY, from + 1 + dice.nextInt(700));
                shifts.add(new Shift(from, to));
                from = to + (dice.nextBoolean() ? 0 : dice.nextInt(200));
            }
            week.put(day, shifts);
        }
        week.put(DayOfWeek.of(1 + dice.nextInt(7)), List.of(Shift.parse("01:15-02:45"), Shift.parse("02:45-24:00")));
        List<Holiday> holidays = new ArrayList<>();
        for (int i = dice.nextInt(5); i > 0; i--) {
            int from = dice.nextInt(Shift.DAY);
            Shift off =
                    dice.nextBoolean() ? Shift.WHOLE_DAY : new Shift(from, from + 1 + dice.nextInt(Shift.DAY - from));
            holidays.add(new Holiday(around.plusDays(dice.nextInt(28) - 14L), off, "Closed"));
        }
        return new WorkCalendar(ZoneId.of(ZONES.get(dice.nextInt(ZONES.size()))), week, holidays);
    }
}

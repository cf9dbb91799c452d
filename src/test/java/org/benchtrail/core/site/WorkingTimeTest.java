package org.benchtrail.core.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.benchtrail.BesideOthers;
import org.benchtrail.core.Invalid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@BesideOthers
class WorkingTimeTest {

    private static long minutes(WorkCalendar calendar, String from, String to) {
        return WorkingTime.by(calendar)
                .between(
                        ZonedDateTime.parse(from).toInstant(),
                        ZonedDateTime.parse(to).toInstant())
                .toMinutes();
    }

    /**
     * Whole days around a change of the clock, by hand from the dates that java.time's rules hold.
     *
     * <p>Berlin: on 29 March 2026 at 02:00 the clock goes to 03:00 (01:00Z), a day of 23 h = 1380 min; on 25 October at 03:00 back
     * to 02:00 (01:00Z), 25 h = 1500 min. New York: 8 March at 02:00 to 03:00, 1 November at 02:00 back to 01:00. Lord Howe
     * changes by half an hour: 5 April 2026 at 02:00 back to 01:30, 24.5 h = 1470 min; 4 October at 02:00 to 02:30, 1410 min.
     * Sao Paulo changed at midnight: 4 November 2018 began at 01:00, 23 h; on 17 February 2018 the clock went from 24:00 back to
     * 23:00, 25 h. Apia left out 30 December 2011 altogether.
     */
    @ParameterizedTest
    @CsvSource({
        "Europe/Berlin, 2026-03-28, 1440",
        "Europe/Berlin, 2026-03-29, 1380",
        "Europe/Berlin, 2026-10-25, 1500",
        "America/New_York, 2026-03-08, 1380",
        "America/New_York, 2026-11-01, 1500",
        "Australia/Lord_Howe, 2026-04-05, 1470",
        "Australia/Lord_Howe, 2026-10-04, 1410",
        "America/Sao_Paulo, 2018-11-04, 1380",
        "America/Sao_Paulo, 2018-02-17, 1500",
        "Pacific/Apia, 2011-12-30, 0",
        "Asia/Kathmandu, 2026-06-01, 1440"
    })
    void dayRoundTheClock_isAsLongAsTheDay(String zone, LocalDate day, long minutes) {
        WorkCalendar calendar = Calendars.daily(zone, "00:00-24:00");
        Duration open = calendar.openings(day).stream().map(Span::length).reduce(Duration.ZERO, Duration::plus);
        assertEquals(minutes, open.toMinutes());
    }

    /**
     * Hours that the change cuts into. Berlin, 29 March: 02:30 is never shown, so 01:00 to 02:30 ends when 03:00 is shown, after
     * 60 min, and 02:30 to 06:00 begins then, 180 min. 25 October: 02:30 is shown twice and the first counts: 01:00 to 02:30 is
     * 90 min, 02:30 to 06:00 begins 30 min before the clock goes back and has 30 + 60 + 180 = 270 min. 02:00 to 03:00 is
     * there twice, 120 min; on 29 March it is not there, 0 min.
     */
    @ParameterizedTest
    @CsvSource({
        "2026-03-29, 01:00-02:30, 60",
        "2026-03-29, 02:30-06:00, 180",
        "2026-03-29, 02:00-03:00, 0",
        "2026-03-29, 02:10-02:50, 0",
        "2026-10-25, 01:00-02:30, 90",
        "2026-10-25, 02:30-06:00, 270",
        "2026-10-25, 02:00-03:00, 120",
        "2026-10-25, 02:10-02:50, 40",
        "2026-10-25, 03:00-04:00, 60"
    })
    void hoursInTheNightOfAChange_beginAndEndWhenTheClockFirstShowsThem(LocalDate day, String hours, long minutes) {
        WorkCalendar calendar = Calendars.daily("Europe/Berlin", hours);
        Duration open = calendar.openings(day).stream().map(Span::length).reduce(Duration.ZERO, Duration::plus);
        assertEquals(minutes, open.toMinutes());
    }

    /** Friday 16:00 + 4 h of work: one hour on Friday, three on Monday from 08:00: 11:00 in the new time, 09:00Z instead of 10:00Z. */
    @Test
    void weekendOfTheChange_isSteppedOver_inTheNewTime() {
        WorkingTime time = WorkingTime.by(Calendars.office("Europe/Berlin"));
        Instant friday = Instant.parse("2026-03-27T15:00:00Z");
        assertEquals(Instant.parse("2026-03-30T09:00:00Z"), time.after(friday, Duration.ofHours(4)));
    }

    @Test
    void dueAtTheEndOfADay_isThatEnd_notTheNextMorning() {
        WorkingTime time = WorkingTime.by(Calendars.office("UTC"));
        Instant monday = Instant.parse("2026-06-01T16:00:00Z");
        assertEquals(Instant.parse("2026-06-01T17:00:00Z"), time.after(monday, Duration.ofHours(1)));
        assertEquals(Instant.parse("2026-06-02T08:01:00Z"), time.after(monday, Duration.ofMinutes(61)));
    }

    @Test
    void beforeHoursBegin_nothingRuns() {
        WorkingTime time = WorkingTime.by(Calendars.office("UTC"));
        Instant sunday = Instant.parse("2026-06-07T03:12:00Z");
        assertEquals(Instant.parse("2026-06-08T08:30:00Z"), time.after(sunday, Duration.ofMinutes(30)));
        assertEquals(sunday, time.after(sunday, Duration.ZERO));
    }

    /** 24 December off from 12:00, 25 December off: 240 min on the 24th, none on the 25th, a Friday. */
    @Test
    void holidays_wholeAndInPart_areNotWorked() {
        WorkCalendar calendar = Calendars.office(
                "UTC",
                new Holiday(LocalDate.of(2026, 12, 24), Shift.parse("12:00-24:00"), "Afternoon off"),
                new Holiday(LocalDate.of(2026, 12, 25), Shift.WHOLE_DAY, "Closed"));
        assertEquals(240, minutes(calendar, "2026-12-24T00:00:00Z", "2026-12-28T00:00:00Z"));
        assertEquals(
                Instant.parse("2026-12-28T08:00:01Z"),
                WorkingTime.by(calendar)
                        .after(
                                Instant.parse("2026-12-24T11:00:00Z"),
                                Duration.ofMinutes(60).plusSeconds(1)));
    }

    @Test
    void stoppedClock_countsNothing() {
        WorkingTime time = WorkingTime.by(Calendars.office("UTC"));
        Instant monday = Instant.parse("2026-06-01T08:00:00Z");
        Span lunch = new Span(Instant.parse("2026-06-01T09:00:00Z"), Instant.parse("2026-06-01T10:30:00Z"));
        Span overnight = new Span(Instant.parse("2026-06-01T16:00:00Z"), Instant.parse("2026-06-02T09:00:00Z"));
        assertEquals(
                Instant.parse("2026-06-02T10:30:00Z"),
                time.after(monday, Duration.ofHours(8), List.of(lunch, overnight)));
    }

    /** Six hours a day until Wednesday, nine from then on; Monday 08:00 + 20 h = 6 + 6 + 8. */
    @Test
    void changedCalendar_countsFromItsMomentOn() {
        WorkingTime time = new WorkingTime(List.of(
                new WorkingTime.Part(Instant.MIN, Calendars.daily("UTC", "08:00-14:00")),
                new WorkingTime.Part(Instant.parse("2026-06-03T00:00:00Z"), Calendars.daily("UTC", "08:00-17:00"))));
        Instant monday = Instant.parse("2026-06-01T08:00:00Z");
        assertEquals(Instant.parse("2026-06-03T16:00:00Z"), time.after(monday, Duration.ofHours(20)));
        assertEquals(Duration.ofHours(20), time.between(monday, Instant.parse("2026-06-03T16:00:00Z")));
    }

    @Test
    void noWorkAtAll_isRefused() {
        Invalid none = assertThrows(
                Invalid.class, () -> new WorkCalendar(ZoneOffset.UTC, Map.of(DayOfWeek.MONDAY, List.of()), List.of()));
        assertEquals("week", none.problems().get(0).field());
        assertTrue(none.getMessage().contains("no ticket is ever due"), none::getMessage);
    }

    /** One minute a week: 5 218 in a hundred years. */
    @Test
    void tooLittleWork_isRefused_notSearchedForEver() {
        WorkCalendar rare =
                new WorkCalendar(ZoneOffset.UTC, Map.of(DayOfWeek.MONDAY, List.of(new Shift(0, 1))), List.of());
        Instant start = Instant.parse("2026-01-01T00:00:00Z");
        WorkingTime time = WorkingTime.by(rare);
        assertTrue(time.after(start, Duration.ofMinutes(5_000)).isAfter(start));
        assertThrows(Invalid.class, () -> time.after(start, Duration.ofMinutes(5_300)));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "8-17",
                "08:00",
                "08:60-09:00",
                "17:00-08:00",
                "08:00-08:00",
                "08:00-24:01",
                "-1:00-02:00",
                "08:00-09:00-10:00"
            })
    void whatIsNoStretchOfADay_isRefused(String text) {
        assertThrows(Invalid.class, () -> Shift.parse(text));
    }

    @Test
    void hoursThatOverlap_areRefused_touchingOnesAreNot() {
        assertThrows(Invalid.class, () -> Calendars.daily("UTC", "08:00-12:00", "11:59-17:00"));
        assertEquals(
                540,
                minutes(
                        Calendars.daily("UTC", "12:00-17:00", "08:00-12:00"),
                        "2026-06-01T00:00:00Z",
                        "2026-06-02T00:00:00Z"));
    }

    /** Any calendars, any span near a change of the clock, held against somebody who looks at the clock every minute. */
    @Test
    void sums_agreeWithTheMinuteCounter() {
        List<Instant> changes = List.of(
                Instant.parse("2026-03-29T01:00:00Z"),
                Instant.parse("2026-10-25T01:00:00Z"),
                Instant.parse("2026-11-01T06:00:00Z"),
                Instant.parse("2026-04-04T15:00:00Z"),
                Instant.parse("2026-10-03T15:30:00Z"),
                Instant.parse("2018-11-04T03:00:00Z"),
                Instant.parse("2018-02-18T02:00:00Z"),
                Instant.parse("2026-04-23T22:00:00Z"),
                Instant.parse("2026-10-29T21:00:00Z"),
                Instant.parse("2011-12-30T10:00:00Z"));
        for (long seed = 1; seed <= 300; seed++) {
            SplittableRandom dice = new SplittableRandom(seed);
            Instant change = changes.get(dice.nextInt(changes.size()));
            Instant start = change.minus(dice.nextInt(4 * 1440), ChronoUnit.MINUTES);
            LocalDate around = LocalDate.ofInstant(change, ZoneOffset.UTC);
            List<WorkingTime.Part> parts = List.of(
                    new WorkingTime.Part(Instant.MIN, Calendars.random(dice, around)),
                    new WorkingTime.Part(
                            start.plus(dice.nextInt(8 * 1440), ChronoUnit.MINUTES), Calendars.random(dice, around)));
            compare(new WorkingTime(parts), MinuteCounter.worked(parts, start, 14 * 1440), start, dice, seed);
        }
    }

    private static void compare(WorkingTime time, boolean[] worked, Instant start, SplittableRandom dice, long seed) {
        for (int i = 0; i < 20; i++) {
            int from = dice.nextInt(worked.length);
            int to = from + dice.nextInt(worked.length - from);
            int counted = 0;
            int last = from;
            for (int m = from; m < to; m++) {
                counted += worked[m] ? 1 : 0;
                last = worked[m] ? m + 1 : last;
            }
            Instant begin = start.plus(from, ChronoUnit.MINUTES);
            Duration sum = time.between(begin, start.plus(to, ChronoUnit.MINUTES));
            assertEquals(Duration.ofMinutes(counted), sum, "seed " + seed);
            assertEquals(start.plus(last, ChronoUnit.MINUTES), time.after(begin, sum), "seed " + seed);
        }
    }

    /** What is added is there; and is there no sooner. Sums of parts are the sum of the whole. */
    @Test
    void addingAndMeasuring_undoEachOther() {
        for (long seed = 1; seed <= 400; seed++) {
            SplittableRandom dice = new SplittableRandom(seed);
            Instant start = Instant.parse("2026-01-01T00:00:00Z").plusSeconds(dice.nextInt(31_536_000));
            WorkingTime time = WorkingTime.by(Calendars.random(dice, LocalDate.ofInstant(start, ZoneOffset.UTC)));
            Duration work = Duration.ofSeconds(1 + dice.nextInt(600_000));
            Instant end = time.after(start, work);
            assertEquals(work, time.between(start, end), "seed " + seed);
            assertTrue(time.between(start, end.minusNanos(1)).compareTo(work) < 0, "seed " + seed);
            Instant middle = start.plus(Duration.between(start, end).dividedBy(3));
            assertEquals(work, time.between(start, middle).plus(time.between(middle, end)), "seed " + seed);
        }
    }
}

package org.benchtrail.core.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.math.BigDecimal;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.Published;
import org.benchtrail.core.figures.TicketTimes.Stay;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.core.site.Shift;
import org.benchtrail.core.site.SiteHistory;
import org.benchtrail.core.site.SiteRules;
import org.benchtrail.core.site.Target;
import org.benchtrail.core.site.WorkCalendar;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Time in a step: by working hours, each stay by itself, what is open never as ended. */
class TicketTimesTest {
    private static final String BERLIN =
            "working time over the weekend when the clock goes forward, recomputed by hand";

    /** Each row is an hour later than the one before. */
    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");

    private static Instant hour(int hours) {
        return START.plus(Duration.ofHours(hours));
    }

    private static TicketTimes moved(Move... moves) {
        return TicketTimes.of(
                START,
                java.util.stream.IntStream.range(0, moves.length)
                        .mapToObj(i -> Moved.of(moves[i], hour(i + 1)))
                        .toList());
    }

    private static SiteHistory open(String zone, String hours, Set<WaitingFor> stops, int days) {
        Map<DayOfWeek, List<Shift>> week = new EnumMap<>(DayOfWeek.class);
        for (DayOfWeek day : DayOfWeek.values()) {
            if (day.getValue() <= days) {
                week.put(day, List.of(Shift.parse(hours)));
            }
        }
        Map<Priority, Target> targets =
                Arrays.stream(Priority.values()).collect(Collectors.toMap(p -> p, p -> new Target(60, 60)));
        return SiteHistory.of(new SiteRules(
                new WorkCalendar(ZoneId.of(zone), week, List.of()),
                targets,
                stops,
                null,
                new BigDecimal("9"),
                Policy.usual()));
    }

    private static double hours(SiteHistory site, String from, String to) {
        Instant begin = ZonedDateTime.parse(from).toInstant();
        TicketTimes times = TicketTimes.of(
                begin, List.of(Moved.of(Move.ADVANCE, ZonedDateTime.parse(to).toInstant())));
        return times.hours(times.stays().get(0), site, Instant.MAX);
    }

    @Test
    void aWeekend_isNotWorked() {
        SiteHistory office = open("Europe/Berlin", "08:00-17:00", Set.of(), 5);
        String friday = "2026-03-27T16:00+01:00[Europe/Berlin]";
        String monday = "2026-03-30T09:00+02:00[Europe/Berlin]";
        Published.check(BERLIN, 2, hours(office, friday, monday), 0);
        SiteHistory always = open("Europe/Berlin", "00:00-24:00", Set.of(), 7);
        Published.check(BERLIN, 64, hours(always, friday, monday), 0);
        Published.check(
                BERLIN,
                23,
                hours(always, "2026-03-29T00:00+01:00[Europe/Berlin]", "2026-03-30T00:00+02:00[Europe/Berlin]"),
                0);
    }

    @Test
    void aStepEnteredAgain_isAStayOfItsOwn_andGoingBackIsNoEnd() {
        TicketTimes times =
                moved(Move.ADVANCE, Move.ADVANCE, Move.REFUTE, Move.ADVANCE, Move.ADVANCE, Move.ADVANCE, Move.FAIL);
        assertEquals(
                List.of(
                        Step.IDENTIFY,
                        Step.THEORIZE,
                        Step.TEST,
                        Step.THEORIZE,
                        Step.TEST,
                        Step.PLAN,
                        Step.VERIFY,
                        Step.THEORIZE),
                times.stays().stream().map(Stay::step).toList());
        assertEquals(Leaving.BACK, times.stays().get(2).how());
        assertEquals(Leaving.BACK, times.stays().get(6).how());
        assertEquals(Leaving.OPEN, times.stays().get(7).how());
        assertNull(times.stays().get(7).to());
    }

    @Test
    void anOpenTicket_isNotAClosedOne() {
        TicketTimes times = moved(Move.ADVANCE, Move.ADVANCE);
        assertEquals(1, times.ways().size());
        assertEquals(Leaving.OPEN, times.ways().get(0).how());
        assertNull(times.ways().get(0).to());
    }

    /** Closed, reopened, closed, and touched no more: two closings, and what lies between them belongs to neither. */
    @Test
    void aReopenedTicket_hasOneWayForEachClosing() {
        TicketTimes times = moved(
                Move.ADVANCE,
                Move.ADVANCE,
                Move.ADVANCE,
                Move.ADVANCE,
                Move.ADVANCE,
                Move.CLOSE,
                Move.REOPEN,
                Move.ADVANCE,
                Move.CANCEL);
        SiteHistory always = open("UTC", "00:00-24:00", Set.of(), 7);
        assertEquals(
                List.of(Leaving.FORWARD, Leaving.CANCELLED),
                times.ways().stream().map(TicketTimes.Way::how).toList());
        assertEquals(6, times.hours(times.ways().get(0), always, hour(100)));
        assertEquals(2, times.hours(times.ways().get(1), always, hour(100)));
        assertEquals(8, times.stays().size());
        assertEquals(Leaving.FORWARD, times.stays().get(5).how());
        assertEquals(Leaving.CANCELLED, times.stays().get(7).how());
    }

    private static TicketTimes held(WaitingFor what, int from, int followUp, @Nullable Integer resumed) {
        List<Moved> moves = new java.util.ArrayList<>();
        moves.add(new Moved(Move.HOLD, hour(from), what, hour(followUp)));
        if (resumed != null) {
            moves.add(Moved.of(Move.RESUME, hour(resumed)));
            moves.add(Moved.of(Move.ADVANCE, hour(20)));
        }
        return TicketTimes.of(START, moves);
    }

    @Test
    void holds_stopTheClock_whereTheSiteSaysSo_andUntilTheirFollowUpOnly() {
        SiteHistory stops = open("UTC", "00:00-24:00", Set.of(WaitingFor.PART), 7);
        TicketTimes inTime = held(WaitingFor.PART, 2, 10, 5);
        assertEquals(17, inTime.hours(inTime.stays().get(0), stops, hour(100)));
        assertEquals(3, TicketTimes.hours(inTime.holds().get(0), stops, hour(100)));
        TicketTimes late = held(WaitingFor.PART, 2, 4, 5);
        assertEquals(18, late.hours(late.stays().get(0), stops, hour(100)));
        TicketTimes other = held(WaitingFor.SUPPLIER, 2, 10, 5);
        assertEquals(20, other.hours(other.stays().get(0), stops, hour(100)));
        TicketTimes still = held(WaitingFor.PART, 2, 10, null);
        assertEquals(2, still.hours(still.stays().get(0), stops, hour(6)));
        assertEquals(4, still.hours(still.stays().get(0), stops, hour(12)));
        assertEquals(Leaving.OPEN, still.holds().get(0).how());
    }
}

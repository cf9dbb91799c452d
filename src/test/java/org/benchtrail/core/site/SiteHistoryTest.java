package org.benchtrail.core.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.desk.WaitingFor;
import org.junit.jupiter.api.Test;

class SiteHistoryTest {
    private static final Instant MONDAY = Instant.parse("2026-06-01T08:00:00Z");
    private static final SiteRules USUAL = SiteRules.usual(null, BigDecimal.valueOf(3), Policy.usual());

    private static SiteRules rules(WorkCalendar calendar, int response, int fix, Set<WaitingFor> stops) {
        Target target = new Target(response, fix);
        Map<Priority, Target> targets = Map.of(
                Priority.AT_ONCE, target,
                Priority.SAME_DAY, target,
                Priority.THIS_WEEK, target,
                Priority.WHEN_PLANNED, target);
        return new SiteRules(calendar, targets, stops, "230", BigDecimal.valueOf(3), Policy.usual());
    }

    private static SiteHistory.Version version(int number, Instant from, SiteRules rules) {
        return new SiteHistory.Version(number, from, rules);
    }

    private static TicketClock clock(Instant start, boolean answered, TicketClock.OnHold... holds) {
        return new TicketClock(start, Priority.SAME_DAY, answered, List.of(holds));
    }

    @Test
    void withoutADecision_aTicketIsDueByTheHoursOfItsPriority() {
        Due due = clock(MONDAY, false).due(SiteHistory.of(USUAL));
        assertEquals(new Due(MONDAY.plus(Duration.ofHours(8)), Due.What.FIX), due);
    }

    @Test
    void aLaterDecision_replacesWhatAnEarlierOneSaidOfTheTimeFromItsBeginningOn() {
        SiteRules office = rules(Calendars.office("UTC"), 60, 480, Set.of());
        SiteRules nights = rules(Calendars.daily("UTC", "00:00-24:00"), 60, 480, Set.of());
        SiteHistory site = new SiteHistory(List.of(
                version(0, Instant.MIN, USUAL),
                version(1, MONDAY.plus(Duration.ofDays(30)), office),
                version(2, MONDAY.plus(Duration.ofDays(10)), nights)));
        assertEquals(0, site.at(MONDAY).number());
        assertEquals(2, site.at(MONDAY.plus(Duration.ofDays(10))).number());
        assertEquals(2, site.at(MONDAY.plus(Duration.ofDays(40))).number());
        assertEquals(1, site.upTo(1).at(MONDAY.plus(Duration.ofDays(40))).number());
        assertEquals(0, site.upTo(0).latest());
    }

    @Test
    void timesAreThoseOfTheStart_whateverIsDecidedLater() {
        SiteHistory site = new SiteHistory(List.of(
                version(0, Instant.MIN, rules(WorkCalendar.ROUND_THE_CLOCK, 60, 480, Set.of())),
                version(1, MONDAY.plusSeconds(1), rules(WorkCalendar.ROUND_THE_CLOCK, 5, 30, Set.of()))));
        assertEquals(
                MONDAY.plus(Duration.ofHours(8)), clock(MONDAY, true).due(site).at());
        Instant later = MONDAY.plusSeconds(2);
        assertEquals(
                later.plus(Duration.ofMinutes(30)), clock(later, true).due(site).at());
    }

    @Test
    void nobodyHasIt_itIsDueToBeAnsweredFirst() {
        SiteHistory site = SiteHistory.of(rules(Calendars.office("UTC"), 30, 480, Set.of()));
        assertEquals(
                new Due(MONDAY.plus(Duration.ofMinutes(30)), Due.What.ANSWER),
                clock(MONDAY, false).due(site));
        assertEquals(
                new Due(MONDAY.plus(Duration.ofHours(8)), Due.What.FIX),
                clock(MONDAY, true).due(site));
    }

    /** Held 09:00 to 11:00: two of eight hours are moved past 17:00 and into the next morning, from 16:00 on: 17:00 + 1 h = 09:00. */
    @Test
    void holdStopsTheClock_onlyForWhatPolicyNames() {
        SiteHistory site = SiteHistory.of(rules(Calendars.office("UTC"), 30, 480, Set.of(WaitingFor.PART)));
        Instant nine = MONDAY.plus(Duration.ofHours(1));
        TicketClock.OnHold part = new TicketClock.OnHold(WaitingFor.PART, nine, nine.plus(Duration.ofHours(2)));
        TicketClock.OnHold supplier = new TicketClock.OnHold(WaitingFor.SUPPLIER, nine, nine.plus(Duration.ofHours(2)));
        assertEquals(
                Instant.parse("2026-06-02T09:00:00Z"),
                clock(MONDAY, true, part).due(site).at());
        assertEquals(
                MONDAY.plus(Duration.ofHours(8)),
                clock(MONDAY, true, supplier).due(site).at());
    }

    @Test
    void holdStops_byWhatWasDecidedWhenItBegan() {
        Instant nine = MONDAY.plus(Duration.ofHours(1));
        SiteHistory site = new SiteHistory(List.of(
                version(0, Instant.MIN, rules(WorkCalendar.ROUND_THE_CLOCK, 30, 480, Set.of())),
                version(1, nine, rules(WorkCalendar.ROUND_THE_CLOCK, 30, 480, Set.of(WaitingFor.PART)))));
        TicketClock.OnHold before =
                new TicketClock.OnHold(WaitingFor.PART, nine.minusSeconds(60), nine.minusSeconds(30));
        TicketClock.OnHold since = new TicketClock.OnHold(WaitingFor.PART, nine, nine.plusSeconds(600));
        assertEquals(
                MONDAY.plus(Duration.ofMinutes(490)),
                clock(MONDAY, true, before, since).due(site).at());
    }

    @Test
    void timesOutsideTheirDomain_areRefused() {
        assertThrows(Invalid.class, () -> new Target(0, 10));
        assertThrows(Invalid.class, () -> new Target(11, 10));
        assertThrows(Invalid.class, () -> new Target(1, 525_601));
        assertThrows(
                Invalid.class,
                () -> new SiteRules(
                        WorkCalendar.ROUND_THE_CLOCK, Map.of(), Set.of(), null, BigDecimal.ONE, Policy.usual()));
        assertThrows(
                Invalid.class,
                () -> new SiteRules(
                        WorkCalendar.ROUND_THE_CLOCK,
                        USUAL.targets(),
                        Set.of(),
                        "240",
                        BigDecimal.ONE,
                        Policy.usual()));
    }
}

package org.benchtrail.ticket;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.Held;
import org.benchtrail.core.method.desk.Resumed;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.core.site.Due;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.Forbidden;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.Stale;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.site.RulesText;
import org.benchtrail.site.SiteActs;
import org.benchtrail.site.SiteBook;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Due times by what the site decides: open tickets follow, ended ones keep theirs, and the record holds throughout. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class DueTimesTest {
    private static final Actor ADA = new Actor("due-ada", "Ada", Set.of(Role.ADMINISTRATOR));
    private static final Actor SAM = new Actor("due-sam", "Sam", Set.of(Role.SUPERVISOR, Role.TECHNICIAN));
    private static final SiteActs.Decision AT_ONCE = new SiteActs.Decision("", "test");

    @Inject
    PeopleActs people;

    @Inject
    TicketActs acts;

    @Inject
    TicketQueries queries;

    @Inject
    SiteActs siteActs;

    @Inject
    SiteBook book;

    @Inject
    MovedClock clock;

    private RulesText before;

    @BeforeEach
    void remember() {
        people.ensureAccount(SAM.account(), SAM.name(), SAM.roles(), "a long enough password");
        before = RulesText.of(book.rules());
    }

    @AfterEach
    void putBack() {
        clock.putRight();
        if (!RulesText.of(book.history()
                        .at(Instant.now().plus(Duration.ofDays(300)))
                        .rules())
                .equals(before)) {
            siteActs.decide(before, AT_ONCE, book.history().latest(), ADA);
        }
    }

    /** Hours of today and the next days by UTC: open now for an hour each day, so that what takes more is stepped over. */
    private RulesText oneHourADay(Instant from, List<String> stops) {
        int minute = from.atZone(ZoneOffset.UTC).getHour() * 60
                + from.atZone(ZoneOffset.UTC).getMinute();
        int start = Math.min(minute, 1379);
        String hours =
                String.format("%02d:%02d-%02d:%02d", start / 60, start % 60, (start + 60) / 60, (start + 60) % 60);
        Map<String, String> week = new LinkedHashMap<>();
        before.week().keySet().forEach(day -> week.put(day, hours));
        Map<String, RulesText.Times> times = new LinkedHashMap<>();
        for (Priority priority : Priority.values()) {
            times.put(priority.name(), new RulesText.Times("30 min", "2 h 30 min"));
        }
        return new RulesText(
                "UTC",
                week,
                "",
                times,
                stops,
                "",
                before.repairOdds(),
                before.approvalCostLimit(),
                before.dataAnswerHours(),
                before.soakHours(),
                before.reopenDays(),
                before.guardBand());
    }

    private int decide(RulesText rules) {
        return siteActs.decide(rules, AT_ONCE, book.history().latest(), ADA);
    }

    private TicketNumber open(boolean queued) {
        NewTicket report = new NewTicket(
                "Lamp is dark",
                "",
                Category.OTHER,
                "Lamp",
                "Due hall",
                "Rae",
                "room 4",
                Priority.Impact.SEVERAL,
                Priority.Urgency.HINDERED,
                queued);
        return acts.open(report, SAM).number();
    }

    private TicketLine line(TicketNumber number) {
        TicketQueries.Verified verified = queries.verified(number, SAM);
        assertTrue(verified.verification().holds(), verified.verification()::sentence);
        return verified.line();
    }

    private void act(TicketNumber number, Fact fact) {
        JobSheet sheet = queries.sound(number, SAM);
        Outcome outcome = acts.perform(number, sheet.entries(), List.of(s -> fact), SAM);
        assertEquals(List.of(), outcome.missing());
    }

    @Test
    void openTickets_followTheCalendar_fromTheMomentOfTheDecision_andEndedOnesKeepTheirs() {
        TicketNumber open = open(false);
        TicketNumber ended = open(false);
        act(ended, new Cancelled("Told by mistake", null));
        Instant opened = line(open).opened();
        assertEquals(opened.plus(Duration.ofHours(8)), line(open).due());
        assertEquals(line(ended).opened().plus(Duration.ofHours(8)), line(ended).due());

        decide(oneHourADay(clock.instant(), List.of()));

        // its time is the one of its start, 8 h; an hour of it is worked on each day
        long days = ChronoUnit.DAYS.between(
                opened.atZone(ZoneOffset.UTC).toLocalDate(),
                line(open).due().atZone(ZoneOffset.UTC).toLocalDate());
        assertTrue(days == 7 || days == 8, () -> line(open).due() + " for " + opened);
        assertEquals(line(ended).opened().plus(Duration.ofHours(8)), line(ended).due());
    }

    @Test
    void untilSomebodyHasIt_theAnswerIsDue() {
        decide(oneHourADay(clock.instant(), List.of()));
        TicketNumber number = open(true);
        assertEquals(Due.What.ANSWER, line(number).dueWhat());
        act(number, new HandedOver(SAM.account(), Set.of(), ""));
        assertEquals(Due.What.FIX, line(number).dueWhat());
        assertTrue(line(number).due().isAfter(line(number).opened().plus(Duration.ofHours(24))));
    }

    @Test
    void hold_stopsTheClock_forWhatPolicyNames_untilItIsToBeLookedAtAgain() {
        decide(roundTheClock(List.of("PART")));
        TicketNumber number = open(false);
        Instant due = line(number).due();
        assertEquals(line(number).opened().plus(Duration.ofMinutes(150)), due);
        act(number, new Held(WaitingFor.PART, clock.instant().plus(Duration.ofHours(10)), "Ordered"));
        Instant whileHeld = line(number).due();
        assertTrue(whileHeld.isAfter(due.plus(Duration.ofHours(9))), whileHeld::toString);
        assertTrue(dueIn(number).matches("clock stopped, 2 h (29|30) min of work left"), () -> dueIn(number));
        clock.putForward(Duration.ofHours(1));
        assertTrue(dueIn(number).matches("clock stopped, 2 h (29|30) min of work left"), () -> dueIn(number));
        decide(roundTheClock(List.of()));
        assertTrue(dueIn(number).startsWith("clock stopped, "), "as it was decided when the hold began");
        decide(roundTheClock(List.of("PART")));
        act(number, new Resumed());
        assertTrue(dueIn(number).matches("in 2 h (28|29|30) min"), () -> dueIn(number));
        Duration moved = Duration.between(due, line(number).due());
        assertTrue(moved.minusHours(1).abs().compareTo(Duration.ofMinutes(1)) < 0, moved::toString);
        act(number, new Held(WaitingFor.SUPPLIER, clock.instant().plus(Duration.ofHours(10)), "Asked"));
        assertEquals(moved, Duration.between(due, line(number).due()));
        assertTrue(dueIn(number).startsWith("in 2 h "), "for a supplier no clock stops");
    }

    /** Who forgets a hold has no clock that stands still. */
    @Test
    void clockGoesOn_whenTheHoldIsToBeLookedAtAgain() {
        decide(roundTheClock(List.of("PART")));
        TicketNumber number = open(false);
        act(number, new Held(WaitingFor.PART, clock.instant().plus(Duration.ofHours(2)), "Ordered"));
        assertTrue(dueIn(number).startsWith("clock stopped, "), () -> dueIn(number));
        clock.putForward(Duration.ofHours(3));
        assertTrue(dueIn(number).matches("in 1 h (28|29|30) min"), () -> dueIn(number));
        clock.putForward(Duration.ofHours(2));
        assertTrue(dueIn(number).contains("over"), () -> dueIn(number));
    }

    private String dueIn(TicketNumber number) {
        return line(number).dueIn(clock.instant(), book.history().workingTime());
    }

    private RulesText roundTheClock(List<String> stops) {
        RulesText text = oneHourADay(clock.instant(), stops);
        Map<String, String> week = new LinkedHashMap<>();
        before.week().keySet().forEach(day -> week.put(day, "00:00-24:00"));
        return new RulesText(
                "UTC",
                week,
                "",
                text.times(),
                stops,
                "",
                text.repairOdds(),
                text.approvalCostLimit(),
                text.dataAnswerHours(),
                text.soakHours(),
                text.reopenDays(),
                text.guardBand());
    }

    @Test
    void decisionForLater_changesNothingBefore() {
        TicketNumber number = open(false);
        String later = clock.instant()
                .plus(Duration.ofDays(20))
                .atZone(ZoneOffset.UTC)
                .toLocalDateTime()
                .toString();
        siteActs.decide(
                oneHourADay(clock.instant(), List.of()),
                new SiteActs.Decision(later, "next year's hours"),
                book.history().latest(),
                ADA);
        assertEquals(
                line(number).opened().plus(Duration.ofHours(8)), line(number).due());
        assertEquals(before, RulesText.of(book.rules()));
    }

    @Test
    void decisions_areNotMadeTwice_norForThePast_norByOthers() {
        int seen = book.history().latest();
        RulesText other = oneHourADay(clock.instant(), List.of());
        assertThrows(Forbidden.class, () -> siteActs.decide(other, AT_ONCE, seen, SAM));
        assertThrows(Stale.class, () -> siteActs.decide(other, AT_ONCE, seen + 1, ADA));
        assertThrows(Invalid.class, () -> siteActs.decide(before, AT_ONCE, seen, ADA));
        assertThrows(
                Invalid.class, () -> siteActs.decide(other, new SiteActs.Decision("2020-01-01T00:00", ""), seen, ADA));
        assertEquals(seen, book.history().latest());
    }

    @Test
    void whatIsWrong_isNamedFieldByField() {
        RulesText wrong = new RulesText(
                "Nowhere/City",
                Map.of("MONDAY", "08:00-12:00, 11:00-17:00", "TUESDAY", "8 to 5"),
                "tomorrow Feast",
                Map.of("AT_ONCE", new RulesText.Times("5 h", "4 h")),
                List.of("RAIN"),
                "",
                "0",
                "-1",
                "24",
                "48",
                "14",
                "11");
        Invalid invalid = assertThrows(Invalid.class, wrong::rules);
        Set<String> fields =
                invalid.problems().stream().map(Invalid.Problem::field).collect(java.util.stream.Collectors.toSet());
        assertTrue(
                fields.containsAll(Set.of(
                        "zone",
                        "week.MONDAY",
                        "week.TUESDAY",
                        "holidays",
                        "times.AT_ONCE.response",
                        "times.SAME_DAY.fix",
                        "stops",
                        "repairOdds",
                        "approvalCostLimit",
                        "guardBand")),
                fields::toString);
    }
}

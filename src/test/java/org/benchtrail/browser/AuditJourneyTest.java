package org.benchtrail.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.net.URL;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.audit.AuditActs;
import org.benchtrail.audit.LotRounds;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.audit.AuditLot.Turn;
import org.benchtrail.core.audit.AuditPlan;
import org.benchtrail.core.audit.Stratum;
import org.benchtrail.core.audit.Take;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.knowledge.ClosedTickets;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A lot from its plan to the addendum that never comes, as its reviewers, who did the work, and their mentor see it. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class AuditJourneyTest {
    private static final String PASSWORD = "a long enough password";
    private static final String LOT = "2099-07";
    private static final Actor TARO = new Actor("lot-taro", "Taro Example", Set.of(Role.TRAINEE));
    private static final Actor TILDA = new Actor("lot-tilda", "Tilda Example", Set.of(Role.TECHNICIAN));
    private static final Actor MORA = new Actor("lot-mora", "Mora Example", Set.of(Role.TECHNICIAN, Role.MENTOR));
    private static final Actor ADA = new Actor("lot-ada", "Ada Example", Set.of(Role.ADMINISTRATOR));
    private static final Actor SELMA = new Actor("lot-selma", "Selma Example", Set.of(Role.SUPERVISOR));
    private static final Actor BENNO = new Actor("lot-benno", "Benno Example", Set.of(Role.SUPERVISOR));

    @TestHTTPResource("/")
    URL server;

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    AuditActs audits;

    @Inject
    MovedClock clock;

    @BeforeEach
    void people() {
        for (Actor person : List.of(TARO, TILDA, MORA, SELMA, BENNO, ADA)) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
        people.setMentor(ADA, TARO.account(), MORA.account());
    }

    @AfterEach
    void clockIsPutRight() {
        clock.putRight();
    }

    private Person at(Actor person, String path) {
        Person somebody = new Person(server.toString()).signIn(person.account(), PASSWORD);
        somebody.go(path);
        return somebody;
    }

    /** Of so many tickets, all of a trainee and three of the rest are looked at. */
    private void stated(List<TicketNumber> closed) {
        // lots of other tests lie before; two never overlap
        clock.putForward(Duration.ofDays(100));
        Instant from = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        for (int i = 0; i < 5; i++) {
            closed.add(ClosedTickets.one(tickets, TILDA));
        }
        Map<Stratum, Take> takes = new EnumMap<>(Stratum.class);
        for (Stratum stratum : Stratum.values()) {
            takes.put(stratum, Take.usual(stratum, 3));
        }
        audits.state(
                new AuditPlan(
                        LOT, from, clock.instant().plusSeconds(20), takes, 3, AuditPlan.Otherwise.DOUBLE_NEXT, ""),
                SELMA);
    }

    private static Turn turn(Person reviewer) {
        String[] path = reviewer.page.url().replaceAll("[?#].*", "").split("/");
        return new Turn(path[path.length - 2], Integer.parseInt(path[path.length - 1]));
    }

    /** Takes and signs what is left, as the reviewer whose second looks find a little else. */
    private void reviewAll(Actor by) {
        for (int i = 0; i < 30; i++) {
            Turn turn;
            try {
                turn = audits.give(LOT, by.account(), "", by);
            } catch (Invalid nothingLeft) {
                return;
            }
            LotRounds.markAll(
                    LOT,
                    turn,
                    by,
                    turn.turn() == 1 ? List.of("logs-reviewed") : List.of("logs-reviewed", "scope-known"));
            audits.sign(LOT, turn, by);
        }
    }

    @Test
    void aLot_fromItsPlanToTheAddendumThatNeverComes() {
        List<TicketNumber> closed = new ArrayList<>();
        stated(closed);
        try (Person selma = at(SELMA, "/audit")) {
            selma.look("audit-lots");
            selma.go("/audit/plan");
            selma.look("audit-plan");
            selma.go("/audit/" + LOT);
            selma.sees("The server freezes the list");
            selma.look("audit-stated");
        }
        clock.putForward(Duration.ofMinutes(2));
        LotRounds.draw();
        try (Person selma = at(SELMA, "/audit/" + LOT)) {
            selma.look("audit-drawn");
            selma.press("Take the next review");
            selma.lookInEveryWay("audit-review");
            Turn taken = turn(selma);
            selma.page.locator("button[name=mark][value=NOT_SATISFIED]").click();
            selma.sees("Say what is not so.");
            selma.look("audit-review-refused");
            LotRounds.markAll(LOT, taken, SELMA, List.of("logs-reviewed", "symptom-observed"));
            selma.go("/audit/" + LOT + "/reviews/" + taken.ticket() + "/" + taken.turn());
            selma.look("audit-review-to-sign");
            selma.press("Sign this review");
        }
        reviewAll(SELMA);
        reviewAll(BENNO);
        reviewAll(SELMA);
        try (Person selma = at(SELMA, "/audit/" + LOT)) {
            selma.sees("Where the two readers differ");
            selma.look("audit-differences");
            for (int i = 0;
                    i < 20
                            && selma.page
                                            .locator("button:visible:has-text('Settle')")
                                            .count()
                                    > 0;
                    i++) {
                selma.page
                        .locator("form[action$=settlements] select[name=mark]")
                        .first()
                        .selectOption("SATISFIED");
                selma.page
                        .locator("form[action$=settlements] input[name=remark]")
                        .first()
                        .fill("Both of us looked again");
                selma.page.locator("form[action$=settlements] button").first().click();
                selma.page.waitForLoadState();
            }
            selma.sees("What it says of the whole lot");
            selma.page
                    .locator("form[action$=addenda]")
                    .first()
                    .locator("xpath=..")
                    .locator("summary")
                    .click();
            selma.page
                    .locator("form[action$=addenda] textarea")
                    .first()
                    .fill("Say which log was read, and how you know");
            selma.look("audit-asking");
            selma.page.locator("form[action$=addenda] button").first().click();
            selma.page.waitForLoadState();
            selma.fill("decision", "We read the logs together at the next shift");
            selma.press("Conclude the audit");
            selma.sees("Concluded.");
            selma.lookInEveryWay("audit-concluded");
            selma.go("/audit/" + LOT + "/report");
            selma.look("audit-report");
        }
        try (Person tilda = at(TILDA, "/my-reviews")) {
            tilda.sees("What to look at next time");
            tilda.lookInEveryWay("audit-own");
        }
        try (Person selma = at(SELMA, "/audit-coaching")) {
            selma.sees(TILDA.name());
            selma.go("/audit-coaching/" + TILDA.account());
            selma.look("audit-coached");
        }
        clock.putForward(Duration.ofDays(60));
        try (Person benno = at(BENNO, "/audit/" + LOT)) {
            benno.page
                    .locator("summary:has-text('Wait for it no longer')")
                    .first()
                    .click();
            benno.look("audit-closable");
            benno.press("Close it without");
            benno.sees("Say why it is waited for no longer.");
            benno.look("audit-closable-refused");
            benno.fill("closing", "That log is gone");
            benno.press("Close it without");
            benno.sees("closed without it: That log is gone");
            benno.look("audit-closed-without");
        }
        try (Person tilda = at(TILDA, "/my-reviews")) {
            tilda.sees("Closed without it: That log is gone");
        }
        people.setRoles(ADA, TILDA.account(), Set.of(Role.TRAINEE));
        people.setMentor(ADA, TILDA.account(), MORA.account());
        try (Person mora = at(MORA, "/coach")) {
            mora.sees("Your trainees");
            mora.page.locator("main a[href='/audit-coaching']").click();
            mora.sees("You see your own trainees.");
            mora.look("audit-coaching-of-a-mentor");
            mora.page.locator("main a:has-text('" + TILDA.name() + "')").click();
            mora.sees("what reviews asked");
        }
        assertEquals(5, closed.size());
    }
}

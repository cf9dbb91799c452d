package org.benchtrail.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.knowledge.ClosedTickets;
import org.benchtrail.people.Browser;
import org.benchtrail.people.Permission;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.Outcome;
import org.junit.jupiter.api.Test;

/** Who may review, what one reader is shown of another, and when a lot may be concluded. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class LotReviewTest extends LotCourse {
    /** Roles change between: who had no part when the review was given has one before the mark. */
    @Test
    void independence_isLookedAtAgain_andWhoReviewedDoesNoWorkLater() {
        Instant from = begins();
        TicketNumber number = ClosedTickets.one(tickets, TINA);
        int end = looks.ticket(number, TINA).sheet().entries();
        stated(from, 9);
        drawn();
        String review = at(take(boris));
        done(tickets.perform(number, end, List.<Act>of(s -> new Reopened("It is hot again")), SUE));
        // given before: who reviews it takes no part in the work
        Outcome handed =
                tickets.perform(number, end + 1, List.<Act>of(s -> new HandedOver("audit-boris", Set.of(), "")), SUE);
        assertEquals("has-judged", handed.missing().get(0).code());
        TestDatabase.run("update audit_review set reviewer = 'audit-other' where lot = '" + lot + "'");
        done(tickets.perform(
                number, handed.sheet().entries(), List.<Act>of(s -> new HandedOver("audit-boris", Set.of(), "")), SUE));
        // that it was handed to him after the draw keeps him from nothing; that he worked on it does
        Map<String, Object> scope =
                Map.of("requirement", "scope-known", "mark", "SATISFIED", "defect", "", "entries", "3", "remark", "");
        at(boris.post(review + "/marks", scope));
        done(tickets.perform(
                number,
                looks.ticket(number, BORIS).sheet().entries(),
                List.<Act>of(s -> new ScopeRecorded(Scope.ONE, "")),
                BORIS));
        Response marked = boris.post(review + "/marks", scope);
        refused(422, marked);
        assertTrue(marked.asString().contains("You are not independent any more"), marked.asString());
        refused(422, boris.post(review + "/signature", Map.of()));
        assertTrue(boris.get(review).asString().contains("This ticket went on after it ended"));
        refused(422, boris.post(review + "/decline", Map.of("why", " ")));
        at(boris.post(review + "/decline", Map.of("why", "It came into my hands")));
        refused(422, take(boris));
    }

    /** Who looks at all and leaves what he does not like to others is seen; who left the shop holds nothing up. */
    @Test
    void whatIsDeclined_isTold_andDoesNotComeBack_andWhoLeft_holdsNothingUp() {
        Instant from = begins();
        ended(TINA);
        ended(TINA);
        stated(from, 9);
        drawn();
        String declined = at(take(boris));
        at(boris.post(declined + "/decline", Map.of("why", "I know the owner")));
        String next = at(take(boris));
        assertFalse(next.equals(declined), "not the same again");
        at(boris.post(next + "/decline", Map.of("why", "And this one")));
        refused(422, take(boris));
        String report = sue.get("/audit/" + lot + "/report").asString();
        assertTrue(report.contains("Declined by") && report.contains("Boris Lund"), report);
        assertFalse(report.contains("I know the owner"), "the words come when no reader is led by them");

        people.ensureAccount(VERA.account(), VERA.name(), VERA.roles(), PASSWORD);
        Browser vera = Browser.signedIn(VERA.account(), PASSWORD);
        assertEquals(declined, at(take(vera)));
        assertEquals(1, Giving.open(now()).size());
        TestDatabase.run("update account set active = false where login = '" + VERA.account() + "'");
        try {
            job.round();
            assertEquals(2, Giving.open(now()).size());
            assertEquals(1, now().returned().size());
            int acts = now().acts().size();
            job.round();
            assertEquals(acts, now().acts().size(), "once");
            assertTrue(sue.get("/audit/" + lot + "/report").asString().contains("from Vera Holm"));
        } finally {
            TestDatabase.run("update account set active = true where login = '" + VERA.account() + "'");
        }
        assertEquals(declined, at(take(sue)));
    }

    /** Signals are in no answer before every mark is final, move nothing, and are measured by what was drawn. */
    @Test
    void signals_areInNoAnswer_beforeEveryMarkIsFinal() {
        Instant from = begins();
        TicketNumber number = ClosedTickets.one(tickets, TINA);
        ended(TINA);
        stated(from, 9);
        drawn();
        long kept = QuarkusTransaction.requiringNew().call(() -> rows.signals(lot)).stream()
                .filter(s -> s.ticket().equals(number.toString()))
                .count();
        assertTrue(kept > 0, "a ticket that a test wrote in a second shows some");
        assertFalse(page().contains("id=\"signals\""));
        refused(
                422,
                sue.post(
                        "/audit/" + lot + "/signals",
                        Map.of("signal", "SHORT_TEXT", "shown", "no", "remark", "I have seen it")));
        String taken = at(take(sue));
        assertFalse(sue.get(taken).asString().contains("<h2>Signals</h2>"));
        markAll(SUE, taken, "");
        at(sue.post(taken + "/signature", Map.of()));
        assertFalse(sue.get(taken).asString().contains("<h2>Signals</h2>"), "others are open: it would tell of those");
        String events = QuarkusTransaction.requiringNew()
                .call(() -> rows.lot(lot))
                .acts()
                .toString();
        assertFalse(events.contains("SHORT_TEXT"), "the stream of the lot holds none");
        reviewAll("");
        String page = page();
        assertTrue(page.contains("id=\"signals\"") && page.contains("Not yet known"), page);
        String seen = sue.get("/audit/" + lot + "/reviews/" + number + "/1").asString();
        assertTrue(seen.contains("<h2>Signals</h2>"), seen);
        assertFalse(tina.get("/my-reviews").asString().contains("Signals"));
        assertFalse(sue.get("/audit/" + lot + "/report").asString().contains("Signals"));
        assertThrows(
                RuntimeException.class,
                () -> TestDatabase.run("delete from audit_signal where lot = '" + lot + "'"),
                "nobody takes one out");

        // switched off, by one who may, with a reason; measured all the same
        Map<String, String> off = Map.of("signal", "SHORT_TEXT", "shown", "no", "remark", "It tells nothing here");
        refused(403, tina.post("/audit/" + lot + "/signals", off));
        refused(
                422,
                sue.post("/audit/" + lot + "/signals", Map.of("signal", "SHORT_TEXT", "shown", "no", "remark", "")));
        refused(422, sue.post("/audit/" + lot + "/signals", Map.of("signal", "NONE", "shown", "no", "remark", "Why")));
        at(sue.post("/audit/" + lot + "/signals", off));
        assertTrue(page().contains("Switched off"));
        assertFalse(
                QuarkusTransaction.requiringNew().call(() -> SignalViews.shown(now(), number.toString(), rows)).stream()
                        .anyMatch(s -> s.title().equals(org.benchtrail.core.audit.SignalKind.SHORT_TEXT.title())));
        at(sue.post("/audit/" + lot + "/conclusion", Map.of("decision", "Nothing to do")));
        long marked = QuarkusTransaction.requiringNew().call(() -> rows.worth(12)).values().stream()
                .mapToLong(org.benchtrail.core.audit.SignalWorth::with)
                .sum();
        assertTrue(marked > 0);
        at(sue.post("/audit/" + lot + "/signals", Map.of("signal", "SHORT_TEXT", "shown", "yes", "remark", "Again")));
        assertFalse(page().contains("Switched off"));
    }

    /** What follows was said beforehand, and nobody concludes around it. */
    @Test
    void aLotThatIsNotAccepted_isReviewedInFull_beforeItIsConcluded() {
        Instant from = begins();
        for (int i = 0; i < 3; i++) {
            ended(TINA);
        }
        stated(from, 1);
        drawn();
        refused(422, sue.post("/audit/" + lot + "/rest", Map.of()));
        reviewAll("symptom-observed");
        assertTrue(page().contains("Not accepted.") && page().contains("2 tickets more"), page());
        assertTrue(sue.get("/audit").asString().contains("not accepted, the rest is to be drawn"));
        assertFalse(page().contains("id=\"signals\""), "who reviews the rest would see them");
        refused(422, sue.post("/audit/" + lot + "/conclusion", Map.of("decision", "It is not so bad")));
        refused(403, tina.post("/audit/" + lot + "/rest", Map.of()));
        at(sue.post("/audit/" + lot + "/rest", Map.of()));
        refused(422, sue.post("/audit/" + lot + "/rest", Map.of()));
        assertEquals(3, now().drawnTickets().size());
        assertEquals(now().sample(), now().drawn());
        refused(422, sue.post("/audit/" + lot + "/conclusion", Map.of("decision", "It is not so bad")));
        reviewAll("");
        at(sue.post("/audit/" + lot + "/conclusion", Map.of("decision", "We talk about symptoms")));
        assertTrue(page().contains("more defects than the plan allows: the rest of it was reviewed."), page());
        assertTrue(page().contains("The draw holds") || page().contains("holds"), page());
    }

    /** Who worked on it does not say in the end what counts of it, at whichever door they come. */
    @Test
    void whoHadAPart_settlesNothing() {
        for (Actor person : List.of(CORA, VERA)) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
        Instant from = begins();
        String ticket = ended(BORIS).toString(); // which Cora cancelled
        stated(from, 9);
        drawn();
        Browser vera = Browser.signedIn(VERA.account(), PASSWORD);
        String first = at(take(sue));
        markAll(SUE, first, "logs-reviewed");
        at(sue.post(first + "/signature", Map.of()));
        String second = at(take(vera));
        markAll(VERA, second, "");
        at(vera.post(second + "/signature", Map.of()));
        Map<String, String> settled = Map.of(
                "of", ticket + "/logs-reviewed", "mark", "SATISFIED", "defect", "", "remark", "I read them then");
        String door = "/audit/" + lot + "/settlements";
        for (Actor had : List.of(BORIS, CORA)) {
            Response answer = Browser.signedIn(had.account(), PASSWORD).post(door, settled);
            refused(422, answer);
            assertTrue(answer.asString().contains("Who settles it had no part in the ticket."), had.name());
        }
        refused(403, tina.post(door, settled));
        assertEquals(1, now().differences().size(), "it is open still");
        people.ensureAccount(WANDA.account(), WANDA.name(), WANDA.roles(), PASSWORD);
        at(Browser.signedIn(WANDA.account(), PASSWORD).post(door, settled));
        assertEquals(0, now().differences().size());
    }

    /** The lot says by itself that it stands still, and for what. */
    @Test
    void aSecondReadingThatNobodyIsLeftFor_isSaid() {
        Instant from = begins();
        ended(TINA);
        stated(from, 9);
        drawn();
        String first = at(take(sue));
        markAll(SUE, first, "");
        at(sue.post(first + "/signature", Map.of()));
        assertFalse(page().contains("Nobody is left."));
        String second = at(take(boris));
        at(boris.post(second + "/decline", Map.of("why", "I know the owner")));
        List<String> others = directory.allowed(Permission.REVIEW).stream()
                .map(Actor::account)
                .filter(a -> !a.equals(SUE.account()) && !a.equals(BORIS.account()))
                .toList();
        try {
            others.forEach(a -> TestDatabase.run("update account set active = false where login = '" + a + "'"));
            String ticket = first.split("/")[4];
            assertTrue(
                    page().contains("The second review of " + ticket + " needs another person: Boris Lund declined it,"
                            + " Sue Marsh read it first"),
                    page());
            people.ensureAccount(WANDA.account(), WANDA.name(), WANDA.roles(), PASSWORD);
            assertFalse(page().contains("Nobody is left."), "Wanda is");
        } finally {
            others.forEach(a -> TestDatabase.run("update account set active = true where login = '" + a + "'"));
        }
    }
}

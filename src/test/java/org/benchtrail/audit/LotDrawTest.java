package org.benchtrail.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.benchtrail.core.audit.AuditAct.Item;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Addendum;
import org.benchtrail.knowledge.ClosedTickets;
import org.benchtrail.people.Browser;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.Act;
import org.junit.jupiter.api.Test;

/** A lot from its plan to its report, and each way to steer what is drawn. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class LotDrawTest extends LotCourse {
    /** What was found not satisfied of a ticket of Tina's. */
    private List<String> found(TicketNumber ticket) {
        return judged.of(TINA.account()).stream()
                .filter(m -> m.ticket().equals(ticket) && !m.satisfied())
                .map(JudgedWork.Marked::code)
                .toList();
    }

    @Test
    void aLot_fromPlanToReport_isSteeredByNobody() throws Exception {
        Instant from = begins();
        ended(TINA);
        TicketNumber closed = ClosedTickets.one(tickets, TINA);
        TicketNumber own = ended(BORIS);
        stated(from, 9);
        refused(422, sue.post("/audit/plan", Map.of("act", "state", "lot", lot)));
        refused(422, take(sue));
        drawn();
        AuditLot lotNow = now();
        assertEquals(3, lotNow.items().size());
        assertEquals(3, lotNow.drawnTickets().size());
        assertEquals(
                lotNow.seed().orElseThrow().seed(),
                lotNow.seedAgain().map(Hash::hex).orElseThrow());

        // drawing again, or freezing again: nothing has such a door, and the database refuses a second entry
        job.round();
        assertEquals(lotNow.acts().size(), now().acts().size());
        assertThrows(
                RuntimeException.class,
                () -> QuarkusTransaction.requiringNew()
                        .run(() -> rows.append(
                                lot,
                                new org.benchtrail.core.audit.AuditAct.Entry(
                                        99,
                                        Instant.now(),
                                        "audit-sue",
                                        lotNow.frozen().orElseThrow()))));
        assertThrows(
                RuntimeException.class,
                () -> TestDatabase.run("update audit_act set body = '{}' where lot = '" + lot + "'"));

        // Tina has no door
        refused(403, tina.get("/audit/" + lot));
        refused(403, take(tina));
        refused(403, tina.post("/audit/" + lot + "/conclusion", Map.of("decision", "All is well")));

        // Boris is never given his own ticket
        List<String> reviews = new ArrayList<>();
        String ticket = closed.toString();
        String first = "/audit/" + lot + "/reviews/" + ticket + "/1";
        String taken = at(take(boris));
        assertEquals(taken, at(take(boris)), "one at a time: the open one is given again");
        if (!taken.equals(first)) {
            markAll(BORIS, taken, "");
            at(boris.post(taken + "/signature", Map.of()));
            reviews.add(taken);
            taken = at(take(boris));
        }
        assertEquals(first, taken);
        refused(422, sue.post("/audit/" + lot + "/reviews", Map.of("reviewer", BORIS.account(), "despite", "")));

        // another's review, another's ticket, one that was not drawn
        refused(404, sue.get(first));
        Map<String, Object> mark =
                Map.of("requirement", "scope-known", "mark", "SATISFIED", "defect", "", "entries", "3", "remark", "");
        refused(404, sue.post(first + "/marks", mark));
        refused(404, boris.get("/audit/" + lot + "/reviews/" + own + "/1"));
        refused(
                422,
                boris.post(
                        first + "/marks",
                        Map.of(
                                "requirement",
                                "scope-known",
                                "mark",
                                "NOT_SATISFIED",
                                "defect",
                                "",
                                "entries",
                                "",
                                "remark",
                                "Not so")));
        refused(
                422,
                boris.post(
                        first + "/marks",
                        Map.of(
                                "requirement",
                                "scope-known",
                                "mark",
                                "SATISFIED",
                                "defect",
                                "",
                                "entries",
                                "99",
                                "remark",
                                "")));
        refused(422, boris.post(first + "/signature", Map.of()));

        // no name of who did the work, and what the server cites
        String folded = boris.get(first).asString();
        assertFalse(folded.contains("Tina Brook"), "names are folded");
        at(boris.post(first + "/marks", mark));
        markAll(BORIS, first, "logs-reviewed");
        assertEquals("/audit/" + lot, at(boris.post(first + "/signature", Map.of())));
        reviews.add(first);
        assertEquals(List.of(), found(closed), "the second reader has not signed yet");
        if (reviews.size() < 2) {
            String other = at(take(boris));
            assertFalse(other.contains(own.toString()), other);
            markAll(BORIS, other, "");
            at(boris.post(other + "/signature", Map.of()));
        }
        refused(422, take(boris));
        refused(422, boris.post(first + "/marks", mark));
        refused(422, boris.post(first + "/decline", Map.of("why", "I think better of it")));
        refused(404, sue.get(first));

        // Sue reviews Boris' ticket first, then all that a second person looks at, blind
        String ofBoris = at(take(sue));
        assertTrue(ofBoris.endsWith(own + "/1"), ofBoris);
        markAll(SUE, ofBoris, "");
        at(sue.post(ofBoris + "/signature", Map.of()));
        refused(422, sue.post("/audit/" + lot + "/conclusion", Map.of("decision", "All is well")));
        for (int i = 0; i < 2; i++) {
            String second = at(take(sue));
            assertTrue(second.endsWith("/2"), second);
            String blind = sue.get(second).asString() + sue.get("/audit/" + lot).asString();
            assertFalse(blind.contains("Nothing was looked at"), "the first reader's words are not on the page");
            assertFalse(blind.contains("Not satisfied, "), "nor any mark");
            refused(404, sue.get(second.replaceFirst("/2$", "/1")));
            markAll(SUE, second, "");
            at(sue.post(second + "/signature", Map.of()));
        }
        refused(422, take(sue));
        refused(422, boris.post("/audit/" + lot + "/reviews", Map.of("reviewer", "audit-tina", "despite", "")));
        // the second reader of Boris' own ticket can be nobody but a third
        assertEquals(1, Giving.open(now()).size());
        people.ensureAccount(VERA.account(), VERA.name(), VERA.roles(), PASSWORD);
        Browser vera = Browser.signedIn(VERA.account(), PASSWORD);
        String third = at(take(vera));
        markAll(VERA, third, "");
        at(vera.post(third + "/signature", Map.of()));

        // one difference: settled, and never twice
        assertEquals(1, now().differences().size());
        refused(422, sue.post("/audit/" + lot + "/conclusion", Map.of("decision", "All is well")));
        Map<String, String> settled = Map.of(
                "of",
                ticket + "/logs-reviewed",
                "mark",
                "NOT_SATISFIED",
                "defect",
                "MAJOR",
                "remark",
                "No log is named");
        refused(
                422,
                sue.post(
                        "/audit/" + lot + "/settlements",
                        Map.of("of", ticket + "/scope-known", "mark", "SATISFIED", "defect", "", "remark", "Why not")));
        at(sue.post("/audit/" + lot + "/settlements", settled));
        refused(422, sue.post("/audit/" + lot + "/settlements", settled));

        // what was found counts for whoever did the work, once, as it was settled
        assertEquals(List.of("logs-reviewed"), found(closed));
        assertTrue(judged.of(TINA.account()).stream()
                        .filter(JudgedWork.Marked::satisfied)
                        .count()
                > 20);
        assertEquals(List.of(), judged.of(SUE.account()));

        // Tina reads her own reviews and is asked; the ticket stays closed and its count of defects as it was
        assertTrue(tina.get("/my-reviews").asString().contains("No log is named"));
        refused(403, tina.post("/audit/" + lot + "/addenda", Map.of("of", ticket + "/logs-reviewed", "remark", "Say")));
        at(sue.post("/audit/" + lot + "/addenda", Map.of("of", ticket + "/logs-reviewed", "remark", "Which log?")));
        refused(
                422,
                sue.post(
                        "/audit/" + lot + "/addenda", Map.of("of", ticket + "/logs-reviewed", "remark", "Which log?")));
        refused(422, sue.post("/audit/" + lot + "/addenda", Map.of("of", ticket + "/scope-known", "remark", "More")));
        assertTrue(tina.get("/today").asString().contains("thing to add to a closed ticket"));
        int end = looks.ticket(closed, TINA).sheet().entries();
        done(tickets.perform(
                closed,
                end,
                List.<Act>of(s -> new Addendum(Addendum.About.REMARK, "The system log", "logs-reviewed")),
                TINA));
        assertFalse(tina.get("/today").asString().contains("thing to add to a closed ticket"));
        assertEquals(1, now().addendaAsked().size());

        at(sue.post("/audit/" + lot + "/conclusion", Map.of("decision", "Name the log that was read")));
        refused(422, sue.post("/audit/" + lot + "/conclusion", Map.of("decision", "Once more")));
        String report = sue.get("/audit/" + lot + "/report").asString();
        assertTrue(report.contains("Of 3 tickets, 1 has a critical or major defect. Every one was looked at."), report);
        try (PDDocument pdf = Loader.loadPDF(
                sue.request().get("/audit/" + lot + "/report.pdf").asByteArray())) {
            String text = new PDFTextStripper().getText(pdf).replaceAll("\\s+", "");
            assertTrue(text.contains(now().seed().orElseThrow().seed()));
            assertTrue(text.contains(now().seed().orElseThrow().head().replaceAll("\\s+", "")), text);
            now().drawnTickets().forEach(t -> assertTrue(text.contains(t), t));
            drawnByHand(text, sue.request().get("/audit/" + lot + "/list.csv").asString());
        }
        QuarkusTransaction.requiringNew()
                .run(() -> assertEquals(
                        List.of(ticket),
                        rows.addenda(lot).stream()
                                .filter(a -> Integer.valueOf(end + 1).equals(a.entry()))
                                .map(a -> new TicketNumber(a.ticket()).toString())
                                .toList()));
    }

    /** Somebody outside, with the report on paper and a hash command alone. */
    private void drawnByHand(String paper, String list) throws IOException {
        String head = now().seed().orElseThrow().head();
        String plan = new String(now().plan().bytes(), StandardCharsets.UTF_8);
        assertTrue(paper.contains(plan.replaceAll("\\s+", "")), paper);
        String seed = hashed("cat", head + plan);
        assertTrue(paper.contains("Seed:" + seed), "the seed is that of head and plan");
        for (Item item : now().items()) {
            String ticket = item.ticket();
            String rank = hashed("printf '%b%s' \"$(echo " + seed + " | sed 's/../\\\\x&/g')\" " + ticket, "");
            assertTrue(paper.contains(ticket + rank), () -> ticket + " has rank " + rank + " in " + paper);
            String drawn = now().drawnTickets().contains(ticket) ? "yes" : "no";
            assertTrue(list.contains("," + ticket + "," + rank + "," + drawn + "\r\n"), list);
        }
    }

    private static String hashed(String command, String input) throws IOException {
        Process hash = new ProcessBuilder("bash", "-c", command + " | sha256sum").start();
        try (var in = hash.getOutputStream()) {
            in.write(input.getBytes(StandardCharsets.UTF_8));
        }
        return new String(hash.getInputStream().readNBytes(64), StandardCharsets.US_ASCII);
    }

    /** What cannot be taken back is asked once more, and what was asked is what is stated. */
    @Test
    void aPlan_isReadOnceMoreBeforeItIsStated() {
        Instant from = begins();
        lastUntil = clock.instant().plusSeconds(5);
        Map<String, Object> plan = plan(from, lastUntil, 9);
        lot = String.valueOf(plan.get("lot"));
        Response asked = sue.post("/audit/plan", plan);
        assertEquals(200, asked.statusCode());
        String page = asked.asString();
        assertTrue(page.contains("Once stated, nobody changes this plan"), page);
        assertTrue(page.contains("Lot " + lot + " takes what ends from"), page);
        assertTrue(page.contains("The name of the lot is of another month than its beginning"), page);
        assertTrue(page.contains("value=\"9\""), "what was typed is still there");
        assertEquals(404, sue.get("/audit/" + lot).statusCode(), "nothing is stated yet");

        Map<String, Object> changed = new HashMap<>(plan);
        changed.put("sure", sure(asked));
        changed.put("acceptance", "7");
        Response again = sue.post("/audit/plan", changed);
        assertEquals(200, again.statusCode(), "another plan than was read");
        assertTrue(
                again.asString().contains("at most 7 tickets of it have a critical or major defect"), again.asString());
        assertEquals(404, sue.get("/audit/" + lot).statusCode());

        changed.put("sure", sure(again));
        at(sue.post("/audit/plan", changed));
        assertTrue(page().contains("accept 7"), "what was read is what is stated");
    }

    /** A period that begins after a ticket ended leaves it out: plan and report say so. */
    @Test
    void whatEndsBetweenTwoLots_isNamed() {
        Instant from = begins();
        stated(from, 9);
        Response overlapping = sue.post("/audit/plan", plan(lastUntil.minusMillis(1), lastUntil.plusSeconds(5), 9));
        refused(422, overlapping);
        assertTrue(overlapping.asString().contains("has a part of this time"), overlapping.asString());
        clock.putForward(Duration.between(clock.instant(), lastUntil.plusSeconds(1)));
        ended(TINA);
        clock.putForward(Duration.between(clock.instant(), clock.instant().plusSeconds(5)));
        Instant second = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        Response look = sue.post("/audit/plan", Map.of("act", "look", "from", local(second)));
        assertTrue(look.asString().contains("1 ticket ended between"), look.asString());
        stated(second, 9);
        assertTrue(sue.get("/audit/" + lot).asString().contains("1 ticket ended between"), "before it is frozen");
        drawn();
        assertTrue(sue.get("/audit/" + lot + "/report").asString().contains("1 ticket ended between"));
    }

    /** Bad tickets that are left open are seen: page and paper tell how many there were at the end, and since when. */
    @Test
    void whatIsStillOpen_isTold_withItsAge() throws IOException {
        String open = "select count(*) from ticket where standing = 'OPEN'";
        String before = TestDatabase.one(open);
        TestDatabase.unguarded("ticket", "update ticket set standing = 'ASIDE' where standing = 'OPEN'");
        try {
            Instant from = begins();
            clock.putForward(Duration.ofDays(-3));
            Instant opened = clock.instant();
            TicketNumber old = tickets.open(lamp(), TINA).number();
            clock.putForward(Duration.ofDays(3));
            tickets.open(lamp(), TINA);
            ended(TINA);
            stated(from, 9);
            clock.putForward(Duration.between(clock.instant(), lastUntil.plusSeconds(5)));
            tickets.open(lamp(), TINA); // after the period
            drawn();
            assertEquals("3", TestDatabase.one(open));
            String told = "2, not in the lot; the oldest was opened "
                    + Moments.text(opened.truncatedTo(ChronoUnit.SECONDS), ZoneId.of("UTC")) + ", 3 days before";
            assertTrue(page().contains(told), told + " is not on " + page());
            assertEquals(2, now().frozen().orElseThrow().open());
            assertFalse(now().drawnTickets().contains(old.toString()));
            try (PDDocument pdf = Loader.loadPDF(
                    sue.request().get("/audit/" + lot + "/report.pdf").asByteArray())) {
                String paper = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
                assertTrue(paper.contains("Still open at its end " + told), paper);
            }
        } finally {
            TestDatabase.unguarded("ticket", "update ticket set standing = 'OPEN' where standing = 'ASIDE'");
        }
        assertEquals(Integer.parseInt(before) + 3, Integer.parseInt(TestDatabase.one(open)), "put back");
    }

    /** What somebody chose is looked at beside the sample and counts in nothing. */
    @Test
    void whatIsChosen_standsOutsideTheEstimate() {
        Instant from = begins();
        ended(TINA);
        ended(TINA);
        stated(from, 1);
        drawn();
        String left = now().rest().values().iterator().next().get(0);
        Map<String, String> chosen = Map.of("chosen", left, "why", "The owner asked");
        refused(403, tina.post("/audit/" + lot + "/chosen", chosen));
        refused(422, sue.post("/audit/" + lot + "/chosen", Map.of("chosen", left, "why", " ")));
        refused(
                422,
                sue.post(
                        "/audit/" + lot + "/chosen",
                        Map.of("chosen", now().drawnTickets().get(0), "why", "It was drawn")));
        refused(422, sue.post("/audit/" + lot + "/chosen", Map.of("chosen", "10000-0", "why", "Of no lot")));
        at(sue.post("/audit/" + lot + "/chosen", chosen));
        refused(422, sue.post("/audit/" + lot + "/chosen", chosen));
        reviewAll("");
        String page = page();
        assertTrue(page.contains("The owner asked") && page.contains("reviewed, nothing found"), page);
        assertTrue(page.contains("Of 2 tickets, between 0 and 1"), page);
        assertEquals(1, now().drawnTickets().size());
        assertEquals(
                2, now().reviews().stream().filter(r -> r.turn().turn() == 1).count());
        assertTrue(sue.get("/audit/" + lot + "/report").asString().contains("The owner asked"));
    }

    @Test
    void aLotThatIsNotAccepted_doublesTheNextPlan() {
        Instant from = begins();
        for (int i = 0; i < 3; i++) {
            ended(TINA);
        }
        lastUntil = clock.instant().plusSeconds(5);
        Map<String, Object> plan = plan(from, lastUntil, 2);
        plan.put("otherwise", "DOUBLE_NEXT");
        lot = String.valueOf(plan.get("lot"));
        at(state(plan));
        drawn();
        reviewAll("symptom-observed");
        assertFalse(page().contains("Draw the rest"));
        refused(422, sue.post("/audit/" + lot + "/rest", Map.of()));
        at(sue.post("/audit/" + lot + "/conclusion", Map.of("decision", "We talk about symptoms")));
        assertTrue(page().contains("State the next plan"));
        assertTrue(sue.get("/audit/plan").asString().contains("was not accepted, and its plan says"));
        Instant next = begins();
        Response less = sue.post("/audit/plan", plan(next, next.plusSeconds(60), 3));
        refused(422, less);
        assertTrue(less.asString().contains("at least 4"), less.asString());
        lastUntil = next.plusSeconds(60);
        at(state(plan(next, lastUntil, 4)));
        assertFalse(sue.get("/audit/plan").asString().contains("was not accepted, and its plan says"), "once");
    }
}

package org.benchtrail.audit;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ThreadLocalRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.AuditLot.Turn;
import org.benchtrail.core.audit.Mending;
import org.benchtrail.core.audit.Stratum;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Addendum;
import org.benchtrail.core.method.desk.AddendumCountersigned;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.knowledge.ClosedTickets;
import org.benchtrail.people.Browser;
import org.benchtrail.people.Directory;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.people.Permission;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.SealRounds;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.TicketQueries;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A lot through its whole course in browsers, and each way to steer it on the way. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class AuditAttackTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor TINA = new Actor("audit-tina", "Tina Brook", Set.of(Role.TECHNICIAN));
    private static final Actor SUE = new Actor("audit-sue", "Sue Marsh", Set.of(Role.SUPERVISOR));
    private static final Actor BORIS = new Actor("audit-boris", "Boris Lund", Set.of(Role.SUPERVISOR));
    private static final Actor CORA = new Actor("audit-cora", "Cora Fenn", Set.of(Role.SUPERVISOR));
    private static final Actor VERA = new Actor("audit-vera", "Vera Holm", Set.of(Role.SUPERVISOR));

    private static final Actor RON = new Actor("audit-ron", "Ron Vale", Set.of(Role.TECHNICIAN));
    private static final Actor MILA = new Actor("audit-mila", "Mila Strand", Set.of(Role.TECHNICIAN, Role.MENTOR));
    private static final Actor WANDA = new Actor("audit-wanda", "Wanda Rhys", Set.of(Role.SUPERVISOR));

    @Inject
    PeopleActs people;

    @Inject
    Directory directory;

    @Inject
    TicketActs tickets;

    @Inject
    TicketQueries looks;

    @Inject
    ReviewQueries queries;

    @Inject
    JudgedWork judged;

    @Inject
    MendedPapers mended;

    @Inject
    LotJob job;

    @Inject
    LotRows rows;

    @Inject
    AuditActs acts;

    @Inject
    MovedClock clock;

    /** End of the period of the test before; a ticket is in one lot only. */
    private static Instant lastUntil = Instant.EPOCH;

    private Browser sue = new Browser();
    private Browser boris = new Browser();
    private Browser tina = new Browser();
    private String lot = "";

    @BeforeEach
    void persons() {
        for (Actor person : List.of(TINA, SUE, BORIS)) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
        sue = Browser.signedIn(SUE.account(), PASSWORD);
        boris = Browser.signedIn(BORIS.account(), PASSWORD);
        tina = Browser.signedIn(TINA.account(), PASSWORD);
    }

    private Instant begins() {
        if (clock.instant().isBefore(lastUntil)) {
            clock.putForward(Duration.between(clock.instant(), lastUntil));
        }
        return clock.instant().truncatedTo(ChronoUnit.MILLIS).plusMillis(1);
    }

    @AfterEach
    void clockIsPutRight() {
        clock.putRight();
    }

    private TicketNumber ended(Actor by) {
        TicketNumber number = tickets.open(lamp(), by).number();
        List<Act> all = new ArrayList<>();
        all.add(s -> new ScopeRecorded(Scope.ONE, ""));
        all.add(s -> new LogsReviewed(true, "Nothing"));
        done(tickets.perform(number, 1, all, by));
        done(tickets.perform(number, 3, List.<Act>of(s -> new Cancelled("It was the bulb", null)), CORA));
        return number;
    }

    private static NewTicket lamp() {
        return new NewTicket(
                "A lamp that flickers",
                "It flickers",
                Category.OTHER,
                "Lamp",
                "Hall",
                "Rae",
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                false);
    }

    private static void done(Outcome outcome) {
        assertEquals(List.of(), outcome.missing());
    }

    /** States a plan that looks at so many of the rest, in which these tickets have ended already. */
    private void stated(Instant from, int rest) {
        lastUntil = clock.instant().plusSeconds(5);
        Map<String, Object> plan = plan(from, lastUntil, rest);
        lot = String.valueOf(plan.get("lot"));
        Response answer = sue.post("/audit/plan", plan);
        assertEquals(303, answer.statusCode(), answer.asString());
    }

    private static Map<String, Object> plan(Instant from, Instant until, int rest) {
        Map<String, Object> plan = new HashMap<>();
        plan.put("act", "state");
        plan.put("lot", (2100 + ThreadLocalRandom.current().nextInt(7000)) + "-01");
        plan.put("from", local(from));
        plan.put("until", local(until));
        plan.put("acceptance", "0");
        plan.put("otherwise", "REVIEW_ALL");
        plan.put("witness", "");
        for (Stratum stratum : Stratum.values()) {
            plan.put("take." + stratum, stratum == Stratum.REST ? String.valueOf(rest) : "all");
        }
        return plan;
    }

    private static String local(Instant at) {
        return at.atZone(ZoneOffset.UTC).toLocalDateTime().toString();
    }

    private AuditLot now() {
        return QuarkusTransaction.requiringNew().call(() -> rows.lot(lot));
    }

    private void drawn() {
        clock.putForward(Duration.ofSeconds(40));
        job.round();
        assertEquals(AuditLot.State.FROZEN, now().state());
        job.round();
        assertEquals(AuditLot.State.FROZEN, now().state(), "no head yet");
        SealRounds.once();
        job.round();
        assertEquals(AuditLot.State.DRAWN, now().state());
    }

    private Response take(Browser by) {
        return by.post("/audit/" + lot + "/reviews", Map.of("reviewer", "", "despite", ""));
    }

    private static String at(Response taken) {
        assertEquals(303, taken.statusCode(), taken.asString());
        return taken.header("Location").replaceFirst("^https?://[^/]+", "");
    }

    /** Marks all that is open there; {@code faulty} as not satisfied. */
    private void markAll(Actor by, String review, String... faulty) {
        String[] path = review.split("/");
        Turn turn = new Turn(path[4], Integer.parseInt(path[5]));
        LotRounds.markAll(lot, turn, by, List.of(faulty));
    }

    /** What was found not satisfied of a ticket of Tina's. */
    private List<String> found(TicketNumber ticket) {
        return judged.of(TINA.account()).stream()
                .filter(m -> m.ticket().equals(ticket) && !m.satisfied())
                .map(JudgedWork.Marked::code)
                .toList();
    }

    private static void refused(int status, Response answer) {
        assertEquals(status, answer.statusCode(), answer.asString());
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
            drawnByHand(text);
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
    private void drawnByHand(String paper) throws IOException {
        String head = now().seed().orElseThrow().head();
        String plan = new String(now().plan().bytes(), StandardCharsets.UTF_8);
        assertTrue(paper.contains(plan.replaceAll("\\s+", "")), paper);
        String seed = hashed("cat", head + plan);
        assertTrue(paper.contains("Seed:" + seed), "the seed is that of head and plan");
        for (String ticket : now().drawnTickets()) {
            String rank = hashed("printf '%b%s' \"$(echo " + seed + " | sed 's/../\\\\x&/g')\" " + ticket, "");
            assertTrue(paper.contains(ticket + rank), () -> ticket + " has rank " + rank + " in " + paper);
        }
    }

    private static String hashed(String command, String input) throws IOException {
        Process hash = new ProcessBuilder("bash", "-c", command + " | sha256sum").start();
        try (var in = hash.getOutputStream()) {
            in.write(input.getBytes(StandardCharsets.UTF_8));
        }
        return new String(hash.getInputStream().readNBytes(64), StandardCharsets.US_ASCII);
    }

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

    private List<Integer> answers(TicketNumber ticket) {
        return QuarkusTransaction.requiringNew().call(() -> rows.addenda(lot)).stream()
                .filter(a -> a.ticket() == ticket.serial())
                .map(LotRows.AddendumRow::entry)
                .filter(java.util.Objects::nonNull)
                .toList();
    }

    /** One entry answers one thing that was asked: the one that it names, whichever was asked first. */
    @Test
    void eachAddendumThatIsAsked_needsItsOwnAnswer_andTheAnswerNamesIt() {
        Instant from = begins();
        TicketNumber closed = ClosedTickets.one(tickets, TINA);
        stated(from, 9);
        drawn();
        for (String account : List.of("sue", "boris")) {
            String review = at(take(account.equals("sue") ? sue : boris));
            markAll(account.equals("sue") ? SUE : BORIS, review, "logs-reviewed", "cause-named");
            at((account.equals("sue") ? sue : boris).post(review + "/signature", Map.of()));
        }
        for (String requirement : List.of("logs-reviewed", "cause-named")) {
            at(sue.post(
                    "/audit/" + lot + "/addenda",
                    Map.of("of", closed + "/" + requirement, "remark", "Say more of " + requirement)));
        }
        assertTrue(tina.get("/my-reviews").asString().contains("Each needs an addendum of its own"));
        nobodyIsAskedTwice(closed);
        adds(closed, null);
        adds(closed, "symptom-observed");
        assertEquals(List.of(), answers(closed), "neither names what was asked");
        int first = adds(closed, "cause-named");
        assertEquals(List.of(first), answers(closed));
        assertTrue(sue.get("/audit/" + lot).asString().contains("1 of 2 asked for are written."));
        adds(closed, "cause-named");
        assertEquals(List.of(first), answers(closed), "it is answered, and the other one is not");
        int second = adds(closed, "logs-reviewed");
        assertEquals(Set.of(first, second), Set.copyOf(answers(closed)));
        Outcome unknown = tickets.perform(
                closed,
                looks.ticket(closed, TINA).sheet().entries(),
                List.<Act>of(s -> new Addendum(Addendum.About.REMARK, "Of nothing", "cause-named")),
                BORIS);
        assertEquals("not-yours", unknown.missing().get(0).code());
        mendingIsCounted(closed, first);
    }

    /** What never comes is closed by a supervisor, once its time is over, whatever two of them do at once; what was found stays. */
    @Test
    void anAddendumThatNeverComes_isClosed_onlyOnceItsTimeIsOver() {
        Instant from = begins();
        TicketNumber closed = ClosedTickets.one(tickets, TINA);
        stated(from, 9);
        drawn();
        reviewAll("logs-reviewed", "cause-named", "symptom-observed");
        for (String requirement : List.of("logs-reviewed", "cause-named", "symptom-observed")) {
            at(sue.post(
                    "/audit/" + lot + "/addenda",
                    Map.of("of", closed + "/" + requirement, "remark", "Say more of " + requirement)));
        }
        at(sue.post("/audit/" + lot + "/conclusion", Map.of("decision", "We wait for three addenda")));
        String words = meaning();
        String door = "/audit/" + lot + "/addenda/closings";
        Map<String, String> logs = Map.of("of", closed + "/logs-reviewed", "closing", "Nobody kept that log");
        refused(422, sue.post(door, logs));
        assertFalse(page().contains("Wait for it no longer"), page());
        assertTrue(tina.get("/today").asString().contains("things to add to closed tickets"));

        clock.putForward(Duration.ofDays(60));
        persons();
        assertTrue(page().contains("Wait for it no longer") && page().contains("not written in time"), page());
        refused(403, tina.post(door, logs));
        refused(422, sue.post(door, Map.of("of", closed + "/logs-reviewed", "closing", " ")));
        refused(422, sue.post(door, Map.of("of", closed + "/scope-known", "closing", "It was never asked")));
        refused(422, sue.post(door, Map.of("of", "10000-0/logs-reviewed", "closing", "Of no ticket")));
        refused(404, sue.post("/audit/2099-01/addenda/closings", logs));
        // written late: it is answered, and not closed over
        adds(closed, "cause-named");
        refused(422, sue.post(door, Map.of("of", closed + "/cause-named", "closing", "Too late")));
        at(sue.post(door, logs));
        refused(422, boris.post(door, logs));
        assertThrows(
                RuntimeException.class,
                () -> TestDatabase.run("update audit_addendum set entry = 1 where lot = ? and closed", lot));

        String page = page();
        assertTrue(page.contains("closed without it: Nobody kept that log"), page);
        String told = tina.get("/my-reviews").asString();
        assertTrue(told.contains("Closed without it: Nobody kept that log"), told);
        assertTrue(tina.get("/today").asString().contains("1</strong> thing to add")
                || tina.get("/today").asString().contains("thing to add to a closed ticket"));
        // what is written afterwards stands on the ticket and answers nothing; the other one is still asked for
        adds(closed, "logs-reviewed");
        assertEquals(1, answers(closed).size());
        adds(closed, "symptom-observed");
        assertEquals(2, answers(closed).size());
        assertEquals(words, meaning(), "what was found does not change");
        assertEquals(new Mending(3, 3, 0, 0), mending(now().plan().until(), clock.instant()));
        assertTrue(sue.get("/audit/" + lot + "/report").asString().contains("closed without it"));
    }

    private String meaning() {
        Matcher meaning = Pattern.compile("Of [0-9]+ tickets?, [^<]*").matcher(page());
        assertTrue(meaning.find(), page());
        return meaning.group();
    }

    /** Once it is due: two were asked for and written in time, and one is mended when it is countersigned. */
    private void mendingIsCounted(TicketNumber closed, int first) {
        Instant ends = now().plan().until();
        Instant later = clock.instant().plus(Duration.ofDays(30));
        assertEquals(new Mending(2, 0, 0, 0), mending(ends, clock.instant()));
        assertEquals(new Mending(2, 2, 2, 0), mending(ends, later));
        done(tickets.perform(
                closed,
                looks.ticket(closed, TINA).sheet().entries(),
                List.<Act>of(s -> new AddendumCountersigned(first, "")),
                BORIS));
        assertEquals(new Mending(2, 2, 2, 1), mending(ends, later));
        String csv = sue.get("/figures/mending.csv").asString();
        assertTrue(csv.contains("\nAll requirements,") && csv.contains("of 30 needed"), csv);
    }

    private Mending mending(Instant ends, Instant at) {
        return mended.between(ends.minusMillis(1), ends, at).get(0).mending();
    }

    /** Who comes from what was asked finds it chosen in the form. */
    private void nobodyIsAskedTwice(TicketNumber closed) {
        String door = "/tickets/" + closed + "?answers=cause-named";
        assertTrue(tina.get("/my-reviews").asString().contains("href=\"" + door + "#addenda\""));
        assertEquals("cause-named", chosenIn(tina.get(door).asString()));
        for (String nothing : List.of("", "?answers=none-of-these", "?answers=%22%3E%3Cb%3E")) {
            String sheet = tina.get("/tickets/" + closed + nothing).asString();
            assertEquals("", chosenIn(sheet), nothing);
            assertFalse(sheet.contains("none-of-these") || sheet.contains("<b>"));
        }
    }

    /** What the form for an addendum says that it answers. */
    private static String chosenIn(String sheet) {
        String field = sheet.substring(sheet.indexOf("<select id=\"addendum.requirement\""));
        Matcher chosen = Pattern.compile("<option value=\"([^\"]*)\" selected>")
                .matcher(field.substring(0, field.indexOf("</select>")));
        return chosen.find() ? chosen.group(1) : "";
    }

    /** @return number of the entry */
    private int adds(TicketNumber closed, @org.jspecify.annotations.Nullable String requirement) {
        int end = looks.ticket(closed, TINA).sheet().entries();
        done(tickets.perform(
                closed,
                end,
                List.<Act>of(s -> new Addendum(Addendum.About.REMARK, "The system log", requirement)),
                TINA));
        return end + 1;
    }

    private void reviewAll(String... faulty) {
        List<Browser> browsers = List.of(sue, boris);
        List<Actor> actors = List.of(SUE, BORIS);
        for (int i = 0; i < 2; i++) {
            Response taken = take(browsers.get(i));
            while (taken.statusCode() == 303) {
                markAll(actors.get(i), at(taken), faulty);
                at(browsers.get(i).post(at(taken) + "/signature", Map.of()));
                taken = take(browsers.get(i));
            }
        }
    }

    private String page() {
        return sue.get("/audit/" + lot).asString();
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
                        .anyMatch(s -> s.kind() == org.benchtrail.core.audit.SignalKind.SHORT_TEXT));
        at(sue.post("/audit/" + lot + "/conclusion", Map.of("decision", "Nothing to do")));
        long marked = QuarkusTransaction.requiringNew().call(() -> rows.worth(12)).values().stream()
                .mapToLong(org.benchtrail.core.audit.SignalWorth::with)
                .sum();
        assertTrue(marked > 0);
        at(sue.post("/audit/" + lot + "/signals", Map.of("signal", "SHORT_TEXT", "shown", "yes", "remark", "Again")));
        assertFalse(page().contains("Switched off"));
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
        at(sue.post("/audit/plan", plan));
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
        at(sue.post("/audit/plan", plan(next, lastUntil, 4)));
        assertFalse(sue.get("/audit/plan").asString().contains("was not accepted, and its plan says"), "once");
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

    private TicketNumber endedByTwo() {
        TicketNumber number = tickets.open(lamp(), TINA).number();
        done(tickets.perform(number, 1, List.<Act>of(s -> new ScopeRecorded(Scope.ONE, "")), TINA));
        done(tickets.perform(number, 2, List.<Act>of(s -> new Remarked(null, null, "Which lamp is it?")), MILA));
        done(tickets.perform(number, 3, List.<Act>of(s -> new HandedOver(RON.account(), Set.of(), "")), CORA));
        done(tickets.perform(number, 4, List.<Act>of(s -> new LogsReviewed(true, "Nothing")), RON));
        done(tickets.perform(number, 5, List.<Act>of(s -> new Cancelled("It was the bulb", null)), CORA));
        return number;
    }

    /** Who did the work reads its marks once no reader is led by it; who had another part in it never does; asked is one. */
    @Test
    void ownReviews_areReadByWhoDidTheWork_whenAllAreSigned_andWhatIsAskedByWhoIsAsked() {
        for (Actor person : List.of(RON, MILA)) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
        Browser ron = Browser.signedIn(RON.account(), PASSWORD);
        Browser mila = Browser.signedIn(MILA.account(), PASSWORD);
        Instant from = begins();
        String number = endedByTwo().toString();
        stated(from, 9);
        drawn();
        String review = at(take(sue));
        markAll(SUE, review, "scope-known");
        at(sue.post(review + "/signature", Map.of()));
        for (Browser hand : List.of(tina, ron)) {
            assertFalse(hand.get("/my-reviews").asString().contains(number), "the second reader is still at it");
        }
        reviewAll("scope-known");
        at(sue.post("/audit/" + lot + "/addenda", Map.of("of", number + "/scope-known", "remark", "Whose lamp?")));
        String coachingOfRon = "/audit-coaching/" + RON.account();
        assertEquals(404, boris.get(coachingOfRon).statusCode(), "it is told to who did the work first");
        String ofRon = ron.get("/my-reviews").asString();
        String ofTina = tina.get("/my-reviews").asString();
        String ofMila = mila.get("/my-reviews").asString();
        assertAll(
                () -> assertTrue(ofTina.contains(number) && ofTina.contains("Nothing was looked at")),
                () -> assertTrue(ofRon.contains(number) && ofRon.contains("Whose lamp?")),
                () -> assertFalse(ofMila.contains(number), "a remark is no work"),
                () -> assertFalse(sue.get("/my-reviews").asString().contains(number), "nor is a review"),
                () -> assertFalse(ofTina.contains("Whose lamp?"), "it was asked of another"));
        assertFalse(tina.get("/today").asString().contains("thing to add to a closed ticket"));
        String question = "Does the answer fit what else is known of the site?";
        assertTrue(ofRon.contains("id=\"learn\"")
                && ofRon.contains(question)
                && ofRon.contains("Not satisfied in 1 of 1."));
        assertFalse(ofMila.contains("id=\"learn\""));
        for (Browser other : List.of(tina, ron)) {
            assertEquals(403, other.get(coachingOfRon).statusCode());
            assertEquals(403, other.get("/audit-coaching").statusCode());
        }
        assertEquals(404, mila.get(coachingOfRon).statusCode(), "she is a mentor, and not his");
        assertFalse(mila.get("/audit-coaching").asString().contains(RON.name()));
        assertTrue(boris.get("/audit-coaching").asString().contains(RON.name()));
        assertFalse(boris.get("/audit-coaching").asString().contains(MILA.name()), "she has none to read");
        String shown = boris.get(coachingOfRon).asString();
        assertTrue(shown.contains(question) && shown.contains(number), shown);
        assertTrue(ron.get("/my-reviews").asString().contains("Looked at by " + BORIS.name()));
        assertFalse(tina.get("/my-reviews").asString().contains("Looked at by " + BORIS.name()), "that was Ron's");
        TestDatabase.run("update coaching_read set place = place - 4 where lot = ? and person = ?", lot, RON.account());
        String earlier = boris.get(coachingOfRon).asString();
        assertFalse(earlier.contains(number), "as far as he had read it then: not all of its reviews were signed");
        theMentorOfATrainee_readsIt_asLongAsTheyAre(coachingOfRon, question);
    }

    /** Of their own trainee, as far as that one has read it; not before, not of another, and not once one of them is it no more. */
    private void theMentorOfATrainee_readsIt_asLongAsTheyAre(String coachingOfRon, String question) {
        Actor ada = new Actor("audit-ada", "Ada Finch", Set.of(Role.ADMINISTRATOR));
        people.ensureAccount(ada.account(), ada.name(), ada.roles(), PASSWORD);
        try {
            people.setRoles(ada, RON.account(), Set.of(Role.TRAINEE));
            people.setMentor(ada, RON.account(), MILA.account());
            Browser mila = Browser.signedIn(MILA.account(), PASSWORD);
            Browser again = Browser.signedIn(RON.account(), PASSWORD);
            again.get("/my-reviews");
            String shown = mila.get(coachingOfRon).asString();
            assertTrue(shown.contains(question) && shown.contains("Not satisfied in 1 of 1."), shown);
            assertTrue(mila.get("/audit-coaching").asString().contains(RON.name()));
            assertEquals(404, mila.get("/audit-coaching/" + TINA.account()).statusCode(), "another's");
            assertEquals(403, mila.get("/audit/" + lot).statusCode());
            assertTrue(again.get("/my-reviews").asString().contains("Looked at by " + MILA.name()));
            assertEquals(403, again.get("/audit-coaching").statusCode(), "a trainee coaches nobody");

            // what he has not read yet is his first
            TestDatabase.run("delete from coaching_read where person = ?", RON.account());
            assertEquals(404, mila.get(coachingOfRon).statusCode());
            again.get("/my-reviews");
            assertEquals(200, mila.get(coachingOfRon).statusCode());

            people.setMentor(ada, RON.account(), "");
            assertEquals(404, mila.get(coachingOfRon).statusCode(), "not his mentor any more");
            people.setMentor(ada, RON.account(), MILA.account());
            people.setRoles(ada, RON.account(), Set.of(Role.TECHNICIAN));
            assertEquals(404, mila.get(coachingOfRon).statusCode(), "no trainee any more");
            people.setRoles(ada, RON.account(), Set.of(Role.TRAINEE));
            people.setRoles(ada, MILA.account(), Set.of(Role.TECHNICIAN));
            Browser once = Browser.signedIn(MILA.account(), PASSWORD);
            assertEquals(403, once.get(coachingOfRon).statusCode(), "no mentor any more");
            assertEquals(List.of(), directory.traineesOf(MILA.account()));
            assertEquals("", directory.mentorOf(RON.account()));
        } finally {
            people.setRoles(ada, RON.account(), RON.roles());
            people.setRoles(ada, MILA.account(), MILA.roles());
        }
    }
}

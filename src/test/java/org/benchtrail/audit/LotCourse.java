package org.benchtrail.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.restassured.response.Response;
import jakarta.inject.Inject;
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
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.AuditLot.Turn;
import org.benchtrail.core.audit.Stratum;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.people.Browser;
import org.benchtrail.people.Directory;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.TicketQueries;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;

/** Lots in browsers: who is there, tickets that have ended, a plan, and a draw. */
abstract class LotCourse {
    private static final Pattern SURE = Pattern.compile("name=\"sure\" value=\"([0-9a-f]{64})\"");
    static final String PASSWORD = "a long enough password";
    static final Actor TINA = new Actor("audit-tina", "Tina Brook", Set.of(Role.TECHNICIAN));
    static final Actor SUE = new Actor("audit-sue", "Sue Marsh", Set.of(Role.SUPERVISOR));
    static final Actor BORIS = new Actor("audit-boris", "Boris Lund", Set.of(Role.SUPERVISOR));
    static final Actor CORA = new Actor("audit-cora", "Cora Fenn", Set.of(Role.SUPERVISOR));
    static final Actor VERA = new Actor("audit-vera", "Vera Holm", Set.of(Role.SUPERVISOR));

    static final Actor RON = new Actor("audit-ron", "Ron Vale", Set.of(Role.TECHNICIAN));
    static final Actor MILA = new Actor("audit-mila", "Mila Strand", Set.of(Role.TECHNICIAN, Role.MENTOR));
    static final Actor WANDA = new Actor("audit-wanda", "Wanda Rhys", Set.of(Role.SUPERVISOR));

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
    static Instant lastUntil = Instant.EPOCH;

    Browser sue = new Browser();
    Browser boris = new Browser();
    Browser tina = new Browser();
    String lot = "";

    @BeforeEach
    void persons() {
        for (Actor person : List.of(TINA, SUE, BORIS)) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
        sue = Browser.signedIn(SUE.account(), PASSWORD);
        boris = Browser.signedIn(BORIS.account(), PASSWORD);
        tina = Browser.signedIn(TINA.account(), PASSWORD);
    }

    Instant begins() {
        if (clock.instant().isBefore(lastUntil)) {
            clock.putForward(Duration.between(clock.instant(), lastUntil));
        }
        return clock.instant().truncatedTo(ChronoUnit.MILLIS).plusMillis(1);
    }

    @AfterEach
    void clockIsPutRight() {
        clock.putRight();
    }

    TicketNumber ended(Actor by) {
        TicketNumber number = tickets.open(lamp(), by).number();
        List<Act> all = new ArrayList<>();
        all.add(s -> new ScopeRecorded(Scope.ONE, ""));
        all.add(s -> new LogsReviewed(true, "Nothing"));
        done(tickets.perform(number, 1, all, by));
        done(tickets.perform(number, 3, List.<Act>of(s -> new Cancelled("It was the bulb", null)), CORA));
        return number;
    }

    static NewTicket lamp() {
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

    static void done(Outcome outcome) {
        assertEquals(List.of(), outcome.missing());
    }

    /** States a plan that looks at so many of the rest, in which these tickets have ended already. */
    void stated(Instant from, int rest) {
        lastUntil = clock.instant().plusSeconds(5);
        Map<String, Object> plan = plan(from, lastUntil, rest);
        lot = String.valueOf(plan.get("lot"));
        Response answer = state(plan);
        assertEquals(303, answer.statusCode(), answer.asString());
    }

    /** States a plan as somebody does who reads once more what is asked before. */
    Response state(Map<String, Object> plan) {
        Response asked = sue.post("/audit/plan", plan);
        if (asked.statusCode() != 200) {
            return asked;
        }
        Map<String, Object> read = new HashMap<>(plan);
        read.put("sure", sure(asked));
        return sue.post("/audit/plan", read);
    }

    static String sure(Response asked) {
        Matcher sure = SURE.matcher(asked.asString());
        assertTrue(sure.find(), asked.asString());
        return sure.group(1);
    }

    static Map<String, Object> plan(Instant from, Instant until, int rest) {
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

    static String local(Instant at) {
        return at.atZone(ZoneOffset.UTC).toLocalDateTime().toString();
    }

    AuditLot now() {
        return QuarkusTransaction.requiringNew().call(() -> rows.lot(lot));
    }

    void drawn() {
        clock.putForward(Duration.ofSeconds(40));
        job.round();
        assertEquals(AuditLot.State.FROZEN, now().state());
        job.round();
        assertEquals(AuditLot.State.DRAWN, now().state(), "the freeze is sealed at once");
    }

    Response take(Browser by) {
        return by.post("/audit/" + lot + "/reviews", Map.of("reviewer", "", "despite", ""));
    }

    static String at(Response taken) {
        assertEquals(303, taken.statusCode(), taken.asString());
        return taken.header("Location").replaceFirst("^https?://[^/]+", "");
    }

    /** Marks all that is open there; {@code faulty} as not satisfied. */
    void markAll(Actor by, String review, String... faulty) {
        String[] path = review.split("/");
        Turn turn = new Turn(path[4], Integer.parseInt(path[5]));
        LotRounds.markAll(lot, turn, by, List.of(faulty));
    }

    static void refused(int status, Response answer) {
        assertEquals(status, answer.statusCode(), answer.asString());
    }

    void reviewAll(String... faulty) {
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

    String page() {
        return sue.get("/audit/" + lot).asString();
    }
}

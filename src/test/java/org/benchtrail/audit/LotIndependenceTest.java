package org.benchtrail.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.audit.AuditAct.Entry;
import org.benchtrail.core.audit.AuditAct.Marked;
import org.benchtrail.core.audit.AuditAct.ReviewGiven;
import org.benchtrail.core.audit.AuditLot.Turn;
import org.benchtrail.core.audit.Mark;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.EndedTickets;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Origin;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.HandOverOffered;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.LesseningAgreed;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.SentBack;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.core.method.identify.StopWorkCleared;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.PartOverrideApproved;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.plan.PlanDeclined;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.verify.SymptomRechecked;
import org.benchtrail.knowledge.ClosedTickets;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.ShownTicket;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.TrailStore;
import org.junit.jupiter.api.Test;

/**
 * Every part that somebody can have had in a ticket, in a round before the one that ended and in a role that they have no more, held
 * against the three doors of a review: it is not given to them, and if it was, they neither mark nor sign it.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class LotIndependenceTest extends LotCourse {
    private static final String PREFIX = "apart-";
    private static final Set<Role> THEN = Set.of(Role.TECHNICIAN, Role.MENTOR);
    private static final Set<Role> NOW = Set.of(Role.SUPERVISOR);

    /** Who did it, and of which fact; in the order of the method. */
    private static final Map<Class<? extends Fact>, String> WORK = new LinkedHashMap<>();

    static {
        WORK.put(ResultRecorded.class, "tester");
        WORK.put(ActionPlanned.class, "planner");
        WORK.put(PlanApproved.class, "approver");
        WORK.put(ActionSettled.class, "carrier");
        WORK.put(SymptomRechecked.class, "verifier");
        WORK.put(SummaryWritten.class, "documenter");
    }

    @Inject
    TrailStore trails;

    private final Map<String, String> reasons = new LinkedHashMap<>();
    private final List<Made> made = new ArrayList<>();

    /** An entry of the ticket that is to be. */
    private record Made(String by, Fact fact) {}

    private static Actor person(String who) {
        return new Actor(PREFIX + who, "Apart " + who, NOW);
    }

    private void did(String who, String reason, Fact fact) {
        made.add(new Made(PREFIX + who, fact));
        reasons.put(who, reason);
    }

    /** A whole ticket, each of its persons another one; closed, opened again and ended by others. */
    private void course() {
        reasons.put("opener", "had it assigned");
        did("waiver", "waived a requirement", new Waived("logs-reviewed", "None are kept"));
        did("clearer", "cleared a hazard", new StopWorkCleared("It was cut off", true));
        did("agreer", "agreed to a correction", new LesseningAgreed(3, "It was misread"));
        did("decliner", "declined its plan", new PlanDeclined("No way back"));
        did("overrider", "let a part through", new PartOverrideApproved(3, "The maker says so"));
        did("sender", "sent it back", new SentBack("Look again"));
        made.add(new Made(PREFIX + "hander", new HandedOver(PREFIX + "assignee", THEN, "")));
        reasons.put("assignee", "had it assigned");
        for (org.benchtrail.core.method.Entry entry : EndedTickets.demanding().trail()) {
            Fact fact = entry.fact();
            String who = WORK.get(fact.getClass());
            boolean mentor = fact instanceof Signed signed && signed.signatory() == Signatory.MENTOR;
            if (who != null) {
                did(who, fact instanceof PlanApproved ? "approved its plan" : "worked on it", fact);
            } else if (mentor) {
                did("mentor", "signed it as mentor", fact);
            } else if (!(fact instanceof Opened)) {
                made.add(new Made(PREFIX + "other", fact));
            }
        }
        made.add(new Made(PREFIX + "sue", new Reopened("It is hot again")));
        made.add(new Made(PREFIX + "sue", new Cancelled("It was sold", null)));
        reasons.put("accepter", "accepted it as a case");
        reasons.put("requester", "reported it");
    }

    private TicketNumber ticket() {
        TicketNumber number = tickets.open(
                        new NewTicket(
                                "A desk that hums",
                                "It hums",
                                Category.OTHER,
                                "Desk",
                                "Loft",
                                "  apart   REQUESTER ",
                                "room 9",
                                Priority.Impact.ONE_PERSON,
                                Priority.Urgency.CAN_WAIT,
                                false),
                        new Actor(PREFIX + "opener", "Apart opener", THEN))
                .number();
        QuarkusTransaction.requiringNew().run(() -> store(number));
        unrecorded(
                "insert into shop_case (ticket, closed_at, state, accepted_by) values (?, now(), 'WAITING', ?)",
                number.serial(),
                PREFIX + "accepter");
        return number;
    }

    /** A row of a case that nobody else is to come upon. */
    private static void unrecorded(String sql, Object... parameters) {
        TestDatabase.run("alter table shop_case disable trigger user");
        TestDatabase.run(sql, parameters);
        TestDatabase.run("alter table shop_case enable trigger user");
    }

    /** Behind the doors of tickets, since no one ticket comes by all of this; the chain holds. */
    private void store(TicketNumber number) {
        TrailEntry last = trails.read(number).entries().get(0);
        Origin origin = last.read().stamp().origin();
        Instant at = last.at();
        for (Made one : made) {
            at = at.plus(1, ChronoUnit.MICROS);
            last = trails.next(
                    number,
                    new org.benchtrail.core.method.Entry(
                            new Stamp(last.entry() + 1, at, one.by(), THEN, origin), one.fact()),
                    last.hash());
            trails.append(number, last);
        }
        ShownTicket.show(number, trails.read(number).entries());
    }

    private void given(String ticket, int turn, String who) {
        QuarkusTransaction.requiringNew()
                .run(() -> rows.append(
                        lot,
                        new Entry(
                                rows.lot(lot).acts().size() + 1L,
                                clock.instant().truncatedTo(ChronoUnit.MICROS),
                                SUE.account(),
                                new ReviewGiven(ticket, turn, who, List.of(), ""))));
    }

    private static String refusal(Runnable act) {
        return assertThrows(Invalid.class, act::run).problems().get(0).sentence();
    }

    private static Marked mark(String ticket, int turn) {
        return new Marked(ticket, turn, "scope-known", Mark.CANNOT_TELL, null, List.of(), "A name would have told");
    }

    @Test
    void whoHadAnyPart_isGivenNothing_marksNothing_signsNothing() {
        course();
        Instant from = begins();
        TicketNumber number = ticket();
        String ticket = number.toString();
        stated(from, 9);
        drawn();
        assertEquals(List.of(ticket), now().drawnTickets());
        assertEquals(
                Set.of(
                        "opener",
                        "assignee",
                        "tester",
                        "planner",
                        "carrier",
                        "verifier",
                        "documenter",
                        "approver",
                        "decliner",
                        "waiver",
                        "overrider",
                        "agreer",
                        "clearer",
                        "sender",
                        "mentor",
                        "accepter",
                        "requester"),
                reasons.keySet());
        List<String> all = new ArrayList<>(reasons.keySet());
        all.addAll(List.of("nobody", "second"));
        try {
            all.forEach(who ->
                    people.ensureAccount(person(who).account(), person(who).name(), NOW, PASSWORD));
            List<String> open = new ArrayList<>();
            reasons.forEach((who, reason) -> {
                String account = person(who).account();
                if (!refusal(() -> acts.give(lot, account, "", person(who))).contains("they had a part in each")
                        || !refusal(() -> acts.give(lot, account, "We are few", SUE))
                                .contains("they had a part in each")) {
                    open.add(who + " is given it");
                }
                given(ticket, 1, account);
                String words = "You are not independent any more: you ";
                if (!refusal(() -> acts.mark(lot, mark(ticket, 1), person(who))).contains(reason)
                        || !refusal(() -> acts.markNotAsked(lot, new Turn(ticket, 1), person(who)))
                                .startsWith(words)) {
                    open.add(who + " marks it");
                }
                if (!refusal(() -> acts.sign(lot, new Turn(ticket, 1), person(who)))
                        .startsWith(words)) {
                    open.add(who + " signs it");
                }
                acts.decline(lot, new Turn(ticket, 1), "I had a part in it", person(who));
            });
            assertEquals(List.of(), open);

            // who had none may, once: the second review is somebody else's, at each door
            assertEquals(new Turn(ticket, 1), acts.give(lot, person("nobody").account(), "", person("nobody")));
            acts.mark(lot, mark(ticket, 1), person("nobody"));
            markAll(person("nobody"), "/audit/" + lot + "/reviews/" + ticket + "/1");
            acts.sign(lot, new Turn(ticket, 1), person("nobody"));
            refusal(() -> acts.give(lot, person("nobody").account(), "", person("nobody")));
            given(ticket, 2, person("nobody").account());
            String second = "The second review is by somebody else than the first.";
            assertEquals(second, refusal(() -> acts.mark(lot, mark(ticket, 2), person("nobody"))));
            assertEquals(second, refusal(() -> acts.markNotAsked(lot, new Turn(ticket, 2), person("nobody"))));
            assertEquals(second, refusal(() -> acts.sign(lot, new Turn(ticket, 2), person("nobody"))));
        } finally {
            unrecorded("delete from shop_case where accepted_by = ?", PREFIX + "accepter");
            all.forEach(who -> TestDatabase.run(
                    "update account set active = false where login = ?",
                    person(who).account()));
        }
    }

    /** Whichever door they come through: handed to them by another or themselves, offered, or by working on it unasked. */
    @Test
    void whoReviewed_becomesNoHandLater() {
        Instant from = begins();
        TicketNumber number = ClosedTickets.one(tickets, TINA);
        stated(from, 9);
        drawn();
        at(take(boris));
        done(tickets.perform(
                number,
                looks.ticket(number, TINA).sheet().entries(),
                List.<Act>of(s -> new Reopened("It is hot again")),
                SUE));
        String review = "/audit/" + lot + "/reviews/" + number + "/1";
        noDoorTo(number, "while it is his");
        markAll(BORIS, review);
        at(boris.post(review + "/signature", Map.of()));
        noDoorTo(number, "once he has signed");
    }

    private void noDoorTo(TicketNumber number, String when) {
        Map<String, Outcome> doors = new LinkedHashMap<>();
        doors.put("assign", attempt(number, new HandedOver(BORIS.account(), BORIS.roles(), ""), CORA));
        doors.put("take", attempt(number, new HandedOver(BORIS.account(), BORIS.roles(), ""), BORIS));
        doors.put("offer", attempt(number, new HandOverOffered(BORIS.account(), ""), TINA));
        doors.put("work", attempt(number, new ScopeRecorded(Scope.ONE, ""), BORIS));
        doors.forEach((door, outcome) -> assertEquals(
                List.of(door.equals("work") ? "not-yours" : "has-judged"),
                outcome.missing().stream().map(m -> m.code()).toList(),
                door + " " + when));
        assertFalse(looks.ticket(number, TINA).sheet().hands().contains(BORIS.account()), when);
    }

    private Outcome attempt(TicketNumber number, Fact fact, Actor by) {
        return tickets.perform(number, looks.ticket(number, TINA).sheet().entries(), List.<Act>of(s -> fact), by);
    }
}

package org.benchtrail.audit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.audit.AuditAct;
import org.benchtrail.core.audit.AuditAct.AddendumAsked;
import org.benchtrail.core.audit.AuditAct.AddendumClosed;
import org.benchtrail.core.audit.AuditAct.LotConcluded;
import org.benchtrail.core.audit.AuditAct.Marked;
import org.benchtrail.core.audit.AuditAct.PlanStated;
import org.benchtrail.core.audit.AuditAct.RestDrawn;
import org.benchtrail.core.audit.AuditAct.ReviewDeclined;
import org.benchtrail.core.audit.AuditAct.ReviewGiven;
import org.benchtrail.core.audit.AuditAct.ReviewReturned;
import org.benchtrail.core.audit.AuditAct.ReviewSigned;
import org.benchtrail.core.audit.AuditAct.SecondSigned;
import org.benchtrail.core.audit.AuditAct.Settled;
import org.benchtrail.core.audit.AuditAct.SignalSwitched;
import org.benchtrail.core.audit.AuditAct.TalkRecorded;
import org.benchtrail.core.audit.AuditAct.TicketChosen;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.AuditLot.Review;
import org.benchtrail.core.audit.AuditLot.Turn;
import org.benchtrail.core.audit.AuditPlan;
import org.benchtrail.core.audit.AuditRules;
import org.benchtrail.core.audit.LotResult;
import org.benchtrail.core.audit.ReviewSheet;
import org.benchtrail.core.audit.Signal;
import org.benchtrail.core.audit.SignalKind;
import org.benchtrail.core.audit.SignalWorth;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.NotFound;
import org.benchtrail.seal.Heads;
import org.benchtrail.site.SiteBook;

/** What people do in an audit. Each act locks the lot, asks the rules, and appends one entry to the lot's stream. */
@ApplicationScoped
@Transactional
public class AuditActs {
    private static final int WORKING_DAYS = 10;

    private final LotRows rows;
    private final AuditedTickets tickets;
    private final Directory people;
    private final SiteBook site;
    private final Heads heads;
    private final Clock clock;

    AuditActs(LotRows rows, AuditedTickets tickets, Directory people, SiteBook site, Heads heads, Clock clock) {
        this.rows = rows;
        this.tickets = tickets;
        this.people = people;
        this.site = site;
        this.heads = heads;
        this.clock = clock;
    }

    /** @throws Invalid with what keeps that plan from being stated */
    public void check(AuditPlan plan, Actor by) {
        Permissions.require(Permission.PLAN_AUDITS, by);
        AuditRules.plan(plan, clock.instant());
        List<String> other = rows.overlapping(plan.from(), plan.until());
        new Invalid.Collector()
                .require(
                        other.isEmpty(),
                        "from",
                        "A ticket is in one lot only: lot " + String.join(", ", other) + " has a part of this time.")
                .require(!rows.lots().contains(plan.lot()), "lot", "There is a lot of this name already.")
                .require(
                        plan.witness().isEmpty() || heads.witnesses().contains(plan.witness()),
                        "witness",
                        "The site asks no witness of this name, so the draw would wait for ever: choose one of those it asks.")
                .throwIfAny();
        AuditRules.doubled(
                plan,
                rows.notAccepted().stream().filter(AuditRules::isDoublingDue).toList());
    }

    /** States what will be looked at of a period that has not ended. */
    public void state(AuditPlan plan, Actor by) {
        check(plan, by);
        rows.add(plan);
        append(AuditLot.of(plan.lot(), List.of()), new PlanStated(plan.text()), by.account());
    }

    /** As the next act needs it: nobody else acts on it meanwhile. */
    AuditLot locked(String id) {
        rows.lock(id);
        return rows.lot(id);
    }

    AuditLot append(AuditLot lot, AuditAct act, String by) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        AuditAct.Entry entry = new AuditAct.Entry(lot.acts().size() + 1L, now, by, act);
        rows.append(lot.id(), entry);
        AuditLot next = AuditLot.of(
                lot.id(), Stream.concat(lot.acts().stream(), Stream.of(entry)).toList());
        rows.renew(next);
        return next;
    }

    /** Takes back every unsigned review of somebody who may not review any more, by an entry for each. */
    void takeBack(String id) {
        takenBack(locked(id), people.allowed(Permission.REVIEW));
    }

    private AuditLot takenBack(AuditLot lot, List<Actor> reviewers) {
        AuditLot left = lot;
        for (Review review : lot.reviews()) {
            boolean may = reviewers.stream().anyMatch(a -> a.account().equals(review.reviewer()));
            if (!review.signed() && !may) {
                AuditRules.giveBack(left, review, may);
                Turn turn = review.turn();
                left = append(left, new ReviewReturned(turn.ticket(), turn.turn(), review.reviewer()), Stamp.SERVER);
                rows.renewReviews(left);
            }
        }
        return left;
    }

    /**
     * Gives the next review to that person: the first by the order of the draw for which they are independent. Who has one that is not
     * signed gets that one again.
     */
    public Turn give(String id, String reviewer, String despite, Actor by) {
        Permissions.require(Permission.REVIEW, by);
        if (!reviewer.equals(by.account())) {
            Permissions.require(Permission.PLAN_AUDITS, by);
        }
        AuditLot lot = locked(id);
        AuditRules.open(lot);
        List<Actor> reviewers = people.allowed(Permission.REVIEW);
        lot = takenBack(lot, reviewers);
        Optional<Review> begun = lot.unfinished(reviewer);
        if (begun.isPresent() && reviewer.equals(by.account())) {
            return begun.orElseThrow().turn();
        }
        Actor taker = reviewers.stream()
                .filter(a -> a.account().equals(reviewer))
                .findFirst()
                .orElseThrow(() -> new Invalid("reviewer", "Choose somebody who may review."));
        for (Turn turn : Giving.open(lot)) {
            Optional<ReviewGiven> given = given(lot, turn, taker, despite, reviewers);
            if (given.isPresent()) {
                rows.renewReviews(append(lot, given.get(), by.account()));
                return turn;
            }
        }
        throw new Invalid(
                "reviewer",
                "No review is open that this person may take: they had a part in each or declined it, or all are given. Give the right to"
                        + " review to one more person if some are left.");
    }

    private Optional<ReviewGiven> given(AuditLot lot, Turn turn, Actor taker, String despite, List<Actor> reviewers) {
        List<String> reasons = tickets.reasons(lot, turn.ticket(), taker);
        boolean others = reviewers.stream()
                .anyMatch(a -> !a.account().equals(taker.account())
                        && mayTurnTo(lot, turn, a)
                        && tickets.reasons(lot, turn.ticket(), a).isEmpty());
        List<String> broken = despite.isBlank() || others ? List.of() : reasons;
        ReviewGiven given =
                new ReviewGiven(turn.ticket(), turn.turn(), taker.account(), broken, broken.isEmpty() ? "" : despite);
        boolean fits = mayTurnTo(lot, turn, taker) && (reasons.isEmpty() || !broken.isEmpty());
        if (!fits) {
            return Optional.empty();
        }
        AuditRules.give(lot, given, reasons, others);
        return Optional.of(given);
    }

    /** Whether that person has neither read the ticket in the other review nor declined it. */
    static boolean mayTurnTo(AuditLot lot, Turn turn, Actor person) {
        return !lot.hasDeclined(turn.ticket(), person.account())
                && lot.review(turn.ticket(), 3 - turn.turn())
                        .filter(r -> r.reviewer().equals(person.account()))
                        .isEmpty();
    }

    /** The review that is that person's to work on; whether they are still independent is looked at each time. */
    private Review own(AuditLot lot, Turn turn, Actor by) {
        return AuditRules.own(lot, turn.ticket(), turn.turn(), by.account(), tickets.reasons(lot, turn.ticket(), by));
    }

    private ReviewSheet sheet(AuditLot lot, String ticket, Actor by) {
        AuditAct.Item item = lot.item(ticket).orElseThrow(() -> new NotFound("ticket " + ticket + " in this lot"));
        return tickets.frozen(item, by).review();
    }

    public void decline(String id, Turn turn, String why, Actor by) {
        Permissions.require(Permission.REVIEW, by);
        AuditLot lot = locked(id);
        AuditRules.decline(lot, turn.ticket(), turn.turn(), by.account(), why);
        rows.renewReviews(append(lot, new ReviewDeclined(turn.ticket(), turn.turn(), why), by.account()));
    }

    /** Keeps a mark; the last one of a requirement counts until the review is signed. */
    public void mark(String id, Marked marked, Actor by) {
        Permissions.require(Permission.REVIEW, by);
        AuditLot lot = locked(id);
        own(lot, new Turn(marked.ticket(), marked.turn()), by);
        append(lot, AuditRules.mark(marked, sheet(lot, marked.ticket(), by)), by.account());
    }

    /** Marks as not applicable all that is open and the gate did not ask for, each with the gate's reason. */
    public void markNotAsked(String id, Turn turn, Actor by) {
        Permissions.require(Permission.REVIEW, by);
        AuditLot lot = locked(id);
        Review review = own(lot, turn, by);
        for (Marked marked : AuditRules.notAsked(review, sheet(lot, turn.ticket(), by))) {
            lot = append(lot, marked, by.account());
        }
    }

    public void sign(String id, Turn turn, Actor by) {
        Permissions.require(Permission.REVIEW, by);
        AuditLot lot = locked(id);
        Review review = own(lot, turn, by);
        AuditRules.sign(review, sheet(lot, turn.ticket(), by));
        long minutes = lot.since(turn.ticket(), turn.turn(), clock.instant())
                .plus(Duration.ofSeconds(30))
                .toMinutes();
        AuditAct signed =
                turn.turn() == 1 ? new ReviewSigned(turn.ticket(), minutes) : new SecondSigned(turn.ticket(), minutes);
        rows.renewReviews(append(lot, signed, by.account()));
    }

    public void settle(String id, Settled settled, Actor by) {
        Permissions.require(Permission.REVIEW, by);
        AuditLot lot = locked(id);
        AuditRules.settle(lot, settled, sheet(lot, settled.ticket(), by), tickets.reasons(lot, settled.ticket(), by));
        append(lot, settled, by.account());
    }

    public void talk(String id, TalkRecorded talk, Actor by) {
        Permissions.require(Permission.REVIEW, by);
        AuditLot lot = locked(id);
        AuditRules.talk(lot, talk);
        append(lot, talk, by.account());
    }

    /** Asks the one who did the work to add to the papers; the ticket stays closed. */
    public void askAddendum(String id, String ticket, String requirement, String words, Actor by) {
        Permissions.require(Permission.REVIEW, by);
        AuditLot lot = locked(id);
        AddendumAsked asked = new AddendumAsked(ticket, requirement, due(clock.instant()), words);
        AuditRules.askAddendum(lot, asked);
        rows.ask(id, asked, tickets.hand(lot.item(ticket).orElseThrow(), by));
        append(lot, asked, by.account());
    }

    /** Ends the waiting for an addendum that never came. What was found stays what it is. */
    public void closeAddendum(String id, AddendumClosed closed, Actor by) {
        Permissions.require(Permission.PLAN_AUDITS, by);
        AuditLot lot = locked(id);
        LotRows.AddendumRow row = rows.addenda(id).stream()
                .filter(r -> r.isAbout(closed.ticket(), closed.requirement()))
                .findFirst()
                .orElseThrow(() -> new Invalid("of", "This was not asked for."));
        // what is written at the same moment was there first
        boolean written = !rows.close(id, row) && !row.closed();
        AuditRules.closeAddendum(lot, closed, row.askedOf(), written, by.account(), clock.instant());
        append(lot, closed, by.account());
    }

    /** Ten working days on, or fifty by the calendar where hardly any day is worked. */
    private Instant due(Instant now) {
        Instant day = now;
        int worked = 0;
        for (int days = 0; worked < WORKING_DAYS && days < 5 * WORKING_DAYS; days++) {
            Instant next = day.plus(Duration.ofDays(1));
            worked += site.history().workingTime().between(day, next).isZero() ? 0 : 1;
            day = next;
        }
        return day.truncatedTo(ChronoUnit.MICROS);
    }

    /** Ends the audit with what it found and what is done about it. */
    public void conclude(String id, String words, Actor by) {
        Permissions.require(Permission.PLAN_AUDITS, by);
        AuditLot lot = locked(id);
        LotResult result = LotResult.of(lot);
        LotConcluded concluded =
                new LotConcluded(result.items(), result.lower(), result.upper(), LotResult.isAccepted(lot), words);
        AuditRules.conclude(lot, concluded);
        measure(append(lot, concluded, by.account()));
    }

    /** Keeps of each signal how often it was right in this lot. */
    private void measure(AuditLot lot) {
        Map<SignalKind, Set<String>> marked = rows.signals(lot.id()).stream()
                .collect(Collectors.groupingBy(Signal::kind, Collectors.mapping(Signal::ticket, Collectors.toSet())));
        for (SignalKind kind : SignalKind.values()) {
            rows.measured(lot.id(), kind, SignalWorth.of(lot, kind, marked.getOrDefault(kind, Set.of())));
        }
    }

    /** Draws all that is left of the random parts, because they were not accepted. */
    public void drawRest(String id, Actor by) {
        Permissions.require(Permission.PLAN_AUDITS, by);
        AuditLot lot = locked(id);
        AuditRules.drawRest(lot);
        append(lot, new RestDrawn(lot.rest()), by.account());
    }

    /** Has one more ticket looked at, outside every estimate. */
    public void choose(String id, TicketChosen chosen, Actor by) {
        Permissions.require(Permission.PLAN_AUDITS, by);
        AuditLot lot = locked(id);
        AuditRules.choose(lot, chosen);
        append(lot, chosen, by.account());
    }

    /** Shows a signal, or shows it no more. */
    public void switchSignal(String id, SignalSwitched switched, Actor by) {
        Permissions.require(Permission.PLAN_AUDITS, by);
        AuditLot lot = locked(id);
        AuditRules.switchSignal(lot, switched);
        append(lot, switched, by.account());
    }
}

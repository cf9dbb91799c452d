package org.benchtrail.core.audit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.audit.AuditAct.AddendumAsked;
import org.benchtrail.core.audit.AuditAct.AddendumClosed;
import org.benchtrail.core.audit.AuditAct.LotConcluded;
import org.benchtrail.core.audit.AuditAct.Marked;
import org.benchtrail.core.audit.AuditAct.ReviewGiven;
import org.benchtrail.core.audit.AuditAct.Settled;
import org.benchtrail.core.audit.AuditAct.TalkRecorded;
import org.benchtrail.core.audit.AuditAct.TicketChosen;
import org.benchtrail.core.audit.AuditLot.Review;
import org.benchtrail.core.audit.AuditLot.State;
import org.benchtrail.core.method.DefectClass;

/** What keeps an act of an audit from being done; each rule throws {@link Invalid} with what to do instead. */
public final class AuditRules {
    private static final int LONGEST = 2000;
    /** So many tickets of a lot are chosen at most. */
    public static final int MOST_CHOSEN = 10;

    private AuditRules() {}

    private static void require(boolean holds, String field, String sentence) {
        if (!holds) {
            throw new Invalid(field, sentence);
        }
    }

    private static void words(String words, String field, String sentence) {
        require(!words.isBlank() && words.length() <= LONGEST, field, sentence);
    }

    /** A plan is stated before the period ends, so that nobody writes it for what is known. */
    public static void plan(AuditPlan plan, Instant now) {
        require(
                now.isBefore(plan.until()),
                "until",
                "This period is over, and no plan can be stated for it any more. Choose an end that is still to come.");
    }

    public static void freeze(AuditLot lot, Instant now) {
        require(lot.state() == State.STATED, "lot", "This lot is frozen: its list does not change any more.");
        require(!now.isBefore(lot.plan().until()), "lot", "The period goes on: the lot is frozen when it has ended.");
    }

    public static void seed(AuditLot lot) {
        require(lot.state() != State.STATED, "lot", "Freeze the lot first.");
        require(lot.state() == State.FROZEN, "lot", "The seed of this lot was drawn, and is not drawn again.");
    }

    public static void sample(AuditLot lot) {
        require(lot.seed().isPresent(), "lot", "The seed of this lot is not drawn yet.");
        require(lot.state() == State.SEEDED, "lot", "The sample of this lot was drawn, and is not drawn again.");
    }

    /** Reviews go on. */
    public static void open(AuditLot lot) {
        require(lot.state() == State.DRAWN, "lot", "Reviews are given between the draw and the end of an audit.");
    }

    /**
     * @param reasons why that person is not independent
     * @param others whether somebody who may review is independent
     */
    public static void give(AuditLot lot, ReviewGiven given, List<String> reasons, boolean others) {
        open(lot);
        require(
                given.turn() == 1
                        ? lot.drawnTickets().contains(given.ticket()) || lot.isChosen(given.ticket())
                        : lot.secondTickets().contains(given.ticket()),
                "ticket",
                "This ticket was not drawn: what is reviewed is not chosen.");
        require(lot.review(given.ticket(), given.turn()).isEmpty(), "ticket", "This review is given already.");
        notTheOther(lot, given.ticket(), given.turn(), given.reviewer());
        require(
                lot.unfinished(given.reviewer()).isEmpty(),
                "reviewer",
                "One review at a time: this person has one that is not signed.");
        require(
                !lot.hasDeclined(given.ticket(), given.reviewer()),
                "reviewer",
                "This person declined a review of this ticket: somebody else reviews it.");
        independent(reasons, others, given.despite());
        if (!given.despite().isEmpty()) {
            words(given.remark(), "remark", "Say why the shop goes on without an independent reviewer.");
        }
    }

    /** Nobody reads a ticket twice. */
    private static void notTheOther(AuditLot lot, String ticket, int turn, String account) {
        boolean other = lot.review(ticket, 3 - turn)
                .filter(r -> r.reviewer().equals(account))
                .isPresent();
        require(!other, "reviewer", "The second review is by somebody else than the first.");
    }

    private static void independent(List<String> reasons, boolean others, List<String> despite) {
        require(
                reasons.isEmpty() || (!others && !despite.isEmpty()),
                "reviewer",
                "Who reviews a ticket had no part in it, and this person " + String.join(", ", reasons) + ".");
    }

    /** The review that is this person's to work on, as long as they are independent. */
    public static Review own(AuditLot lot, String ticket, int turn, String account, List<String> reasons) {
        Review review = held(lot, ticket, turn, account);
        notTheOther(lot, ticket, turn, account);
        require(
                !review.independent() || reasons.isEmpty(),
                "reviewer",
                "You are not independent any more: you " + String.join(", ", reasons) + ". Decline this review.");
        return review;
    }

    private static Review held(AuditLot lot, String ticket, int turn, String account) {
        open(lot);
        Review review = lot.review(ticket, turn)
                .orElseThrow(() -> new Invalid("ticket", "This review was given to nobody yet."));
        require(review.reviewer().equals(account), "ticket", "This review was given to somebody else.");
        require(!review.signed(), "mark", "This review is signed: its marks are final.");
        return review;
    }

    public static void decline(AuditLot lot, String ticket, int turn, String account, String why) {
        held(lot, ticket, turn, account);
        words(why, "remark", "Say why you decline it.");
    }

    /** @param mayReview whether who holds it may still review */
    public static void giveBack(AuditLot lot, Review review, boolean mayReview) {
        open(lot);
        require(!review.signed(), "mark", "This review is signed: its marks are final.");
        require(!mayReview, "reviewer", "Who holds this review may review: it is theirs to sign or to decline.");
    }

    /** @return the mark as it is kept: where the gate asked nothing, its reason stands for words of the reviewer's own */
    public static Marked mark(Marked marked, ReviewSheet sheet) {
        ReviewSheet.Row row = sheet.row(marked.requirement())
                .orElseThrow(() -> new Invalid("requirement", "This is not asked of this ticket."));
        require(marked.mark() != null, "mark", "Choose one of the four marks.");
        require(
                marked.entries().stream().allMatch(e -> e >= 1 && e <= sheet.entries()),
                "entries",
                "Name entries from 1 to " + sheet.entries() + ", which is where the record ended.");
        boolean words = !marked.remark().isBlank();
        require(marked.remark().length() <= LONGEST, "remark", "Write at most " + LONGEST + " characters.");
        switch (marked.mark()) {
            case SATISFIED ->
                require(
                        !marked.entries().isEmpty() || (row.cited().isEmpty() && words),
                        "entries",
                        "Name the entries that show it, or say what does.");
            case NOT_SATISFIED -> require(words, "remark", "Say what is not so.");
            case NOT_APPLICABLE ->
                require(words || !row.unasked().isEmpty(), "remark", "Say why it did not have to be asked here.");
            case CANNOT_TELL -> require(words, "remark", "Say what would have told.");
        }
        classOf(marked.mark(), marked.defect(), row.question().usual());
        return words || marked.mark() != Mark.NOT_APPLICABLE ? marked : notAsked(marked.ticket(), marked.turn(), row);
    }

    private static Marked notAsked(String ticket, int turn, ReviewSheet.Row row) {
        return new Marked(ticket, turn, row.code(), Mark.NOT_APPLICABLE, null, List.of(), row.unasked());
    }

    /** Marks for all that is not marked yet and the gate did not ask for. */
    public static List<Marked> notAsked(Review review, ReviewSheet sheet) {
        List<Marked> marks = sheet.open(review).stream()
                .filter(row -> !row.unasked().isEmpty())
                .map(row -> notAsked(review.turn().ticket(), review.turn().turn(), row))
                .toList();
        require(!marks.isEmpty(), "marks", "Nothing is left here that the gate did not ask for.");
        return marks;
    }

    private static void classOf(Mark mark, @org.jspecify.annotations.Nullable DefectClass defect, DefectClass usual) {
        require(
                (mark == Mark.NOT_SATISFIED) == (defect != null),
                "defect",
                "Choose how much it weighs where something is not satisfied, and only there.");
        require(
                defect == null || defect.insteadOf(usual),
                "defect",
                "Here a defect is usually " + usual.words() + ": it may be lowered by one class and no more.");
    }

    public static void sign(Review review, ReviewSheet sheet) {
        int open = sheet.open(review).size();
        require(open == 0, "marks", "Mark all requirements first: " + open + " are still open.");
    }

    /** By one of the two, or a third; in any case somebody who is independent of the ticket. */
    public static void settle(AuditLot lot, Settled settled, ReviewSheet sheet, List<String> reasons) {
        open(lot);
        boolean differs = lot.differences().stream()
                .anyMatch(d ->
                        d.ticket().equals(settled.ticket()) && d.requirement().equals(settled.requirement()));
        require(differs, "requirement", "There is no difference to settle here.");
        require(reasons.isEmpty(), "reviewer", "Who settles it had no part in the ticket.");
        require(settled.mark() != null, "mark", "Choose one of the four marks.");
        words(settled.remark(), "remark", "Say why.");
        classOf(
                settled.mark(),
                settled.defect(),
                sheet.row(settled.requirement()).orElseThrow().question().usual());
    }

    public static void talk(AuditLot lot, TalkRecorded talk) {
        open(lot);
        require(
                lot.talksDue().stream().anyMatch(pair -> pair.isOf(talk.pair())),
                "talk",
                "These two need no talk, or have had it.");
        words(talk.remark(), "talk", "Say what you agreed on.");
    }

    /** Only for what was found not satisfied in a review that is signed. */
    public static void askAddendum(AuditLot lot, AddendumAsked asked) {
        require(lot.state() == State.DRAWN || lot.state() == State.CONCLUDED, "lot", "Nothing is reviewed here yet.");
        require(lot.isReviewed(), "lot", "Sign all reviews first: until then nobody learns what another one found.");
        Review first = lot.review(asked.ticket(), 1)
                .filter(Review::signed)
                .orElseThrow(() -> new Invalid("ticket", "Sign the review of this ticket first."));
        Marked mark = first.marks().get(asked.requirement());
        require(
                mark != null && LotResult.settled(lot, mark).mark() == Mark.NOT_SATISFIED,
                "requirement",
                "An addendum is asked for where something is not satisfied.");
        boolean asks = lot.addendaAsked().stream()
                .anyMatch(a ->
                        a.ticket().equals(asked.ticket()) && a.requirement().equals(asked.requirement()));
        require(!asks, "requirement", "This was asked for already.");
        words(asked.remark(), "remark", "Say what is to be added.");
    }

    /**
     * Somebody ends the waiting for what was asked for and never came.
     *
     * @param askedOf who was to write it
     * @param written whether they did
     */
    public static void closeAddendum(
            AuditLot lot, AddendumClosed closed, String askedOf, boolean written, String by, Instant now) {
        AddendumAsked asked = lot.addendaAsked().stream()
                .filter(a ->
                        a.ticket().equals(closed.ticket()) && a.requirement().equals(closed.requirement()))
                .findFirst()
                .orElseThrow(() -> new Invalid("of", "This was not asked for."));
        require(
                lot.addendumClosed(closed.ticket(), closed.requirement()).isEmpty(),
                "of",
                "This is closed already: it is waited for no longer.");
        require(!written, "of", "This was written: it is countersigned or declined on the ticket.");
        require(now.isAfter(asked.due()), "of", "It may still come: it is closed once its time is over.");
        require(!askedOf.equals(by), "of", "This was asked of you: another supervisor closes it.");
        words(closed.remark(), "closing", "Say why it is waited for no longer.");
    }

    /** Whether the rest of the random parts is to be reviewed, because they were not accepted and the plan says so. */
    public static boolean isRestDue(AuditLot lot) {
        return lot.state() == State.DRAWN
                && !lot.isRestDrawn()
                && lot.plan().otherwise() == AuditPlan.Otherwise.REVIEW_ALL
                && isSettled(lot)
                && LotResult.isSampled(lot)
                && !LotResult.isAccepted(lot);
    }

    /** Whether the next plan takes twice as many of what this lot drew at random. */
    public static boolean isDoublingDue(AuditLot lot) {
        return lot.plan().otherwise() == AuditPlan.Otherwise.DOUBLE_NEXT
                && lot.concluded().filter(c -> !c.accepted()).isPresent()
                && LotResult.isSampled(lot);
    }

    /** The plan that comes after lots that were not accepted takes at least twice as many of each part. */
    public static void doubled(AuditPlan next, List<AuditLot> due) {
        for (AuditLot lot : due) {
            lot.plan().takes().forEach((stratum, take) -> {
                Take now = Objects.requireNonNull(next.takes().get(stratum));
                require(
                        take.percent() == 100 || now.isAtLeast(take.doubled()),
                        "take." + stratum,
                        "Lot " + lot.id() + " was not accepted, so twice as many are drawn now: at least "
                                + take.doubled().word() + ".");
            });
        }
    }

    private static boolean isSettled(AuditLot lot) {
        return lot.isReviewed() && lot.differences().isEmpty();
    }

    /** Whether no mark comes any more by which the lot is judged: before that, signals would lead the reviewers. */
    public static boolean mayShowSignals(AuditLot lot) {
        return lot.state() == State.CONCLUDED || (lot.state() == State.DRAWN && isSettled(lot) && !isRestDue(lot));
    }

    public static void drawRest(AuditLot lot) {
        open(lot);
        require(
                isRestDue(lot),
                "lot",
                "The rest is drawn where the random part was not accepted and the plan says so.");
    }

    /** Somebody chooses a ticket to be looked at as well. */
    public static void choose(AuditLot lot, TicketChosen chosen) {
        open(lot);
        require(!isRestDue(lot), "lot", "The rest is to be drawn first: then nothing is left to choose.");
        require(lot.item(chosen.ticket()).isPresent(), "chosen", "This ticket is not in the lot.");
        require(!lot.drawnTickets().contains(chosen.ticket()), "chosen", "This ticket was drawn.");
        require(!lot.isChosen(chosen.ticket()), "chosen", "This ticket was chosen already.");
        require(
                lot.chosen().size() < MOST_CHOSEN,
                "chosen",
                "At most " + MOST_CHOSEN + " tickets of a lot are chosen.");
        words(chosen.remark(), "why", "Say why it is to be looked at.");
    }

    public static void switchSignal(AuditLot lot, AuditAct.SignalSwitched switched) {
        require(mayShowSignals(lot), "lot", "Signals are judged when all marks of a lot are final.");
        words(switched.remark(), "remark", "Say why.");
    }

    /** What stands between a drawn lot and its conclusion, in sentences; empty if nothing does. */
    public static List<String> obstacles(AuditLot lot) {
        List<String> obstacles = new ArrayList<>();
        obstacle(obstacles, lot.unsigned(1), "Sign all reviews: ", " still open.");
        obstacle(obstacles, lot.unsigned(2), "Sign all second reviews: ", " still open.");
        long chosen =
                lot.chosen().stream().filter(c -> !lot.isSigned(c.ticket(), 1)).count();
        obstacle(obstacles, chosen, "Sign the reviews of tickets that were chosen: ", " still open.");
        obstacle(obstacles, lot.differences().size(), "Settle where the two readers differ: ", " not settled.");
        int talks = lot.talksDue().size();
        if (talks > 0) {
            obstacles.add((talks == 1 ? "Two readers agree" : talks + " pairs of readers agree")
                    + " little: talk, and record what you agreed on.");
        }
        if (isRestDue(lot)) {
            obstacles.add("The random part has more defects than the plan allows: review the rest of it.");
        }
        return obstacles;
    }

    private static void obstacle(List<String> obstacles, long left, String before, String after) {
        if (left > 0) {
            obstacles.add(before + left + (left == 1 ? " is" : " are") + after);
        }
    }

    public static void conclude(AuditLot lot, LotConcluded concluded) {
        open(lot);
        List<String> obstacles = obstacles(lot);
        require(obstacles.isEmpty(), "lot", String.join(" ", obstacles));
        words(concluded.remark(), "remark", "Say what is done about it.");
    }
}

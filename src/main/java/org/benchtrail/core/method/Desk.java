package org.benchtrail.core.method;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.Escalated;
import org.benchtrail.core.method.desk.Held;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.Refused;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.Resumed;
import org.benchtrail.core.method.desk.Returned;
import org.benchtrail.core.method.desk.Waived;

/** The rules of the desk: which moves are possible, in which order facts belong, what may be waived. */
final class Desk {
    private static final Duration LONGEST_HOLD = Duration.ofDays(3653);

    private Desk() {}

    /** Nothing is added to a ticket that has ended; only reopening is left, and only to a closed one. */
    static List<Missing> standing(Course course, Fact fact) {
        return switch (course.standing()) {
            case OPEN -> List.of();
            case CLOSED ->
                fact instanceof Reopened
                        ? List.of()
                        : refusal("ticket-closed", "This ticket is closed: reopen it first.", "desk");
            case CANCELLED -> refusal("ticket-cancelled", "This ticket was cancelled: open a new one.", "desk");
        };
    }

    /** What only the desk itself writes: the opening, once, and the refusals. */
    static List<Missing> act(Fact fact) {
        return fact instanceof Opened || fact instanceof Refused
                ? refusal("not-an-act", "A ticket is opened once, and nobody records a refusal by hand.", "trail")
                : List.of();
    }

    static List<Missing> move(JobSheet sheet, MoveFact fact, Policy policy, Instant now) {
        Move move = fact.move();
        Course course = sheet.course();
        if (!move.possibleFrom(course.step(), course.standing())) {
            return refusal(
                    "no-such-move",
                    "From " + course.step().title().toLowerCase(java.util.Locale.ROOT) + " nobody can " + move.words()
                            + ".",
                    "step");
        }
        if (move.changesStep() && course.hold() != null) {
            return refusal("on-hold", "This ticket is on hold: resume it first.", "desk");
        }
        Situation situation = new Situation(sheet, policy, now, move);
        if (move.gated()) {
            return Gate.missing(situation);
        }
        if (move.changesStep() && sheet.workStopped()) {
            return List.of(Requirement.HAZARDS_SCREENED.status(situation).missing());
        }
        if (fact instanceof Cancelled cancelled) {
            duplicate(sheet, cancelled);
        }
        return ungated(course, fact, now);
    }

    private static void duplicate(JobSheet sheet, Cancelled cancelled) {
        if (sheet.opened().ticket().equals(cancelled.duplicateOf())) {
            throw new Invalid("duplicateOf", "A ticket is no duplicate of itself: give the number of the other one.");
        }
    }

    private static List<Missing> ungated(Course course, MoveFact fact, Instant now) {
        if (fact instanceof Held held && !held.followUp().isAfter(now)) {
            throw new Invalid("followUp", "The follow-up has to lie in the future.");
        }
        if (fact instanceof Held held && held.followUp().isAfter(now.plus(LONGEST_HOLD))) {
            throw new Invalid("followUp", "The follow-up has to lie within ten years.");
        }
        if (fact instanceof Held && course.hold() != null) {
            return refusal("already-on-hold", "This ticket is on hold already: resume it first.", "desk");
        }
        if (fact instanceof Resumed && course.hold() == null) {
            return refusal("not-on-hold", "This ticket is not on hold.", "desk");
        }
        if (fact instanceof Escalated && course.escalation() != null) {
            return refusal("already-escalated", "This ticket is escalated already: record its return first.", "desk");
        }
        if (fact instanceof Returned && course.escalation() == null) {
            return refusal("not-escalated", "This ticket is not escalated.", "desk");
        }
        return List.of();
    }

    /** A fact of a later step waits; one of an earlier step is taken late, unless to make it again is to go round again. */
    static List<Missing> place(JobSheet sheet, Fact fact) {
        Step own = fact.step();
        Step now = sheet.step();
        if (sheet.course().hold() != null && own != null && own != Step.IDENTIFY) {
            return refusal("on-hold", "This ticket is on hold: resume it first.", "desk");
        }
        if (own == null || own == now) {
            return List.of();
        }
        if (now.isBefore(own)) {
            return refusal(
                    "step-not-reached",
                    "This belongs to " + own.title() + "; the ticket stands at " + now.title() + ".",
                    "step");
        }
        return fact.lateAllowed()
                ? List.of()
                : refusal(
                        "step-left",
                        own.title() + " has been left: what belongs to it can be made again only in another round.",
                        "step");
    }

    /** Only a requirement of the present gate, that may be waived and is not met. */
    static List<Missing> waiver(JobSheet sheet, Waived waiver, Policy policy, Instant now) {
        Requirement requirement = Requirement.of(waiver.requirement())
                .orElseThrow(
                        () -> new Invalid("requirement", "There is no requirement '" + waiver.requirement() + "'."));
        if (!requirement.waivable()) {
            return refusal("not-waivable", "This requirement cannot be waived by anybody.", requirement.code());
        }
        boolean missing = Method.gate(sheet, policy, now).stream()
                .anyMatch(s -> s.requirement() == requirement && s.state() == Requirement.State.MISSING);
        return missing
                ? List.of()
                : refusal("nothing-to-waive", "Nothing is missing there now, so nothing can be waived.", "step");
    }

    static List<Missing> refusal(String code, String sentence, String anchor) {
        return List.of(new Missing(code, sentence, anchor, false));
    }
}

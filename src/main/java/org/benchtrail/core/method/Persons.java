package org.benchtrail.core.method;

import java.time.Instant;
import java.util.List;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.identify.EvidenceFact;
import org.benchtrail.core.method.identify.StopWorkCleared;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.PartOverrideApproved;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.plan.PlanDeclined;

/** Who may do what on a ticket. */
final class Persons {
    private Persons() {}

    static List<Missing> refuse(JobSheet sheet, Fact fact, Actor actor, Policy policy, Instant now) {
        if (!actor.works()) {
            return Desk.refusal("not-your-role", "Your account does not work on tickets.", "desk");
        }
        if (fact instanceof MoveFact move) {
            return move(sheet.course(), move, actor, policy, now);
        }
        if (plans(fact) && waived(sheet, actor)) {
            return Desk.refusal("own-work", "Who waived a requirement here does not plan: hand it over.", "desk");
        }
        if (fact instanceof EvidenceFact || fact instanceof Corrected) {
            return List.of();
        }
        if (fact instanceof StopWorkCleared) {
            return assigneeOrSupervisor(sheet.course(), actor);
        }
        if (fact instanceof Waived) {
            return independentSupervisor(sheet, actor);
        }
        if (fact instanceof PlanApproved || fact instanceof PlanDeclined || fact instanceof PartOverrideApproved) {
            return approver(sheet, fact, actor, policy);
        }
        if (fact instanceof Signed signed && signed.signatory() == Signatory.MENTOR) {
            return mentor(sheet.course(), actor);
        }
        return assignee(sheet.course(), actor);
    }

    private static List<Missing> move(Course course, MoveFact move, Actor actor, Policy policy, Instant now) {
        return switch (move.move()) {
            case ADVANCE, REFUTE, RETHINK, FAIL, CLOSE, HOLD, RESUME -> assignee(course, actor);
            case ESCALATE, RETURN -> assigneeOrSupervisor(course, actor);
            case HAND_OVER ->
                taking(course, (HandedOver) move, actor) ? List.of() : assigneeOrSupervisor(course, actor);
            case CANCEL -> canceller(course, (Cancelled) move, actor);
            case REOPEN -> reopener(course, actor, policy, now);
        };
    }

    /** Taking a ticket that nobody has from the queue. */
    private static boolean taking(Course course, HandedOver move, Actor actor) {
        return course.assignee() == null && move.to().equals(actor.account());
    }

    private static List<Missing> assignee(Course course, Actor actor) {
        if (isAssignee(course, actor)) {
            return List.of();
        }
        return course.assignee() == null
                ? Desk.refusal("nobody-has-it", "Nobody has this ticket yet: take it first.", "desk")
                : Desk.refusal("not-yours", "Only the assignee does this: have the ticket handed over first.", "desk");
    }

    private static List<Missing> assigneeOrSupervisor(Course course, Actor actor) {
        return actor.is(Role.SUPERVISOR) ? List.of() : assignee(course, actor);
    }

    private static List<Missing> canceller(Course course, Cancelled move, Actor actor) {
        if (actor.is(Role.SUPERVISOR) || (isAssignee(course, actor) && move.duplicateOf() != null)) {
            return List.of();
        }
        return Desk.refusal(
                "not-your-role",
                "A supervisor cancels a ticket; its assignee only as a duplicate of another, whose number is given.",
                "desk");
    }

    private static List<Missing> reopener(Course course, Actor actor, Policy policy, Instant now) {
        boolean inTime = course.closed() == null // never closed: no such move, whoever asks
                || !course.closed().plus(policy.reopenWindow()).isBefore(now);
        return actor.is(Role.SUPERVISOR) || inTime
                ? List.of()
                : Desk.refusal(
                        "reopen-window-over",
                        "It was closed more than " + policy.reopenWindow().toDays()
                                + " days ago: a supervisor reopens it, or open a new ticket.",
                        "desk");
    }

    private static List<Missing> independentSupervisor(JobSheet sheet, Actor actor) {
        if (!actor.is(Role.SUPERVISOR)) {
            return Desk.refusal("not-your-role", "Only a supervisor waives a requirement.", "desk");
        }
        return planned(sheet, actor)
                ? Desk.refusal("own-work", "Nobody waives a requirement of work of their own.", "desk")
                : List.of();
    }

    private static List<Missing> approver(JobSheet sheet, Fact fact, Actor actor, Policy policy) {
        boolean trainees = actor.is(Role.MENTOR)
                && !(fact instanceof PartOverrideApproved)
                && PlanGaps.onlyForTrainee(sheet, policy);
        if (!actor.is(Role.SUPERVISOR) && !trainees) {
            return Desk.refusal(
                    "not-your-role",
                    "A supervisor approves this; a mentor where the only reason is that a trainee planned it.",
                    "plan-approved");
        }
        return planned(sheet, actor)
                ? Desk.refusal("own-work", "Nobody approves a plan of their own.", "plan-approved")
                : List.of();
    }

    private static List<Missing> mentor(Course course, Actor actor) {
        if (!actor.is(Role.MENTOR)) {
            return Desk.refusal("not-your-role", "Only a mentor signs a trainee's ticket.", "mentor-signed");
        }
        return isAssignee(course, actor) || actor.is(Role.TRAINEE)
                ? Desk.refusal("own-work", "The mentor who signs is somebody other than the trainee.", "mentor-signed")
                : List.of();
    }

    private static boolean isAssignee(Course course, Actor actor) {
        return actor.account().equals(course.assignee());
    }

    /** Whether this person works the ticket, or planned an action of it or put one right, in whatever round. */
    private static boolean planned(JobSheet sheet, Actor actor) {
        return isAssignee(sheet.course(), actor)
                || sheet.facts().stream()
                        .anyMatch(f -> plans(f.fact()) && f.stamp().by().equals(actor.account()));
    }

    private static boolean plans(Fact fact) {
        return fact instanceof ActionPlanned
                || (fact instanceof Corrected corrected && corrected.replacement() instanceof ActionPlanned);
    }

    /** Whether this person let a requirement go unmet since the ticket was opened, or last reopened. */
    private static boolean waived(JobSheet sheet, Actor actor) {
        return !sheet.all(
                        Waived.class,
                        w -> w.stamp().by().equals(actor.account())
                                && w.entry() > sheet.course().openedAt())
                .isEmpty();
    }
}

package org.benchtrail.core.method;

import java.util.List;

/** Answers to 'who may record it' that several kinds of fact share. */
public final class Persons {
    private Persons() {}

    /** What keeps that person from recording it, whatever it says. */
    static List<Missing> refuse(Fact fact, Actor actor, Situation s) {
        if (!actor.works()) {
            return Missing.rule("not-your-role", "Your account does not work on tickets.", "desk");
        }
        List<Missing> refused = fact.refusedTo(actor, s);
        return refused.isEmpty() ? refuseBothParts(fact.takesPart(), actor, s.sheet()) : refused;
    }

    /** Who has worked on a ticket judges nothing of it, and who has judged does no work on it, whoever has it now. */
    private static List<Missing> refuseBothParts(Part part, Actor actor, JobSheet sheet) {
        boolean assignee = isAssignee(sheet.course(), actor);
        if (part.isJudging(assignee) && sheet.isHand(actor.account())) {
            return Missing.rule(
                    "own-work", "You have worked on this ticket: somebody who has not decides this.", "desk");
        }
        return part.isWork(assignee) && sheet.isJudge(actor.account())
                ? Missing.rule(
                        "own-work",
                        "You approved, waived or signed something here: somebody else does the work, hand it over.",
                        "desk")
                : List.of();
    }

    public static boolean isAssignee(Course course, Actor actor) {
        return actor.account().equals(course.assignee());
    }

    public static List<Missing> assignee(Course course, Actor actor) {
        if (isAssignee(course, actor)) {
            return List.of();
        }
        return course.assignee() == null
                ? Missing.rule("nobody-has-it", "Nobody has this ticket yet: take it first.", "desk")
                : Missing.rule("not-yours", "Only the assignee does this: have the ticket handed over first.", "desk");
    }

    public static List<Missing> assigneeOrSupervisor(Course course, Actor actor) {
        return actor.is(Role.SUPERVISOR) ? List.of() : assignee(course, actor);
    }

    /** Somebody who could do the work and has had no hand in it; a trainee vouches for nothing. */
    public static List<Missing> secondPerson(JobSheet sheet, Actor actor) {
        boolean able = actor.is(Role.TECHNICIAN) || actor.is(Role.MENTOR) || actor.is(Role.SUPERVISOR);
        return able && !sheet.isHand(actor.account())
                ? List.of()
                : Missing.rule(
                        "second-person",
                        "This hazard is cleared by a second person, who is no trainee and has not worked on this ticket.",
                        "hazards-screened");
    }

    /** Whoever has worked on the ticket, or has it. */
    public static List<Missing> hands(JobSheet sheet, Actor actor) {
        return sheet.isHand(actor.account())
                ? List.of()
                : Missing.rule("not-yours", "Who has worked on this ticket does this.", "desk");
    }

    /** A supervisor or a mentor. */
    public static List<Missing> reviewer(Actor actor, String sentence, String anchor) {
        return actor.is(Role.SUPERVISOR) || actor.is(Role.MENTOR)
                ? List.of()
                : Missing.rule("not-your-role", sentence, anchor);
    }

    /** What keeps that account from being given the ticket. */
    public static List<Missing> taker(JobSheet sheet, String account) {
        return sheet.isJudge(account)
                ? Missing.rule(
                        "has-judged",
                        "'" + account + "' approved, waived or signed something here, and so does not work on it.",
                        "desk")
                : List.of();
    }
}

package org.benchtrail.core.method;

import java.util.List;

/** Answers to 'who may record it' that several kinds of fact share. */
public final class Persons {
    private Persons() {}

    /** What keeps that person from working here at all, whatever the fact. */
    static List<Missing> refuse(Fact fact, Actor actor, Situation s) {
        if (!actor.works()) {
            return Missing.rule("not-your-role", "Your account does not work on tickets.", "desk");
        }
        if (fact.plans() && hasWaived(s.sheet(), actor)) {
            return Missing.rule("own-work", "Who waived a requirement here does not plan: hand it over.", "desk");
        }
        return fact.refusedTo(actor, s);
    }

    public static boolean isAssignee(Course course, Actor actor) {
        return actor.account().equals(course.assignee());
    }

    public static List<Missing> anybody() {
        return List.of();
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
        return able && !isHand(sheet, actor)
                ? List.of()
                : Missing.rule(
                        "second-person",
                        "This hazard is cleared by a second person, who is no trainee and has not worked on this ticket.",
                        "hazards-screened");
    }

    /** Whether this person has the ticket, or recorded something of a step on it, in whatever round. */
    private static boolean isHand(JobSheet sheet, Actor actor) {
        return isAssignee(sheet.course(), actor)
                || sheet.facts().stream()
                        .anyMatch(f -> f.fact().step() != null && f.stamp().by().equals(actor.account()));
    }

    /** Whether this person works the ticket, or planned an action of it or put one right, in whatever round. */
    public static boolean hasPlanned(JobSheet sheet, Actor actor) {
        return isAssignee(sheet.course(), actor)
                || sheet.facts().stream()
                        .anyMatch(f -> f.fact().plans() && f.stamp().by().equals(actor.account()));
    }

    /** Whether this person let a requirement go unmet since the ticket was opened, or last reopened. */
    private static boolean hasWaived(JobSheet sheet, Actor actor) {
        return !sheet.all(
                        org.benchtrail.core.method.desk.Waived.class,
                        w -> w.stamp().by().equals(actor.account())
                                && w.entry() > sheet.course().openedAt())
                .isEmpty();
    }
}

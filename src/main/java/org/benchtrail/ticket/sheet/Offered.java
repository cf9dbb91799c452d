package org.benchtrail.ticket.sheet;

import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.ticket.Viewing;

/**
 * What the page offers to its viewer. The method decides on every act all the same.
 *
 * @param mine whether the ticket is the viewer's
 * @param working the forms of the step
 * @param takeable to take a ticket that nobody has
 * @param invited to take a ticket that is offered to the viewer
 * @param adding evidence
 * @param handing to hand over, escalate, cancel, clear a hazard
 * @param assigning to somebody else, without asking
 * @param waiving a requirement, or agreeing to a lessening
 * @param approving the plan
 * @param reviewing the whole record, with remarks
 * @param sendingBack what a trainee worked on
 * @param mentoring to sign a trainee's ticket
 * @param reopening a closed ticket
 * @param appending to the papers of a closed ticket
 * @param countersigning what was added to them
 * @param judgingCase whether a closed ticket counts as a case
 */
public record Offered(
        boolean mine,
        boolean working,
        boolean takeable,
        boolean invited,
        boolean adding,
        boolean handing,
        boolean assigning,
        boolean waiving,
        boolean approving,
        boolean reviewing,
        boolean sendingBack,
        boolean mentoring,
        boolean reopening,
        boolean appending,
        boolean countersigning,
        boolean judgingCase) {

    /** To ask, hold, hand over, escalate or cancel. */
    public boolean moving() {
        return handing || working;
    }

    /** On a ticket whose record does not hold nobody can do anything. */
    static final Offered NOTHING = new Offered(
            false, false, false, false, false, false, false, false, false, false, false, false, false, false, false,
            false);

    static Offered of(Viewing viewing) {
        JobSheet sheet = viewing.sheet();
        Course course = sheet.course();
        Actor viewer = viewing.viewer();
        boolean open = course.isOpen();
        boolean closed = course.standing() == Standing.CLOSED;
        boolean mine = viewing.isViewersOwn();
        boolean supervising = viewer.is(Role.SUPERVISOR);
        boolean judging = !sheet.isHand(viewer.account());
        boolean mentor = judging && viewer.is(Role.MENTOR);
        boolean reviewer = mentor || (judging && supervising);
        return new Offered(
                mine,
                open && mine && course.hold() == null,
                open && course.assignee() == null && viewer.works(),
                open && viewer.account().equals(course.offered()),
                open && viewer.works(),
                open && (mine || supervising),
                open && supervising,
                open && supervising && judging,
                open && reviewer && sheet.step() == Step.PLAN,
                open && reviewer,
                open && mentor && sheet.workedBy(Role.TRAINEE),
                open && mentor && isToBeSigned(sheet),
                closed && viewer.works(),
                closed && sheet.isHand(viewer.account()),
                closed && reviewer,
                closed && judging && Permissions.allow(Permission.KEEP_CATALOGUE, viewer));
    }

    private static boolean isToBeSigned(JobSheet sheet) {
        return sheet.workedBy(Role.TRAINEE)
                && sheet.step() == Step.DOCUMENT
                && sheet.latestOfRound(SummaryWritten.class).isPresent();
    }
}

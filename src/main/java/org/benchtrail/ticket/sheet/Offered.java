package org.benchtrail.ticket.sheet;

import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.ticket.Viewing;

/**
 * What the page offers to its viewer. The method decides on every act all the same.
 *
 * @param mine whether the ticket is the viewer's
 * @param working the forms of the step
 * @param takeable to take a ticket that nobody has
 * @param adding evidence
 * @param handing to hand over, escalate, cancel, clear a hazard
 * @param approving the plan
 * @param mentoring to sign a trainee's ticket
 * @param reopening a closed ticket
 */
public record Offered(
        boolean mine,
        boolean working,
        boolean takeable,
        boolean adding,
        boolean handing,
        boolean approving,
        boolean mentoring,
        boolean waiving,
        boolean reopening) {

    static Offered of(Viewing viewing) {
        JobSheet sheet = viewing.sheet();
        Course course = sheet.course();
        Actor viewer = viewing.viewer();
        boolean open = course.isOpen();
        boolean mine = viewing.isViewersOwn();
        boolean supervising = viewer.is(Role.SUPERVISOR);
        return new Offered(
                mine,
                open && mine && course.hold() == null,
                open && course.assignee() == null && viewer.works(),
                open && viewer.works(),
                open && (mine || supervising),
                open && !mine && (supervising || viewer.is(Role.MENTOR)) && sheet.step() == Step.PLAN,
                open && !mine && viewer.is(Role.MENTOR) && isToBeSigned(sheet),
                supervising && !mine,
                course.standing() == Standing.CLOSED && viewer.works());
    }

    private static boolean isToBeSigned(JobSheet sheet) {
        return sheet.workedBy(Role.TRAINEE)
                && sheet.step() == Step.DOCUMENT
                && sheet.latestOfRound(SummaryWritten.class).isPresent();
    }
}

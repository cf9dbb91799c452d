package org.benchtrail.ticket.sheet;

import java.util.Objects;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.ticket.TicketLine;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.Viewing;

/**
 * The head of the job sheet.
 *
 * @param report as the ticket was opened
 * @param deviceAt page of the device; empty if the site does not know it
 * @param requester and how to reach them
 * @param erasing whether the viewer may propose to erase who reported it
 * @param standing in words; empty for what is open and not on hold
 */
public record HeadView(
        Opened report,
        String deviceAt,
        String requester,
        boolean erasing,
        String affects,
        String due,
        boolean overdue,
        String assignee,
        int round,
        String standing) {

    static HeadView of(TicketQueries.Whole ticket, String deviceAt, Viewing viewing) {
        JobSheet sheet = viewing.sheet();
        Opened report = sheet.opened();
        Course course = sheet.course();
        return new HeadView(
                report,
                deviceAt,
                ticket.contact().isEmpty() ? ticket.requester() : ticket.requester() + ", " + ticket.contact(),
                Permissions.allow(Permission.DECIDE_PROPOSALS, viewing.viewer()),
                report.impact().words() + ", " + report.urgency().words(),
                due(ticket.line(), viewing),
                ticket.line().isOverdue(viewing.now()),
                course.assignee() == null ? "not assigned" : viewing.name(course.assignee()),
                course.round(),
                standing(course, viewing));
    }

    private static String due(TicketLine line, Viewing viewing) {
        boolean open = viewing.sheet().course().isOpen();
        return viewing.time(line.due()) + (open ? " (" + line.dueIn(viewing.now(), viewing.workingTime()) + ")" : "");
    }

    private static String standing(Course course, Viewing viewing) {
        return switch (course.standing()) {
            case OPEN -> course.hold() == null ? "" : "on hold";
            case CLOSED -> "closed " + viewing.time(Objects.requireNonNull(course.closed()));
            case CANCELLED -> "cancelled";
        };
    }
}

package org.benchtrail.ticket.api;

import java.time.Instant;
import java.util.Set;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.Escalated;
import org.benchtrail.core.method.desk.Hold;
import org.benchtrail.core.method.desk.WaitingFor;
import org.jspecify.annotations.Nullable;

/**
 * Where a ticket stands.
 *
 * @param roundStart entry number with which the round began
 * @param openedAt entry number with which the ticket was opened, or last reopened
 * @param offered account to which it is offered; null if to none
 * @param escalation the fact that escalated it; null unless it is escalated
 */
public record CourseJson(
        Step step,
        Standing standing,
        int round,
        int roundStart,
        int openedAt,
        @Nullable String assignee,
        Set<Role> assigneeRoles,
        @Nullable String offered,
        @Nullable HoldJson hold,
        @Nullable Escalated escalation,
        @Nullable Instant closed) {

    public record HoldJson(WaitingFor waitingFor, Instant followUp, String note) {
        static @Nullable HoldJson of(@Nullable Hold hold) {
            return hold == null ? null : new HoldJson(hold.waitingFor(), hold.followUp(), hold.note());
        }
    }

    static CourseJson of(Course c) {
        return new CourseJson(
                c.step(),
                c.standing(),
                c.round(),
                c.roundStart(),
                c.openedAt(),
                c.assignee(),
                c.assigneeRoles(),
                c.offered(),
                HoldJson.of(c.hold()),
                c.escalation(),
                c.closed());
    }

    public boolean isOpen() {
        return standing == Standing.OPEN;
    }

    public boolean isTrainees() {
        return assigneeRoles.contains(Role.TRAINEE);
    }
}

package org.benchtrail.core.method;

import java.time.Instant;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Where a ticket stands.
 *
 * @param round 1 for the first pass; only grows
 * @param roundStart entry number with which the round began
 * @param openedAt entry number with which the ticket was opened, or last reopened
 * @param assignee account; null while nobody has taken it
 * @param closed when it was closed; null unless it is
 */
public record Course(
        Step step,
        Standing standing,
        int round,
        int roundStart,
        int openedAt,
        @Nullable String assignee,
        Set<Role> assigneeRoles,
        DeskFact.@Nullable Hold hold,
        MoveFact.@Nullable Escalated escalation,
        @Nullable Instant closed) {

    static Course opened(DeskFact.Opened fact, Stamp stamp) {
        return new Course(
                Step.IDENTIFY,
                Standing.OPEN,
                1,
                stamp.entry(),
                stamp.entry(),
                fact.assignee(),
                fact.assigneeRoles(),
                null,
                null,
                null);
    }

    public boolean isOpen() {
        return standing == Standing.OPEN;
    }

    /** A trainee's ticket is signed by a mentor as well. */
    public boolean isTrainees() {
        return assigneeRoles.contains(Role.TRAINEE);
    }

    Course atStep(Step next) {
        return new Course(
                next, standing, round, roundStart, openedAt, assignee, assigneeRoles, hold, escalation, closed);
    }

    Course nextRound(Step start, Stamp stamp) {
        return new Course(
                start, standing, round + 1, stamp.entry(), openedAt, assignee, assigneeRoles, hold, escalation, closed);
    }

    Course reopened(Stamp stamp) {
        return new Course(
                Step.IDENTIFY,
                Standing.OPEN,
                round + 1,
                stamp.entry(),
                stamp.entry(),
                assignee,
                assigneeRoles,
                null,
                null,
                null);
    }

    Course ended(Standing how, Instant at) {
        return new Course(step, how, round, roundStart, openedAt, assignee, assigneeRoles, null, escalation, at);
    }

    Course held(DeskFact.@Nullable Hold now) {
        return new Course(
                step, standing, round, roundStart, openedAt, assignee, assigneeRoles, now, escalation, closed);
    }

    Course escalated(MoveFact.@Nullable Escalated now) {
        return new Course(step, standing, round, roundStart, openedAt, assignee, assigneeRoles, hold, now, closed);
    }

    Course inHandsOf(String account, Set<Role> roles) {
        return new Course(step, standing, round, roundStart, openedAt, account, roles, hold, escalation, closed);
    }
}

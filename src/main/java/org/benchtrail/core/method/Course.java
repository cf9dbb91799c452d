package org.benchtrail.core.method;

import java.time.Instant;
import java.util.Set;
import org.benchtrail.core.method.desk.Escalated;
import org.benchtrail.core.method.desk.Hold;
import org.benchtrail.core.method.desk.Opened;
import org.jspecify.annotations.Nullable;

/**
 * Where a ticket stands.
 *
 * @param round 1 for the first pass; only grows
 * @param roundStart entry number with which the round began
 * @param openedAt entry number with which the ticket was opened, or last reopened
 * @param assignee account; null while nobody has taken it
 * @param offered account to which it is offered; null if to none
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
        @Nullable String offered,
        @Nullable Hold hold,
        @Nullable Escalated escalation,
        @Nullable Instant closed) {

    public static Course opened(Opened fact, Stamp stamp) {
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
                null,
                null);
    }

    public boolean isOpen() {
        return standing == Standing.OPEN;
    }

    public Course atStep(Step next) {
        return new Course(
                next,
                standing,
                round,
                roundStart,
                openedAt,
                assignee,
                assigneeRoles,
                offered,
                hold,
                escalation,
                closed);
    }

    public Course nextRound(Step start, Stamp stamp) {
        return new Course(
                start,
                standing,
                round + 1,
                stamp.entry(),
                openedAt,
                assignee,
                assigneeRoles,
                offered,
                hold,
                escalation,
                closed);
    }

    public Course reopened(Stamp stamp) {
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
                null,
                null);
    }

    public Course ended(Standing how, Instant at) {
        return new Course(step, how, round, roundStart, openedAt, assignee, assigneeRoles, null, null, escalation, at);
    }

    public Course held(@Nullable Hold now) {
        return new Course(
                step, standing, round, roundStart, openedAt, assignee, assigneeRoles, offered, now, escalation, closed);
    }

    public Course escalated(@Nullable Escalated now) {
        return new Course(
                step, standing, round, roundStart, openedAt, assignee, assigneeRoles, offered, hold, now, closed);
    }

    public Course offeredTo(@Nullable String account) {
        return new Course(
                step,
                standing,
                round,
                roundStart,
                openedAt,
                assignee,
                assigneeRoles,
                account,
                hold,
                escalation,
                closed);
    }

    public Course inHandsOf(String account, Set<Role> roles) {
        return new Course(step, standing, round, roundStart, openedAt, account, roles, null, hold, escalation, closed);
    }
}

package org.benchtrail.ticket;

import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.jspecify.annotations.Nullable;

/**
 * A ticket on which something waits for one person.
 *
 * @param offered account to which it is offered; null if to none
 * @param waitsSupervisor what waits for a supervisor, in words; null if nothing does
 * @param waitsMentor what waits for a mentor, in words; null if nothing does
 */
public record WaitingLine(
        int serial,
        String title,
        String device,
        String place,
        @Nullable String offered,
        @Nullable String waitsSupervisor,
        @Nullable String waitsMentor) {

    /** As it is written. */
    public String number() {
        return new TicketNumber(serial).toString();
    }

    /** What that person is waited for, in words. */
    public String why(Actor viewer) {
        return Stream.of(
                        viewer.account().equals(offered) ? "offered to you" : "",
                        viewer.is(Role.SUPERVISOR) && waitsSupervisor != null ? waitsSupervisor : "",
                        viewer.is(Role.MENTOR) && waitsMentor != null ? waitsMentor : "")
                .flatMap(words -> Stream.of(words.split("; ")))
                .filter(words -> !words.isEmpty())
                .distinct()
                .collect(Collectors.joining("; "));
    }
}

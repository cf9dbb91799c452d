package org.benchtrail.ticket.alarm;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.trail.Alarms;

/** Alarms looked at, and looked into. */
@ApplicationScoped
@Transactional
public class AlarmActs {
    private final Alarms alarms;
    private final TicketQueries tickets;
    private final Directory people;

    AlarmActs(Alarms alarms, TicketQueries tickets, Directory people) {
        this.alarms = alarms;
        this.tickets = tickets;
        this.people = people;
    }

    /** How many tickets did not hold when last looked at; 0 for those whom alarms do not concern. */
    public int standing(Actor viewer) {
        return Permissions.allow(Permission.SEE_ALARMS, viewer)
                ? alarms.standing().size()
                : 0;
    }

    AlarmView view(Actor viewer, ZoneId zone) {
        Permissions.require(Permission.SEE_ALARMS, viewer);
        List<Alarms.Line> lines = alarms.newest();
        Set<String> accounts = lines.stream().map(Alarms.Line::seenBy).collect(Collectors.toSet());
        return AlarmView.of(alarms.standing(), lines, people.names(accounts), zone);
    }

    /** Verifies a ticket's record. Only this ends its alarm, and only if the record holds. */
    void checkAgain(TicketNumber number, Actor viewer) {
        Permissions.require(Permission.SEE_ALARMS, viewer);
        TicketQueries.Verified found = tickets.verified(number, viewer);
        if (found.verification().holds() && alarms.standing().contains(number.serial())) {
            alarms.found(number, true, "Looked at again: it holds.", "", viewer.account());
        }
    }
}

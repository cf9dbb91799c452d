package org.benchtrail.exports;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.Directory;
import org.benchtrail.ticket.GivenFiles;

/** Notes who took a file of a ticket, before it is sent. */
@ApplicationScoped
class TicketsGiven implements GivenFiles {
    private static final int MOST = 100;

    private final EventRows rows;
    private final Directory people;
    private final Clock clock;

    TicketsGiven(EventRows rows, Directory people, Clock clock) {
        this.rows = rows;
        this.people = people;
        this.clock = clock;
    }

    @Transactional
    void note(TicketNumber ticket, String file, Actor viewer) {
        rows.give(EventRows.GivenRow.of(ticket, file, viewer.account(), clock.instant()), rows.head());
    }

    @Override
    @Transactional
    public List<Given> of(TicketNumber ticket) {
        List<EventRows.GivenRow> given = rows.given(ticket, MOST);
        Map<String, String> names = people.names(
                given.stream().map(EventRows.GivenRow::person).distinct().toList());
        return given.stream()
                .map(g -> new Given(g.format(), names.getOrDefault(g.person(), g.person()), g.at()))
                .toList();
    }
}

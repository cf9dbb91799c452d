package org.benchtrail.ticket.record;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.site.SiteHistory;
import org.benchtrail.people.Directory;
import org.benchtrail.site.SiteBook;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.Viewing;

/** All that a record shows, read in one transaction. */
@ApplicationScoped
class RecordQueries {
    private final TicketQueries tickets;
    private final Directory people;
    private final SiteBook site;
    private final Clock clock;

    RecordQueries(TicketQueries tickets, Directory people, SiteBook site, Clock clock) {
        this.tickets = tickets;
        this.people = people;
        this.site = site;
        this.clock = clock;
    }

    @Transactional
    RecordView record(TicketNumber number, Actor viewer, ZoneId zone) {
        TicketQueries.Traced traced = tickets.traced(number, viewer);
        JobSheet sheet = traced.ticket().sheet();
        SiteHistory decided = site.history();
        Instant now = clock.instant();
        Instant ended = sheet.course().closed();
        Viewing viewing = new Viewing(
                sheet,
                viewer,
                zone,
                now,
                decided.at(ended == null ? now : ended).rules().policy(),
                decided.workingTime(),
                people.names(RecordView.accounts(traced)));
        return RecordView.of(traced, viewing);
    }
}

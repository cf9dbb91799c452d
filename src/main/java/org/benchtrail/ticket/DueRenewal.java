package org.benchtrail.ticket;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.List;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.site.SiteHistory;
import org.benchtrail.core.site.TicketClock;
import org.benchtrail.site.SiteChanged;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.TrailStore;

/** Makes the due times of all open tickets anew when the site decides something else; whatever has ended keeps its own. */
@ApplicationScoped
class DueRenewal {
    private static final int AT_ONCE = 500;

    private final Tickets tickets;
    private final TrailStore trail;

    DueRenewal(Tickets tickets, TrailStore trail) {
        this.tickets = tickets;
        this.trail = trail;
    }

    void renew(@Observes SiteChanged changed) {
        SiteHistory site = changed.history();
        int after = 0;
        List<Ticket> batch = tickets.madeBefore(site.latest(), after, AT_ONCE);
        while (!batch.isEmpty()) {
            for (Ticket row : batch) {
                row.due(clock(row), site);
                after = row.serial;
            }
            tickets.flush();
            tickets.getEntityManager().clear();
            batch = tickets.madeBefore(site.latest(), after, AT_ONCE);
        }
    }

    private TicketClock clock(Ticket row) {
        return row.clock.isEmpty()
                ? TicketClock.of(JobSheet.replay(trail.read(row.number()).entries().stream()
                        .map(TrailEntry::read)
                        .toList()))
                : ClockLine.read(row.clock);
    }
}

package org.benchtrail.ticket;

import io.quarkus.arc.Arc;
import java.util.List;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.site.SiteBook;
import org.benchtrail.trail.TrailEntry;

/** The row of a ticket whose trail a test of another feature wrote behind the doors. */
public final class ShownTicket {
    private ShownTicket() {}

    /** Makes the row say what the trail says, within the running transaction. */
    public static void show(TicketNumber number, List<TrailEntry> trail) {
        JobSheet sheet = JobSheet.replay(trail.stream().map(TrailEntry::read).toList(), List.of());
        Arc.container()
                .instance(Tickets.class)
                .get()
                .locked(number)
                .show(
                        sheet,
                        trail.get(trail.size() - 1).hash(),
                        Arc.container().instance(SiteBook.class).get().history());
    }
}

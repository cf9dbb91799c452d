package org.benchtrail.ticket;

import jakarta.enterprise.context.ApplicationScoped;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Standing;
import org.benchtrail.people.OpenWork;

/** The open tickets that are with somebody. */
@ApplicationScoped
class OpenTickets implements OpenWork {
    private static final int MOST = 100;

    private final TicketListQueries lists;

    OpenTickets(TicketListQueries lists) {
        this.lists = lists;
    }

    @Override
    public Part with(String account, Actor reader) {
        QueuePart part =
                lists.queue(new QueueFilter(Standing.OPEN, null, account, null, null, null, "", null, MOST), reader);
        return new Part(
                part.tickets().stream()
                        .map(t -> new OpenTicket(t.number(), t.title()))
                        .toList(),
                part.total());
    }
}

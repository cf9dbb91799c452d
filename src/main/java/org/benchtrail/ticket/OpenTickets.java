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
        QueueFilter open = QueueFilter.of(Standing.OPEN).assignee(account).lines(MOST);
        QueuePart part = lists.queue(open, reader);
        return new Part(
                part.tickets().stream()
                        .map(t -> new OpenTicket(t.number(), t.title()))
                        .toList(),
                part.counted() > QueuePart.MOST_COUNTED ? lists.total(open, reader) : part.counted());
    }
}

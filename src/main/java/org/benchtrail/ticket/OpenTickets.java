package org.benchtrail.ticket;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Standing;
import org.benchtrail.people.OpenWork;

/** The open tickets that are with somebody. */
@ApplicationScoped
class OpenTickets implements OpenWork {
    private static final int MOST = 100;

    private final TicketListQueries lists;
    private final HandOvers handOvers;

    OpenTickets(TicketListQueries lists, HandOvers handOvers) {
        this.lists = lists;
        this.handOvers = handOvers;
    }

    @Override
    public List<Handed> handOver(String from, String to, Actor by) {
        List<HandOvers.Seen> open = handOvers.openWith(from, by);
        return open.isEmpty()
                ? List.of()
                : handOvers.give(open, to, "The account that had it was closed.", by).stream()
                        .map(r -> new Handed(r.number(), r.done(), r.sentence()))
                        .toList();
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

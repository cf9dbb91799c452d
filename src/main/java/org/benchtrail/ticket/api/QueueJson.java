package org.benchtrail.ticket.api;

import java.util.List;
import org.benchtrail.ticket.QueuePart;
import org.jspecify.annotations.Nullable;

/**
 * One page of the queue.
 *
 * @param next token of the page after; null on the last one
 * @param total how many tickets the filter fits in all
 */
public record QueueJson(
        List<TicketLineJson> tickets, @Nullable String next, long total) {
    static QueueJson of(QueuePart part, long total) {
        return new QueueJson(TicketLineJson.all(part.tickets()), part.next(), total);
    }
}

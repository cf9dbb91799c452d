package org.benchtrail.ticket;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One page of the queue.
 *
 * @param next token of the page after; null on the last one
 * @param total how many tickets the filter fits in all
 */
public record QueuePart(List<TicketLine> tickets, @Nullable String next, long total) {}

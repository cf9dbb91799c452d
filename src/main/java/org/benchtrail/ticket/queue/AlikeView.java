package org.benchtrail.ticket.queue;

import java.util.List;
import org.benchtrail.ticket.KnownCauses;
import org.benchtrail.ticket.TicketLine;

/**
 * What is like a report that is being typed.
 *
 * @param tickets that are open
 * @param solved tickets that were closed
 */
public record AlikeView(List<TicketLine> tickets, List<KnownCauses.Line> known, List<KnownCauses.Solved> solved) {}

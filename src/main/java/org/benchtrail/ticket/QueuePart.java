package org.benchtrail.ticket;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * One page of the queue.
 *
 * @param next token of the page after; null on the last one
 * @param total how many tickets the filter fits in all
 */
public record QueuePart(List<TicketLine> tickets, @Nullable String next, long total) {

    /** Accounts of those who have one of its tickets. */
    public Set<String> assignees() {
        return tickets.stream()
                .map(TicketLine::assignee)
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
    }
}

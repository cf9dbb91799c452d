package org.benchtrail.ticket;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * One page of the queue.
 *
 * @param after its last place; null on the last page
 * @param counted how many tickets the filter fits; one more than {@link #MOST_COUNTED} if there are more than that
 */
public record QueuePart(List<TicketLine> tickets, @Nullable Cursor after, long counted) {
    /** To count further would cost more than the page itself. */
    public static final int MOST_COUNTED = 1000;

    /** Token of the page after; null on the last one. */
    public @Nullable String next() {
        return after == null ? null : after.token();
    }

    /** Accounts of those who have one of its tickets. */
    public Set<String> assignees() {
        return tickets.stream()
                .map(TicketLine::assignee)
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
    }
}

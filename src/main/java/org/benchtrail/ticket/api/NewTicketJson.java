package org.benchtrail.ticket.api;

import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.ticket.NewTicket;
import org.jspecify.annotations.Nullable;

/**
 * A report that opens a ticket.
 *
 * @param title one line: what is wrong
 * @param words the requester's own words; empty if they say no more than the title
 * @param requester who reports it
 * @param contact how to reach them
 * @param queued true to leave it in the queue; otherwise whoever opens it has it
 */
public record NewTicketJson(
        String title,
        String words,
        @Nullable Category category,
        String device,
        String place,
        String requester,
        String contact,
        Priority.@Nullable Impact impact,
        Priority.@Nullable Urgency urgency,
        boolean queued) {
    NewTicket report() {
        return new NewTicket(title, words, category, device, place, requester, contact, impact, urgency, queued);
    }
}

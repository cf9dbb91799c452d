package org.benchtrail.ticket.today;

import java.time.Instant;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.WaitKind;
import org.jspecify.annotations.Nullable;

/**
 * Something that waits, and the ticket on which it does.
 *
 * @param entry that made it wait
 * @param account for whom it waits; null if for everybody of a role
 * @param asker account that made it wait
 * @param due from when on it waits
 */
record WaitingLine(
        int ticket,
        WaitKind kind,
        int entry,
        @Nullable String account,
        String asker,
        Instant since,
        Instant due,
        String title,
        String device,
        String place) {

    TicketNumber number() {
        return new TicketNumber(ticket);
    }
}

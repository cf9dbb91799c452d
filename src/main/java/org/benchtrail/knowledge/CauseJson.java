package org.benchtrail.knowledge;

import java.time.Instant;
import org.benchtrail.core.method.TicketNumber;
import org.jspecify.annotations.Nullable;

/**
 * A known cause for programs.
 *
 * @param mergedInto number of the known cause that took it in
 * @param measured how many of the confirmations were by measurement
 * @param ticket number of the ticket it came from
 */
public record CauseJson(
        long id,
        CauseText text,
        CauseState state,
        @Nullable Long mergedInto,
        int confirmations,
        int measured,
        @Nullable Instant lastConfirmed,
        @Nullable String confirmedBy,
        @Nullable String ticket,
        Instant proposed,
        String proposedBy,
        int version) {

    static CauseJson of(KnownCause c) {
        return new CauseJson(
                c.number(),
                c.text(),
                c.state,
                c.mergedInto,
                c.confirmations,
                c.measured,
                c.lastConfirmed,
                c.confirmedBy,
                c.ticket == null ? null : new TicketNumber(c.ticket).toString(),
                c.proposed,
                c.proposedBy,
                c.version);
    }
}

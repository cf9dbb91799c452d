package org.benchtrail.ticket;

import org.benchtrail.core.method.TicketNumber;

/** How far the trails of tickets are sealed, and who has seen it; the log tells, which knows tickets while they do not know it. */
public interface Seals {
    /** Of one ticket; within the running transaction. */
    SealedUpTo of(TicketNumber number);
}

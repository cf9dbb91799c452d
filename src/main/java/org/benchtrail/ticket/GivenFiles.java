package org.benchtrail.ticket;

import java.time.Instant;
import java.util.List;
import org.benchtrail.core.method.TicketNumber;

/** Which files of a ticket have left the house: what is erased here is still in them. */
public interface GivenFiles {
    /**
     * A file that somebody took.
     *
     * @param file what it was
     * @param person name of who took it
     */
    record Given(String file, String person, Instant at) {}

    /** The latest first; those of very long ago are left out where there are many. */
    List<Given> of(TicketNumber ticket);
}

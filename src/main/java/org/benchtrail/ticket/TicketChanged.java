package org.benchtrail.ticket;

import java.util.List;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.TicketNumber;

/**
 * Told to whoever observes it, inside the transaction that recorded the entries.
 *
 * @param sheet as it stands after them
 * @param entries the new ones, in order
 */
public record TicketChanged(TicketNumber number, JobSheet sheet, List<Entry> entries) {
    public TicketChanged {
        entries = List.copyOf(entries);
    }
}

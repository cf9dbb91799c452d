package org.benchtrail.ticket;

import java.util.List;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.TicketNumber;

/**
 * How a request of one or more acts ended. What could not be done is told, not thrown, so that the entry of the refusal stays.
 *
 * @param sheet as it stands now
 * @param recorded numbers of the entries that the acts made; empty if they were refused
 * @param missing what stood in the way; empty if all was done
 */
public record Outcome(TicketNumber number, JobSheet sheet, List<Integer> recorded, List<Missing> missing) {
    public boolean refused() {
        return !missing.isEmpty();
    }
}

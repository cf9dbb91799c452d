package org.benchtrail.ticket;

import java.util.List;
import org.benchtrail.core.method.TicketNumber;

/** Who has judged the work on a ticket besides what its trail says, and so does no work on it later. */
public interface OutsideJudges {
    /** Their accounts; everything within the running transaction. */
    List<String> judges(TicketNumber number);
}

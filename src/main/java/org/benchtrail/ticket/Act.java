package org.benchtrail.ticket;

import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;

/** One act: what is recorded on the sheet as it stands when its turn comes. */
@FunctionalInterface
public interface Act {
    Fact on(JobSheet sheet);
}

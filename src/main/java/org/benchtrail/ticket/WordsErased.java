package org.benchtrail.ticket;

import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.TicketNumber;

/**
 * Told to whoever keeps words of tickets, inside the transaction that erases some.
 *
 * @param sheet as it reads without them
 * @param words that were erased, as one text
 */
public record WordsErased(TicketNumber number, JobSheet sheet, String words) {}

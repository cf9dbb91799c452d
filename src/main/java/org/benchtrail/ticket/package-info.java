/** Tickets: the acts on the job sheet, their pages and API. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket;

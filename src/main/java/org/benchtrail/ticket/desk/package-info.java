/** What is done to a ticket at the desk: moves, hand-over, hold, waivers, cautions, reopening, cancelling. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.desk;

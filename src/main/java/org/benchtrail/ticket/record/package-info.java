/** The record of a ticket, on screen and on paper. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.record;

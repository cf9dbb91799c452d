/** The queue of tickets, and opening a new one. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.queue;

/** Tickets for programs, in JSON records of their own. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.api;

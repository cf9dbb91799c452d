/** What changes on a job sheet while it is open, and who else has it open. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.live;

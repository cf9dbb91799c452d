/** The trail of a ticket and one entry of it, which can be put right. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.entry;

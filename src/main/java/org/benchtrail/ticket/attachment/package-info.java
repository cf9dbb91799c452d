/** Files kept beside a ticket. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.attachment;

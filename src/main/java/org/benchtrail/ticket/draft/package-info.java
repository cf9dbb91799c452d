/** What was typed on a job sheet and is not recorded yet, kept until it is recorded or discarded on purpose. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.draft;

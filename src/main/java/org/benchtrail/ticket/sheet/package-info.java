/** The job sheet as a page: read in one transaction, shown step by step, and its forms taken. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.sheet;

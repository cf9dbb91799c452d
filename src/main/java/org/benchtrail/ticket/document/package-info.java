/** Document on the job sheet: cause, summary and what is learned. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.document;

/** Verify on the job sheet: what was wrong looked at again. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.verify;

/** Identify on the job sheet: the form, what it becomes, and what is shown of it; evidence at any step. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.identify;

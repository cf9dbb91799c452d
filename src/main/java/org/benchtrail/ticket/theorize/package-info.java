/** Theorize on the job sheet: theories, and the causes ranked for them. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.theorize;

/** Test on the job sheet: checks and their results. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.test;

/** Plan on the job sheet: actions, their approval, and carrying them out. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.plan;

/** Results of the bench on job sheets. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.bench;

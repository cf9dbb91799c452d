/** What waits, as the database finds it. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.today;

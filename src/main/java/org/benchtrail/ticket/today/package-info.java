/** What waits for whoever is signed in: the first page after it. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.today;

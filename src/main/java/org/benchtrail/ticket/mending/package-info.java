/** Tickets whose trail was found broken, mended by two people. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.mending;

/** Alarms: tickets whose record was found not to hold. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.alarm;

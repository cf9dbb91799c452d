package org.benchtrail.core.method;

/** Whether a ticket is being worked. */
public enum Standing {
    OPEN,
    CLOSED,
    CANCELLED
}

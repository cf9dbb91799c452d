package org.benchtrail.core.audit;

/**
 * A signal on a ticket.
 *
 * @param detail where it is and what was seen there; no text that somebody wrote, and nobody's name
 */
public record Signal(String ticket, SignalKind kind, String detail) {}

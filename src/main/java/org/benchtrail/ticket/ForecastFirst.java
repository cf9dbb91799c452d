package org.benchtrail.ticket;

import org.benchtrail.core.method.TicketNumber;

/** Whoever asks says first what they expect on a ticket of theirs; nothing of what was asked for is told. */
public class ForecastFirst extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient TicketNumber ticket;
    private final String known;

    /** @param ticket on which the forecast is due */
    public ForecastFirst(TicketNumber ticket) {
        this(ticket, "");
    }

    /** @param known what may be told of what was asked for, a sentence */
    public ForecastFirst(TicketNumber ticket, String known) {
        super("Your forecast on ticket " + ticket + " comes first." + (known.isEmpty() ? "" : " " + known));
        this.ticket = ticket;
        this.known = known;
    }

    public String known() {
        return known;
    }

    public TicketNumber ticket() {
        return ticket;
    }
}

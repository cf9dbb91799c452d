package org.benchtrail.ticket;

import org.benchtrail.core.method.TicketNumber;

/** Whoever asks says first what they expect on a ticket of theirs; nothing of what was asked for is told. */
public class ForecastFirst extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient TicketNumber ticket;
    private final String known;
    private final String sentence;

    /** @param ticket on which the forecast is due */
    public ForecastFirst(TicketNumber ticket) {
        this(ticket, "");
    }

    /** @param known what may be told of what was asked for, a sentence */
    public ForecastFirst(TicketNumber ticket, String known) {
        this(
                ticket,
                known,
                "Your forecast on ticket " + ticket + " comes first." + (known.isEmpty() ? "" : " " + known));
    }

    private ForecastFirst(TicketNumber ticket, String known, String sentence) {
        super(sentence);
        this.sentence = sentence;
        this.ticket = ticket;
        this.known = known;
    }

    /** What comes first, and what may be told all the same. */
    public String sentence() {
        return sentence;
    }

    public String known() {
        return known;
    }

    public TicketNumber ticket() {
        return ticket;
    }
}

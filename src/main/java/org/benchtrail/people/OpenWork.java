package org.benchtrail.people;

import java.util.List;
import org.benchtrail.core.method.Actor;

/** What a person has still to do; told by the feature that knows. */
public interface OpenWork {
    /** An open ticket. */
    record OpenTicket(String number, String title) {}

    /**
     * The open tickets of one person.
     *
     * @param tickets what is due first, at most 100
     * @param total how many there are in all
     */
    record Part(List<OpenTicket> tickets, long total) {
        public Part {
            tickets = List.copyOf(tickets);
        }
    }

    /** What became of a ticket that was to be handed over. */
    record Handed(String number, boolean done, String sentence) {}

    /** Hands the open tickets of one account to another, each as an act of {@code by}. */
    List<Handed> handOver(String from, String to, Actor by);

    /** The open tickets that are with that account, as {@code reader} may see them. */
    Part with(String account, Actor reader);
}

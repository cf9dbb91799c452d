package org.benchtrail.exports;

import java.util.List;

/**
 * A ticket with its events, in the order of its trail.
 *
 * @param number with its check digit
 * @param rounds how many it took
 */
record TicketEvents(String number, String category, String priority, int rounds, List<TicketEvent> events) {
    TicketEvents {
        events = List.copyOf(events);
    }
}

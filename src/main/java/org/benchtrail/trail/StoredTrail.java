package org.benchtrail.trail;

import java.util.List;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.method.TicketNumber;

/**
 * A ticket's trail as it is stored, and what the ticket's row, read in the same moment, says of its end.
 *
 * @param entries in their order
 * @param expected how many there are by the row
 * @param lastHash hash of the last one by the row
 */
public record StoredTrail(List<TrailEntry> entries, int expected, String lastHash) {
    public StoredTrail {
        entries = List.copyOf(entries);
    }

    /** Holds the trail against itself and against the row. */
    public Verification verify(TicketNumber ticket) {
        return Verification.of(ticket, entries, expected, lastHash);
    }

    /** The two ends, for whoever has to put it right. */
    public String ends() {
        String found = entries.isEmpty()
                ? HashChain.START
                : entries.get(entries.size() - 1).hash();
        return "row: " + expected + " entries, last " + lastHash + "; trail: " + entries.size() + " entries, last "
                + found;
    }
}

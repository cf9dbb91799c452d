package org.benchtrail.trail;

import java.util.List;
import java.util.function.Consumer;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.TicketNumber;
import org.jspecify.annotations.Nullable;

/**
 * A ticket's trail as it is stored, and what the ticket's row, read in the same moment, says of its end.
 *
 * @param entries in their order
 * @param expected how many there are by the row
 * @param lastHash hash of the last one by the row
 * @param sealed the last one that the log has sealed; null if it has none
 */
public record StoredTrail(
        List<TrailEntry> entries,
        int expected,
        String lastHash,
        @Nullable SealedEnd sealed) {
    public StoredTrail {
        entries = List.copyOf(entries);
    }

    /** The last leaf of the ticket's stream. */
    public record SealedEnd(long place, String hash) {}

    /** Holds the trail against itself, against the row, and against the last leaf of it. */
    public Verification verify(TicketNumber ticket) {
        return verify(ticket, entry -> {});
    }

    /**
     * As {@link #verify(TicketNumber)}; reading an entry is most of the work of it, so what was read is given away.
     *
     * @param holding takes each entry that holds, in their order, up to the first that does not
     */
    public Verification verify(TicketNumber ticket, Consumer<Entry> holding) {
        Verification found = Verification.of(ticket, entries, expected, lastHash, holding);
        return found.holds() && sealed != null ? found.against(entries, sealed) : found;
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

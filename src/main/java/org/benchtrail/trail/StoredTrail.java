package org.benchtrail.trail;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.integrity.Hole;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.TicketNumber;
import org.jspecify.annotations.Nullable;

/**
 * A ticket's trail as it is stored, and what the ticket's row, read in the same moment, says of its end.
 *
 * @param entries in their order, but for those that lie in a hole
 * @param expected how many there are by the row
 * @param lastHash hash of the last one by the row
 * @param sealed the last one that the log has sealed; null if it has none
 * @param holes after which two people agreed to go on
 * @param erased entries of which the words were erased
 * @param broken place of the incident that says that the trail was found broken; null unless it still has to be mended
 */
public record StoredTrail(
        List<TrailEntry> entries,
        int expected,
        String lastHash,
        @Nullable SealedEnd sealed,
        List<Hole> holes,
        Set<Integer> erased,
        @Nullable Long broken) {
    public StoredTrail {
        entries = List.copyOf(entries);
        holes = List.copyOf(holes);
        erased = Set.copyOf(erased);
    }

    StoredTrail(List<TrailEntry> entries, int expected, String lastHash, @Nullable SealedEnd sealed) {
        this(entries, expected, lastHash, sealed, List.of(), Set.of(), null);
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
        return verify(ticket, (hash, entry) -> EntryCodec.decode(hash, entry.canonical(), entry.words()), holding);
    }

    /** As {@link #verify(TicketNumber, Consumer)}, of one trail of very many: what was read is not kept for the next look. */
    public Verification verifyOnce(TicketNumber ticket, Consumer<Entry> holding) {
        return verify(ticket, (hash, entry) -> EntryCodec.decode(entry.canonical(), entry.words()), holding);
    }

    private Verification verify(
            TicketNumber ticket, BiFunction<String, TrailEntry, EntryCodec.Decoded> read, Consumer<Entry> holding) {
        Verification found = Verification.of(ticket, entries, expected, lastHash, holes, erased, read, holding);
        return found.holds() && sealed != null ? found.against(entries, holes, sealed) : found;
    }

    /** Where it ends as it is stored. */
    public BrokenTrail.End end() {
        TrailEntry last = entries.isEmpty() ? null : entries.get(entries.size() - 1);
        return holes.stream()
                .filter(hole -> last == null || hole.last() > last.entry())
                .map(hole -> new BrokenTrail.End(hole.last(), hole.hash()))
                .findFirst()
                .orElse(
                        last == null
                                ? new BrokenTrail.End(0, HashChain.START)
                                : new BrokenTrail.End(last.entry(), last.hash()));
    }

    /** Which check finds it broken: A1 of each entry, A2 of the end by the row, A3 of the last leaf; ROW where all three hold. */
    public String check(TicketNumber ticket) {
        if (!new StoredTrail(entries, end().place(), end().hash(), null, holes, erased, null)
                .verify(ticket)
                .holds()) {
            return "A1";
        }
        if (!new StoredTrail(entries, expected, lastHash, null, holes, erased, null)
                .verify(ticket)
                .holds()) {
            return "A2";
        }
        return verify(ticket).holds() ? "ROW" : "A3";
    }

    /** Stands for all that is stored here, so that a change of any of it is seen; not for what is sealed of it, which goes on by itself. */
    public String fingerprint() {
        StringBuilder all = new StringBuilder(expected + " " + lastHash + " " + holes + " " + new TreeSet<>(erased));
        entries.forEach(e -> all.append('\n')
                .append(String.join(
                        " ",
                        e.entry() + "",
                        e.at().toString(),
                        e.actor(),
                        e.kind(),
                        e.hash(),
                        HashChain.hash(e.canonical()),
                        e.words() == null ? "" : HashChain.hash(e.words()))));
        return HashChain.hash(all.toString().getBytes(StandardCharsets.UTF_8));
    }

    /** The two ends, for whoever has to put it right. */
    public String ends() {
        return "row: " + expected + " entries, last " + lastHash + "; trail: " + entries.size() + " entries, last "
                + end().hash();
    }
}

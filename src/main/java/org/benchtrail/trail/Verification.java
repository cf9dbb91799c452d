package org.benchtrail.trail;

import java.time.Instant;
import java.util.List;
import java.util.function.Consumer;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.TicketNumber;
import org.jspecify.annotations.Nullable;

/**
 * The outcome of holding a ticket's trail against itself.
 *
 * @param entries how many entries were read
 * @param holds whether all of them hold
 * @param brokenAt number of the first entry that does not hold; null if all do
 * @param sentence what was found, for people
 * @param newer whether all that is wrong is that the first entry that does not hold could be one of a later release
 */
public record Verification(
        int entries, boolean holds, @Nullable Integer brokenAt, String sentence, boolean newer) {
    private static final String NOT_READ = "it cannot be read";

    public Verification(int entries, boolean holds, @Nullable Integer brokenAt, String sentence) {
        this(entries, holds, brokenAt, sentence, false);
    }

    /**
     * Re-reads a trail and names the first entry that is missing, altered, reordered or out of time.
     *
     * @param expected how many entries the ticket says it has, so that a cut tail is seen
     * @param lastHash what the ticket says the last one's hash is, so that a tail written anew is seen
     * @param holding takes each entry that holds, up to the first that does not
     */
    static Verification of(
            TicketNumber ticket, List<TrailEntry> trail, int expected, String lastHash, Consumer<Entry> holding) {
        String previous = HashChain.START;
        Instant last = Instant.MIN;
        for (int i = 0; i < trail.size(); i++) {
            TrailEntry entry = trail.get(i);
            String fault = fault(ticket, entry, i + 1, previous, last, holding);
            if (!fault.isEmpty()) {
                return new Verification(
                        trail.size(),
                        false,
                        i + 1,
                        "Entry " + (i + 1) + " does not hold: " + fault + ".",
                        fault.equals(NOT_READ) && EntryCodec.isNewer(entry.canonical(), previous));
            }
            previous = entry.hash();
            last = entry.at();
        }
        if (trail.size() != expected) {
            return new Verification(
                    trail.size(),
                    false,
                    Math.min(trail.size(), expected) + 1,
                    "The ticket has " + expected + " entries, but " + trail.size() + " are there.");
        }
        return previous.equals(lastHash)
                ? new Verification(trail.size(), true, null, "All " + trail.size() + " entries hold.")
                : new Verification(
                        trail.size(), false, expected, "The ticket's row names another last entry than the trail has.");
    }

    /** What was sealed has to be there, whatever the row says. */
    Verification against(List<TrailEntry> trail, StoredTrail.SealedEnd sealed) {
        if (sealed.place() > trail.size()) {
            return new Verification(
                    entries,
                    false,
                    trail.size() + 1,
                    "Entry " + sealed.place() + " was sealed, but only " + trail.size() + " entries are there.");
        }
        int place = (int) sealed.place();
        return trail.get(place - 1).hash().equals(sealed.hash())
                ? this
                : new Verification(entries, false, place, "Entry " + place + " is not the one that was sealed.");
    }

    private static String fault(
            TicketNumber ticket, TrailEntry entry, int number, String previous, Instant last, Consumer<Entry> holding) {
        if (entry.entry() != number) {
            return "entry " + number + " is missing, " + entry.entry() + " stands in its place";
        }
        String hash = HashChain.hash(entry.canonical());
        if (!hash.equals(entry.hash())) {
            return entry.readable().isPresent()
                    ? "its content was altered"
                    : "its content was altered, and it cannot be read";
        }
        try {
            EntryCodec.Decoded inside = EntryCodec.decode(hash, entry.canonical());
            String fault = content(ticket, entry, inside, previous, last);
            if (fault.isEmpty()) {
                holding.accept(inside.entry());
            }
            return fault;
        } catch (IllegalArgumentException e) {
            return NOT_READ;
        }
    }

    private static String content(
            TicketNumber ticket, TrailEntry entry, EntryCodec.Decoded inside, String previous, Instant last) {
        if (!inside.previous().equals(previous)) {
            return "it does not follow the entry before it";
        }
        if (!inside.ticket().equals(ticket.toString())
                || inside.entry().stamp().entry() != entry.entry()
                || !inside.entry().stamp().at().equals(entry.at())
                || !inside.entry().stamp().by().equals(entry.actor())
                || !FactKinds.name(inside.entry().fact().getClass()).equals(entry.kind())) {
            return "the columns beside its content say something else";
        }
        return entry.at().isBefore(last) ? "it is older than the entry before it" : "";
    }
}

package org.benchtrail.trail;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.integrity.Hole;
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
     * @param holes after which it was agreed to go on: the trail goes on after them with the hash that they name
     * @param erased entries of which the words were erased
     * @param read what is in an entry, by its hash
     * @param holding takes each entry that holds, up to the first that does not
     */
    static Verification of(
            TicketNumber ticket,
            List<TrailEntry> trail,
            int expected,
            String lastHash,
            List<Hole> holes,
            Set<Integer> erased,
            BiFunction<String, TrailEntry, EntryCodec.Decoded> read,
            Consumer<Entry> holding) {
        Hole end = new Hole(1, 0, HashChain.START, 0);
        Instant last = Instant.MIN;
        String written = ticket.toString();
        for (TrailEntry entry : trail) {
            int number = end.last() + 1;
            String fault = fault(written, entry, number, end.hash(), last, erased, read, holding);
            if (!fault.isEmpty()) {
                return new Verification(
                        trail.size(),
                        false,
                        number,
                        "Entry " + number + " does not hold: " + fault + ".",
                        fault.equals(NOT_READ) && EntryCodec.isNewer(entry.canonical(), end.hash()));
            }
            end = Hole.at(number + 1, holes).orElse(new Hole(number, number, entry.hash(), 0));
            last = entry.at();
        }
        if (end.last() != expected) {
            return new Verification(
                    trail.size(),
                    false,
                    Math.min(end.last(), expected) + 1,
                    "The ticket has " + expected + " entries, but " + end.last() + " are there.");
        }
        return end.hash().equals(lastHash)
                ? new Verification(trail.size(), true, null, whole(trail.size(), holes))
                : new Verification(
                        trail.size(), false, expected, "The ticket's row names another last entry than the trail has.");
    }

    private static String whole(int entries, List<Hole> holes) {
        return holes.isEmpty()
                ? "All " + entries + " entries hold."
                : "The " + entries + " entries that are there hold; the trail is not whole. "
                        + holes.stream().map(Hole::sentence).collect(Collectors.joining(" "));
    }

    /** What was sealed has to be there, whatever the row says. */
    Verification against(List<TrailEntry> trail, List<Hole> holes, StoredTrail.SealedEnd sealed) {
        Optional<Hole> lost =
                holes.stream().filter(hole -> hole.takes(sealed.place())).findFirst();
        if (lost.isPresent()) {
            boolean other =
                    lost.get().last() == sealed.place() && !lost.get().hash().equals(sealed.hash());
            return other ? notSealed((int) sealed.place()) : this;
        }
        int last = trail.isEmpty() ? 0 : trail.get(trail.size() - 1).entry();
        if (sealed.place() > last) {
            return new Verification(
                    entries,
                    false,
                    last + 1,
                    "Entry " + sealed.place() + " was sealed, but only " + last + " entries are there.");
        }
        return trail.stream()
                        .anyMatch(e -> e.entry() == sealed.place() && e.hash().equals(sealed.hash()))
                ? this
                : notSealed((int) sealed.place());
    }

    private Verification notSealed(int place) {
        return new Verification(entries, false, place, "Entry " + place + " is not the one that was sealed.");
    }

    /** What was found broken once stays so until two people mended it, whatever was done to the tables since. */
    public Verification marked(long incident) {
        return new Verification(
                entries,
                false,
                null,
                "It was found broken, as incident " + incident + " says, and has not been mended since.");
    }

    private static String fault(
            String ticket,
            TrailEntry entry,
            int number,
            String previous,
            Instant last,
            Set<Integer> erased,
            BiFunction<String, TrailEntry, EntryCodec.Decoded> read,
            Consumer<Entry> holding) {
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
            EntryCodec.Decoded inside = read.apply(hash, entry);
            String fault = content(ticket, entry, inside, previous, last);
            if (fault.isEmpty()) {
                fault = words(inside.lacking(), entry.words() != null, erased.contains(number));
            }
            if (fault.isEmpty()) {
                holding.accept(inside.entry());
            }
            return fault;
        } catch (WrittenWords.Altered e) {
            return "its words were altered";
        } catch (IllegalArgumentException e) {
            return NOT_READ;
        }
    }

    private static String words(boolean lacking, boolean there, boolean erased) {
        if (lacking && !erased) {
            return "its words are missing, and nobody erased them";
        }
        return there && erased ? "its words were erased, and stand there again" : "";
    }

    private static String content(
            String ticket, TrailEntry entry, EntryCodec.Decoded inside, String previous, Instant last) {
        if (!inside.previous().equals(previous)) {
            return "it does not follow the entry before it";
        }
        if (!inside.ticket().equals(ticket)
                || inside.entry().stamp().entry() != entry.entry()
                || !inside.entry().stamp().at().equals(entry.at())
                || !inside.entry().stamp().by().equals(entry.actor())
                || !FactKinds.name(inside.entry().fact().getClass()).equals(entry.kind())) {
            return "the columns beside its content say something else";
        }
        return entry.at().isBefore(last) ? "it is older than the entry before it" : "";
    }
}

package org.benchtrail.trail;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.integrity.Hole;
import org.benchtrail.core.method.TicketNumber;
import org.jspecify.annotations.Nullable;

/** What is to be done about a trail that does not hold: where it has to end, from where on it is lost, and which bytes bring it back. */
public final class BrokenTrail {
    private static final ObjectMapper LINES = new ObjectMapper();

    private final TicketNumber ticket;
    private final StoredTrail stored;
    private final Map<Integer, String> leaves;
    private final End end;
    private final Map<Integer, TrailEntry> byNumber = new HashMap<>();
    private final Map<Integer, String> known = new TreeMap<>();
    private final int first;

    /** Where a trail ends: the number of its last entry, and its hash. */
    public record End(int place, String hash) {}

    /**
     * @param leaves hashes that the log has sealed, by the entry's number
     * @param found where the trail had to end when it was found broken; null if that was not recorded
     */
    BrokenTrail(TicketNumber ticket, StoredTrail stored, Map<Integer, String> leaves, @Nullable End found) {
        this.ticket = ticket;
        this.stored = stored;
        this.leaves = leaves;
        this.end = end(found);
        stored.entries().forEach(entry -> byNumber.put(entry.entry(), entry));
        knownByWhatFollows();
        first = firstLost();
    }

    /** The furthest of what the row, the log and the incident say; of two that say the same place, what was sealed. */
    private End end(@Nullable End found) {
        End furthest = new End(stored.expected(), stored.lastHash());
        if (found != null && found.place() >= furthest.place()) {
            furthest = found;
        }
        StoredTrail.SealedEnd sealed = stored.sealed();
        return sealed != null && sealed.place() >= furthest.place()
                ? new End((int) sealed.place(), sealed.hash())
                : furthest;
    }

    /** Each entry whose bytes are those of a hash that is known tells the hash of the one before it. */
    private void knownByWhatFollows() {
        known.putAll(leaves);
        known.putIfAbsent(end.place(), end.hash());
        for (int place = end.place(); place > 1; place--) {
            TrailEntry entry = byNumber.get(place);
            String hash = known.get(place);
            if (entry != null && hash != null && hash.equals(HashChain.hash(entry.canonical()))) {
                known.putIfAbsent(place - 1, previous(entry.canonical()));
            }
        }
    }

    /** What an entry names as the one before it; no hash at all if the bytes are no entry. */
    private static String previous(byte[] canonical) {
        try {
            return EntryCodec.decode(canonical, null).previous();
        } catch (IllegalArgumentException e) {
            return "";
        }
    }

    private int firstLost() {
        int place = 1;
        String previous = HashChain.START;
        while (place <= end.place()) {
            Optional<Hole> hole = Hole.at(place, stored.holes());
            if (hole.isPresent()) {
                place = hole.get().last() + 1;
                previous = hole.get().hash();
                continue;
            }
            TrailEntry entry = byNumber.get(place);
            if (entry == null || !holds(entry, previous)) {
                return place;
            }
            previous = entry.hash();
            place++;
        }
        return place;
    }

    private boolean holds(TrailEntry entry, String previous) {
        String hash = HashChain.hash(entry.canonical());
        return hash.equals(entry.hash())
                && hash.equals(known.getOrDefault(entry.entry(), hash))
                && previous(entry.canonical()).equals(previous)
                && entryOf(entry.canonical()).filter(entry::isAlike).isPresent()
                && hasItsWords(entry);
    }

    /** Whether the words of an entry are there, or were erased. */
    private boolean hasItsWords(TrailEntry entry) {
        try {
            return !EntryCodec.decode(entry.canonical(), entry.words()).lacking()
                    || stored.erased().contains(entry.entry());
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    /** Where the trail has to end. */
    public End end() {
        return end;
    }

    /** The first entry that does not hold; one after the end if all do. */
    public int first() {
        return first;
    }

    /** Whether there are entries after the end, which nothing here takes away. */
    public boolean isLonger() {
        return byNumber.keySet().stream().anyMatch(number -> number > end.place());
    }

    /**
     * The entries that a file holds, by their hashes, with the words that belong to them. Each stands in a line, as the file of a trail
     * with proofs has it, or by itself as in the parts of a whole log, with its words in another line; what is no entry is passed over,
     * because no hash would ask for it.
     */
    static Map<String, TrailEntry> candidates(byte[] file) {
        Map<String, TrailEntry> byHash = new HashMap<>();
        Map<String, byte[]> words = new HashMap<>();
        new String(file, StandardCharsets.UTF_8).lines().forEach(line -> {
            JsonNode told = told(line);
            Stream.of(line, told.path("entry").asText())
                    .flatMap(text -> entryOf(utf8(text)).stream())
                    .forEach(entry -> byHash.put(entry.hash(), entry));
            if (told.path("words").isTextual()) {
                words.put(told.path("hash").asText(), utf8(told.path("words").asText()));
            }
        });
        byHash.replaceAll((hash, entry) -> entry.with(words.get(hash)));
        return byHash;
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static JsonNode told(String line) {
        try {
            return LINES.readTree(line);
        } catch (JsonProcessingException e) {
            return MissingNode.getInstance();
        }
    }

    private static Optional<TrailEntry> entryOf(byte[] canonical) {
        try {
            return Optional.of(EntryCodec.stored(canonical));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** What cannot be put back, a sentence for whoever wanted it. */
    public static final class Lacking extends Exception {
        private static final long serialVersionUID = 1;

        Lacking(String sentence) {
            super(sentence);
        }
    }

    /**
     * A trail made whole.
     *
     * @param entries all of it
     * @param written those that are not stored like this, the last first
     */
    public record Whole(List<TrailEntry> entries, List<TrailEntry> written) {}

    /**
     * What the trail would be with entries of a file; of those only what is missing or altered is taken.
     *
     * @throws Lacking if one is in neither place, or what is known of the trail contradicts itself
     */
    public Whole putBack(byte[] file) throws Lacking {
        Map<String, TrailEntry> byHash = candidates(file);
        List<TrailEntry> whole = new ArrayList<>();
        List<TrailEntry> written = new ArrayList<>();
        String wanted = end.hash();
        for (int place = end.place(); place >= 1; place--) {
            Hole hole = endingAt(place);
            if (hole != null) {
                place = hole.first();
                wanted = known.getOrDefault(place - 1, "");
                continue;
            }
            TrailEntry here = byNumber.get(place);
            boolean stays = here != null && holds(here, previous(here.canonical())) && isWanted(here.hash(), wanted);
            TrailEntry entry = stays ? here : withItsWords(byHash.get(wanted), here);
            if (entry == null || entry.entry() != place || !wanted.equals(leaves.getOrDefault(place, wanted))) {
                throw new Lacking(
                        "Entry " + place + " is neither here nor in the file as it was: it has to have the hash "
                                + (wanted.isEmpty() ? "that the log sealed" : wanted.substring(0, 12) + "…") + ".");
            }
            if (!hasItsWords(entry)) {
                throw new Lacking("The file has entry " + place
                        + " without its words: a file of the ticket's own trail has them.");
            }
            if (!stays) {
                written.add(entry);
            }
            whole.add(entry);
            wanted = previous(entry.canonical());
        }
        Collections.reverse(whole);
        Verification found = new StoredTrail(
                        whole, end.place(), end.hash(), stored.sealed(), stored.holes(), stored.erased(), null)
                .verify(ticket);
        if (!found.holds()) {
            throw new Lacking("With these entries the trail would not hold either. " + found.sentence());
        }
        return new Whole(List.copyOf(whole), List.copyOf(written));
    }

    /** The words of an entry that is put back: those of the file or, where it has none, those that are kept here; none once erased. */
    private @Nullable TrailEntry withItsWords(@Nullable TrailEntry entry, @Nullable TrailEntry here) {
        if (entry == null || stored.erased().contains(entry.entry())) {
            return entry == null ? null : entry.with(null);
        }
        if (entry.words() == null && here != null && hasItsWords(entry.with(here.words()))) {
            return entry.with(here.words());
        }
        return entry;
    }

    private static boolean isWanted(String hash, String wanted) {
        return wanted.isEmpty() || hash.equals(wanted);
    }

    private @Nullable Hole endingAt(int place) {
        return stored.holes().stream()
                .filter(hole -> hole.last() == place)
                .findFirst()
                .orElse(null);
    }
}

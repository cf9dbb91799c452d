package org.benchtrail.trail;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collections;
import java.util.Optional;
import java.util.SortedMap;
import org.benchtrail.core.method.Entry;
import org.jspecify.annotations.Nullable;

/**
 * One entry as it is stored.
 *
 * @param canonical the exact bytes that were hashed
 * @param hash of those bytes, which also name the previous entry's
 * @param words that the bytes hold commitments to, as they are stored; null if there are none, or none any more
 */
public record TrailEntry(
        int entry, Instant at, String actor, String kind, byte[] canonical, String hash, byte @Nullable [] words) {

    /**
     * What was recorded.
     *
     * @throws IllegalArgumentException if the bytes are no entry of a known format
     */
    public Entry read() {
        return EntryCodec.decode(canonical, words).entry();
    }

    private static final byte[] VEIL = "veiled until your forecast".getBytes(StandardCharsets.UTF_8);

    /** The same without what was recorded, for whoever may not read it yet. */
    public TrailEntry veiled() {
        return new TrailEntry(entry, at, actor, kind, VEIL.clone(), hash, null);
    }

    public boolean isVeiled() {
        return Arrays.equals(canonical, VEIL);
    }

    /** What was recorded; empty if it cannot be read. */
    public Optional<Entry> readable() {
        try {
            return Optional.of(read());
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** The same with words from elsewhere, which may be others than were committed to. */
    TrailEntry with(byte @Nullable [] others) {
        return new TrailEntry(entry, at, actor, kind, canonical, hash, others);
    }

    /** What somebody wrote into it, by its JSON pointer in the payload; empty if that is nothing, nothing any more, or was altered. */
    public SortedMap<String, SaltedWords> saltedWords() {
        return hasOtherWords() ? Collections.emptySortedMap() : WrittenWords.read(words);
    }

    /** What it holds commitments to, with salts, as JSON; empty if that is nothing, or nothing any more. */
    public Optional<String> wordsAsJson() {
        return Optional.ofNullable(words).map(stored -> new String(stored, StandardCharsets.UTF_8));
    }

    /** Whether words stand beside it that are others than it holds commitments to. */
    public boolean hasOtherWords() {
        try {
            EntryCodec.decode(canonical, words);
            return false;
        } catch (WrittenWords.Altered e) {
            return true;
        } catch (IllegalArgumentException unreadable) {
            return false;
        }
    }

    /** Whether words that it holds commitments to are not there. */
    public boolean lacksWords() {
        try {
            return EntryCodec.decode(canonical, words).lacking();
        } catch (IllegalArgumentException unreadable) {
            return false;
        }
    }

    /** Whether the columns beside the content are those of another. */
    boolean isAlike(TrailEntry other) {
        return entry == other.entry
                && at.equals(other.at)
                && actor.equals(other.actor)
                && kind.equals(other.kind)
                && hash.equals(other.hash);
    }

    public String previous() {
        return EntryCodec.decode(canonical, null).previous();
    }
}

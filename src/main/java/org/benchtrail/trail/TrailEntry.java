package org.benchtrail.trail;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import org.benchtrail.core.method.Entry;

/**
 * One entry as it is stored.
 *
 * @param canonical the exact bytes that were hashed
 * @param hash of those bytes, which also name the previous entry's
 */
public record TrailEntry(int entry, Instant at, String actor, String kind, byte[] canonical, String hash) {

    /**
     * What was recorded.
     *
     * @throws IllegalArgumentException if the bytes are no entry of a known format
     */
    public Entry read() {
        return EntryCodec.decode(canonical).entry();
    }

    private static final byte[] VEIL = "veiled until your forecast".getBytes(StandardCharsets.UTF_8);

    /** The same without what was recorded, for whoever may not read it yet. */
    public TrailEntry veiled() {
        return new TrailEntry(entry, at, actor, kind, VEIL.clone(), hash);
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

    /** Whether the columns beside the content are those of another. */
    boolean isAlike(TrailEntry other) {
        return entry == other.entry
                && at.equals(other.at)
                && actor.equals(other.actor)
                && kind.equals(other.kind)
                && hash.equals(other.hash);
    }

    public String previous() {
        return EntryCodec.decode(canonical).previous();
    }
}

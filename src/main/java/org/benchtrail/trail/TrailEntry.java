package org.benchtrail.trail;

import java.time.Instant;
import org.benchtrail.core.method.Entry;

/**
 * One entry as it is stored.
 *
 * @param canonical the exact bytes that were hashed
 * @param hash of those bytes, which also name the previous entry's
 */
public record TrailEntry(int entry, Instant at, String actor, String kind, byte[] canonical, String hash) {

    /** What was recorded. */
    public Entry read() {
        return EntryCodec.decode(canonical).entry();
    }

    public String previous() {
        return EntryCodec.decode(canonical).previous();
    }
}

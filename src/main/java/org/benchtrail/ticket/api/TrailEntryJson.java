package org.benchtrail.ticket.api;

import com.fasterxml.jackson.annotation.JsonRawValue;
import java.nio.charset.StandardCharsets;
import org.benchtrail.trail.TrailEntry;
import org.jspecify.annotations.Nullable;

/**
 * An entry of the trail: the canonical text that was hashed, and its hash.
 *
 * @param words that the text holds commitments to, by their JSON pointers in the payload, each with its salt; null if there are none,
 *     or none any more
 */
public record TrailEntryJson(
        int entry,
        String kind,
        String canonical,
        String hash,
        @Nullable @JsonRawValue String words) {
    static TrailEntryJson of(TrailEntry e) {
        return new TrailEntryJson(
                e.entry(),
                e.kind(),
                new String(e.canonical(), StandardCharsets.UTF_8),
                e.hash(),
                e.wordsAsJson().orElse(null));
    }
}

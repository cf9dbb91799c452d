package org.benchtrail.ticket.api;

import java.nio.charset.StandardCharsets;
import java.util.SortedMap;
import org.benchtrail.trail.SaltedWords;
import org.benchtrail.trail.TrailEntry;

/**
 * An entry of the trail: the canonical text that was hashed, and its hash.
 *
 * @param words that the text holds commitments to, by their JSON pointers in the payload, each with its salt; empty if there are none,
 *     or none any more
 */
public record TrailEntryJson(
        int entry, String kind, String canonical, String hash, SortedMap<String, SaltedWords> words) {
    static TrailEntryJson of(TrailEntry e) {
        return new TrailEntryJson(
                e.entry(), e.kind(), new String(e.canonical(), StandardCharsets.UTF_8), e.hash(), e.saltedWords());
    }
}

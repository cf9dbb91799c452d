package org.benchtrail.ticket.api;

import java.nio.charset.StandardCharsets;
import org.benchtrail.trail.TrailEntry;

/** An entry of the trail: the canonical text that was hashed, and its hash. */
public record TrailEntryJson(int entry, String kind, String canonical, String hash) {
    static TrailEntryJson of(TrailEntry e) {
        return new TrailEntryJson(e.entry(), e.kind(), new String(e.canonical(), StandardCharsets.UTF_8), e.hash());
    }
}

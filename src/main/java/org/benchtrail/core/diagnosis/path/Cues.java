package org.benchtrail.core.diagnosis.path;

import java.util.Set;

/**
 * What the words of a ticket point to. It weighs nothing; it only says what is looked at first.
 *
 * @param findings ids of listed findings whose question the words raise, and nobody has answered
 * @param segments ids of segments that the words name
 */
public record Cues(Set<String> findings, Set<String> segments) {
    public static final Cues NONE = new Cues(Set.of(), Set.of());

    public Cues {
        findings = Set.copyOf(findings);
        segments = Set.copyOf(segments);
    }
}

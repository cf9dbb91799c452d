package org.benchtrail.core.diagnosis.path;

import java.util.Set;

/**
 * What the words of a ticket point to. It weighs nothing; it only says what is looked at first.
 *
 * @param findings ids of listed findings that the words suggest an answer to, and nobody has answered
 * @param segments ids of segments that the words name
 */
public record Cues(Set<String> findings, Set<String> segments) {
    public static final Cues NONE = new Cues(Set.of(), Set.of());

    public Cues {
        findings = Set.copyOf(findings);
        segments = Set.copyOf(segments);
    }
}

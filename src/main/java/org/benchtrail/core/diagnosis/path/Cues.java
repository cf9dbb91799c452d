package org.benchtrail.core.diagnosis.path;

import java.util.Set;

/**
 * What the words of a ticket point to. It weighs nothing; it only says what is looked at first.
 *
 * @param findings ids of listed findings whose question the words raise, and nobody has answered
 * @param segments ids of segments that the words name
 * @param fleeting whether the fault comes and goes, so that it is not there to be seen
 */
public record Cues(Set<String> findings, Set<String> segments, boolean fleeting) {
    public static final Cues NONE = new Cues(Set.of(), Set.of(), false);

    public Cues {
        findings = Set.copyOf(findings);
        segments = Set.copyOf(segments);
    }
}

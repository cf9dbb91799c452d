package org.benchtrail.core.diagnosis.path;

import java.util.List;

/**
 * A listed finding that is itself a test of segments, so that causes nobody listed have something to say to it.
 *
 * @param act what it amounts to
 * @param segments ids of those it is done to, or shares, or loads
 * @param positive its value that is the positive outcome of the act
 */
public record StandsFor(String finding, PathAct act, List<String> segments, String positive) {
    public StandsFor {
        segments = List.copyOf(segments);
    }
}

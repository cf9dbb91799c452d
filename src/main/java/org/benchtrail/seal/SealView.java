package org.benchtrail.seal;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is proven, by whom, since when; and what is wrong.
 *
 * @param troubles what somebody has to see to; none if nothing is wrong
 * @param noteLost whether the viewer may say that the log goes on without the note beside its key
 * @param broken tickets that wait to be mended, by number
 * @param waiting how many records are not sealed yet
 * @param oldest how long the oldest of them waits; empty if none does
 * @param head the newest head; null before the first
 * @param witnesses what each witness answered last
 * @param stamp the newest time-stamp of an authority; null if there is none
 * @param stamping what the authority answered last; empty if it was never asked
 * @param heads the newest heads, the newest first
 * @param keys verifier keys that sign
 * @param incidents what was found broken, the newest first
 * @param look the latest look at the whole site; null if there was none
 */
public record SealView(
        List<String> troubles,
        boolean noteLost,
        List<String> broken,
        long waiting,
        String oldest,
        @Nullable Head head,
        List<WitnessLine> witnesses,
        @Nullable StampLine stamp,
        List<WitnessLine> stamping,
        List<HeadLine> heads,
        List<String> keys,
        List<IncidentLine> incidents,
        @Nullable Look look) {

    /**
     * The newest head.
     *
     * @param first when the first head of the log was signed
     * @param vouched who else has seen the head, in one sentence
     * @param times whether it can be told when an entry was made, in one sentence
     */
    public record Head(String origin, long size, String first, String signed, String vouched, String times) {}

    public record HeadLine(long size, String root, String signed) {}

    /**
     * A witness.
     *
     * @param keeps its own newest head, and when it was looked at; empty if it was not since this server was started
     */
    public record WitnessLine(String name, long size, String when, String answer, String keeps) {}

    public record StampLine(long size, String at, String by) {}

    public record IncidentLine(String when, String about, String sentence) {}

    /**
     * A look at the whole site.
     *
     * @param going whether it goes on
     * @param progress how far it is, or how it ended
     */
    public record Look(boolean going, String began, String by, String progress, List<FindingLine> findings) {}

    /** @param head which head proves it, in a sentence; empty where that cannot be told */
    public record FindingLine(String what, String place, String sentence, String head) {}
}

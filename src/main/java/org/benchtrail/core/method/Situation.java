package org.benchtrail.core.method;

import java.time.Instant;

/**
 * What a requirement or an act is judged by: the sheet, the site's policy, the moment, and the move that is tried.
 *
 * @param seen number of the last entry that was there when the request came; what is later was recorded in it
 */
public record Situation(JobSheet sheet, Policy policy, Instant now, Move move, int seen) {

    /** The same at another state of the sheet. */
    public Situation on(JobSheet other) {
        return new Situation(other, policy, now, move, seen);
    }

    public Situation trying(Move other) {
        return new Situation(sheet, policy, now, other, seen);
    }

    /** The sentence, unless such a fact stands on the sheet. */
    public String unlessRecorded(Class<? extends Fact> kind, String sentence) {
        return sheet.latest(kind).isPresent() ? "" : sentence;
    }

    /** The sentence, unless such a fact was recorded in this round. */
    public String unlessInRound(Class<? extends Fact> kind, String sentence) {
        return sheet.latestOfRound(kind).isPresent() ? "" : sentence;
    }
}

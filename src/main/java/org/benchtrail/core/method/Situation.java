package org.benchtrail.core.method;

import java.time.Instant;

/**
 * What a requirement or an act is judged by: the sheet, the site's policy, the moment, and the move that is tried.
 *
 * @param request in which it is tried, as in {@link Stamp#request}; empty if nothing is recorded
 */
public record Situation(JobSheet sheet, Policy policy, Instant now, Move move, String request) {

    /** The same at another state of the sheet. */
    public Situation on(JobSheet other) {
        return new Situation(other, policy, now, move, request);
    }

    public Situation trying(Move other) {
        return new Situation(sheet, policy, now, other, request);
    }

    /** The sentence, unless such a fact stands on the sheet. */
    public String unlessRecorded(Class<? extends Fact> kind, String sentence) {
        return sheet.latest(kind).isPresent() ? "" : sentence;
    }

    /** The sentence, unless such a fact was recorded since the ticket was opened, or last reopened. */
    public String unlessSinceOpened(Class<? extends Fact> kind, String sentence) {
        return sheet.latest(kind)
                        .filter(f -> f.isAfter(sheet.course().openedAt()))
                        .isPresent()
                ? ""
                : sentence;
    }

    /** The sentence, unless such a fact was recorded in this round. */
    public String unlessInRound(Class<? extends Fact> kind, String sentence) {
        return sheet.latestOfRound(kind).isPresent() ? "" : sentence;
    }
}

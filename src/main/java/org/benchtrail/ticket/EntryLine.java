package org.benchtrail.ticket;

import org.benchtrail.core.method.StandingFact;

/**
 * A fact as one line of a page.
 *
 * @param kind in words
 * @param stamp who recorded it, and when
 * @param late whether its step had been left by then
 */
public record EntryLine(int entry, String kind, String text, String stamp, boolean late, boolean corrected) {

    static EntryLine of(StandingFact<?> fact, Viewing viewing) {
        return new EntryLine(
                fact.entry(),
                FactText.kind(fact.fact()),
                fact.fact().told(viewing),
                viewing.stamp(fact),
                fact.late(),
                fact.corrected() != null);
    }
}

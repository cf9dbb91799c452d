package org.benchtrail.ticket;

import java.util.stream.Collectors;
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
        String text = FactText.parts(fact.fact(), viewing.zone()).stream()
                .map(p -> p.name() + ": " + p.text())
                .collect(Collectors.joining("; "));
        return new EntryLine(
                fact.entry(),
                FactText.kind(fact.fact()),
                text,
                viewing.stamp(fact),
                fact.late(),
                fact.corrected() != null);
    }
}

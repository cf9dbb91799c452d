package org.benchtrail.core.diagnosis;

import java.util.List;

/**
 * What recorded facts and written words say of a category's findings.
 *
 * @param feeds facts that answer a finding by themselves
 * @param readings words by which a reading is known to be a finding's
 * @param phrases words that suggest an answer
 */
public record Hints(List<Feed> feeds, List<QuantityWords> readings, List<Phrases> phrases) {
    /** Nothing but answers is heard. */
    public static final Hints NONE = new Hints(List.of(), List.of(), List.of());

    public Hints {
        feeds = List.copyOf(feeds);
        readings = List.copyOf(readings);
        phrases = List.copyOf(phrases);
    }
}

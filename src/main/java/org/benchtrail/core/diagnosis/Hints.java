package org.benchtrail.core.diagnosis;

import java.util.List;

/**
 * What recorded facts and written words say of a category's findings.
 *
 * @param feeds facts that answer a finding by themselves
 * @param readings words by which a reading is known to be a finding's
 * @param phrases words that suggest an answer
 * @param complaints findings that whoever has the trouble names by themselves: once one of them was named, the others that were
 *     not are rather not so
 */
public record Hints(List<Feed> feeds, List<QuantityWords> readings, List<Phrases> phrases, List<String> complaints) {
    /** Nothing but answers is heard. */
    public static final Hints NONE = new Hints(List.of(), List.of(), List.of(), List.of());

    public Hints {
        feeds = List.copyOf(feeds);
        readings = List.copyOf(readings);
        phrases = List.copyOf(phrases);
        complaints = List.copyOf(complaints);
    }
}

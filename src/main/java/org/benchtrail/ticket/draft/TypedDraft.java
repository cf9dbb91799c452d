package org.benchtrail.ticket.draft;

import java.time.Instant;
import java.util.List;
import java.util.Map;

/**
 * What one person typed on a job sheet and has not recorded yet.
 *
 * @param forms by form, and in it by field, the values
 * @param saved when something was last typed
 */
public record TypedDraft(Map<String, Map<String, List<String>>> forms, Instant saved) {
    public static final TypedDraft NONE = new TypedDraft(Map.of(), Instant.EPOCH);
}

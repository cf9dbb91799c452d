package org.benchtrail.core.diagnosis;

import java.util.List;

/** Another finding must be known to have one of these values before a question makes sense. */
public record Condition(String finding, List<String> values) {
    public Condition {
        values = List.copyOf(values);
    }
}

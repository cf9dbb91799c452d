package org.benchtrail.core.diagnosis;

import java.util.Map;

/** What a cause makes of a finding it touches: the probability of each of the finding's values; sums to 1. */
public record Deviation(String finding, Map<String, Double> probabilities) {
    public Deviation {
        probabilities = Map.copyOf(probabilities);
    }
}

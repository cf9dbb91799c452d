package org.benchtrail.core.diagnosis;

import java.util.Map;

/**
 * One act that may remove several causes, such as replacing a whole assembly.
 *
 * @param repair its own {@code fixProbability} is not used
 * @param fixes for each cause it covers, the probability in (0, 0.99] that it removes the fault given that cause
 */
public record SharedRepair(String id, Repair repair, Map<String, Double> fixes) {
    public SharedRepair {
        fixes = Map.copyOf(fixes);
    }
}

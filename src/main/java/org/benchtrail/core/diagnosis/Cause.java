package org.benchtrail.core.diagnosis;

import java.util.List;

/**
 * An entry of the cause catalogue.
 *
 * @param weight relative frequency within the category; above 0; only ratios matter
 * @param deviations only the findings it touches; every other finding keeps its background
 * @param confirm the check that confirms it, in words
 * @param confirmMinutes 0.5 to 10 000
 * @param caution what to mind before touching anything; the maker's instructions come first
 */
public record Cause(
        String id,
        String name,
        double weight,
        List<Deviation> deviations,
        String confirm,
        double confirmMinutes,
        Repair repair,
        String caution) {
    public Cause {
        deviations = List.copyOf(deviations);
    }
}

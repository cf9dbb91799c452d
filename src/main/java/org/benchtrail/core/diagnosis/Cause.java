package org.benchtrail.core.diagnosis;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An entry of the cause catalogue.
 *
 * @param weight relative frequency within the category; above 0; only ratios matter
 * @param deviations only the findings it touches; every other finding keeps its background
 * @param confirm the check that confirms it, in words
 * @param confirmMinutes 0.5 to 10 000
 * @param caution what to mind before touching anything; the maker's instructions come first
 * @param confirmBy ids of the findings whose result settles it; empty if none is named
 * @param was ids that it had before; what was recorded under them means this cause
 */
public record Cause(
        String id,
        String name,
        double weight,
        List<Deviation> deviations,
        String confirm,
        double confirmMinutes,
        Repair repair,
        String caution,
        List<String> confirmBy,
        List<String> was) {
    public Cause {
        deviations = List.copyOf(deviations);
        confirmBy = List.copyOf(confirmBy);
        was = List.copyOf(was);
    }

    /** Whether that is its id, or one that it had before. */
    public boolean isKnownAs(@Nullable String name) {
        return id.equals(name) || (name != null && was.contains(name));
    }

    /** One of which nobody said what settles it. */
    public Cause(
            String id,
            String name,
            double weight,
            List<Deviation> deviations,
            String confirm,
            double confirmMinutes,
            Repair repair,
            String caution) {
        this(id, name, weight, deviations, confirm, confirmMinutes, repair, caution, List.of(), List.of());
    }

    /** With other predictions. */
    public Cause deviating(List<Deviation> others) {
        return learned(weight, others);
    }

    /** With other figures. */
    Cause learned(double otherWeight, List<Deviation> others) {
        return new Cause(id, name, otherWeight, others, confirm, confirmMinutes, repair, caution, confirmBy, was);
    }
}

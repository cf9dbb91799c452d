package org.benchtrail.core.diagnosis.path;

import java.util.List;
import java.util.Set;
import org.benchtrail.core.diagnosis.Risk;

/**
 * A test that a segment allows.
 *
 * @param act one of {@link PathAct#OF_A_SEGMENT}
 * @param minutes 0.5 to 10 000
 * @param with what one must have, such as {@code spare-cord}; empty for nothing
 * @param needs what must be so before, such as {@code outage-announced}
 * @param cautions codes of what to mind
 * @param never states in which it is not offered
 */
public record SegmentAct(
        PathAct act,
        double minutes,
        Risk risk,
        String with,
        List<String> needs,
        List<String> cautions,
        Set<Bar> never) {
    public SegmentAct {
        needs = List.copyOf(needs);
        cautions = List.copyOf(cautions);
        never = Set.copyOf(never);
    }
}

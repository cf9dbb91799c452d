package org.benchtrail.core.diagnosis.path;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.diagnosis.Repair;

/**
 * A stretch of a path that can be looked at, seated, swapped or left out as one. It may stand in several paths.
 *
 * @param share of the belief that starts on causes here that nobody listed; above 0; only ratios matter
 * @param causes listed causes at home here
 * @param seating those of them that seating anew cures
 * @param survives those of them that a good spare does not cure, such as a setting
 * @param inside whether the case has to be open
 * @param repair replaces or mends the segment as a whole
 */
public record Segment(
        String id,
        String name,
        Presence present,
        double share,
        List<String> causes,
        Set<String> seating,
        Set<String> survives,
        boolean inside,
        List<SegmentAct> acts,
        Repair repair) {
    public Segment {
        causes = List.copyOf(causes);
        seating = Set.copyOf(seating);
        survives = Set.copyOf(survives);
        acts = List.copyOf(acts);
    }

    public Optional<SegmentAct> act(PathAct act) {
        return acts.stream().filter(a -> a.act() == act).findFirst();
    }
}

package org.benchtrail.core.diagnosis.path;

import java.util.Map;
import java.util.Set;
import org.benchtrail.core.diagnosis.BenchSituation;
import org.benchtrail.core.diagnosis.Evidence;

/**
 * Everything known on one ticket that bears on where its fault is and what to do.
 *
 * @param evidence reports on listed findings and on tests made from the structure, by their ids; repairs that failed, by the
 *     id of a cause, of a shared repair, or of a segment's repair ({@code segment:s})
 * @param equipment by segment, whether it is there, as far as somebody said
 * @param changes kinds of change that were recorded as made before it began
 * @param lacking what is known not to be at hand, such as {@code spare-cord}
 * @param bars states in which some acts are never offered; unsaved data bar only while the drive is suspected
 * @param driveFailing whether a failing drive was seen
 * @param opened whether the case is open already
 * @param situation what is met, confirmed and stopped
 */
public record Known(
        Evidence evidence,
        Map<String, Boolean> equipment,
        Set<String> changes,
        Set<String> lacking,
        Set<Bar> bars,
        boolean driveFailing,
        boolean opened,
        BenchSituation situation) {
    public Known {
        equipment = Map.copyOf(equipment);
        changes = Set.copyOf(changes);
        lacking = Set.copyOf(lacking);
        bars = Set.copyOf(bars);
    }

    /** Nothing but evidence. */
    public static Known of(Evidence evidence) {
        return new Known(evidence, Map.of(), Set.of(), Set.of(), Set.of(), false, false, BenchSituation.PLAIN);
    }

    public Known with(Evidence other) {
        return new Known(other, equipment, changes, lacking, bars, driveFailing, opened, situation);
    }

    public Known withEquipment(Map<String, Boolean> other) {
        return new Known(evidence, other, changes, lacking, bars, driveFailing, opened, situation);
    }

    public Known withBars(Set<Bar> other) {
        return new Known(evidence, equipment, changes, lacking, other, driveFailing, opened, situation);
    }

    public Known withOpened(boolean open) {
        return new Known(evidence, equipment, changes, lacking, bars, driveFailing, open, situation);
    }

    public Known with(BenchSituation other) {
        return new Known(evidence, equipment, changes, lacking, bars, driveFailing, opened, other);
    }
}

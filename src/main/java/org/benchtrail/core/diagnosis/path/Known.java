package org.benchtrail.core.diagnosis.path;

import java.util.HashMap;
import java.util.HashSet;
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
 * @param cues what the words of the ticket point to
 */
public record Known(
        Evidence evidence,
        Map<String, Boolean> equipment,
        Set<String> changes,
        Set<String> lacking,
        Set<Bar> bars,
        boolean driveFailing,
        boolean opened,
        BenchSituation situation,
        Cues cues) {
    public Known {
        equipment = Map.copyOf(equipment);
        changes = Set.copyOf(changes);
        lacking = Set.copyOf(lacking);
        bars = Set.copyOf(bars);
    }

    /** Nothing but evidence. */
    public static Known of(Evidence evidence) {
        return new Known(
                evidence, Map.of(), Set.of(), Set.of(), Set.of(), false, false, BenchSituation.PLAIN, Cues.NONE);
    }

    public Known with(Evidence other) {
        return new Known(other, equipment, changes, lacking, bars, driveFailing, opened, situation, cues);
    }

    public Known withEquipment(Map<String, Boolean> other) {
        return new Known(evidence, other, changes, lacking, bars, driveFailing, opened, situation, cues);
    }

    public Known withBars(Set<Bar> other) {
        return new Known(evidence, equipment, changes, lacking, other, driveFailing, opened, situation, cues);
    }

    public Known withOpened(boolean open) {
        return new Known(evidence, equipment, changes, lacking, bars, driveFailing, open, situation, cues);
    }

    public Known with(Cues other) {
        return new Known(evidence, equipment, changes, lacking, bars, driveFailing, opened, situation, other);
    }

    public Known with(BenchSituation other) {
        return new Known(evidence, equipment, changes, lacking, bars, driveFailing, opened, other, cues);
    }

    /** With what the reports say of which segments are there taken for structure: it carries no weight. */
    Known heard() {
        Map<String, Boolean> all = new HashMap<>(equipment);
        all.putAll(Askable.equipment(evidence));
        return withEquipment(all).with(Askable.weighing(evidence));
    }

    /** Without what is not at hand. */
    Known without(Set<String> things) {
        Set<String> all = new HashSet<>(lacking);
        all.addAll(things);
        return new Known(evidence, equipment, changes, all, bars, driveFailing, opened, situation, cues);
    }
}

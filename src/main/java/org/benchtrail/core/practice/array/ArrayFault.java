package org.benchtrail.core.practice.array;

import static org.benchtrail.core.practice.array.ArrayPart.*;

import java.util.Map;
import org.benchtrail.core.practice.Parameters;

/** What may be wrong with an array: other numbers, never another rule. */
public enum ArrayFault {
    NONE(Map.of()),
    /** Looks like {@link #BAY} in the controller's list. */
    MEMBER(Map.of(DRIVE_FAILS, 1.0)),
    /** Looks like {@link #MEMBER} in the controller's list; the drive itself is well. */
    BAY(Map.of(BAY_FAILS, 1.0)),
    CACHE(Map.of(CHARGE, 0.2)),
    CHECKING(Map.of(CHECK, 0.65));

    private final Map<ArrayPart, Double> changes;

    ArrayFault(Map<ArrayPart, Double> changes) {
        this.changes = changes;
    }

    public Parameters<ArrayPart> in(Parameters<ArrayPart> sound) {
        return sound.with(changes);
    }
}

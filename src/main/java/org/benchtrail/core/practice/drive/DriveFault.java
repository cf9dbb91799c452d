package org.benchtrail.core.practice.drive;

import static org.benchtrail.core.practice.drive.DrivePart.*;

import java.util.Map;
import java.util.Set;
import org.benchtrail.core.practice.Parameters;

/** What may be wrong with a drive or what it hangs on: other numbers, never another rule. */
public enum DriveFault {
    NONE(Map.of()),
    FAILING_SURFACE(Map.of(NEW_BAD, 6.0, DEATH, 0.03)),
    /** Looks suspicious and does not grow: another fault is the cause. */
    OLD_SCAR(Map.of(OLD_MOVED, 12.0)),
    DATA_CABLE(Map.of(DAMAGE, 5e-3)),
    /** Looks like {@link #DATA_CABLE} until the cable is changed. */
    PORT(Map.of(PORT_DAMAGE, 5e-3)),
    POWER_PLUG(Map.of(CONTACT, 1.0)),
    HOT_DRIVE(Map.of(TEMPERATURE, 66.0, HEAT_BAD, 1.0)),
    DISK_FULL(Map.of(FREE, 2.0)),
    BACKGROUND_LOAD(Map.of(BUSY, 100.0));

    private final Map<DrivePart, Double> changes;

    DriveFault(Map<DrivePart, Double> changes) {
        this.changes = changes;
    }

    /** The drive with each of these. */
    public static Parameters<DrivePart> allIn(Parameters<DrivePart> sound, Set<DriveFault> faults) {
        Parameters<DrivePart> with = sound;
        for (DriveFault fault : faults) {
            with = fault.in(with);
        }
        return with;
    }

    public Parameters<DrivePart> in(Parameters<DrivePart> sound) {
        return sound.with(changes);
    }
}

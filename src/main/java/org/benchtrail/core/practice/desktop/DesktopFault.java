package org.benchtrail.core.practice.desktop;

import static org.benchtrail.core.practice.desktop.DesktopPart.*;

import java.util.Map;
import org.benchtrail.core.practice.Parameters;

/** What may be wrong with a desktop: other numbers, never another rule. */
public enum DesktopFault {
    NONE(Map.of()),
    DUST(Map.of(AIR_PATH, 0.30)),
    /** Settles as hot as {@link #DUST} does: only the fan's speed tells them apart. */
    SLOW_FAN(Map.of(FAN_HEALTH, 0.30)),
    FAN_CURVE(Map.of(FIXED_DUTY, 0.25)),
    FAN_STALLED(Map.of(FAN_HEALTH, 0.0)),
    DRIED_PASTE(Map.of(LAYER, 150e-6, PASTE, 1.0)),
    LOOSE_SINK(Map.of(CONTACT, 0.10)),
    OVERCLOCK(Map.of(CLOCK, 1.20, VOLTAGE, 1.12)),
    CASE_BLOCKED(Map.of(CASE_AIR, 0.0045)),
    HOT_ROOM(Map.of(ROOM, 34.0, AIR_PATH, 0.45)),
    SENSOR_HIGH(Map.of(SENSOR_OFFSET, 22.0));

    private final Map<DesktopPart, Double> changes;

    DesktopFault(Map<DesktopPart, Double> changes) {
        this.changes = changes;
    }

    /** The device with this fault put in. */
    public Parameters<DesktopPart> in(Parameters<DesktopPart> sound) {
        return sound.with(changes);
    }
}

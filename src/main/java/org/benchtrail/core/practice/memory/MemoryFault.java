package org.benchtrail.core.practice.memory;

import static org.benchtrail.core.practice.memory.MemoryPart.*;

import java.util.Map;
import org.benchtrail.core.practice.Parameters;

/** What may be wrong with memory: other numbers, never another rule. */
public enum MemoryFault {
    NONE(Map.of()),
    /** Looks like {@link #SLOT} until the modules are changed over. */
    MODULE(Map.of(MODULE_A, 0.4)),
    /** Looks like {@link #MODULE} until the modules are changed over. */
    SLOT(Map.of(SLOT_1, 0.4)),
    /** A speed profile above what the modules are stable at, with the voltage that goes with it. */
    PROFILE(Map.of(SPEED, 3600.0, VOLTS, 1.35)),
    /** Modules with little to spare, and no air. */
    HEAT(Map.of(WEAK, 0.01, TEMPERATURE, 92.0));

    private final Map<MemoryPart, Double> changes;

    MemoryFault(Map<MemoryPart, Double> changes) {
        this.changes = changes;
    }

    public Parameters<MemoryPart> in(Parameters<MemoryPart> sound) {
        return sound.with(changes);
    }
}

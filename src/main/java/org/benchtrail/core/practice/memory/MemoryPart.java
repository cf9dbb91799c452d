package org.benchtrail.core.practice.memory;

import org.benchtrail.core.practice.Parameter;

/** What two modules and their slots are made with; ours where nothing else is said. The equations stand at {@link Memory}. */
public enum MemoryPart implements Parameter {
    /** Errors an hour at 40 °C that go with module A. */
    MODULE_A(0, 0, 2),
    MODULE_B(0, 0, 2),
    /** Errors an hour at 40 °C that stay with slot 1. */
    SLOT_1(0, 0, 2),
    SLOT_2(0, 0, 2),
    /** Errors an hour at 40 °C in each slot, of modules that are sound but have little to spare. */
    WEAK(0.002, 0, 0.1),
    /** Errors an hour and slot for each MT/s above what it is stable at. */
    OVER(0.001, 0.0005, 0.004),
    /** MT/s; common practice, no source. */
    SPEED(3200, 3000, 4000),
    /** MT/s. */
    STABLE(3300, 3250, 3400),
    /** V that the firmware sets; common practice, no source. */
    VOLTS(1.2, 1.1, 1.4),
    /** °C at work; common practice, no source. */
    TEMPERATURE(45, 38, 95);

    private final Range range;

    MemoryPart(double base, double low, double high) {
        range = new Range(base, low, high);
    }

    @Override
    public Range range() {
        return range;
    }
}

package org.benchtrail.core.practice.memory;

import org.benchtrail.core.practice.Parameter;

/** What two modules and their slots are made with; ours where nothing else is said. The equations stand at {@link Memory}. */
public enum MemoryPart implements Parameter {
    /** Errors an hour at 40 °C that go with module A. */
    MODULE_A("1/h", 0, 0, 2),
    MODULE_B("1/h", 0, 0, 2),
    /** Errors an hour at 40 °C that stay with slot 1. */
    SLOT_1("1/h", 0, 0, 2),
    SLOT_2("1/h", 0, 0, 2),
    /** Errors an hour at 40 °C in each slot, of modules that are sound but have little to spare. */
    WEAK("1/h", 0.002, 0, 0.1),
    /** Errors an hour and slot for each MT/s above what it is stable at. */
    OVER("1/h per MT/s", 0.001, 0.0005, 0.004),
    /** MT/s; common practice, no source. */
    SPEED("MT/s", 3200, 3000, 4000),
    /** MT/s. */
    STABLE("MT/s", 3300, 3250, 3400),
    /** V that the firmware sets; common practice, no source. */
    VOLTS("V", 1.2, 1.1, 1.4),
    /** °C at work; common practice, no source. */
    TEMPERATURE("°C", 45, 38, 95);

    private final Range range;

    MemoryPart(String unit, double base, double low, double high) {
        range = new Range(unit, base, low, high);
    }

    @Override
    public Range range() {
        return range;
    }
}

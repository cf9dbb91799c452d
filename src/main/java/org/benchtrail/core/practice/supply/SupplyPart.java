package org.benchtrail.core.practice.supply;

import org.benchtrail.core.practice.Parameter;

/**
 * What a power supply and its feed are made with; common practice, no source, where nothing else is said. The equations stand at
 * {@link Supply}.
 */
public enum SupplyPart implements Parameter {
    /** V_m: mains at the wall, V. */
    MAINS("V", 230, 216, 240),
    /** R_m: outlet, plug and lead, ohm. */
    FEED_OHM("ohm", 0.4, 0.2, 30),
    /** C: the capacitor that carries it over a dip, F. */
    CAPACITANCE("F", 390e-6, 180e-6, 560e-6),
    /** V_2: below, the supply gives up, V. */
    GIVES_UP("V", 250, 235, 260),
    /** eta. */
    EFFICIENCY("", 0.85, 0.8, 0.92),
    /** W at rest. */
    IDLE_WATTS("W", 50, 30, 90),
    /** W at full load. */
    LOAD_WATTS("W", 300, 200, 400),
    /** Share of the watts that +12 V carries; ours. */
    RAIL_SHARE("", 0.96, 0.9, 0.98),
    /** V_0, V without load. */
    RAIL("V", 12.1, 12.0, 12.25),
    /** R, ohm, from the regulator to the plug; ours. */
    RAIL_OHM("ohm", 0.012, 0.008, 0.08),
    /** I_max, A: above, +12 V is shut off; ours. */
    MOST_AMPS("A", 38, 15, 60),
    /** From +12 V to the case, ohm: nothing in a sound computer. */
    SHORT_OHM("ohm", 1e6, 0.05, 1e6);

    private final Range range;

    SupplyPart(String unit, double base, double low, double high) {
        range = new Range(unit, base, low, high);
    }

    @Override
    public Range range() {
        return range;
    }
}

package org.benchtrail.core.practice.power;

import org.benchtrail.core.practice.Parameter;

/** What a UPS and what hangs on it are made with; invented within common practice. The equations stand at {@link Battery} and {@link Outlets}. */
public enum PowerPart implements Parameter {
    /** C, Ah at the rated hours. */
    AMP_HOURS("Ah", 9, 5, 18),
    /** H. */
    RATED_HOURS("h", 20, 20, 20),
    /** k. */
    PEUKERT("", 1.15, 1.05, 1.25),
    /** N, of 2 V each. */
    CELLS("cells", 12, 6, 24),
    /** a: the share of its capacity that is left. */
    AGE("", 1, 0.3, 1),
    /** R, ohm: the whole set. */
    RESISTANCE("ohm", 0.03, 0.02, 0.4),
    /** eta, of the inverter. */
    EFFICIENCY("", 0.88, 0.8, 0.95),
    /** P_own, W. */
    OWN_WATTS("W", 12, 5, 30),
    /** W. */
    RATING("W", 600, 300, 1500),
    /** V_low: below, the self-test fails. */
    LOW_VOLTS("V", 21, 20, 22),
    /** V_s, V at the origin of the circuit. */
    MAINS("V", 228, 205, 240),
    /** R_l, ohm. */
    CIRCUIT("ohm", 1.2, 0.3, 2),
    /** V_x: below, the UPS goes to its battery. */
    TRANSFER("V", 207, 190, 225),
    /** W. */
    POE_BUDGET("W", 60, 30, 120),
    /** V. */
    POE_VOLTS("V", 53, 44, 57),
    /** ohm of 100 m of cable, there and back. */
    POE_OHM("ohm", 12.5, 9, 20),
    /** e: bit error rate of the link. */
    BIT_ERRORS("", 1e-12, 1e-12, 1e-5);

    private final Range range;

    PowerPart(String unit, double base, double low, double high) {
        range = new Range(unit, base, low, high);
    }

    @Override
    public Range range() {
        return range;
    }
}

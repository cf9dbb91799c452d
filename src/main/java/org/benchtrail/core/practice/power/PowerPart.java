package org.benchtrail.core.practice.power;

import org.benchtrail.core.practice.Parameter;

/** What a UPS and what hangs on it are made with; invented within common practice. The equations stand at {@link Battery} and {@link Outlets}. */
public enum PowerPart implements Parameter {
    /** C, Ah at the rated hours. */
    AMP_HOURS(9, 5, 18),
    /** H. */
    RATED_HOURS(20, 20, 20),
    /** k. */
    PEUKERT(1.15, 1.05, 1.25),
    /** N, of 2 V each. */
    CELLS(12, 6, 24),
    /** a: the share of its capacity that is left. */
    AGE(1, 0.3, 1),
    /** R, ohm: the whole set. */
    RESISTANCE(0.03, 0.02, 0.4),
    /** eta, of the inverter. */
    EFFICIENCY(0.88, 0.8, 0.95),
    /** P_own, W. */
    OWN_WATTS(12, 5, 30),
    /** W. */
    RATING(600, 300, 1500),
    /** V_low: below, the self-test fails. */
    LOW_VOLTS(21, 20, 22),
    /** V_s, V at the origin of the circuit. */
    MAINS(228, 205, 240),
    /** R_l, ohm. */
    CIRCUIT(1.2, 0.3, 2),
    /** V_x: below, the UPS goes to its battery. */
    TRANSFER(207, 190, 225),
    /** W. */
    POE_BUDGET(60, 30, 120),
    /** V. */
    POE_VOLTS(53, 44, 57),
    /** ohm of 100 m of cable, there and back. */
    POE_OHM(12.5, 9, 20),
    /** e: bit error rate of the link. */
    BIT_ERRORS(1e-12, 1e-12, 1e-5);

    private final Range range;

    PowerPart(double base, double low, double high) {
        range = new Range(base, low, high);
    }

    @Override
    public Range range() {
        return range;
    }
}

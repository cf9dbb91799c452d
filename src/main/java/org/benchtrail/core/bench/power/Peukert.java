package org.benchtrail.core.bench.power;

/**
 * Peukert's law for a lead-acid battery, in the form that uses the capacity at its rated hours: t = H (C / (I H))^k.
 *
 * <p>Units: capacity in Ah, current in A, times in h. Domain: all positive. The other common form, C_p = I^k t, takes the
 * capacity at 1 A and must not be mixed with this one.
 *
 * <p>Source: W. Peukert, 1897; worked examples in battery tutorials.
 */
public final class Peukert {
    private Peukert() {}

    public static double hours(double capacity, double ratedHours, double current, double exponent) {
        return ratedHours * Math.pow(capacity / (current * ratedHours), exponent);
    }

    /** The exponent through two discharge tests; the currents must differ. */
    static double exponent(double current1, double hours1, double current2, double hours2) {
        return Math.log(hours1 / hours2) / Math.log(current2 / current1);
    }
}

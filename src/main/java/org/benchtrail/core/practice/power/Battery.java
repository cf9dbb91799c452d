package org.benchtrail.core.practice.power;

import static org.benchtrail.core.practice.power.PowerPart.*;

import java.util.OptionalDouble;
import org.benchtrail.core.bench.power.Peukert;
import org.benchtrail.core.practice.Parameters;

/**
 * The battery of a UPS under a load in W at its outlets.
 *
 * <pre>
 * current   I = (P / eta + P_own) / V_n
 * runtime   t = H (a C / (I H))^k                         Peukert: "about", so far from the rated hours
 * voltage   V_oc = N (1.93 + 0.20 q); I = (V_oc - sqrt(V_oc² - 4 R P_b)) / (2 R), P_b = P / eta + P_own; V = V_oc - I R
 * charge    dq/dt = (1 - q) / 2 h
 * </pre>
 */
public final class Battery {
    private static final double NOMINAL_CELL = 2;
    private static final double EMPTY_CELL = 1.93;
    private static final double FULL_ADDS = 0.20;
    private static final double CHARGING_HOURS = 2;

    private final Parameters<PowerPart> parts;

    public Battery(Parameters<PowerPart> parts) {
        this.parts = parts;
    }

    /** W that the battery gives. */
    private double drawn(double watts) {
        return watts / parts.get(EFFICIENCY) + parts.get(OWN_WATTS);
    }

    /** A at the nominal voltage. */
    public double current(double watts) {
        return drawn(watts) / (NOMINAL_CELL * parts.get(CELLS));
    }

    /** Minutes from full. */
    public double runtime(double watts) {
        double aged = parts.get(AGE) * parts.get(AMP_HOURS);
        return 60 * Peukert.hours(aged, parts.get(RATED_HOURS), current(watts), parts.get(PEUKERT));
    }

    public double openVolts(double charge) {
        return parts.get(CELLS) * (EMPTY_CELL + FULL_ADDS * charge);
    }

    /** V at the terminals; empty if it collapses at once. */
    public OptionalDouble volts(double watts, double charge) {
        double open = openVolts(charge);
        double root = open * open - 4 * parts.get(RESISTANCE) * drawn(watts);
        return root < 0 ? OptionalDouble.empty() : OptionalDouble.of((open + Math.sqrt(root)) / 2);
    }

    /** Ten seconds at the present load. */
    public boolean passesSelfTest(double watts, double charge) {
        OptionalDouble volts = volts(watts, charge);
        return volts.isPresent() && volts.getAsDouble() >= parts.get(LOW_VOLTS);
    }

    /** W above which it collapses. */
    public double collapsesAbove(double charge) {
        double open = openVolts(charge);
        return parts.get(EFFICIENCY) * (open * open / (4 * parts.get(RESISTANCE)) - parts.get(OWN_WATTS));
    }

    /** W up to which the self-test passes. */
    public double passesUpTo(double charge) {
        double low = parts.get(LOW_VOLTS);
        double most = low * (openVolts(charge) - low) / parts.get(RESISTANCE);
        return parts.get(EFFICIENCY) * (most - parts.get(OWN_WATTS));
    }

    /** The charge after hours at the mains. */
    public static double charged(double charge, double hours) {
        return 1 - (1 - charge) * Math.exp(-hours / CHARGING_HOURS);
    }

    /** The charge after minutes on battery at that load, from any charge; 0 when it is empty. */
    public double discharged(double charge, double minutes, double watts) {
        return Math.max(0, charge - minutes / runtime(watts));
    }
}

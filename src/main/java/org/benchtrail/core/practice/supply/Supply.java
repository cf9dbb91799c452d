package org.benchtrail.core.practice.supply;

import static org.benchtrail.core.practice.supply.SupplyPart.*;

import org.benchtrail.core.practice.Parameters;

/**
 * A supply under a load in W at its outputs.
 *
 * <pre>
 * drawn     P = W / eta
 * inlet     V_i = (V_m + sqrt(V_m² - 4 R_m P)) / 2; no root: it cannot run
 * charge    V_1 = V_i sqrt(2)                             at the capacitor
 * hold-up   t = C (V_1² - V_2²) / (2 P)                   how long it runs on without mains
 * rail      I = s W / 12, V = V_0 - I R
 * shut off  I + V_0 / (R + R_s) above I_max
 * </pre>
 */
public record Supply(Parameters<SupplyPart> parts) {
    private static final double NOMINAL_RAIL = 12;
    private static final double MILLIS = 1000;
    /** V at the inlet below which nothing starts; common practice, no source. */
    private static final double STARTS_ABOVE = 180;

    public double idle() {
        return parts.get(IDLE_WATTS);
    }

    public double full() {
        return parts.get(LOAD_WATTS);
    }

    private double drawn(double watts) {
        return watts / parts.get(EFFICIENCY);
    }

    /** V at the outlet, while it draws what that load asks for; 0 if the feed cannot give it. */
    public double inlet(double watts) {
        double mains = parts.get(MAINS);
        double root = mains * mains - 4 * parts.get(FEED_OHM) * drawn(watts);
        return root < 0 ? 0 : (mains + Math.sqrt(root)) / 2;
    }

    /** W that plug and outlet turn to heat. */
    public double feedHeat(double watts) {
        double volts = inlet(watts);
        double amps = volts == 0 ? 0 : drawn(watts) / volts;
        return amps * amps * parts.get(FEED_OHM);
    }

    /** ms for which it runs on once the mains are away; 0 if they are away already. */
    public double holdUp(double watts) {
        double charged = 2 * inlet(watts) * inlet(watts);
        double left = charged - parts.get(GIVES_UP) * parts.get(GIVES_UP);
        return Math.max(0, MILLIS * parts.get(CAPACITANCE) * left / (2 * drawn(watts)));
    }

    /** J in the capacitor, which stay there after the plug is pulled. */
    public double stored() {
        return parts.get(CAPACITANCE) * parts.get(MAINS) * parts.get(MAINS);
    }

    private double amps(double watts) {
        return parts.get(RAIL_SHARE) * watts / NOMINAL_RAIL;
    }

    /** V of +12 V at the plug. */
    public double rail(double watts) {
        return parts.get(RAIL) - amps(watts) * parts.get(RAIL_OHM);
    }

    private double shorted() {
        return parts.get(RAIL) / (parts.get(RAIL_OHM) + parts.get(SHORT_OHM));
    }

    /** Whether it is made for that load. */
    public boolean isRatedFor(double watts) {
        return amps(watts) <= parts.get(MOST_AMPS);
    }

    /** Whether it gives its standby voltage. */
    public boolean isFed() {
        return inlet(0) > STARTS_ABOVE;
    }

    /** Whether it carries that load at all, by feed and by what it may give. */
    public boolean carries(double watts) {
        return inlet(watts) > STARTS_ABOVE && amps(watts) + shorted() <= parts.get(MOST_AMPS);
    }
}

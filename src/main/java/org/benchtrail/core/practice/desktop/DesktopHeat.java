package org.benchtrail.core.practice.desktop;

import static org.benchtrail.core.practice.desktop.DesktopPart.*;

import org.benchtrail.core.practice.Parameters;

/**
 * The way of the heat from the die to the room. Temperatures in °C, power in W, resistances in K/W, times in s, load in [0, 1].
 *
 * <pre>
 * power    P = P_i v² + u P_d f v² x³          x: share of the clock while it slows down
 * inlet    T_in = T_room + (P + P_o) / (rho c V)
 * paste    R_t = 1 / (w A k / b + (1 - w) A k_air / g)
 * sink     R_s = R_b + 1 / (G_n + G_f (phi n / n_0)^0.8)
 * fan      n = n_0 h D(T_j)
 * sink warms   C dT_s/dt = P - (T_s - T_in) / R_s
 * die      T_j = T_s + P (R_jc + R_t)          at once: its own time constant is about a second
 * </pre>
 *
 * The exponent is that of turbulent forced convection; it is poor at low speeds of the fan. All textbook.
 */
public final class DesktopHeat {
    /** rho c of air, J/(m³ K). */
    private static final double AIR = 1206;
    /** W/(m K). */
    private static final double STILL_AIR_CONDUCTS = 0.026;

    private static final double TURBULENT = 0.8;
    private static final double HOTTEST = 2000;
    private static final double CLOSE = 1e-10;

    private final Parameters<DesktopPart> parts;

    public DesktopHeat(Parameters<DesktopPart> parts) {
        this.parts = parts;
    }

    /**
     * What it comes to if the load stays as it is.
     *
     * @param clock the share of its clock that is left, 1 unless it slows down
     * @param trips whether it would pass the temperature at which it switches off
     */
    public record Settled(
            double die, double sink, double inlet, double speed, double watts, double clock, boolean trips) {}

    double watts(double load, double clock) {
        double volts = parts.get(VOLTAGE) * parts.get(VOLTAGE);
        return parts.get(IDLE_WATTS) * volts
                + load * parts.get(LOAD_WATTS) * parts.get(CLOCK) * volts * clock * clock * clock;
    }

    /** The share of the clock at which that power is drawn, within what the chip can do. */
    private double clockAt(double watts, double load) {
        double idle = watts(0, 1);
        double full = watts(load, 1);
        if (watts >= full) {
            return 1;
        }
        double cube = Math.max(0, watts - idle) / (full - idle);
        return Math.max(parts.get(LEAST_CLOCK), Math.cbrt(cube));
    }

    private double airCarries() {
        return AIR * parts.get(CASE_AIR);
    }

    public double inlet(double watts) {
        return parts.get(ROOM) + (watts + parts.get(OTHER_WATTS)) / airCarries();
    }

    public double paste() {
        double touching = parts.get(CONTACT) * parts.get(FACE) * parts.get(PASTE) / parts.get(LAYER);
        double apart = (1 - parts.get(CONTACT)) * parts.get(FACE) * STILL_AIR_CONDUCTS / parts.get(GAP);
        return 1 / (touching + apart);
    }

    /** From die to sink. */
    private double toSink() {
        return parts.get(DIE_TO_LID) + paste();
    }

    public double sink(double speed) {
        double moved = Math.pow(parts.get(AIR_PATH) * speed / parts.get(FAN_RATED), TURBULENT);
        return parts.get(BASE) + 1 / (parts.get(STILL_AIR) + parts.get(MOVED_AIR) * moved);
    }

    /** The fan's speed at what the sensor says of the die. */
    public double speed(double die) {
        double fixed = parts.get(FIXED_DUTY);
        double least = parts.get(LEAST_DUTY);
        double way = (die - parts.get(CURVE_FROM)) / (parts.get(CURVE_TO) - parts.get(CURVE_FROM));
        double duty = fixed > 0 ? fixed : Math.min(1, Math.max(least, least + (1 - least) * way));
        return parts.get(FAN_RATED) * parts.get(FAN_HEALTH) * duty;
    }

    /** Seconds in which all but 1/e of a change is done, at that speed. */
    public double timeConstant(double speed) {
        return parts.get(HEAT_CAPACITY) * sink(speed);
    }

    private double dieAt(double watts, double speed) {
        return inlet(watts) + watts * (sink(speed) + toSink());
    }

    /** Speed rises with the die's temperature and the temperature falls with speed: there is one point where both agree. */
    public Settled settled(double load) {
        Settled free = balance(load, 1);
        if (free.die() <= parts.get(THROTTLE) || load == 0) {
            return free;
        }
        double limit = parts.get(THROTTLE);
        double speed = speed(limit);
        double way = toSink() + sink(speed) + 1 / airCarries();
        double watts = (limit - parts.get(ROOM) - parts.get(OTHER_WATTS) / airCarries()) / way;
        return balance(load, clockAt(watts, load));
    }

    private Settled balance(double load, double clock) {
        double watts = watts(load, clock);
        double low = parts.get(ROOM);
        double high = HOTTEST;
        while (high - low > CLOSE) {
            double middle = (low + high) / 2;
            if (middle < dieAt(watts, speed(middle))) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double die = (low + high) / 2;
        double speed = speed(die);
        double inlet = inlet(watts);
        return new Settled(die, inlet + watts * sink(speed), inlet, speed, watts, clock, die >= parts.get(TRIP));
    }

    /** What is so at this moment, with the sink at that temperature. */
    public Settled at(double sink, double load) {
        double spare = Math.max(0, (parts.get(THROTTLE) - sink) / toSink());
        double clock = load == 0 ? 1 : clockAt(spare, load);
        double watts = watts(load, clock);
        double die = sink + watts * toSink();
        return new Settled(die, sink, inlet(watts), speed(die), watts, clock, die >= parts.get(TRIP));
    }

    /** K/s. */
    double warming(double sink, double load) {
        Settled now = at(sink, load);
        return (now.watts() - (sink - now.inlet()) / sink(now.speed())) / parts.get(HEAT_CAPACITY);
    }

    double trip() {
        return parts.get(TRIP);
    }
}

package org.benchtrail.core.practice.desktop;

import org.benchtrail.core.practice.Parameter;

/**
 * What a desktop is made with. The values are invented within the ranges of common practice; which equation each stands in is
 * said at {@link DesktopHeat}.
 */
public enum DesktopPart implements Parameter {
    /** P_i, W: the chip's power at idle. */
    IDLE_WATTS("W", 15, 8, 25),
    /** P_d, W: what full load adds. */
    LOAD_WATTS("W", 80, 45, 180),
    /** P_o, W: the rest of the case. */
    OTHER_WATTS("W", 80, 40, 250),
    /** f: clock over the rated one. */
    CLOCK("", 1, 1, 1.25),
    /** v: voltage over the rated one. */
    VOLTAGE("", 1, 1, 1.15),
    /** R_jc, K/W: from the die to its lid. */
    DIE_TO_LID("K/W", 0.12, 0.08, 0.3),
    /** A, m². */
    FACE("m²", 2.0e-4, 1e-4, 4e-4),
    /** k, W/(m K): the paste. */
    PASTE("W/(m K)", 4, 1, 8),
    /** b, m: its layer. */
    LAYER("m", 50e-6, 25e-6, 150e-6),
    /** w: the share of the face that touches. */
    CONTACT("", 1, 0.05, 1),
    /** g, m: the gap where it does not. */
    GAP("m", 60e-6, 30e-6, 150e-6),
    /** R_b, K/W: the base of the sink. */
    BASE("K/W", 0.05, 0.03, 0.1),
    /** G_n, W/K: what the fins give off without a fan. */
    STILL_AIR("W/K", 0.6, 0.3, 1),
    /** G_f, W/K: what they give off more at the fan's rated speed. */
    MOVED_AIR("W/K", 4.0, 2, 8),
    /** phi: the air path through the fins, 1 clean. */
    AIR_PATH("", 1, 0.2, 1),
    /** n_0, 1/min. */
    FAN_RATED("r/min", 2000, 1200, 4000),
    /** h: how much of its speed the fan still has. */
    FAN_HEALTH("", 1, 0, 1),
    /** D_0: least duty of the fan's curve. */
    LEAST_DUTY("", 0.35, 0.2, 0.5),
    /** A duty that stands still; 0 for the curve. */
    FIXED_DUTY("", 0, 0, 1),
    /** T_1, °C: up to here the least duty. */
    CURVE_FROM("°C", 45, 40, 50),
    /** T_2, °C: from here on full duty. */
    CURVE_TO("°C", 85, 80, 90),
    /** C, J/K: the sink. */
    HEAT_CAPACITY("J/K", 540, 250, 900),
    /** V, m³/s: air through the case. */
    CASE_AIR("m³/s", 0.020, 0.0045, 0.05),
    /** °C. */
    ROOM("°C", 24, 18, 38),
    /** T_thr, °C: the chip slows down so as not to pass it. */
    THROTTLE("°C", 100, 90, 105),
    /** x_min: the least share of its clock. */
    LEAST_CLOCK("", 0.75, 0.5, 0.8),
    /** T_trip, °C: it switches off. */
    TRIP("°C", 110, 98, 120),
    /** K: what its sensor says too much. */
    SENSOR_OFFSET("K", 0, 0, 25);

    private final Range range;

    DesktopPart(String unit, double base, double low, double high) {
        range = new Range(unit, base, low, high);
    }

    @Override
    public Range range() {
        return range;
    }
}

package org.benchtrail.core.practice.drive;

import org.benchtrail.core.practice.Parameter;

/** What a workstation's drive is made with; invented within common practice. The equations stand at {@link DriveWear} and {@link DriveLink}. */
public enum DrivePart implements Parameter {
    /** lambda, 1/h of running: sectors that go bad. */
    NEW_BAD("1/h", 0, 0, 20),
    /** 1/h of running, by heat alone: nothing below 60 °C. */
    HEAT_BAD("1/h", 0, 0, 3),
    /** r, 1/h: the share of the bad ones that reading meets. */
    NOTICED("1/h", 0.5, 0.3, 0.8),
    /** w, 1/h: the share of the pending ones that writing moves to spare ones. */
    MOVED("1/h", 0.25, 0.15, 0.4),
    /** h, 1/h: that it dies. */
    DEATH("1/h", 0, 0, 0.1),
    /** Sectors moved long ago. */
    OLD_MOVED("sectors", 0, 0, 40),
    /** Bytes. */
    CAPACITY("B", 1e12, 2.5e11, 4e12),
    /** c, bytes a second over a sound link. */
    RATE("B/s", 150e6, 80e6, 250e6),
    /** t_rec, s: how long it tries to read a pending sector. */
    RECOVERY("s", 12, 2, 45),
    /** p: the share of frames that the cable damages. */
    DAMAGE("", 1e-9, 1e-9, 2e-2),
    /** As {@link #DAMAGE}, by the port at the other end of the cable. */
    PORT_DAMAGE("", 0, 0, 2e-2),
    /** R_c, ohm: the plug of the supply. */
    CONTACT("ohm", 0.05, 0.02, 1.2),
    /** V_0, V. */
    SUPPLY("V", 12.05, 11.8, 12.3),
    /** f_u: the share that holds data. */
    USED("", 0.4, 0.1, 0.9),
    /** Per cent of the file system. */
    FREE("%", 60, 2, 90),
    /** Per cent of the time that it is kept busy by something else. */
    BUSY("%", 5, 1, 100),
    /** °C. */
    TEMPERATURE("°C", 38, 28, 70);

    private final Range range;

    DrivePart(String unit, double base, double low, double high) {
        range = new Range(unit, base, low, high);
    }

    @Override
    public Range range() {
        return range;
    }
}

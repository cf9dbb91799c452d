package org.benchtrail.core.practice.array;

import org.benchtrail.core.practice.Parameter;

/** What an array is made with; ours where nothing else is said. The equations stand at {@link DriveSet}. */
public enum ArrayPart implements Parameter {
    /** n; common practice, no source. */
    MEMBERS("drives", 4, 3, 12),
    /** Bytes of a member; common practice, no source. */
    CAPACITY("B", 4e12, 1e12, 2e13),
    /** Bytes a second; common practice, no source. */
    RATE("B/s", 150e6, 80e6, 250e6),
    /** p: chance that a bit cannot be read. */
    UNREADABLE("", 1e-15, 1e-16, 1e-14),
    /** ms of a drive for one access; common practice, no source. */
    ACCESS("ms", 8, 4, 12),
    /** ms of the protected cache for one write. */
    CACHED("ms", 4, 1, 6),
    /** Share of its charge that the battery of the cache holds. */
    CHARGE("", 1, 0, 1),
    /** Share of the time in which the users keep it busy. */
    LOAD("", 0.2, 0.1, 0.35),
    /** Share of the time that a background check takes. */
    CHECK("", 0, 0, 0.9),
    /** Share of the commands that fail in one of the drives. */
    DRIVE_FAILS("", 0, 0, 1),
    /** Share of the commands that fail in one of the bays. */
    BAY_FAILS("", 0, 0, 1);

    private final Range range;

    ArrayPart(String unit, double base, double low, double high) {
        range = new Range(unit, base, low, high);
    }

    @Override
    public Range range() {
        return range;
    }
}

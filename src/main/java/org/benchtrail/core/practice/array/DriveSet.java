package org.benchtrail.core.practice.array;

import static org.benchtrail.core.practice.array.ArrayPart.*;

import org.benchtrail.core.practice.Parameters;

/**
 * An array with one drive's worth of parity.
 *
 * <pre>
 * dropped    1 - (1 - drive) (1 - bay) above a half         then it is degraded
 * write      four accesses (two to read, two to write), or the cache's time where the cache is protected
 * latency    S / (1 - load - check)                         one server, one queue
 * rebuild    capacity / rate
 * unreadable 1 - (1 - p)^(8 capacity (n - 1))               at least one bit of those that a rebuild has to read
 * </pre>
 *
 * @param lost whether more members are away than parity makes up for
 */
public record DriveSet(Parameters<ArrayPart> parts, boolean lost) {
    private static final double HALF = 0.5;
    private static final double PARITY_ACCESSES = 4;
    private static final double BUSIEST = 0.99;
    private static final double BITS = 8;
    private static final double SECONDS = 3600;

    public boolean isDegraded() {
        return 1 - (1 - parts.get(DRIVE_FAILS)) * (1 - parts.get(BAY_FAILS)) > HALF;
    }

    /** Whether its cache keeps what is not yet written when the mains fail; else it is not used for writing. */
    public boolean isCacheProtected() {
        return parts.get(CHARGE) > HALF;
    }

    /** ms of a write, in the mean. */
    public double latency() {
        double served = isCacheProtected() ? parts.get(CACHED) : PARITY_ACCESSES * parts.get(ACCESS);
        return served / (1 - Math.min(BUSIEST, parts.get(LOAD) + parts.get(CHECK)));
    }

    public double rebuildHours() {
        return parts.get(CAPACITY) / parts.get(RATE) / SECONDS;
    }

    /** The chance that reading so many bytes meets a bit that cannot be read. */
    public double unreadable(double bytes) {
        return -Math.expm1(BITS * bytes * Math.log1p(-parts.get(UNREADABLE)));
    }

    /** The chance that a rebuild meets one: it reads all other members to their end. */
    public double rebuildFails() {
        return unreadable(parts.get(CAPACITY) * (parts.get(MEMBERS) - 1));
    }

    public DriveSet with(Parameters<ArrayPart> after) {
        return new DriveSet(after, lost);
    }

    /** Without one more member. */
    public DriveSet pulled() {
        return new DriveSet(parts, lost || isDegraded());
    }
}

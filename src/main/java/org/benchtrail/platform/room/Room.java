package org.benchtrail.platform.room;

/** How much room is left on a disk. */
public enum Room {
    ENOUGH,
    /** Less than a tenth: time to look. */
    LITTLE,
    /** Less than a fiftieth: files are refused, so that what is typed can still be recorded. */
    HARDLY_ANY;

    private static final double LITTLE_SHARE = 0.10;
    private static final double HARDLY_ANY_SHARE = 0.02;

    /**
     * @param free bytes that can be written
     * @param total bytes of the disk; 0 if nobody knows
     */
    public static Room of(long free, long total) {
        if (total <= 0) {
            return ENOUGH;
        }
        double share = (double) free / total;
        return share < HARDLY_ANY_SHARE ? HARDLY_ANY : share < LITTLE_SHARE ? LITTLE : ENOUGH;
    }
}

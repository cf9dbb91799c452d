package org.benchtrail.core.method.identify;

/** A measured value held against its limit; in-between values are {@code NOT_JUDGED} where no limit is known. */
public enum ReadingVerdict {
    WITHIN,
    OUTSIDE,
    /** The limit lies within the guard band about the value. */
    TOO_CLOSE,
    NOT_JUDGED
}

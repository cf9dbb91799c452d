package org.benchtrail.core.measure;

import org.benchtrail.core.statistics.Interval;
import org.jspecify.annotations.Nullable;

/** When a fitted course reaches a threshold. Times in seconds on the series' clock. */
public sealed interface Crossing {

    /**
     * Reached at this time.
     *
     * @param interval of the time; null if the scatter leaves it without an end
     */
    record At(double time, @Nullable Interval interval) implements Crossing {}

    /** The threshold lies behind: the course has passed it or leads away from it. */
    record AlreadyThere() implements Crossing {}

    /**
     * The course levels off before it, or does not move.
     *
     * @param sure whether the interval of the level, too, stays short of the threshold
     */
    record Never(boolean sure) implements Crossing {}
}

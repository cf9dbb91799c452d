package org.benchtrail.platform.database;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;

/**
 * How often a database that dies is started again: what dies more often than that has a reason that starting it does not mend.
 *
 * @param most starts within the span
 */
record Restarts(int most, Duration span, Deque<Long> at) {
    Restarts(int most, Duration span) {
        this(most, span, new ArrayDeque<>());
    }

    /**
     * Takes one of the starts, if one is left.
     *
     * @param now nanoseconds of a clock that is never put back
     */
    boolean take(long now) {
        while (!at.isEmpty() && now - at.getFirst() >= span.toNanos()) {
            at.removeFirst();
        }
        if (at.size() >= most) {
            return false;
        }
        at.addLast(now);
        return true;
    }
}

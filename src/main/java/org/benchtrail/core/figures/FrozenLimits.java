package org.benchtrail.core.figures;

import java.time.Instant;
import java.util.List;

/** Limits that somebody froze: made once from a stated time that is over, and never again. */
interface FrozenLimits {
    /** What it is made of begins here. */
    Instant from();

    /** From when on it judges, whatever is frozen later. */
    Instant frozenAt();

    /**
     * The one by which something is judged: the last that was frozen by its end; before any was, the first, from the beginning of its
     * own time on. What is frozen later judges nothing again.
     *
     * @param begins of what is judged; the same as its end where it is a moment
     * @param frozen in the order in which they were frozen
     * @return its place in the list; -1 if there is none
     */
    static int at(Instant begins, Instant ends, List<? extends FrozenLimits> frozen) {
        for (int i = frozen.size() - 1; i >= 0; i--) {
            if (!frozen.get(i).frozenAt().isAfter(ends)) {
                return i;
            }
        }
        return !frozen.isEmpty() && !begins.isBefore(frozen.get(0).from()) ? 0 : -1;
    }
}

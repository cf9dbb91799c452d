package org.benchtrail.core.method;

import org.jspecify.annotations.Nullable;

/**
 * Something recorded on a ticket. A fact is plain data in the past tense; its constructor refuses what is malformed with
 * {@link org.benchtrail.core.Invalid}. Other facts are referred to by the number of the entry that recorded them.
 */
public interface Fact {

    /** The step whose question this answers; null for what belongs to no step (moves, hand-overs, waivers, corrections). */
    @Nullable
    Step step();

    /**
     * Whether it may be added, marked late, once its step has been left. Choices, checks, actions and signatures may not:
     * to make them again is to go round again.
     */
    default boolean lateAllowed() {
        return false;
    }
}

package org.benchtrail.core.figures;

/** How something that lasts ended. */
public enum Leaving {
    /** As it is meant to: the next step, or closed; of a hold: work went on. */
    FORWARD,
    /** Back to an earlier step: the theory or the plan did not hold. */
    BACK,
    /** With the ticket, which was cancelled. */
    CANCELLED,
    /** Not yet. */
    OPEN;

    /** Whether the whole time was seen; else it is known only that it took at least as long. */
    public boolean isEnd() {
        return this == FORWARD;
    }
}

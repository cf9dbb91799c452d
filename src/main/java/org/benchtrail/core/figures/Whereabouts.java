package org.benchtrail.core.figures;

import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Step;

/**
 * Step and round of a ticket, followed move by move without its facts.
 *
 * @param step in which it is, or was when it ended
 * @param round 1 for the first
 */
public record Whereabouts(Step step, int round) {
    public static final Whereabouts OPENED = new Whereabouts(Step.IDENTIFY, 1);

    /** Where it is after the move; one that cannot be made from there changes nothing. */
    public Whereabouts after(Move move) {
        return switch (move) {
            case ADVANCE -> step == Step.DOCUMENT ? this : new Whereabouts(step.next(), round);
            case REFUTE, RETHINK, FAIL -> new Whereabouts(Step.THEORIZE, round + 1);
            case REOPEN -> new Whereabouts(Step.IDENTIFY, round + 1);
            case CLOSE, CANCEL, HOLD, RESUME, HAND_OVER, OFFER, END_OFFER, ESCALATE, RETURN -> this;
        };
    }
}

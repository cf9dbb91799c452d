package org.benchtrail.core.method;

import java.util.EnumSet;
import java.util.Set;

/** The moves of the method and the steps from which each may be made; nothing else is possible. */
public enum Move {
    ADVANCE("advance", Set.of(Step.IDENTIFY, Step.THEORIZE, Step.TEST, Step.PLAN, Step.VERIFY), Standing.OPEN),
    REFUTE("rule the theory out", Set.of(Step.TEST), Standing.OPEN),
    RETHINK("rethink", Set.of(Step.PLAN), Standing.OPEN),
    FAIL("report that it persists", Set.of(Step.VERIFY, Step.DOCUMENT), Standing.OPEN),
    CLOSE("close", Set.of(Step.DOCUMENT), Standing.OPEN),
    REOPEN("reopen", EnumSet.allOf(Step.class), Standing.CLOSED),
    HOLD("put on hold", EnumSet.allOf(Step.class), Standing.OPEN),
    RESUME("resume", EnumSet.allOf(Step.class), Standing.OPEN),
    HAND_OVER("hand over", EnumSet.allOf(Step.class), Standing.OPEN),
    OFFER("offer it to somebody", EnumSet.allOf(Step.class), Standing.OPEN),
    END_OFFER("end the offer", EnumSet.allOf(Step.class), Standing.OPEN),
    ESCALATE("escalate", EnumSet.allOf(Step.class), Standing.OPEN),
    RETURN("record the return", EnumSet.allOf(Step.class), Standing.OPEN),
    CANCEL("cancel", EnumSet.allOf(Step.class), Standing.OPEN);

    private final String words;
    private final Set<Step> from;
    private final Standing standing;

    Move(String words, Set<Step> from, Standing standing) {
        this.words = words;
        this.from = from;
        this.standing = standing;
    }

    public String words() {
        return words;
    }

    public boolean possibleFrom(Step step, Standing now) {
        return standing == now && from.contains(step);
    }

    /** Whether it changes the step, and so waits while the ticket is on hold or work is stopped. */
    public boolean changesStep() {
        return switch (this) {
            case ADVANCE, REFUTE, RETHINK, FAIL, CLOSE -> true;
            case REOPEN, HOLD, RESUME, HAND_OVER, OFFER, END_OFFER, ESCALATE, RETURN, CANCEL -> false;
        };
    }

    /** Whether all requirements of the step have to be met first. */
    public boolean gated() {
        return switch (this) {
            case ADVANCE, REFUTE, CLOSE -> true;
            case RETHINK, FAIL, REOPEN, HOLD, RESUME, HAND_OVER, OFFER, END_OFFER, ESCALATE, RETURN, CANCEL -> false;
        };
    }
}

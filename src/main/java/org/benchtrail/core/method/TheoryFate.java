package org.benchtrail.core.method;

/** What happens to the active theory with an act. */
public enum TheoryFate {
    UNTOUCHED,
    /** A check ruled it out. */
    RULED_OUT,
    /** Carrying out the plan showed it wrong. */
    SHOWN_WRONG,
    /** Its repair did not help; it may be right all the same. */
    NOT_CURED;

    /** Whether it may be chosen again only on new evidence. */
    public boolean rulesOut() {
        return this == RULED_OUT || this == SHOWN_WRONG;
    }
}

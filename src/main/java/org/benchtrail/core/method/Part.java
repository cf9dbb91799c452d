package org.benchtrail.core.method;

/**
 * What part in a ticket it is to record something: work on it, or judging the work of others. Nobody takes both parts in one
 * ticket.
 */
public enum Part {
    /** Work, whoever does it. */
    WORK,
    /** Work if the assignee does it; anybody else may add it and stays outside. */
    ASSIGNEES_WORK,
    /** Work if the assignee does it, else judging. */
    SECOND_LOOK,
    /** Judging: an approval, a waiver, a countersignature. */
    JUDGING,
    /** Neither. */
    NONE;

    boolean isWork(boolean assignee) {
        return switch (this) {
            case WORK -> true;
            case ASSIGNEES_WORK, SECOND_LOOK -> assignee;
            case JUDGING, NONE -> false;
        };
    }

    boolean isJudging(boolean assignee) {
        return this == JUDGING || (this == SECOND_LOOK && !assignee);
    }
}

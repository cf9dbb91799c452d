package org.benchtrail.core.method;

/** How long an answer is taken for the present one. */
public enum Lasts {
    /** Until it is given again. */
    TICKET,
    /** Until it is given again, or the ticket is reopened. */
    UNTIL_REOPENED,
    /** Until the next round begins. */
    ROUND,
    /** Until the next action is carried out, or the next round begins. */
    UNTIL_WORK;

    boolean covers(StandingFact<?> standing, JobSheet sheet) {
        return switch (this) {
            case TICKET -> true;
            case UNTIL_REOPENED -> standing.isAfter(sheet.course().openedAt());
            case ROUND -> standing.round() == sheet.round();
            case UNTIL_WORK -> standing.isAfter(sheet.lastWork());
        };
    }
}

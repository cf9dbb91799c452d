package org.benchtrail.core.diagnosis;

import org.jspecify.annotations.Nullable;

/**
 * Something to do next.
 *
 * @param id of the finding, the cause whose repair it is, the shared repair, or {@link #ESCALATE_ID}
 * @param minutes of the act itself
 * @param expectedMinutes until the ticket ends, if this is done now and the best plan is followed then
 */
public record Action(Type type, String id, double minutes, double expectedMinutes) {
    static final String ESCALATE_ID = "escalate";

    /** Kinds of act, in the order that breaks ties between equal expectations. */
    public enum Type {
        /** Repair and verify. Leads to the plan step, never straight to execution. */
        REPAIR,
        /** The best repair is held back: do first what opens it. The id is the repair's. */
        PREPARE,
        TEST,
        ESCALATE
    }

    static final double ROUNDING = 1e9;

    /** Expected minutes rounded to 1e-9, so that equal ones compare equal. */
    double rounded() {
        return Math.rint(expectedMinutes * ROUNDING) / ROUNDING;
    }

    static int compare(Action a, Action b) {
        int byMinutes =
                Double.compare(Math.rint(a.expectedMinutes * ROUNDING), Math.rint(b.expectedMinutes * ROUNDING));
        int byType = byMinutes != 0 ? byMinutes : a.type.compareTo(b.type);
        return byType != 0 ? byType : a.id.compareTo(b.id);
    }

    static boolean isBetter(Action a, @Nullable Action than) {
        return than == null || compare(a, than) < 0;
    }
}

package org.benchtrail.core.method;

import org.jspecify.annotations.Nullable;

/**
 * A fact as it stands on the job sheet.
 *
 * @param stamp of the entry that first recorded it
 * @param round in which it was recorded
 * @param during the step at which the ticket stood
 * @param late whether its own step had been left by then
 * @param corrected stamp of the latest correction; null if there was none
 */
public record StandingFact<F extends Fact>(
        F fact,
        Stamp stamp,
        int round,
        Step during,
        boolean late,
        @Nullable Stamp corrected) {

    /** Number of the entry; other facts refer to this one by it. */
    public int entry() {
        return stamp.entry();
    }

    /** Whether it was recorded later than that entry. */
    public boolean isAfter(int entry) {
        return stamp.entry() > entry;
    }

    /** Entry after which it has stood unchanged. */
    public int settledSince() {
        return corrected == null ? stamp.entry() : corrected.entry();
    }

    /** Whether it stood as it is now when that entry was made. */
    public boolean isSettledBefore(int entry) {
        return settledSince() < entry;
    }

    /** Of the latest correction, or of the recording itself. */
    public Stamp lastStamp() {
        return corrected == null ? stamp : corrected;
    }
}

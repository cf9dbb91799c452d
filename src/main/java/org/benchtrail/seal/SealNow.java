package org.benchtrail.seal;

import jakarta.enterprise.context.ApplicationScoped;

/** Seals at once what should not wait for the next round. */
@ApplicationScoped
public class SealNow {
    private final SealJob job;

    SealNow(SealJob job) {
        this.job = job;
    }

    /** All that waits. */
    public void all() {
        job.round();
    }

    /**
     * What waits up to that record, so that it is the last leaf of its head. Another node that seals in the same moment may add to
     * it. What goes wrong is told and tried again by the usual rounds.
     */
    public void upTo(String stream, long place) {
        job.roundTo(stream, place);
    }
}

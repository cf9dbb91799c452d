package org.benchtrail.seal;

import io.quarkus.arc.Arc;

/** Sealing, when a test of another feature asks for it. */
public final class SealRounds {
    private SealRounds() {}

    /** Seals and signs what waits. */
    public static void once() {
        Arc.container().instance(SealJob.class).get().round();
    }
}

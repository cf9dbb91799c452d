package org.benchtrail.core.practice.job;

import java.util.Optional;

/** A device of a practice job at one moment. It never changes: each act answers with the device after it. */
public interface PracticeDevice {
    /** @param act one of the device's own */
    Answer act(DeviceAct act);

    /** Whether the symptom of the job would no longer show. */
    boolean isWell();

    /** Whether what the user has stored on it would be there after its end; empty where nothing is stored. */
    default Optional<Boolean> isBackedUp() {
        return Optional.empty();
    }
}

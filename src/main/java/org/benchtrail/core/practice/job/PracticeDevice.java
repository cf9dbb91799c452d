package org.benchtrail.core.practice.job;

/** A device of a practice job at one moment. It never changes: each act answers with the device after it. */
public interface PracticeDevice {
    /** @param act one of the device's own */
    Answer act(DeviceAct act);

    /** Whether the symptom of the job would no longer show. */
    boolean isWell();
}

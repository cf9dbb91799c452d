package org.benchtrail.core.method;

/** What a person may be on the bench; a mentor is a technician who signs off the work of trainees. */
public enum Role {
    TECHNICIAN,
    TRAINEE,
    MENTOR,
    SUPERVISOR,
    ADMINISTRATOR
}

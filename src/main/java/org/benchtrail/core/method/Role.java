package org.benchtrail.core.method;

/** What a person may be on the site; an account has one or more. A mentor is a technician who signs off. */
public enum Role {
    TECHNICIAN,
    TRAINEE,
    MENTOR,
    SUPERVISOR,
    ADMINISTRATOR
}

package org.benchtrail.core.method;

import java.util.Set;

/**
 * Who acts.
 *
 * @param account sign-in name, stable
 * @param name as shown to people
 * @param roles the roles held at this moment
 */
public record Actor(String account, String name, Set<Role> roles) {
    public Actor {
        roles = Set.copyOf(roles);
    }

    public boolean is(Role role) {
        return roles.contains(role);
    }

    /** Whether this person works tickets at all. */
    public boolean works() {
        return is(Role.TECHNICIAN) || is(Role.TRAINEE) || is(Role.MENTOR) || is(Role.SUPERVISOR);
    }
}

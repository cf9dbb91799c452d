package org.benchtrail.core.method;

import java.util.Set;

/** Who acts: the account's login, the name that people read, and every role the account has at this moment. */
public record Actor(String account, String name, Set<Role> roles) {
    public Actor {
        roles = Set.copyOf(roles);
    }

    public boolean is(Role r) {
        return roles.contains(r);
    }
}

package org.benchtrail.people;

import java.time.Instant;
import java.util.Set;
import org.benchtrail.core.method.Role;

/** An account as others see it. */
public record AccountView(
        String login, String name, Set<Role> roles, String zone, boolean active, boolean locked, Instant createdAt) {}

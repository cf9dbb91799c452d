package org.benchtrail.core.method;

import java.time.Instant;
import java.util.Set;

/**
 * When and by whom an entry was made.
 *
 * @param entry number of the entry on its ticket, 1, 2, 3 without gaps
 * @param at UTC, cut to microseconds
 * @param by account
 * @param roles roles of that account at that moment
 */
public record Stamp(int entry, Instant at, String by, Set<Role> roles) {
    public Stamp {
        roles = Set.copyOf(roles);
    }
}

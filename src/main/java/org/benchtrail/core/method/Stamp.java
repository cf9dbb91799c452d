package org.benchtrail.core.method;

import java.time.Instant;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * When, by whom and how an entry was made.
 *
 * @param entry number of the entry on its ticket, 1, 2, 3 without gaps
 * @param at UTC, cut to microseconds
 * @param by account; {@link #SERVER} where the server itself speaks
 * @param roles roles of that account at that moment
 * @param origin null for an entry of format 1, of which it is not known
 */
public record Stamp(
        int entry,
        Instant at,
        String by,
        Set<Role> roles,
        @Nullable Origin origin) {
    /** What stands for the account where the server speaks; no person's account has this name. */
    public static final String SERVER = "server";

    public Stamp {
        roles = Set.copyOf(roles);
    }

    /** Of an entry of format 1. */
    public Stamp(int entry, Instant at, String by, Set<Role> roles) {
        this(entry, at, by, roles, null);
    }

    /**
     * What the entries of one request share. An entry of format 1 counts as a request of its own, whatever its moment: what was
     * sent together then is not known, and old tickets are not held to it.
     */
    public String request() {
        return origin == null ? "entry " + entry : origin.request();
    }

    public boolean sameRequest(Stamp other) {
        return request().equals(other.request());
    }

    /**
     * Whether it bears the time of the entry before it instead of its own, because the server's clock was behind that. No two
     * requests on one ticket are done in the same microsecond. Not known of an entry of format 1.
     */
    public boolean borrowsTime(Stamp before) {
        return origin != null && at.equals(before.at()) && !sameRequest(before);
    }

    /** The door by which it came in; null for an entry of format 1. */
    public @Nullable Channel channel() {
        return origin == null ? null : origin.channel();
    }

    /** At whose act the server spoke; null where a person speaks, or nobody's act was the occasion. */
    public @Nullable String behalf() {
        return origin == null ? null : origin.behalf();
    }

    /** Whose act it was, or was the occasion of it: the account, or the one on whose behalf the server spoke. */
    public String person() {
        String behalf = behalf();
        return behalf == null ? by : behalf;
    }
}

package org.benchtrail.core.method.desk;

import java.util.EnumSet;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;

/** What takes an administrator and a supervisor, who are two persons. */
public final class BothRoles {
    private BothRoles() {}

    /**
     * Why the two cannot decide it together; empty if they can. A role counts that somebody had when it was proposed and still has: who
     * was given one since, or has lost it, does not count with it.
     *
     * @param proposer with the roles of now; none if the account has ended
     * @param proposerThen what they had when it was proposed
     * @param agreeing with the roles of now
     * @param agreeingThen what they had when it was proposed
     */
    public static String refusal(Actor proposer, Set<Role> proposerThen, Actor agreeing, Set<Role> agreeingThen) {
        if (proposer.account().equals(agreeing.account())) {
            return "You proposed this yourself: another person has to agree to it.";
        }
        Set<Role> one = both(proposer.roles(), proposerThen);
        Set<Role> other = both(agreeing.roles(), agreeingThen);
        boolean fits = (one.contains(Role.ADMINISTRATOR) && other.contains(Role.SUPERVISOR))
                || (one.contains(Role.SUPERVISOR) && other.contains(Role.ADMINISTRATOR));
        return fits
                ? ""
                : "It takes an administrator and a supervisor, each with a role that they had already when it was proposed"
                        + " and still have. You and " + proposer.name() + " are not that.";
    }

    private static Set<Role> both(Set<Role> now, Set<Role> then) {
        EnumSet<Role> both = EnumSet.of(Role.ADMINISTRATOR, Role.SUPERVISOR);
        both.retainAll(now);
        both.retainAll(then);
        return both;
    }
}

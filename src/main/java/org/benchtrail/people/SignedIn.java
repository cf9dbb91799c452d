package org.benchtrail.people;

import java.time.ZoneId;
import java.util.EnumSet;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;

/**
 * A person whose password, cookie or token was found good, read from the database for this very request.
 *
 * @param session of the cookie; 0 if it was none
 * @param secondFactor whether the account has one
 * @param formToken what forms of this sign-in carry; empty if it was no cookie
 * @param scopes of the token; all if it was none
 */
record SignedIn(
        long accountId,
        int sessionVersion,
        long session,
        Actor actor,
        ZoneId zone,
        boolean secondFactor,
        String formToken,
        Set<TokenScope> scopes) {
    /** With what a token may be used for; where it may not administer, its owner's role of administrator does not count. */
    SignedIn with(Set<TokenScope> allowed, boolean reading) {
        Set<Role> roles = EnumSet.noneOf(Role.class);
        roles.addAll(actor.roles());
        if (!reading && !allowed.contains(TokenScope.ADMINISTER)) {
            roles.remove(Role.ADMINISTRATOR);
        }
        Actor limited = new Actor(actor.account(), actor.name(), roles);
        return new SignedIn(accountId, sessionVersion, session, limited, zone, secondFactor, formToken, allowed);
    }
}

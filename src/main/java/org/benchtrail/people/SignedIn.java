package org.benchtrail.people;

import java.time.ZoneId;
import org.benchtrail.core.method.Actor;

/**
 * A person whose password, cookie or token was found good, read from the database for this very request.
 *
 * @param session of the cookie; 0 if it was none
 */
record SignedIn(long accountId, int sessionVersion, long session, Actor actor, ZoneId zone) {}

package org.benchtrail.people;

import java.time.ZoneId;
import org.benchtrail.core.method.Actor;

/** A person whose password, cookie or token was found good, read from the database for this very request. */
record SignedIn(long accountId, int sessionVersion, Actor actor, ZoneId zone) {}

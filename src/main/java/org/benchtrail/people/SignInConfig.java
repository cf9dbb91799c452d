package org.benchtrail.people;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;

/** How sign-in behaves. */
@ConfigMapping(prefix = "benchtrail.sign-in")
public interface SignInConfig {
    /** Cost of a password hash: bcrypt runs 2^cost rounds. 4 to 31. */
    @WithDefault("12")
    int bcryptCost();

    /** Wrong tries in a row until an account is locked. */
    @WithDefault("5")
    int tries();

    /** How long the first lock lasts; every further wrong try doubles it. */
    @WithDefault("5M")
    Duration firstLock();

    @WithDefault("1H")
    Duration longestLock();

    /** A person is signed out after this long without a request. */
    @WithDefault("30M")
    Duration idle();

    /** A person is signed out after this long in any case. */
    @WithDefault("12H")
    Duration longest();

    /** How long a token is good for, unless its maker says otherwise; also the most that is allowed. */
    @WithDefault("365")
    int tokenDays();
}

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

    /** Wrong tries on one account from one address, or in one browser, until no more are taken for a while. */
    @WithDefault("5")
    int tries();

    /** How long that is. */
    @WithDefault("5M")
    Duration firstLock();

    /** Wrong tries in an hour from one address, on whatever accounts. */
    @WithDefault("100")
    int addressTries();

    /** Whether administrators need a second factor; everybody may have one. */
    @WithDefault("true")
    boolean secondFactorForAdministrators();

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

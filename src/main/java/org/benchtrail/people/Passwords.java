package org.benchtrail.people;

import io.quarkus.elytron.security.common.BcryptUtil;
import jakarta.inject.Singleton;
import java.nio.charset.StandardCharsets;
import org.benchtrail.core.Invalid;

/** Hashes and compares passwords (bcrypt). */
@Singleton
class Passwords {
    private static final int SHORTEST = 10;

    /** bcrypt reads no further than 72 bytes; a longer password would promise more than it holds. */
    private static final int MOST_BYTES = 72;

    private final int cost;

    /** The hash of a password nobody has: an unknown login takes as long to refuse as a known one. */
    private final String nobody;

    Passwords(SignInConfig config) {
        this.cost = config.bcryptCost();
        this.nobody = BcryptUtil.bcryptHash(Secrets.random(), cost);
    }

    static void check(String password, String field, Invalid.Collector problems) {
        problems.require(
                password.codePointCount(0, password.length()) >= SHORTEST,
                field,
                "Choose a password of at least " + SHORTEST + " characters.");
        problems.require(
                password.getBytes(StandardCharsets.UTF_8).length <= MOST_BYTES,
                field,
                "Choose a password of at most " + MOST_BYTES + " bytes (plain letters take one each).");
    }

    String hash(String password) {
        return BcryptUtil.bcryptHash(password, cost);
    }

    boolean matches(String password, String hash) {
        return BcryptUtil.matches(password, hash);
    }

    /** Takes as long as {@link #matches}, for a login that does not exist. */
    void spendTime(String password) {
        if (BcryptUtil.matches(password, nobody)) {
            throw new IllegalStateException("a random secret of 256 bits was guessed");
        }
    }
}

package org.benchtrail.people;

import com.nulabinc.zxcvbn.Zxcvbn;
import io.quarkus.elytron.security.common.BcryptUtil;
import jakarta.inject.Singleton;
import java.nio.charset.StandardCharsets;
import java.security.spec.InvalidKeySpecException;
import java.util.List;
import java.util.concurrent.Semaphore;
import org.benchtrail.core.Invalid;
import org.wildfly.security.password.interfaces.BCryptPassword;
import org.wildfly.security.password.util.ModularCrypt;

/** Hashes and compares passwords (bcrypt). */
@Singleton
class Passwords {
    private static final List<String> OWN_WORDS = List.of("benchtrail", "password", "administrator");
    private static final int LONGEST = 72;
    private static final int SHORTEST = 12;

    /** bcrypt reads no further than 72 bytes; a longer password would promise more than it holds. */
    private static final int MOST_BYTES = 72;

    /** Guesses, as a power of ten, below which a password is found in no time by whoever tries lists of words. */
    private static final int LEAST_GUESSES = 6;

    private static final Zxcvbn GUESSING = new Zxcvbn();

    private final int cost;

    /** Hashing is slow on purpose: no more at once than there are processors, so that pages still get a turn. */
    private final Semaphore hashing =
            new Semaphore(Math.max(1, Runtime.getRuntime().availableProcessors()));

    /** The hash of a password nobody has: an unknown login takes as long to refuse as a known one. */
    private final String nobody;

    Passwords(SignInConfig config) {
        this.cost = config.bcryptCost();
        this.nobody = hashOfNothing(cost);
    }

    /** Random bytes where a hash stands: to hash would take longer than the rest of the class needs at the start. */
    private static String hashOfNothing(int cost) {
        byte[] hash = Secrets.random(BCryptPassword.BCRYPT_HASH_SIZE);
        byte[] salt = Secrets.random(BCryptPassword.BCRYPT_SALT_SIZE);
        try {
            return ModularCrypt.encodeAsString(
                    BCryptPassword.createRaw(BCryptPassword.ALGORITHM_BCRYPT, hash, salt, cost));
        } catch (InvalidKeySpecException e) {
            throw new IllegalStateException(e);
        }
    }

    static void check(String password, String field, Invalid.Collector problems) {
        problems.require(
                password.codePointCount(0, password.length()) >= SHORTEST,
                field,
                "Choose a password of at least " + SHORTEST + " characters.");
        problems.require(
                password.length() < SHORTEST || password.length() > LONGEST || isHardToGuess(password),
                field,
                "This password is among the first that are tried: choose other words, or more of them.");
        problems.require(
                password.getBytes(StandardCharsets.UTF_8).length <= MOST_BYTES,
                field,
                "Choose a password of at most " + MOST_BYTES + " bytes (plain letters take one each).");
    }

    private static boolean isHardToGuess(String password) {
        return GUESSING.measure(password, OWN_WORDS).getGuessesLog10() >= LEAST_GUESSES;
    }

    String hash(String password) {
        return BcryptUtil.bcryptHash(password, cost);
    }

    boolean matches(String password, String hash) {
        if (password.getBytes(StandardCharsets.UTF_8).length > MOST_BYTES) {
            return false;
        }
        hashing.acquireUninterruptibly();
        try {
            return BcryptUtil.matches(password, hash);
        } finally {
            hashing.release();
        }
    }

    /** Takes as long as {@link #matches}, for a login that does not exist; never right. */
    boolean spendTime(String password) {
        return matches(password, nobody) && nobody.isEmpty();
    }
}

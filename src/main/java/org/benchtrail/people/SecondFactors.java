package org.benchtrail.people;

import com.eatthepath.otp.TimeBasedOneTimePasswordGenerator;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.nio.charset.StandardCharsets;
import java.security.InvalidKeyException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import javax.crypto.spec.SecretKeySpec;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/**
 * A second factor: codes that change every half minute (RFC 6238: HMAC-SHA-1, six digits), and ten for when the device that makes them
 * is lost. No code is taken twice; wrong ones are counted like passwords.
 */
@Startup
@ApplicationScoped
class SecondFactors {
    static final String REFUSED =
            "This code is not right, or was used before. After several wrong ones no more are taken for a while.";

    private static final SecureRandom RANDOM = new SecureRandom();
    private static final TimeBasedOneTimePasswordGenerator CODES = new TimeBasedOneTimePasswordGenerator();
    private static final int SECRET_BYTES = 20;
    private static final int RECOVERY_CODES = 10;
    private static final int RECOVERY_BYTES = 10;

    /** A clock that is half a minute off, and somebody who types slowly, are still taken (RFC 6238, section 5.2). */
    private static final int STEPS_AROUND = 1;

    private final EntityManager database;
    private final Accounts accounts;
    private final Passwords passwords;
    private final Tries tries;
    private final AccountLog log;
    private final Clock clock;
    private final SignInConfig config;
    private final SqlText text;

    SecondFactors(
            EntityManager database,
            Accounts accounts,
            Passwords passwords,
            Tries tries,
            AccountLog log,
            Clock clock,
            SignInConfig config) {
        this.database = database;
        this.accounts = accounts;
        this.passwords = passwords;
        this.tries = tries;
        this.log = log;
        this.clock = clock;
        this.config = config;
        text = SqlText.of(SecondFactors.class)
                .having("asked", "of", "begin", "take step", "confirm", "keep code", "take code", "end codes", "end");
    }

    /** @param confirmed whether a first code was given, from which on one is asked for at each sign-in */
    record Factor(long accountId, byte[] secret, boolean confirmed, long lastStep, long codesLeft) {
        /** What an app takes by hand, in groups of four. */
        String typed() {
            return Base32.of(secret).replaceAll("(.{4})(?=.)", "$1 ");
        }
    }

    /** Whether the account has to have one before anything else. */
    boolean isDemanded(Actor person) {
        return config.secondFactorForAdministrators() && person.is(Role.ADMINISTRATOR);
    }

    boolean isAsked(SignedIn person) {
        return QuarkusTransaction.joiningExisting()
                .call(() -> Sql.of(database, text.statement("asked"))
                                .with("account", person.accountId())
                                .value(Long.class)
                        > 0);
    }

    Optional<Factor> of(String login) {
        return QuarkusTransaction.joiningExisting()
                .call(() -> Sql.of(database, text.statement("of"))
                        .with("login", login)
                        .row(Factor.class));
    }

    /** Makes a new secret, which counts once it is confirmed. */
    void begin(Actor by, String password) {
        requirePassword(by, password);
        byte[] secret = new byte[SECRET_BYTES];
        RANDOM.nextBytes(secret);
        QuarkusTransaction.joiningExisting()
                .run(() -> Sql.of(database, text.statement("begin"))
                        .with("login", by.account())
                        .with("secret", secret)
                        .with("now", clock.instant())
                        .run());
    }

    /** Answers with the codes for when the device is lost, which are shown this once. */
    List<String> confirm(Actor by, String code) {
        Factor factor = of(by.account())
                .filter(f -> !f.confirmed())
                .orElseThrow(() -> new Invalid("code", "Begin again: there is nothing to confirm."));
        if (!takes(by.account(), code)) {
            throw new Invalid("code", REFUSED);
        }
        List<String> kept = new ArrayList<>();
        QuarkusTransaction.joiningExisting().run(() -> {
            Sql.of(database, text.statement("confirm"))
                    .with("account", factor.accountId())
                    .with("now", clock.instant())
                    .run();
            for (int i = 0; i < RECOVERY_CODES; i++) {
                kept.add(keepNew(factor.accountId()));
            }
            log.note(by.account(), "second factor begun", by.account(), "");
        });
        return kept;
    }

    private String keepNew(long account) {
        byte[] random = new byte[RECOVERY_BYTES];
        RANDOM.nextBytes(random);
        String code = Base32.of(random).toLowerCase(Locale.ROOT);
        Sql.of(database, text.statement("keep code"))
                .with("account", account)
                .with("hash", Secrets.hash(code))
                .run();
        return code;
    }

    /** One's own; the codes for when the device is lost end with it. */
    void end(Actor by, String password) {
        if (isDemanded(by)) {
            throw new Invalid(
                    "present", "An administrator's account has a second factor: it is replaced by beginning again.");
        }
        requirePassword(by, password);
        drop(by.account());
        QuarkusTransaction.joiningExisting().run(() -> log.note(by.account(), "second factor ended", by.account(), ""));
    }

    /** Of somebody who lost both the device and the codes; an administrator vouches for who asks. */
    void drop(String login) {
        QuarkusTransaction.joiningExisting().run(() -> {
            Sql.of(database, text.statement("end codes")).with("login", login).run();
            Sql.of(database, text.statement("end")).with("login", login).run();
        });
    }

    /** Whether the code is right, of now or of those that were kept; it is not taken again. */
    boolean takes(String login, String typed) {
        String code = typed.strip().replace(" ", "").toLowerCase(Locale.ROOT);
        Tries.Of counted = tries.code(login);
        if (tries.take(counted) < 0) {
            return false;
        }
        boolean taken = QuarkusTransaction.joiningExisting()
                .call(() -> of(login)
                        .filter(f -> takesStep(f, code) || takesKept(f, code))
                        .isPresent());
        if (taken) {
            tries.giveBack(counted);
        } else {
            QuarkusTransaction.joiningExisting().run(() -> log.note(AccountLog.SERVER, "code refused", login, ""));
        }
        return taken;
    }

    private boolean takesStep(Factor factor, String code) {
        OptionalLong step = step(factor.secret(), code, clock.instant());
        return step.isPresent()
                && Sql.of(database, text.statement("take step"))
                                .with("account", factor.accountId())
                                .with("step", step.getAsLong())
                                .run()
                        > 0;
    }

    private boolean takesKept(Factor factor, String code) {
        return Sql.of(database, text.statement("take code"))
                        .with("account", factor.accountId())
                        .with("hash", Secrets.hash(code))
                        .run()
                > 0;
    }

    /** The code of a moment. */
    static String code(byte[] secret, Instant at) {
        try {
            return CODES.generateOneTimePasswordString(
                    new SecretKeySpec(secret, CODES.getAlgorithm()), at, Locale.ROOT);
        } catch (InvalidKeyException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /** The time step of which a code is; empty if it is of none about now. */
    static OptionalLong step(byte[] secret, String code, Instant now) {
        long width = CODES.getTimeStep().toSeconds();
        for (int around = -STEPS_AROUND; around <= STEPS_AROUND; around++) {
            Instant at = now.plusSeconds(around * width);
            byte[] right = code(secret, at).getBytes(StandardCharsets.UTF_8);
            if (MessageDigest.isEqual(right, code.getBytes(StandardCharsets.UTF_8))) {
                return OptionalLong.of(at.getEpochSecond() / width);
            }
        }
        return OptionalLong.empty();
    }

    private void requirePassword(Actor by, String password) {
        String hash = QuarkusTransaction.joiningExisting()
                .call(() -> accounts.byLogin(by.account()).orElseThrow().passwordHash);
        if (!passwords.matches(password, hash)) {
            throw new Invalid("present", "Type the password you have now; this one is not it.");
        }
    }
}

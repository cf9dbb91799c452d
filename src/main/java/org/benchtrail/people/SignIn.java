package org.benchtrail.people;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;

/** Finds out who comes in: by password, by the cookie of an earlier sign-in, or by a program's token. */
@Singleton
class SignIn {
    /** The same for every refusal: whoever guesses learns neither which logins exist nor which are locked. */
    static final String REFUSED = "Login or password is not right, or the account is closed. After several wrong tries"
            + " an account is locked for a while: wait, or ask an administrator.";

    /** A token's last use is noted at most this often, to spare the database a write with every request. */
    private static final Duration LAST_USED_GRAIN = Duration.ofMinutes(1);

    private final Accounts accounts;
    private final ApiTokens tokens;
    private final Passwords passwords;
    private final AccountLog log;
    private final Clock clock;
    private final LockOut lockOut;

    SignIn(Accounts accounts, ApiTokens tokens, Passwords passwords, AccountLog log, Clock clock, SignInConfig config) {
        this.accounts = accounts;
        this.tokens = tokens;
        this.passwords = passwords;
        this.log = log;
        this.clock = clock;
        this.lockOut = new LockOut(config.tries(), config.firstLock(), config.longestLock());
    }

    /**
     * The person with this login and password, unless the account is locked or closed. Hashing runs outside any transaction,
     * because it is slow on purpose; the lock is looked at again afterwards, so that many tries at once gain nothing.
     */
    Optional<SignedIn> byPassword(String typedLogin, String password) {
        String login = typedLogin.strip().toLowerCase(Locale.ROOT);
        Optional<String> hash = QuarkusTransaction.requiringNew()
                .call(() -> accounts.byLogin(login).map(account -> account.passwordHash));
        if (hash.isEmpty()) {
            passwords.spendTime(password);
            return Optional.empty();
        }
        boolean right = passwords.matches(password, hash.get());
        return QuarkusTransaction.requiringNew().call(() -> settle(login, hash.get(), right));
    }

    private Optional<SignedIn> settle(String login, String comparedHash, boolean right) {
        Account account = accounts.lockedByLogin(login).orElseThrow();
        Instant now = clock.instant();
        if (!account.active || account.isLocked(now)) {
            return Optional.empty();
        }
        if (!right || !account.passwordHash.equals(comparedHash)) {
            countFailure(account, now);
            return Optional.empty();
        }
        account.forgetFailures();
        log.note(login, "signed in", login, "");
        return Optional.of(account.signedIn());
    }

    private void countFailure(Account account, Instant now) {
        account.failedAttempts++;
        Duration lock = lockOut.after(account.failedAttempts);
        if (!lock.isZero()) {
            account.lockedUntil = now.plus(lock);
            String detail = account.failedAttempts + " wrong tries, for " + lock.toMinutes() + " min";
            log.note(AccountLog.SERVER, "locked", account.login, detail);
        }
    }

    /** The owner of this token, if the token is neither expired nor revoked and its owner is active. */
    Optional<SignedIn> byToken(String secret) {
        return QuarkusTransaction.requiringNew().call(() -> {
            Instant now = clock.instant();
            Optional<ApiToken> token = tokens.byHash(Secrets.hash(secret)).filter(found -> found.isGood(now));
            token.ifPresent(found -> noteUse(found, now));
            return token.map(found -> found.account.signedIn());
        });
    }

    private static void noteUse(ApiToken token, Instant now) {
        if (token.lastUsed == null || token.lastUsed.plus(LAST_USED_GRAIN).isBefore(now)) {
            token.lastUsed = now;
        }
    }
}

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
            + " no more are taken for a while: wait, use a browser in which you signed in before, or ask an administrator.";

    /** A token's last use is noted at most this often, to spare the database a write with every request. */
    private static final Duration LAST_USED_GRAIN = Duration.ofMinutes(1);

    private final Accounts accounts;
    private final ApiTokens tokens;
    private final Passwords passwords;
    private final AccountLog log;
    private final Clock clock;
    private final Tries tries;
    private final KnownBrowsers browsers;
    private final SignInConfig config;

    SignIn(
            Accounts accounts,
            ApiTokens tokens,
            Passwords passwords,
            AccountLog log,
            Clock clock,
            Tries tries,
            KnownBrowsers browsers,
            SignInConfig config) {
        this.accounts = accounts;
        this.tokens = tokens;
        this.passwords = passwords;
        this.log = log;
        this.clock = clock;
        this.tries = tries;
        this.browsers = browsers;
        this.config = config;
    }

    /** What is known of an account before its password is compared. */
    private record Stored(String hash, Optional<byte[]> browser) {}

    /**
     * The person with this login and password, unless the account is closed or too many wrong ones were tried. Hashing runs outside any
     * transaction, because it is slow on purpose; the account is looked at again afterwards.
     */
    Optional<SignedIn> byPassword(String typedLogin, String password, Visit visit) {
        String login = typedLogin.strip().toLowerCase(Locale.ROOT);
        Optional<Stored> stored = QuarkusTransaction.requiringNew().call(() -> stored(login, visit));
        Tries.Of counted =
                tries.signIn(Accounts.isLogin(login) ? login : "", visit.address(), stored.flatMap(Stored::browser));
        long left = tries.take(counted);
        if (left < 0) {
            return Optional.empty();
        }
        boolean right =
                stored.isPresent() ? passwords.matches(password, stored.get().hash()) : passwords.spendTime(password);
        Optional<SignedIn> found = QuarkusTransaction.requiringNew()
                .call(() -> settle(login, stored.map(Stored::hash).orElse(""), right, left));
        found.ifPresent(person -> tries.giveBack(counted));
        return found;
    }

    private Optional<Stored> stored(String login, Visit visit) {
        return accounts.byLogin(login)
                .map(account -> new Stored(
                        account.passwordHash,
                        visit.browser().map(Secrets::hash).filter(hash -> browsers.isKnown(login, hash))));
    }

    private Optional<SignedIn> settle(String login, String comparedHash, boolean right, long left) {
        Optional<Account> found = accounts.lockedByLogin(login);
        if (found.filter(account -> right && account.active && account.passwordHash.equals(comparedHash))
                .isEmpty()) {
            log.note(AccountLog.SERVER, "sign-in failed", Accounts.isLogin(login) ? login : "(no login)", "");
            found.filter(account -> left == 0).ifPresent(this::noteLock);
            return Optional.empty();
        }
        Account account = found.get();
        account.forgetFailures();
        log.note(login, "signed in", login, "");
        return Optional.of(account.signedIn());
    }

    private void noteLock(Account account) {
        account.lockedUntil = clock.instant().plus(config.firstLock());
        String detail =
                config.tries() + " wrong tries, for " + config.firstLock().toMinutes() + " min";
        log.note(AccountLog.SERVER, "locked", account.login, detail);
    }

    /** A person who is signed in and stays so although every sign-in of the account has ended. */
    SignedIn again(String login) {
        return QuarkusTransaction.requiringNew()
                .call(() -> accounts.byLogin(login).orElseThrow().signedIn());
    }

    /**
     * The owner of this token, if the token is neither expired nor revoked and its owner is active.
     *
     * @param reading whether it is used to read only
     */
    Optional<SignedIn> byToken(String secret, boolean reading) {
        return QuarkusTransaction.requiringNew().call(() -> {
            Instant now = clock.instant();
            Optional<ApiToken> token =
                    tokens.byHash(Secrets.hashOfToken(secret)).filter(found -> found.isGood(now));
            token.ifPresent(found -> noteUse(found, now));
            return token.map(found -> found.account.signedIn().with(found.scopes(), reading));
        });
    }

    private static void noteUse(ApiToken token, Instant now) {
        if (token.lastUsed == null || token.lastUsed.plus(LAST_USED_GRAIN).isBefore(now)) {
            token.lastUsed = now;
        }
    }
}

package org.benchtrail.people;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/**
 * The sign-ins that are good, kept by the hash of what their cookie holds. One ends when its owner or an administrator ends it,
 * when it was not used for a while, when it is old, and with a new password or the closing of the account.
 */
@Startup
@ApplicationScoped
@Transactional
class SessionStore {
    /** That a sign-in is in use is written at most this often, to spare the database a write with every request. */
    private static final Duration SEEN_GRAIN = Duration.ofMinutes(1);

    /** How long the code of the second factor is waited for. */
    private static final Duration CODE_WITHIN = Duration.ofMinutes(5);

    private static final int LONGEST_BROWSER = 200;

    private final EntityManager database;
    private final Clock clock;
    private final SqlText text;
    private final Duration idle;
    private final Duration longest;

    SessionStore(EntityManager database, Clock clock, SignInConfig config) {
        this.database = database;
        this.clock = clock;
        text = SqlText.of(SessionStore.class)
                .having("begin", "forget", "find", "find awaiting", "own", "end", "end one", "end others");
        idle = config.idle();
        longest = config.longest();
    }

    /** Whose sign-in a cookie is. */
    private record Found(
            long sessionId,
            long accountId,
            int sessionVersion,
            String login,
            String displayName,
            List<String> roles,
            String zone,
            boolean secondFactor,
            String formToken) {
        SignedIn signedIn() {
            Set<Role> set = EnumSet.noneOf(Role.class);
            roles.stream().map(Role::valueOf).forEach(set::add);
            return new SignedIn(
                    accountId,
                    sessionVersion,
                    sessionId,
                    new Actor(login, displayName, set),
                    ZoneId.of(zone),
                    secondFactor,
                    formToken,
                    EnumSet.allOf(TokenScope.class));
        }
    }

    /** A sign-in of one's own: since when, last used when, from which address, with which program as that says of itself. */
    record Own(long id, Instant made, Instant seen, String address, String browser) {}

    /**
     * Begins a sign-in and forgets those of the account that are no longer good. Answers with what the cookie holds.
     *
     * @param before what the cookie held until now: that sign-in ends
     * @param held the token of forms that the browser has: if it is of an earlier sign-in of the account that the server still
     *     knows, expired or not, forms that were filled in meanwhile stay good
     * @param awaitsCode whether nobody is signed in by it yet, because the code of the second factor is still to come
     */
    String begin(
            SignedIn person,
            Optional<String> before,
            Optional<String> held,
            String address,
            String browser,
            boolean awaitsCode) {
        String secret = Secrets.random();
        Sql.of(database, text.statement("begin"))
                .with("account", person.accountId())
                .with("hash", Secrets.hash(secret))
                .with("held", held.orElse(""))
                .with("version", person.sessionVersion())
                .with("now", clock.instant())
                .with("awaitsCode", awaitsCode)
                .with("address", address)
                .with("browser", browser.substring(0, Math.min(LONGEST_BROWSER, browser.length())))
                .run();
        before.ifPresent(this::end);
        statement("forget").with("account", person.accountId()).run();
        return secret;
    }

    /** The person behind a cookie; empty if its sign-in has ended. */
    Optional<SignedIn> find(String secret) {
        Instant now = clock.instant();
        return statement("find")
                .with("hash", Secrets.hash(secret))
                .with("now", now)
                .with("notedBefore", now.minus(SEEN_GRAIN))
                .row(Found.class)
                .map(Found::signedIn);
    }

    /** The login of whoever gave the right password a moment ago, and not yet the code of the second factor. */
    Optional<String> awaiting(String secret) {
        return Sql.of(database, text.statement("find awaiting"))
                .with("hash", Secrets.hash(secret))
                .with("madeAfter", clock.instant().minus(CODE_WITHIN))
                .values(String.class)
                .stream()
                .findFirst();
    }

    /** The last used first. */
    List<Own> of(String login) {
        return statement("own").with("login", login).rows(Own.class);
    }

    void end(String secret) {
        Sql.of(database, text.statement("end"))
                .with("hash", Secrets.hash(secret))
                .run();
    }

    /** Whether there was such a sign-in of that account. */
    boolean endOne(String login, long id) {
        return Sql.of(database, text.statement("end one"))
                        .with("login", login)
                        .with("id", id)
                        .run()
                > 0;
    }

    void endOthers(String login, long present) {
        Sql.of(database, text.statement("end others"))
                .with("login", login)
                .with("present", present)
                .run();
    }

    /** One of those that ask for good sign-ins only. */
    private Sql statement(String name) {
        Instant now = clock.instant();
        return Sql.of(database, text.statement(name))
                .with("madeAfter", now.minus(longest))
                .with("seenAfter", now.minus(idle));
    }
}

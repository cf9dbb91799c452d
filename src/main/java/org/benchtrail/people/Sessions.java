package org.benchtrail.people;

import io.quarkus.vertx.http.runtime.security.PersistentLoginManager;
import io.quarkus.vertx.http.runtime.security.PersistentLoginManager.RestoreResult;
import io.vertx.core.http.Cookie;
import io.vertx.core.http.CookieSameSite;
import io.vertx.ext.web.RoutingContext;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.platform.RequestKind;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/**
 * The cookie that remembers a sign-in: encrypted and authenticated by the framework's login manager (AES-GCM), out of reach
 * of scripts, not sent along with foreign sites' forms. Lax rather than Strict, so that a link in a mail opens the page it
 * names; what changes anything is a form with its own token.
 */
@Singleton
class Sessions {
    static final String COOKIE = "benchtrail-session";

    private static final Logger LOG = Logger.getLogger(Sessions.class);
    private static final Duration RENEW_AFTER = Duration.ofMinutes(5);
    private static final Pattern CONTENT = Pattern.compile("(\\d{1,18})\\.(\\d{1,9})\\.(\\d{1,12})");

    /** Whose sign-in the cookie is: the account, its session version then, and the second it was made. */
    record Session(long accountId, int sessionVersion, long madeAt) {
        String content() {
            return accountId + "." + sessionVersion + "." + madeAt;
        }
    }

    private final PersistentLoginManager cookies;
    private final Clock clock;
    private final Duration longest;

    Sessions(
            @ConfigProperty(name = "quarkus.http.auth.session.encryption-key") Optional<String> key,
            SignInConfig config,
            Clock clock) {
        if (key.isEmpty()) {
            LOG.warn(
                    "quarkus.http.auth.session.encryption-key is not set: a random key is used, and everybody has to sign in"
                            + " again after a restart");
        }
        this.cookies = new PersistentLoginManager(
                key.orElseGet(Secrets::random),
                COOKIE,
                config.idle().toMillis(),
                RENEW_AFTER.toMillis(),
                true,
                CookieSameSite.LAX.name(),
                "/",
                -1,
                null);
        this.clock = clock;
        this.longest = config.longest();
    }

    void begin(SignedIn person, RoutingContext request) {
        Session session = new Session(
                person.accountId(), person.sessionVersion(), clock.instant().getEpochSecond());
        cookies.save(session.content(), request, COOKIE, null, RequestKind.isSecure(request));
    }

    /** The session of this request, renewed if it has grown old; empty if there is none, or it is too old or forged. */
    Optional<Session> resume(RoutingContext request) {
        RestoreResult restored = cookies.restore(request, COOKIE);
        if (restored == null) {
            return Optional.empty();
        }
        Optional<Session> session = parse(restored.getPrincipal()).filter(this::isYoung);
        session.ifPresent(s -> cookies.save(s.content(), request, COOKIE, restored, RequestKind.isSecure(request)));
        return session;
    }

    void end(RoutingContext request) {
        request.response()
                .addCookie(Cookie.cookie(COOKIE, "")
                        .setPath("/")
                        .setMaxAge(0)
                        .setHttpOnly(true)
                        .setSecure(RequestKind.isSecure(request))
                        .setSameSite(CookieSameSite.LAX));
    }

    private boolean isYoung(Session session) {
        return clock.instant().isBefore(Instant.ofEpochSecond(session.madeAt()).plus(longest));
    }

    static Optional<Session> parse(String content) {
        Matcher parts = CONTENT.matcher(content);
        return parts.matches()
                ? Optional.of(new Session(
                        Long.parseLong(parts.group(1)),
                        Integer.parseInt(parts.group(2)),
                        Long.parseLong(parts.group(3))))
                : Optional.empty();
    }
}

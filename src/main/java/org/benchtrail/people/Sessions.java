package org.benchtrail.people;

import io.vertx.core.http.Cookie;
import io.vertx.core.http.CookieSameSite;
import io.vertx.ext.web.RoutingContext;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.platform.FormKey;
import org.benchtrail.platform.RequestKind;

/**
 * The cookie that remembers a sign-in: a secret that only names a row of the {@link SessionStore}, out of reach of scripts, not
 * sent along with foreign sites' forms. Lax rather than Strict, so that a link in a mail opens the page it names; what changes
 * anything is a form with its own token.
 */
@Singleton
class Sessions {
    static final String COOKIE = "benchtrail-session";

    /** Tells a browser in which somebody has signed in before from a stranger's; it lets nobody in. */
    static final String BROWSER = "benchtrail-browser";

    /** Over TLS: a browser takes it from this very host alone, and never without TLS (RFC 6265bis). */
    private static final String HOST_ONLY = "__Host-";

    private static final long BROWSER_KEPT_S = Duration.ofDays(180).toSeconds();

    private final SessionStore store;
    private final KnownBrowsers browsers;

    Sessions(SessionStore store, KnownBrowsers browsers) {
        this.store = store;
        this.browsers = browsers;
    }

    void begin(SignedIn person, RoutingContext request) {
        put(person, request, false);
        if (held(BROWSER, request)
                .filter(b -> browsers.isKnown(person.actor().account(), Secrets.hash(b)))
                .isEmpty()) {
            request.response()
                    .addCookie(cookie(BROWSER, browsers.remember(person.accountId()), request)
                            .setMaxAge(BROWSER_KEPT_S));
        }
    }

    /** The password was right; the code of the second factor is still to come. */
    void beginAwaiting(SignedIn person, RoutingContext request) {
        put(person, request, true);
    }

    private void put(SignedIn person, RoutingContext request, boolean awaitsCode) {
        String browser = PlainText.line(request.request().getHeader("User-Agent"));
        String secret = store.begin(
                person,
                secret(request),
                Optional.ofNullable(request.request().getCookie(FormKey.TOKEN)).map(Cookie::getValue),
                address(request),
                PlainText.isText(browser) ? browser : "",
                awaitsCode);
        request.response().addCookie(cookie(COOKIE, secret, request));
    }

    /** From where and in which browser somebody tries to sign in. */
    Visit visit(RoutingContext request) {
        return new Visit(address(request), held(BROWSER, request));
    }

    /** What the cookie of this request holds; empty if there is none. */
    Optional<String> secret(RoutingContext request) {
        return held(COOKIE, request);
    }

    /** The login of whoever gave the right password in this browser a moment ago, and not yet the code. */
    Optional<String> awaiting(RoutingContext request) {
        return secret(request).flatMap(store::awaiting);
    }

    /** Ends the sign-in itself, so that a copy of the cookie opens nothing, and takes the cookie away. */
    void end(RoutingContext request) {
        secret(request).ifPresent(store::end);
        request.response().addCookie(cookie(COOKIE, "", request).setMaxAge(0));
    }

    private static String address(RoutingContext request) {
        return Objects.requireNonNullElse(request.request().remoteAddress().hostAddress(), "");
    }

    private static Optional<String> held(String name, RoutingContext request) {
        return Optional.ofNullable(request.request().getCookie(named(name, request)))
                .map(Cookie::getValue)
                .filter(secret -> !secret.isEmpty());
    }

    private static String named(String name, RoutingContext request) {
        return RequestKind.isSecure(request) ? HOST_ONLY + name : name;
    }

    private static Cookie cookie(String name, String secret, RoutingContext request) {
        return Cookie.cookie(named(name, request), secret)
                .setPath("/")
                .setHttpOnly(true)
                .setSecure(RequestKind.isSecure(request))
                .setSameSite(CookieSameSite.LAX);
    }
}

package org.benchtrail.people;

import io.vertx.core.http.Cookie;
import io.vertx.core.http.CookieSameSite;
import io.vertx.ext.web.RoutingContext;
import jakarta.inject.Singleton;
import java.util.Objects;
import java.util.Optional;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.platform.RequestKind;

/**
 * The cookie that remembers a sign-in: a secret that only names a row of the {@link SessionStore}, out of reach of scripts, not
 * sent along with foreign sites' forms. Lax rather than Strict, so that a link in a mail opens the page it names; what changes
 * anything is a form with its own token.
 */
@Singleton
class Sessions {
    static final String COOKIE = "benchtrail-session";

    private final SessionStore store;

    Sessions(SessionStore store) {
        this.store = store;
    }

    void begin(SignedIn person, RoutingContext request) {
        String browser = PlainText.line(request.request().getHeader("User-Agent"));
        String address = request.request().remoteAddress().hostAddress();
        String secret =
                store.begin(person, Objects.requireNonNullElse(address, ""), PlainText.isText(browser) ? browser : "");
        request.response().addCookie(cookie(secret, request));
    }

    /** What the cookie of this request holds; empty if there is none. */
    Optional<String> secret(RoutingContext request) {
        return Optional.ofNullable(request.request().getCookie(COOKIE))
                .map(Cookie::getValue)
                .filter(secret -> !secret.isEmpty());
    }

    /** Ends the sign-in itself, so that a copy of the cookie opens nothing, and takes the cookie away. */
    void end(RoutingContext request) {
        secret(request).ifPresent(store::end);
        request.response().addCookie(cookie("", request).setMaxAge(0));
    }

    private static Cookie cookie(String secret, RoutingContext request) {
        return Cookie.cookie(COOKIE, secret)
                .setPath("/")
                .setHttpOnly(true)
                .setSecure(RequestKind.isSecure(request))
                .setSameSite(CookieSameSite.LAX);
    }
}

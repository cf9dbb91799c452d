package org.benchtrail.people;

import io.vertx.core.http.Cookie;
import io.vertx.core.http.CookieSameSite;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.core.Response;
import java.util.Set;
import org.benchtrail.platform.FormKey;
import org.benchtrail.platform.RequestKind;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jspecify.annotations.Nullable;

/**
 * Binds the token of forms to the sign-in. The framework only compares the token of a form with a cookie, which a neighbour of the
 * site could have put there; whoever is signed in has the token of their sign-in's row in it, or another form is not taken.
 */
public class FormsOfSignIn {
    private static final Set<String> SAFE = Set.of("GET", "HEAD", "OPTIONS");

    /** Before the framework's comparison, which has the default priority of 5000. */
    private static final int BEFORE_THE_FRAMEWORK = 4500;

    private final CurrentActor current;

    FormsOfSignIn(CurrentActor current) {
        this.current = current;
    }

    @ServerRequestFilter(priority = BEFORE_THE_FRAMEWORK)
    public @Nullable Response check(ContainerRequestContext request, RoutingContext routing) {
        if (RequestKind.isApi(routing)
                || !current.signedIn()
                || current.formToken().isEmpty()) {
            return null;
        }
        Cookie held = routing.request().getCookie(FormKey.TOKEN);
        if (held != null && held.getValue().equals(current.formToken())) {
            return null;
        }
        if (!SAFE.contains(request.getMethod())) {
            return Response.status(Response.Status.BAD_REQUEST).build();
        }
        // the framework finds it here, and draws the forms of this page with it
        routing.request()
                .response()
                .addCookie(Cookie.cookie(FormKey.TOKEN, current.formToken())
                        .setPath("/")
                        .setHttpOnly(true)
                        .setSecure(RequestKind.isSecure(routing))
                        .setSameSite(CookieSameSite.LAX));
        return null;
    }
}

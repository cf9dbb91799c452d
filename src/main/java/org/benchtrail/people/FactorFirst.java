package org.benchtrail.people;

import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.core.Response;
import org.benchtrail.platform.Forbidden;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.RequestKind;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jspecify.annotations.Nullable;

/** Whoever needs a second factor and has none comes to the page where it is made, and nowhere else. */
public class FactorFirst {
    private static final String PAGE = "/me/second-factor";

    private final CurrentActor current;
    private final SecondFactors factors;

    FactorFirst(CurrentActor current, SecondFactors factors) {
        this.current = current;
        this.factors = factors;
    }

    @ServerRequestFilter
    public @Nullable Response check(ContainerRequestContext request, RoutingContext routing) {
        String path = routing.normalizedPath();
        if (RequestKind.isApi(routing)
                || path.startsWith(PAGE)
                || path.equals("/sign-out")
                || !current.signedIn()
                || current.hasSecondFactor()
                || !factors.isDemanded(current.actor())) {
            return null;
        }
        if (request.getMethod().equals("GET")) {
            return Html.goTo(PAGE);
        }
        throw new Forbidden("An administrator needs a second factor first: make it on your own page.");
    }
}

package org.benchtrail.people;

import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.container.ContainerRequestContext;
import org.benchtrail.platform.Forbidden;
import org.benchtrail.platform.RequestKind;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/** Lets a program do no more than its token was made for, before anything that it sent is read. */
public class ScopeCheck {
    private final CurrentActor current;

    ScopeCheck(CurrentActor current) {
        this.current = current;
    }

    @ServerRequestFilter
    public void check(ContainerRequestContext request, RoutingContext routing) {
        if (RequestKind.isApi(routing)
                && current.signedIn()
                && !TokenScope.allows(current.scopes(), request.getMethod())) {
            throw new Forbidden("The token is not for this: it may only " + TokenScope.join(current.scopes()) + ".");
        }
    }
}

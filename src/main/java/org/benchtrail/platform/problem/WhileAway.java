package org.benchtrail.platform.problem;

import io.vertx.ext.web.RoutingContext;
import jakarta.inject.Inject;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import org.benchtrail.platform.outage.DatabaseFault;
import org.benchtrail.platform.outage.Outage;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jboss.resteasy.reactive.server.WithFormRead;
import org.jspecify.annotations.Nullable;

/** Refuses a request of which nobody can say whose it is because the database is away, once its form is read and can be kept. */
public class WhileAway {
    private static final String FAILURE = WhileAway.class.getName();

    /** Before every other filter of ours. */
    private static final int FIRST = 1000;

    @Inject
    Outage outage;

    @Inject
    Clock clock;

    /** To be called where the person behind the request could not be looked up. */
    public static void refuse(RoutingContext request, Throwable failure) {
        request.put(FAILURE, failure);
    }

    @ServerRequestFilter(priority = FIRST)
    @WithFormRead
    public @Nullable Response check(ContainerRequestContext request, RoutingContext routing) {
        Throwable failure = routing.get(FAILURE);
        if (failure == null) {
            return null;
        }
        outage.met(failure);
        return DatabaseAway.answer(routing, DatabaseFault.AWAY, clock);
    }
}

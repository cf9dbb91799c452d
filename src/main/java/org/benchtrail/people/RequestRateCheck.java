package org.benchtrail.people;

import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.Priorities;
import jakarta.ws.rs.container.ContainerResponseContext;
import org.benchtrail.platform.RequestKind;
import org.benchtrail.platform.TooMany;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/**
 * Answers an account's programs no more often than {@link RequestRate} says, and tells them how they stand, by the header fields of
 * the Internet draft on rate limits (draft-ietf-httpapi-ratelimit-headers; from memory).
 */
public class RequestRateCheck {
    private static final String STANDING = RequestRateCheck.class.getName();

    private final CurrentActor current;
    private final RequestRate rate;

    RequestRateCheck(CurrentActor current, RequestRate rate) {
        this.current = current;
        this.rate = rate;
    }

    /** Before it is asked what else stands against the request. */
    @ServerRequestFilter(priority = Priorities.AUTHORIZATION)
    public void check(RoutingContext routing) {
        if (!RequestKind.isApi(routing) || !current.signedIn()) {
            return;
        }
        RequestRate.Standing standing = rate.take(current.actor().account());
        routing.put(STANDING, standing);
        if (!standing.isAnswered()) {
            throw new TooMany(standing.next());
        }
    }

    @ServerResponseFilter
    public void tell(ContainerResponseContext answer, RoutingContext routing) {
        RequestRate.Standing standing = routing.get(STANDING);
        if (standing != null) {
            answer.getHeaders().putSingle("RateLimit-Policy", rate.policy());
            answer.getHeaders().putSingle("RateLimit", "\"requests\";r=" + standing.left() + ";t=" + standing.full());
        }
    }
}

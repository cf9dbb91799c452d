package org.benchtrail.platform.problem;

import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import io.vertx.ext.web.handler.HttpException;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import jakarta.ws.rs.core.HttpHeaders;
import org.benchtrail.platform.RequestKind;
import org.benchtrail.platform.outage.DatabaseFault;
import org.benchtrail.platform.outage.Outage;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Tells what went wrong before a request reached an endpoint, in the same two ways as {@link Problems}: an address that cannot be read,
 * a form that ends in the middle. The framework's own answer would be JSON for whoever says to take anything, as browsers do.
 */
@Singleton
public class BeforeEndpoints {
    private static final Logger LOG = Logger.getLogger(BeforeEndpoints.class);

    /** Before the framework's own. */
    private static final int ORDER = -100_000;

    private final Outage outage;

    BeforeEndpoints(Outage outage) {
        this.outage = outage;
    }

    void install(@Observes Router router) {
        router.route().order(ORDER).failureHandler(this::tell).handler(BeforeEndpoints::refuseParameters);
    }

    /** A path here has no parameters of its own (RFC 3986, section 3.3): with them it would look like another than it is. */
    private static void refuseParameters(RoutingContext request) {
        if (request.request().path().contains(";")) {
            request.fail(400);
        } else {
            request.next();
        }
    }

    private void tell(RoutingContext request) {
        @Nullable Throwable failure = request.failure();
        // who has not signed in is answered by the sign-in
        if (failure instanceof SecurityException
                || request.response().ended()
                || request.response().headWritten()) {
            request.next();
            return;
        }
        Problem problem = problem(request, failure);
        boolean api = RequestKind.isApi(request);
        request.response()
                .setStatusCode(problem.status())
                .putHeader(HttpHeaders.CACHE_CONTROL, "no-store")
                .putHeader(HttpHeaders.CONTENT_TYPE, api ? Problem.MEDIA_TYPE : "text/html;charset=UTF-8");
        if (problem.status() == ProblemKind.DATABASE_AWAY.status()) {
            request.response().putHeader(HttpHeaders.RETRY_AFTER, "" + Outage.RETRY_AFTER_S);
        }
        request.response().end(api ? Problems.json(problem) : DatabaseAway.plain(problem));
    }

    private Problem problem(RoutingContext request, @Nullable Throwable failure) {
        if (failure != null && DatabaseFault.of(failure).isPresent()) {
            outage.met(failure);
            return Problem.of(
                    ProblemKind.DATABASE_AWAY, "The database does not answer at the moment, so nothing was recorded.");
        }
        int status = status(request, failure);
        if (status < 500) {
            ProblemKind kind = status == 400 ? ProblemKind.MALFORMED : ProblemKind.ofStatus(status);
            return Problem.of(kind, kind.title() + ".").withStatus(status);
        }
        Problem problem = Problem.of(ProblemKind.FAILED, "Your request was not carried out.");
        LOG.errorf(
                failure,
                "reference %s: %s",
                problem.reference(),
                request.request().method());
        return problem;
    }

    private static int status(RoutingContext request, @Nullable Throwable failure) {
        if (failure instanceof HttpException said) {
            return said.getStatusCode();
        }
        // what a decoder of addresses, forms or headers says of what it cannot read
        boolean unreadable = failure instanceof IllegalArgumentException
                || (failure != null && failure.getClass().getName().startsWith("io.netty.handler.codec."));
        return unreadable ? 400 : request.statusCode() < 400 ? 500 : request.statusCode();
    }
}

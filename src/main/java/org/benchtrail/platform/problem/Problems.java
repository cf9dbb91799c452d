package org.benchtrail.platform.problem;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.ForbiddenException;
import io.quarkus.security.UnauthorizedException;
import io.vertx.core.json.jackson.DatabindCodec;
import io.vertx.ext.web.RoutingContext;
import jakarta.inject.Inject;
import jakarta.persistence.OptimisticLockException;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.platform.Forbidden;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.RecordBroken;
import org.benchtrail.platform.RequestKind;
import org.benchtrail.platform.Stale;
import org.benchtrail.platform.outage.DatabaseFault;
import org.benchtrail.platform.outage.Outage;
import org.jboss.logging.Logger;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;
import org.jspecify.annotations.Nullable;

/** Every exception that leaves an endpoint becomes a problem: RFC 9457 JSON under /api, a page elsewhere. */
public class Problems {
    private static final Logger LOG = Logger.getLogger(Problems.class);

    @Inject
    Outage outage;

    @Inject
    Clock clock;

    /** The page that tells a person what happened. */
    @CheckedTemplate(basePath = "")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance problem(Problem problem);
    }

    @ServerExceptionMapper
    public Response invalid(Invalid e, RoutingContext request) {
        Problem problem = Problem.of(ProblemKind.INVALID, "Nothing was changed, because of what is listed here.");
        return answer(request, problem.withErrors(e.problems()));
    }

    @ServerExceptionMapper
    public Response notFound(NotFound e, RoutingContext request) {
        return answer(request, Problem.of(ProblemKind.NOT_FOUND, message(e)));
    }

    @ServerExceptionMapper
    public Response forbidden(Forbidden e, RoutingContext request) {
        return answer(request, Problem.of(ProblemKind.FORBIDDEN, message(e)));
    }

    @ServerExceptionMapper
    public Response forbidden(ForbiddenException e, RoutingContext request) {
        return answer(request, Problem.of(ProblemKind.FORBIDDEN, "Your roles do not allow this."));
    }

    @ServerExceptionMapper
    public Response stale(Stale e, RoutingContext request) {
        Problem problem = Problem.of(ProblemKind.STALE, message(e)).withCurrent(e.current());
        return answer(request, RequestKind.isApi(request) ? problem.withStatus(412) : problem);
    }

    @ServerExceptionMapper
    public Response broken(RecordBroken e, RoutingContext request) {
        return answer(request, Problem.of(ProblemKind.RECORD_BROKEN, message(e)));
    }

    @ServerExceptionMapper
    public Response stale(OptimisticLockException e, RoutingContext request) {
        return stale(new Stale(null), request);
    }

    @ServerExceptionMapper
    public Response notSignedIn(UnauthorizedException e, RoutingContext request) {
        return notSignedIn(request);
    }

    @ServerExceptionMapper
    public Response notSignedIn(AuthenticationFailedException e, RoutingContext request) {
        return notSignedIn(request);
    }

    @ServerExceptionMapper
    public Response mismatch(MismatchedInputException e, RoutingContext request) {
        return answer(request, Problem.of(ProblemKind.MALFORMED, Faults.place(e)));
    }

    @ServerExceptionMapper
    public Response framework(WebApplicationException e, RoutingContext request) {
        if (e.getCause() instanceof JsonProcessingException broken) {
            return answer(request, Problem.of(ProblemKind.MALFORMED, Faults.place(broken)));
        }
        int status = e.getResponse().getStatus();
        if (status < 400) {
            return e.getResponse();
        }
        if (status >= 500) {
            return failed(e, request);
        }
        if (status == 405 && isPageAsked(request)) {
            return Response.seeOther(URI.create(above(request.normalizedPath())))
                    .build();
        }
        ProblemKind kind = ProblemKind.ofStatus(status);
        return answer(request, Problem.of(kind, kind.title() + ".").withStatus(status));
    }

    @ServerExceptionMapper
    public Response failed(Throwable e, RoutingContext request) {
        Optional<DatabaseFault> away = DatabaseFault.of(e);
        if (away.isPresent()) {
            if (away.get() == DatabaseFault.AWAY) {
                outage.met(e);
            } else {
                outage.brokeAtCommit(e, request.normalizedPath());
            }
            return DatabaseAway.answer(request, away.get(), clock);
        }
        Problem problem = Problem.of(ProblemKind.FAILED, "Your request was not carried out.");
        // path only: a query may hold what somebody typed
        LOG.errorf(
                e, "reference %s: %s %s", problem.reference(), request.request().method(), request.normalizedPath());
        return answer(request, problem);
    }

    /** Whoever loads the address of a form again wants the page on which the form stands. */
    private static boolean isPageAsked(RoutingContext request) {
        return !RequestKind.isApi(request) && request.request().method().name().equals("GET");
    }

    private static String above(String path) {
        int last = path.lastIndexOf('/');
        return last <= 0 ? "/" : path.substring(0, last);
    }

    private static Response notSignedIn(RoutingContext request) {
        if (RequestKind.isApi(request) || !request.request().method().name().equals("GET")) {
            return answer(request, Problem.of(ProblemKind.NOT_SIGNED_IN, notSignedInDetail(request)));
        }
        String asked = URLEncoder.encode(RequestKind.localAddress(request), StandardCharsets.UTF_8);
        return Response.seeOther(URI.create("/sign-in?to=" + asked)).build();
    }

    static String notSignedInDetail(RoutingContext request) {
        return RequestKind.isApi(request)
                ? "Send a valid token: Authorization: Bearer bt_…; it may be missing, wrong, expired or revoked."
                : "Nothing was changed, because nobody is signed in any more.";
    }

    /** Renders {@code problem} for whoever asked. */
    static Response answer(RoutingContext request, Problem problem) {
        if (!RequestKind.isApi(request)) {
            return Html.status(problem.status(), Templates.problem(problem));
        }
        Response.ResponseBuilder answer =
                Response.status(problem.status()).type(Problem.MEDIA_TYPE).entity(json(problem));
        if (problem.status() == 401) {
            answer.header(HttpHeaders.WWW_AUTHENTICATE, "Bearer realm=\"benchtrail\"");
        }
        return answer.build();
    }

    /** The problem as JSON text, also for answers given before any endpoint is reached. */
    public static String json(Problem problem) {
        try {
            return DatabindCodec.mapper().writeValueAsString(problem.members());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Ends a request to the API that named no valid token. */
    public static void endNotSignedIn(RoutingContext request) {
        request.response()
                .setStatusCode(401)
                .putHeader(HttpHeaders.WWW_AUTHENTICATE, "Bearer realm=\"benchtrail\", error=\"invalid_token\"")
                .putHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE)
                .putHeader(HttpHeaders.CACHE_CONTROL, "no-store")
                .end(json(Problem.of(ProblemKind.NOT_SIGNED_IN, notSignedInDetail(request))));
    }

    private static String message(@Nullable Throwable e) {
        return e == null || e.getMessage() == null ? "" : e.getMessage();
    }
}

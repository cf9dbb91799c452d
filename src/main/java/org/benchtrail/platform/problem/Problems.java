package org.benchtrail.platform.problem;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.runtime.BlockingOperationControl;
import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.ForbiddenException;
import io.quarkus.security.UnauthorizedException;
import io.quarkus.security.identity.SecurityIdentity;
import io.vertx.core.json.jackson.DatabindCodec;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.persistence.OptimisticLockException;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.channels.ClosedChannelException;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.platform.Causes;
import org.benchtrail.platform.Forbidden;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.NewerRecord;
import org.benchtrail.platform.NoRoom;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.RecordBroken;
import org.benchtrail.platform.RefusedDoor;
import org.benchtrail.platform.RequestKind;
import org.benchtrail.platform.Stale;
import org.benchtrail.platform.TooMany;
import org.benchtrail.platform.VersionNeeded;
import org.benchtrail.platform.http.Methods;
import org.benchtrail.platform.outage.DatabaseFault;
import org.benchtrail.platform.outage.Outage;
import org.jboss.logging.Logger;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;
import org.jspecify.annotations.Nullable;

/** Every exception that leaves an endpoint becomes a problem: RFC 9457 JSON under /api, a page elsewhere. */
public class Problems {
    private static final Logger LOG = Logger.getLogger(Problems.class);

    private static final List<String> FORM_READERS = List.of(
            "org.jboss.resteasy.reactive.server.core.multipart.",
            "org.jboss.resteasy.reactive.common.providers.serialisers.MapAsFormUrlEncodedProvider");
    private static final int LONGEST_PATH = 100;

    /** Of a text that the database cannot hold, such as one with a NUL (PostgreSQL, appendix of error codes). */
    private static final String NO_SUCH_CHARACTER = "22021";
    /** Of our own: see seal_queue_waits. */
    private static final String LOG_IS_AHEAD = "BT001";

    @Inject
    Outage outage;

    @Inject
    SecurityIdentity identity;

    @Inject
    Event<RefusedDoor> refused;

    @Inject
    Clock clock;

    @Inject
    Methods methods;

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
        tellRefused(request);
        return answer(request, Problem.of(ProblemKind.FORBIDDEN, message(e)));
    }

    @ServerExceptionMapper
    public Response forbidden(ForbiddenException e, RoutingContext request) {
        tellRefused(request);
        return answer(request, Problem.of(ProblemKind.FORBIDDEN, "Your roles do not allow this."));
    }

    /** Who comes by a door that is not theirs is remembered; a failure to do so changes no answer. */
    private void tellRefused(RoutingContext request) {
        if (identity.isAnonymous()) {
            return;
        }
        String path = request.normalizedPath();
        try {
            refused.fire(new RefusedDoor(
                    identity.getPrincipal().getName(),
                    request.request().method() + " "
                            + (path.length() > LONGEST_PATH ? path.substring(0, LONGEST_PATH) : path)));
        } catch (RuntimeException notNoted) {
            LOG.warnf("a refused door was not noted: %s", notNoted.getMessage());
        }
    }

    @ServerExceptionMapper
    public Response stale(Stale e, RoutingContext request) {
        Problem problem = Problem.of(ProblemKind.STALE, message(e)).withCurrent(e.current());
        return answer(request, RequestKind.isApi(request) ? problem.withStatus(412) : problem);
    }

    @ServerExceptionMapper
    public Response versionNeeded(VersionNeeded e, RoutingContext request) {
        return answer(request, Problem.of(ProblemKind.VERSION_NEEDED, message(e)));
    }

    @ServerExceptionMapper
    public Response tooMany(TooMany e, RoutingContext request) {
        Response told = answer(request, Problem.of(ProblemKind.TOO_MANY, message(e)));
        return Response.fromResponse(told)
                .header(HttpHeaders.RETRY_AFTER, e.seconds())
                .build();
    }

    @ServerExceptionMapper
    public Response noRoom(NoRoom e, RoutingContext request) {
        return answer(request, Problem.of(ProblemKind.NO_ROOM, message(e)));
    }

    @ServerExceptionMapper
    public Response broken(RecordBroken e, RoutingContext request) {
        return answer(request, Problem.of(ProblemKind.RECORD_BROKEN, message(e)));
    }

    @ServerExceptionMapper
    public Response newer(NewerRecord e, RoutingContext request) {
        return answer(request, Problem.of(ProblemKind.NEWER_RELEASE, message(e)));
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
        return malformed(e, request);
    }

    /** Told with the place, also as a field. */
    private static Response malformed(JsonProcessingException e, RoutingContext request) {
        return answer(
                request, Problem.of(ProblemKind.MALFORMED, Faults.place(e)).withErrors(Faults.ofJson(e, "body")));
    }

    @ServerExceptionMapper
    public Response framework(WebApplicationException e, RoutingContext request) {
        if (e.getCause() instanceof JsonProcessingException broken) {
            return malformed(broken, request);
        }
        Set<String> known = methods.of(request.normalizedPath());
        // the framework says 404 where another class of endpoints has the beginning of the address
        boolean otherMethod =
                !known.isEmpty() && !known.contains(request.request().method().name());
        int status = otherMethod ? 405 : e.getResponse().getStatus();
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
        if (status == 404 && e.getCause() != null && request.request().query() != null) {
            // the framework says so of a parameter that does not fit its type
            return answer(request, Problem.of(ProblemKind.MALFORMED, "A parameter has a value that does not fit it."));
        }
        ProblemKind kind = ProblemKind.ofStatus(status);
        Response told = answer(request, Problem.of(kind, kind.title() + ".").withStatus(status));
        return status == 405 ? Response.fromResponse(told).allow(known).build() : told;
    }

    @ServerExceptionMapper
    public Response failed(Throwable e, RoutingContext request) {
        Optional<String> behind = behind(e);
        if (behind.isPresent()) {
            return answer(request, Problem.of(ProblemKind.RECORD_BROKEN, behind.get()));
        }
        Optional<DatabaseFault> away = DatabaseFault.of(e);
        if (away.isPresent()) {
            if (away.get() == DatabaseFault.AWAY) {
                outage.met(e);
            } else {
                outage.brokeAtCommit(e, request.normalizedPath());
            }
            return DatabaseAway.answer(request, away.get(), clock);
        }
        if (isBroughtByTheSender(e)) {
            return answer(request, Problem.of(ProblemKind.MALFORMED, ProblemKind.MALFORMED.title() + "."));
        }
        Problem problem = Problem.of(ProblemKind.FAILED, "Your request was not carried out.");
        // path only: a query may hold what somebody typed
        LOG.errorf(
                e, "reference %s: %s %s", problem.reference(), request.request().method(), request.normalizedPath());
        return answer(request, problem);
    }

    /** Why nothing is recorded at all; the database says so of whatever is to be sealed. */
    private static Optional<String> behind(Throwable failure) {
        for (Throwable one : Causes.of(failure)) {
            if (one instanceof SQLException sql && LOG_IS_AHEAD.equals(sql.getSQLState())) {
                return Optional.of(message(sql).lines().findFirst().orElse("").replaceFirst("^ERROR: ", ""));
            }
        }
        return Optional.empty();
    }

    /** What the framework throws at a header that it cannot read, a form that ends in the middle, a sender who has gone. */
    private static boolean isBroughtByTheSender(Throwable failure) {
        for (Throwable one : Causes.of(failure)) {
            String said = one.getMessage() == null ? "" : one.getMessage();
            if (one instanceof ClosedChannelException
                    || isOfTheFormReader(one)
                    || (one instanceof SQLException sql && NO_SUCH_CHARACTER.equals(sql.getSQLState()))
                    || (one instanceof IllegalArgumentException && said.startsWith("Failed to parse media type"))
                    || one.getClass().getName().startsWith("io.netty.handler.codec.")) {
                return true;
            }
        }
        return false;
    }

    /** Thrown by the framework while it took a form apart, before anything of ours was called. */
    private static boolean isOfTheFormReader(Throwable failure) {
        for (StackTraceElement frame : failure.getStackTrace()) {
            if (frame.getClassName().startsWith("org.benchtrail.")) {
                return false;
            }
            if (FORM_READERS.stream().anyMatch(frame.getClassName()::startsWith)) {
                return true;
            }
        }
        return false;
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
            // where the database may not be asked, the page is without what waits for the reader
            return BlockingOperationControl.isBlockingAllowed()
                    ? Html.status(problem.status(), Templates.problem(problem))
                    : Response.status(problem.status())
                            .entity(DatabaseAway.plain(problem))
                            .type("text/html;charset=UTF-8")
                            .build();
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

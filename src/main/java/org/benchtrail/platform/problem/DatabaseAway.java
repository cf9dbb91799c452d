package org.benchtrail.platform.problem;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.RequestKind;
import org.benchtrail.platform.outage.DatabaseFault;
import org.benchtrail.platform.outage.Outage;
import org.jboss.resteasy.reactive.server.core.CurrentRequestManager;
import org.jboss.resteasy.reactive.server.core.ResteasyReactiveRequestContext;
import org.jboss.resteasy.reactive.server.core.multipart.FormData;
import org.jboss.resteasy.reactive.server.multipart.FormValue;
import org.jspecify.annotations.Nullable;

/**
 * The answer while the database is away: 503, when to come back, and for a person a page that holds what they typed. It asks the
 * database nothing.
 */
final class DatabaseAway {
    /** Whoever typed one of these types it again: a secret is put on no page. */
    private static final List<String> SECRETS = List.of("password", "present", "code");

    private DatabaseAway() {}

    /** A page of its own frame: the usual one asks the database what waits for the reader. */
    @CheckedTemplate(basePath = "")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance away(
                Problem problem,
                String kept,
                boolean again,
                int seconds,
                boolean sendable,
                String path,
                List<TypedField> fields);
    }

    static Response answer(RoutingContext request, DatabaseFault fault, Clock clock) {
        Problem problem = fault == DatabaseFault.AWAY
                ? Problem.of(
                        ProblemKind.DATABASE_AWAY,
                        "The database does not answer at the moment, so nothing was recorded.")
                : Problem.of(ProblemKind.MAYBE_RECORDED, uncertain(request, clock.instant()));
        Response answer = RequestKind.isApi(request) ? Problems.answer(request, problem) : page(request, problem);
        return Response.fromResponse(answer)
                .header(HttpHeaders.RETRY_AFTER, Outage.RETRY_AFTER_S)
                .build();
    }

    /** A page of the same frame for what went wrong before anybody was looked up. */
    static String plain(Problem problem) {
        return Templates.away(
                        problem,
                        "Everything that was recorded before; this request added nothing.",
                        false,
                        Outage.RETRY_AFTER_S,
                        false,
                        "/",
                        List.of())
                .render();
    }

    private static String uncertain(RoutingContext request, Instant now) {
        String at = now.truncatedTo(ChronoUnit.SECONDS).toString();
        String where = ticket(request.normalizedPath());
        return "The connection to the database broke while this was being made lasting: it may or may not have been recorded. "
                + (where.isEmpty()
                        ? "If it was, it stands there with a time of about " + at + "."
                        : "If it was, the trail of ticket " + where + " ends with an entry of yours of about " + at
                                + ".");
    }

    /** The number of the ticket that an address is about; empty if it is about none. */
    private static String ticket(String path) {
        String[] parts = path.split("/", -1);
        for (int i = 1; i < parts.length; i++) {
            if (parts[i - 1].equals("tickets")) {
                try {
                    return TicketNumber.parse(parts[i]).toString();
                } catch (RuntimeException noNumber) {
                    return "";
                }
            }
        }
        return "";
    }

    private static Response page(RoutingContext request, Problem problem) {
        boolean get = request.request().method().name().equals("GET");
        Map<String, List<String>> typed = get ? Map.of() : typed();
        boolean secret = typed.keySet().removeIf(name -> SECRETS.stream().anyMatch(name::contains));
        List<TypedField> fields = TypedField.of(typed);
        boolean sendable = !fields.isEmpty() && !secret;
        String token = token(request);
        if (sendable && !token.isEmpty()) {
            fields.add(new TypedField("csrf-token", token));
        }
        String kept = get
                ? "Everything that was recorded before."
                : sendable
                        ? "What you typed is kept on this page, and only there: leave it open, and send it again from here."
                        : "Everything that was recorded before; a password or a file has to be given again.";
        return Html.status(
                problem.status(),
                Templates.away(
                        problem, kept, get, Outage.RETRY_AFTER_S, sendable, RequestKind.localAddress(request), fields));
    }

    /** The fields of the form, without its files. */
    private static Map<String, List<String>> typed() {
        Map<String, List<String>> typed = new LinkedHashMap<>();
        @Nullable ResteasyReactiveRequestContext context = CurrentRequestManager.get();
        @Nullable FormData form = context == null ? null : context.getFormData();
        if (form != null) {
            for (String name : form) {
                List<String> values = form.get(name).stream()
                        .filter(value -> !value.isFileItem())
                        .map(FormValue::getValue)
                        .toList();
                if (!values.isEmpty()) {
                    typed.put(name, values);
                }
            }
        }
        return typed;
    }

    private static String token(RoutingContext request) {
        var cookie = request.request().getCookie("csrf-token");
        return cookie == null ? "" : cookie.getValue();
    }
}

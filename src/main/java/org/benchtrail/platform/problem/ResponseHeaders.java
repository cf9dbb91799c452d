package org.benchtrail.platform.problem;

import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.benchtrail.platform.RequestKind;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/**
 * What every answer of an endpoint carries: no copy in any cache, and a body that explains a refusal which the framework
 * gave without words (its CSRF filter answers a bare 400).
 */
public class ResponseHeaders {
    @ServerResponseFilter
    public void dress(ContainerResponseContext answer, RoutingContext request) {
        answer.getHeaders().putIfAbsent(HttpHeaders.CACHE_CONTROL, java.util.List.of("no-store"));
        if (RequestKind.isApi(request)) {
            // opened in a browser it is a file, and no page
            answer.getHeaders()
                    .putIfAbsent(
                            HttpHeaders.CONTENT_DISPOSITION, java.util.List.of("attachment; filename=\"answer.json\""));
        }
        if (RequestKind.isSecure(request)) {
            // two years; only over TLS does a browser believe it (RFC 6797)
            answer.getHeaders().putSingle("Strict-Transport-Security", "max-age=63072000; includeSubDomains");
        }
        if (answer.getStatus() >= 400
                && !answer.hasEntity()
                && !request.request().method().name().equals("HEAD")) {
            explain(answer, request);
        }
    }

    private static void explain(ContainerResponseContext answer, RoutingContext request) {
        boolean formRefused = answer.getStatus() == 400 && !RequestKind.isApi(request);
        ProblemKind kind = formRefused ? ProblemKind.FORM_REFUSED : ProblemKind.ofStatus(answer.getStatus());
        String detail = formRefused
                ? "The page this form came from is too old, or the form did not come from this site. Nothing was changed."
                : kind.title() + ".";
        Response told = Problems.answer(request, Problem.of(kind, detail).withStatus(answer.getStatus()));
        MediaType type = told.getMediaType();
        answer.setEntity(told.getEntity(), null, type);
    }
}

package org.benchtrail.platform.problem;

import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.Set;
import org.benchtrail.platform.RequestKind;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jspecify.annotations.Nullable;

/**
 * Closes the gap that the CSRF filter leaves: it lets every body pass that is not a form, which the API needs (its requests
 * carry a token and no cookie) and a page must not have. So a page takes forms only, and the API takes none.
 */
public class FormsOnly {
    private static final Set<String> SAFE = Set.of("GET", "HEAD", "OPTIONS");

    /** Before the CSRF filter, which has the default priority of 5000. */
    private static final int BEFORE_CSRF_FILTER = 4000;

    @ConfigProperty(name = "quarkus.rest-csrf.token-header-name", defaultValue = "X-CSRF-TOKEN")
    String tokenHeader;

    @ServerRequestFilter(priority = BEFORE_CSRF_FILTER)
    public @Nullable Response check(ContainerRequestContext request, RoutingContext routing) {
        if (SAFE.contains(request.getMethod())) {
            return null;
        }
        boolean form = isForm(request.getMediaType());
        if (RequestKind.isApi(routing)) {
            return form
                    ? Problems.answer(
                            routing,
                            Problem.of(
                                    ProblemKind.MEDIA,
                                    "The API takes JSON, and a file as the body itself; it takes no forms."))
                    : null;
        }
        boolean tokenInHeader = request.getHeaderString(tokenHeader) != null;
        return form || tokenInHeader
                ? null
                : Problems.answer(
                        routing, Problem.of(ProblemKind.FORM_REFUSED, "Only a form of this site is taken here."));
    }

    private static boolean isForm(@Nullable MediaType type) {
        return type != null
                && (same(type, MediaType.APPLICATION_FORM_URLENCODED_TYPE)
                        || same(type, MediaType.MULTIPART_FORM_DATA_TYPE));
    }

    private static boolean same(MediaType one, MediaType other) {
        return one.getType().equalsIgnoreCase(other.getType())
                && one.getSubtype().equalsIgnoreCase(other.getSubtype());
    }
}

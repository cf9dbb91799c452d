package org.benchtrail.description;

import jakarta.ws.rs.HeaderParam;
import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.platform.description.AnswersWith;
import org.benchtrail.platform.problem.Problem;
import org.benchtrail.platform.problem.ProblemKind;
import org.benchtrail.ticket.api.MissingJson;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.Components;
import org.eclipse.microprofile.openapi.models.PathItem;
import org.eclipse.microprofile.openapi.models.headers.Header;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.media.Schema.SchemaType;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;
import org.eclipse.microprofile.openapi.models.responses.APIResponses;
import org.jspecify.annotations.Nullable;

/** All that an operation answers: what its method says, and every way in which a request of its kind can go wrong. */
final class Responses {
    private static final String PROBLEM = "Problem";

    private final Components components;
    private final RecordSchemas schemas;

    Responses(Components components, RecordSchemas schemas) {
        this.components = components;
        this.schemas = schemas;
        components.addSchema(PROBLEM, problem());
    }

    APIResponses of(PathItem.HttpMethod verb, String address, Method method, boolean hasBody) {
        APIResponses all = OASFactory.createAPIResponses();
        boolean isRead = verb == PathItem.HttpMethod.GET;
        @Nullable AnswersWith says = method.getAnnotation(AnswersWith.class);
        addGood(all, method, says, isRead);
        if (reads(method, "Prefer")) {
            all.addAPIResponse("204", minimal());
        }
        if (isRead) {
            all.addAPIResponse("304", OASFactory.createAPIResponse().description("It is as If-None-Match says."));
        }
        for (int status : wrong(address, method, says, hasBody, isRead)) {
            all.addAPIResponse("" + status, reference(status));
        }
        return all;
    }

    private void addGood(APIResponses all, Method method, @Nullable AnswersWith says, boolean isRead) {
        APIResponse good = OASFactory.createAPIResponse();
        boolean isFile = says != null && says.value() == byte[].class;
        if (says == null && method.getReturnType() == void.class) {
            all.addAPIResponse("204", good.description("It is done."));
            return;
        }
        int status = says == null ? 200 : says.status();
        good.description(
                status == 201 ? "It is made." : status == 202 ? "It waits for another supervisor." : "As asked.");
        Schema schema = isFile
                ? OASFactory.createSchema().addType(SchemaType.STRING).format("binary")
                : says == null
                        ? schemas.of(method.getGenericReturnType())
                        : says.list() ? schemas.list(says.value()) : schemas.of(says.value());
        good.content(OASFactory.createContent()
                .addMediaType(
                        isFile ? "*/*" : "application/json",
                        OASFactory.createMediaType().schema(schema)));
        if (status > 200) {
            good.addHeader("Location", header("Where it is."));
        }
        if (isRead || (says != null && says.versioned())) {
            good.addHeader("ETag", header("Serves as If-None-Match, and as If-Match where it begins with a version."));
        }
        if (says != null && says.paged()) {
            good.addHeader("Link", header("The next page, with rel=next, if there is one."));
        }
        all.addAPIResponse("" + status, good);
        if (isFile) {
            all.addAPIResponse(
                    "206",
                    OASFactory.createAPIResponse()
                            .description("The part that Range asks for.")
                            .addHeader("Content-Range", header("Which part of how many bytes."))
                            .content(good.getContent()));
        }
    }

    private static APIResponse minimal() {
        return OASFactory.createAPIResponse()
                .description("It is done; Prefer asked for no more than the version.")
                .addHeader("ETag", header("The version that it has now, for the next If-Match."));
    }

    private static Set<Integer> wrong(
            String address, Method method, @Nullable AnswersWith says, boolean hasBody, boolean isRead) {
        Set<Integer> statuses = new TreeSet<>(Set.of(400, 401, 403, 406, 422, 429, 500, 503));
        boolean builds = reads(method, "If-Match");
        if (address.contains("{") || method.getDeclaringClass().getSimpleName().equals("BenchApi")) {
            statuses.add(404);
        }
        if (!isRead || address.startsWith("/api/tickets/{")) {
            statuses.add(409);
        }
        if (builds) {
            statuses.addAll(Set.of(412, 428));
        }
        if (hasBody) {
            statuses.addAll(Set.of(413, 415));
        }
        if (says != null && says.value() == byte[].class) {
            statuses.add(416);
        }
        if (address.endsWith("/attachments")) {
            statuses.add(507);
        }
        return statuses;
    }

    private static boolean reads(Method method, String header) {
        return Arrays.stream(method.getParameters())
                .anyMatch(p -> p.isAnnotationPresent(HeaderParam.class)
                        && p.getAnnotation(HeaderParam.class).value().equals(header));
    }

    private APIResponse reference(int status) {
        String name = PROBLEM + status;
        if (components.getResponses() == null || !components.getResponses().containsKey(name)) {
            components.addResponse(name, made(status));
        }
        return OASFactory.createAPIResponse().ref("#/components/responses/" + name);
    }

    private static APIResponse made(int status) {
        List<ProblemKind> kinds = kinds(status);
        Schema types = OASFactory.createSchema().addType(SchemaType.STRING);
        kinds.forEach(kind -> types.addEnumeration(kind.type()));
        Schema schema = OASFactory.createSchema()
                .addAllOf(OASFactory.createSchema().ref(PROBLEM))
                .addProperty("type", types);
        APIResponse response = OASFactory.createAPIResponse()
                .description(kinds.stream().map(ProblemKind::title).collect(Collectors.joining("; ")) + ".")
                .content(OASFactory.createContent()
                        .addMediaType(
                                Problem.MEDIA_TYPE, OASFactory.createMediaType().schema(schema)));
        return switch (status) {
            case 401 -> response.addHeader("WWW-Authenticate", header("How to say who asks."));
            case 429, 503 -> response.addHeader("Retry-After", header("After how many seconds to try again."));
            default -> response;
        };
    }

    /** What can be told with a status; beside the kinds that have it, those that the API answers in another way than pages. */
    private static List<ProblemKind> kinds(int status) {
        return switch (status) {
            case 406 -> List.of(ProblemKind.REFUSED);
            case 412 -> List.of(ProblemKind.STALE);
            default ->
                Arrays.stream(ProblemKind.values())
                        .filter(kind -> kind.status() == status
                                && kind != ProblemKind.STALE
                                && kind != ProblemKind.FORM_REFUSED)
                        .toList();
        };
    }

    private Schema problem() {
        Schema text = OASFactory.createSchema().addType(SchemaType.STRING);
        return OASFactory.createSchema()
                .addType(SchemaType.OBJECT)
                .description("What went wrong (RFC 9457): type tells one kind from another, next what to do.")
                .additionalPropertiesBoolean(false)
                .required(List.of("type", "title", "status", "detail", "next", "reference"))
                .addProperty("type", text)
                .addProperty("title", text)
                .addProperty("status", OASFactory.createSchema().addType(SchemaType.INTEGER))
                .addProperty("detail", text)
                .addProperty("next", text)
                .addProperty("reference", text)
                .addProperty("errors", schemas.list(Invalid.Problem.class))
                .addProperty("current", OASFactory.createSchema())
                .addProperty("missing", schemas.list(MissingJson.class))
                .addProperty(
                        "forecast",
                        OASFactory.createSchema()
                                .addType(SchemaType.STRING)
                                .description("Where the forecast is committed that comes first."));
    }

    private static Header header(String says) {
        return OASFactory.createHeader()
                .description(says)
                .schema(OASFactory.createSchema().addType(SchemaType.STRING));
    }
}

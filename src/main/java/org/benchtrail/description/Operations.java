package org.benchtrail.description;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.databind.JsonNode;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.HeaderParam;
import java.lang.reflect.Method;
import java.lang.reflect.Parameter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.platform.description.AnswersWith;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.Components;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.media.Schema.SchemaType;
import org.eclipse.microprofile.openapi.models.parameters.Parameter.In;
import org.eclipse.microprofile.openapi.models.parameters.RequestBody;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** Makes an operation of the description from the method behind it. */
final class Operations {
    private static final String JSON = "application/json";
    private static final int LONGEST_PARAMETER = 16_000;

    /** How what stands in an address is written. */
    private static final Map<String, String> WRITTEN =
            Map.of("number", "^[0-9]{1,9}-[0-9]$", "sha256", "^[0-9a-f]{64}$");

    private final RecordSchemas answered;
    private final RecordSchemas read;
    private final Responses responses;

    Operations(Components components) {
        answered = new RecordSchemas(components, false);
        read = new RecordSchemas(components, true);
        responses = new Responses(components, answered);
    }

    void complete(PathItem.HttpMethod verb, String address, Operation operation, Method method) {
        String owner = method.getDeclaringClass().getSimpleName().replaceFirst("Api$", "");
        String name = method.getName();
        operation.setOperationId(owner.substring(0, 1).toLowerCase(java.util.Locale.ROOT)
                + owner.substring(1)
                + name.substring(0, 1).toUpperCase(java.util.Locale.ROOT)
                + name.substring(1));
        operation.setSecurity(null);
        boolean isRead = verb == PathItem.HttpMethod.GET;
        @Nullable AnswersWith says = method.getAnnotation(AnswersWith.class);
        operation.setParameters(parameters(method, says, isRead));
        if (operation.getRequestBody() == null || operation.getRequestBody().getRef() == null) {
            operation.setRequestBody(body(method, says).orElse(null));
        }
        operation.setResponses(responses.of(verb, address, method, operation.getRequestBody() != null));
    }

    private List<org.eclipse.microprofile.openapi.models.parameters.Parameter> parameters(
            Method method, @Nullable AnswersWith says, boolean isRead) {
        List<org.eclipse.microprofile.openapi.models.parameters.Parameter> all = new ArrayList<>();
        for (Parameter one : method.getParameters()) {
            RestQuery query = one.getAnnotation(RestQuery.class);
            HeaderParam header = one.getAnnotation(HeaderParam.class);
            if (one.isAnnotationPresent(RestPath.class)) {
                Schema schema = written(one);
                all.add(parameter(one.getName(), In.PATH, schema).required(true));
            } else if (query != null) {
                all.add(parameter(query.value().isEmpty() ? one.getName() : query.value(), In.QUERY, written(one)));
            } else if (header != null && header.value().equals("If-Match")) {
                all.add(header(
                                "If-Match",
                                "The version that this builds on: the ETag of what was read, such as \"27\".")
                        .required(true));
            } else if (header != null && header.value().equals("Prefer")) {
                all.add(header("Prefer", "With return=minimal (RFC 7240) what is done is answered without the sheet."));
            }
        }
        if (says != null && says.once()) {
            all.add(header("Idempotency-Key", "A new value for each request; the same sent again is done once."));
        }
        if (isRead) {
            all.add(header("If-None-Match", "The ETag of what is known; it is not sent again unless it has changed."));
        }
        if (says != null && says.value() == byte[].class) {
            all.add(header("Range", "A part of the bytes, such as bytes=0-99."));
            all.add(header("If-Range", "The part only if the file still has this tag, else the whole."));
        }
        return all;
    }

    private static org.eclipse.microprofile.openapi.models.parameters.Parameter parameter(
            String name, In in, Schema schema) {
        return OASFactory.createParameter().name(name).in(in).schema(schema);
    }

    private static org.eclipse.microprofile.openapi.models.parameters.Parameter header(String name, String says) {
        Schema text = OASFactory.createSchema().addType(SchemaType.STRING).maxLength(100);
        return parameter(name, In.HEADER, text).description(says);
    }

    private Schema written(Parameter one) {
        Schema schema = answered.of(one.getType());
        if (one.getType() == String.class) {
            schema.maxLength(LONGEST_PARAMETER).pattern(WRITTEN.get(one.getName()));
        }
        DefaultValue otherwise = one.getAnnotation(DefaultValue.class);
        if (otherwise != null) {
            String text = otherwise.value();
            schema.setDefaultValue(
                    one.getType() == boolean.class
                            ? (Object) Boolean.valueOf(text)
                            : one.getType() == String.class || one.getType().isEnum() ? text : Long.valueOf(text));
        }
        return schema;
    }

    private Optional<RequestBody> body(Method method, @Nullable AnswersWith says) {
        return Arrays.stream(method.getParameters())
                .filter(one -> one.getAnnotation(RestPath.class) == null
                        && one.getAnnotation(RestQuery.class) == null
                        && one.getAnnotation(HeaderParam.class) == null)
                .map(Parameter::getType)
                .filter(type -> type.isRecord() || type == JsonNode.class || type == byte[].class)
                .findFirst()
                .map(type -> type == byte[].class ? bytes() : json(bodySchema(type, says)));
    }

    private Schema bodySchema(Class<?> type, @Nullable AnswersWith says) {
        if (type != JsonNode.class) {
            return read.of(type);
        }
        JsonSubTypes kinds = says == null ? null : says.body().getAnnotation(JsonSubTypes.class);
        Schema object = OASFactory.createSchema().addType(SchemaType.OBJECT);
        if (kinds == null) {
            return object;
        }
        Schema oneOf = OASFactory.createSchema();
        for (JsonSubTypes.Type kind : kinds.value()) {
            oneOf.addOneOf(read.kind(kind.value(), kind.name()));
        }
        return oneOf;
    }

    static RequestBody json(Schema schema) {
        return OASFactory.createRequestBody()
                .required(true)
                .content(OASFactory.createContent()
                        .addMediaType(JSON, OASFactory.createMediaType().schema(schema)));
    }

    private static RequestBody bytes() {
        return OASFactory.createRequestBody()
                .required(true)
                .description("The bytes themselves.")
                .content(OASFactory.createContent()
                        .addMediaType(
                                "application/octet-stream",
                                OASFactory.createMediaType()
                                        .schema(OASFactory.createSchema()
                                                .addType(SchemaType.STRING)
                                                .format("binary"))));
    }
}

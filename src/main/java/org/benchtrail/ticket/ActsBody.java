package org.benchtrail.ticket;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.exc.InvalidTypeIdException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.trail.FactJson;
import org.jspecify.annotations.Nullable;

/** Reads the body of a request that acts: one fact, or an array of facts. Each problem names its field. */
final class ActsBody {
    /** More in one request are refused; a whole ticket takes some fifty. */
    static final int MOST = 500;

    private static final ObjectMapper MAPPER = FactJson.forRequests();

    private ActsBody() {}

    /** @throws Invalid with fields such as {@code note}, in an array {@code [2].note} */
    static List<Act> read(@Nullable JsonNode body) {
        if (body == null || !body.isContainerNode() || body.isEmpty() || (body.isArray() && body.size() > MOST)) {
            throw new Invalid("body", "Send one fact with its kind, or an array of 1 to " + MOST + " facts.");
        }
        if (!body.isArray()) {
            return List.of(act(fact(body, "")));
        }
        List<Act> acts = new ArrayList<>();
        for (int i = 0; i < body.size(); i++) {
            acts.add(act(fact(body.get(i), "[" + i + "].")));
        }
        return acts;
    }

    private static Act act(Fact fact) {
        return sheet -> fact;
    }

    private static Fact fact(JsonNode node, String prefix) {
        if (!node.isObject()) {
            throw new Invalid(prefix + "kind", "A fact is a JSON object with its kind.");
        }
        try {
            return posted(MAPPER.treeToValue(node, Fact.class), prefix);
        } catch (JsonProcessingException e) {
            throw new Invalid(problems(e).stream()
                    .map(p -> new Problem(prefix + p.field(), p.sentence()))
                    .toList());
        }
    }

    /** @throws Invalid if only the server itself records such a fact, or something it says */
    private static Fact posted(Fact fact, String prefix) {
        FactKinds.serverOnly(fact).forEach((field, sentence) -> {
            throw new Invalid(prefix + field, sentence);
        });
        return fact;
    }

    private static List<Problem> problems(JsonProcessingException e) {
        String path = e instanceof JsonMappingException mapping ? path(mapping) : "";
        for (Throwable cause = e; cause != null; cause = cause.getCause()) {
            if (cause instanceof Invalid invalid) {
                String outer = path.isEmpty() ? "" : path + ".";
                return invalid.problems().stream()
                        .map(p -> new Problem(outer + p.field(), p.sentence()))
                        .toList();
            }
        }
        if (e instanceof InvalidTypeIdException unknown) {
            return List.of(new Problem(path.isEmpty() ? "kind" : path + ".kind", kind(unknown.getTypeId())));
        }
        return List.of(new Problem(path.isEmpty() ? "body" : path, sentence(e)));
    }

    private static String kind(@Nullable String given) {
        return given == null
                ? "Say which kind of fact this is; /q/openapi lists the kinds."
                : "There is no kind of fact '" + given + "'; /q/openapi lists the kinds.";
    }

    private static String sentence(JsonProcessingException e) {
        if (e instanceof UnrecognizedPropertyException unknown) {
            String known = unknown.getKnownPropertyIds().stream()
                    .map(Object::toString)
                    .sorted()
                    .collect(Collectors.joining(", "));
            return "A fact of this kind has no such field; it has: " + known + ".";
        }
        return e instanceof MismatchedInputException mismatch
                ? wanted(mismatch.getTargetType())
                : "This value does not fit its field.";
    }

    private static String wanted(@Nullable Class<?> type) {
        if (type == null) {
            return "This value does not fit its field.";
        }
        if (type.isEnum()) {
            return Arrays.stream(type.getEnumConstants())
                    .map(Objects::toString)
                    .collect(Collectors.joining(", ", "Choose one of: ", "."));
        }
        return switch (type.getSimpleName()) {
            case "int", "Integer", "long", "Long" -> "Give a whole number.";
            case "boolean", "Boolean" -> "Give true or false.";
            case "String" -> "Give a text in quotes.";
            case "Instant" -> "Give a moment such as 2031-03-03T08:00:00Z.";
            case "List", "Set" -> "Give a list in brackets.";
            case "Map" -> "Give an object in braces.";
            default -> "This value does not fit its field.";
        };
    }

    private static String path(JsonMappingException e) {
        return e.getPath().stream()
                .map(step -> step.getFieldName() == null ? "[" + step.getIndex() + "]" : "." + step.getFieldName())
                .collect(Collectors.joining())
                .replaceFirst("^\\.", "");
    }
}

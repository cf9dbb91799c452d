package org.benchtrail.demo;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.exc.InvalidFormatException;
import com.fasterxml.jackson.databind.exc.InvalidTypeIdException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Role;
import org.benchtrail.platform.problem.Faults;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.trail.FactJson;
import org.jspecify.annotations.Nullable;

/** Reads a scenario, and refuses a malformed one with line and field. */
final class ScenarioFile {
    private final String fileName;
    private final YamlPlaces places;
    private final ObjectMapper mapper = strict(new ObjectMapper().findAndRegisterModules());

    private ScenarioFile(String fileName) {
        this.fileName = fileName;
        this.places = new YamlPlaces(fileName);
    }

    /** The file is refused; the message names file, line and field, and what to do. */
    static final class Malformed extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Malformed(String fileName, int line, String field, String sentence) {
            super(fileName + ", line " + line + (field.isEmpty() ? "" : ", field '" + field + "'") + ": " + sentence);
        }
    }

    /** A mapper that reads facts and reports, and drops nothing unseen; a number may be text, as all are in a file. */
    @SuppressWarnings(
            "deprecation") // the mapper that it is a copy of is made by the framework, not by a builder of ours
    static ObjectMapper strict(ObjectMapper mapper) {
        return FactJson.teach(mapper)
                .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
                .enable(MapperFeature.ALLOW_COERCION_OF_SCALARS);
    }

    /** What is wrong in a fact or report that could not be read, as a person would say it. */
    static Invalid problem(JsonProcessingException failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof Invalid invalid) {
                return invalid;
            }
        }
        if (failure instanceof InvalidTypeIdException kind) {
            return new Invalid("kind", "There is no kind of act '" + kind.getTypeId() + "'.");
        }
        if (failure instanceof UnrecognizedPropertyException unknown) {
            return new Invalid(
                    Faults.path(unknown),
                    "This field is not known here. Known are: " + new TreeSet<>(unknown.getKnownPropertyIds()) + ".");
        }
        if (failure instanceof InvalidFormatException format) {
            return new Invalid(
                    Faults.path(format), "'" + format.getValue() + "' cannot stand here" + choices(format) + ".");
        }
        return failure instanceof JsonMappingException mapping
                ? new Invalid(Faults.path(mapping), "This cannot be read: " + failure.getOriginalMessage())
                : new Invalid("", failure.getOriginalMessage());
    }

    private static String choices(InvalidFormatException format) {
        Class<?> wanted = format.getTargetType();
        return wanted != null && wanted.isEnum() ? "; choose from " + Arrays.toString(wanted.getEnumConstants()) : "";
    }

    static Scenario read(String fileName, String yaml) {
        return new ScenarioFile(fileName).scenario(yaml);
    }

    private Scenario scenario(String yaml) {
        ObjectNode file = object(places.read(yaml), new Scenario.FilePlace(1, Map.of()), "");
        only(file, Set.of("name", "accounts", "tickets"));
        String name = text(file, "name");
        List<Scenario.Person> people =
                items(file, "accounts").stream().map(this::person).toList();
        List<Scenario.Job> jobs = items(file, "tickets").stream().map(this::job).toList();
        return new Scenario(name, people, jobs);
    }

    private Scenario.Person person(ObjectNode node) {
        only(node, Set.of("login", "name", "roles", "mentor"));
        Set<Role> roles = new TreeSet<>();
        for (JsonNode role : array(node, "roles")) {
            try {
                roles.add(Role.valueOf(role.asText()));
            } catch (IllegalArgumentException e) {
                throw malformed(
                        node,
                        "roles",
                        "There is no role '" + role.asText() + "'; choose from " + Arrays.toString(Role.values())
                                + ".");
            }
        }
        return new Scenario.Person(
                text(node, "login"),
                text(node, "name"),
                roles,
                node.path("mentor").asText(""),
                place(node));
    }

    private Scenario.Job job(ObjectNode node) {
        only(node, Set.of("by", "report", "acts"));
        String by = text(node, "by");
        ObjectNode report = object(required(node, "report"), place(node), "report");
        List<Scenario.Deed> deeds = items(node, "acts").stream().map(this::deed).toList();
        try {
            return new Scenario.Job(by, mapper.treeToValue(report, NewTicket.class), deeds, place(node), place(report));
        } catch (JsonProcessingException e) {
            Invalid.Problem problem = problem(e).problems().get(0);
            throw malformed(report, problem.field(), problem.sentence());
        }
    }

    private Scenario.Deed deed(ObjectNode node) {
        if (!node.has("kind")) {
            throw malformed(node, "kind", "An act needs its kind, such as symptom-recorded.");
        }
        ObjectNode fact = node.deepCopy();
        fact.remove(List.of("by", "as"));
        return new Scenario.Deed(text(node, "by"), node.has("as") ? text(node, "as") : null, fact, place(node));
    }

    private void only(ObjectNode node, Set<String> known) {
        node.fieldNames().forEachRemaining(name -> {
            if (!known.contains(name)) {
                throw malformed(node, name, "This field is not known here. Known are: " + new TreeSet<>(known) + ".");
            }
        });
    }

    private String text(ObjectNode node, String field) {
        JsonNode value = required(node, field);
        if (!value.isTextual() || value.asText().isBlank()) {
            throw malformed(node, field, "This has to be a text.");
        }
        return value.asText();
    }

    private JsonNode required(ObjectNode node, String field) {
        JsonNode value = node.get(field);
        if (value == null) {
            throw malformed(node, field, "This field is missing.");
        }
        return value;
    }

    /** The items of a list, each of which has fields; none if the list is not there. */
    private List<ObjectNode> items(ObjectNode node, String field) {
        ArrayNode array = array(node, field);
        List<ObjectNode> items = new ArrayList<>();
        for (JsonNode item : array) {
            items.add(object(item, places.of(array, place(node)), field));
        }
        return items;
    }

    private ArrayNode array(ObjectNode node, String field) {
        @Nullable JsonNode value = node.get(field);
        if (value == null) {
            return JsonNodeFactory.instance.arrayNode();
        }
        if (value instanceof ArrayNode array) {
            return array;
        }
        throw malformed(node, field, "This has to be a list.");
    }

    /** @param around where the node stands, if it turns out to have no fields */
    private ObjectNode object(JsonNode node, Scenario.FilePlace around, String field) {
        if (node instanceof ObjectNode object) {
            return object;
        }
        throw new Malformed(fileName, around.line(field), field, "Fields are expected here.");
    }

    private Scenario.FilePlace place(ObjectNode node) {
        return places.of(node, new Scenario.FilePlace(1, Map.of()));
    }

    private Malformed malformed(ObjectNode node, String field, String sentence) {
        return new Malformed(fileName, place(node).line(field), field, sentence);
    }
}

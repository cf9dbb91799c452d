package org.benchtrail.demo;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.benchtrail.core.method.Role;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.trail.FactJson;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.nodes.Tag;

/** Reads a scenario, and refuses a malformed one with line and field. */
final class ScenarioFile {
    private final String fileName;
    private final Map<JsonNode, Integer> lines = new java.util.IdentityHashMap<>();
    private final ObjectMapper mapper = FactJson.teach(new ObjectMapper().findAndRegisterModules());

    private ScenarioFile(String fileName) {
        this.fileName = fileName;
    }

    /** The file is refused; the message names file, line and field, and what to do. */
    static final class Malformed extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Malformed(String fileName, int line, String field, String sentence) {
            super(fileName + ", line " + line + (field.isEmpty() ? "" : ", field '" + field + "'") + ": " + sentence);
        }
    }

    static Scenario read(String fileName, String yaml) {
        return new ScenarioFile(fileName).scenario(yaml);
    }

    private Scenario scenario(String yaml) {
        JsonNode root = tree(yaml);
        ObjectNode file = object(root, "");
        only(file, Set.of("name", "accounts", "tickets"));
        List<Scenario.Person> people = new ArrayList<>();
        array(file, "accounts").forEach(n -> people.add(person(object(n, "accounts"))));
        List<Scenario.Job> jobs = new ArrayList<>();
        array(file, "tickets").forEach(n -> jobs.add(job(object(n, "tickets"))));
        return new Scenario(text(file, "name"), people, jobs);
    }

    private Scenario.Person person(ObjectNode node) {
        only(node, Set.of("login", "name", "roles"));
        Set<Role> roles = new TreeSet<>();
        for (JsonNode role : array(node, "roles")) {
            try {
                roles.add(Role.valueOf(role.asText()));
            } catch (IllegalArgumentException e) {
                throw malformed(role, "roles", "There is no role '" + role.asText() + "'.");
            }
        }
        return new Scenario.Person(text(node, "login"), text(node, "name"), roles);
    }

    private Scenario.Job job(ObjectNode node) {
        only(node, Set.of("by", "report", "acts"));
        ObjectNode report = object(required(node, "report"), "report");
        List<Scenario.Deed> deeds = new ArrayList<>();
        array(node, "acts").forEach(n -> deeds.add(deed(object(n, "acts"))));
        try {
            return new Scenario.Job(text(node, "by"), mapper.treeToValue(report, NewTicket.class), deeds);
        } catch (com.fasterxml.jackson.core.JsonProcessingException e) {
            throw malformed(report, "report", e.getOriginalMessage());
        }
    }

    private Scenario.Deed deed(ObjectNode node) {
        ObjectNode fact = node.deepCopy();
        fact.remove(List.of("by", "as"));
        if (!fact.has("kind")) {
            throw malformed(node, "kind", "An act needs its kind, such as symptom-recorded.");
        }
        JsonNode as = node.get("as");
        return new Scenario.Deed(text(node, "by"), as == null ? null : as.asText(), fact, line(node));
    }

    private JsonNode tree(String yaml) {
        try {
            Node root = new Yaml(new SafeConstructor(new LoaderOptions())).compose(new StringReader(yaml));
            if (root == null) {
                throw new Malformed(fileName, 1, "", "The file is empty.");
            }
            return convert(root);
        } catch (MarkedYAMLException e) {
            int line = e.getProblemMark() == null ? 1 : e.getProblemMark().getLine() + 1;
            throw new Malformed(fileName, line, "", "This is no YAML: " + e.getProblem() + ".");
        }
    }

    private JsonNode convert(Node node) {
        JsonNode converted;
        if (node instanceof MappingNode mapping) {
            converted = mapping(mapping);
        } else if (node instanceof SequenceNode sequence) {
            ArrayNode array = JsonNodeFactory.instance.arrayNode();
            sequence.getValue().forEach(item -> array.add(convert(item)));
            converted = array;
        } else {
            converted = scalar((ScalarNode) node);
        }
        lines.putIfAbsent(converted, node.getStartMark().getLine() + 1);
        return converted;
    }

    private ObjectNode mapping(MappingNode mapping) {
        ObjectNode object = JsonNodeFactory.instance.objectNode();
        Map<String, Integer> seen = new HashMap<>();
        mapping.getValue().forEach(entry -> {
            String key = ((ScalarNode) entry.getKeyNode()).getValue();
            int line = entry.getKeyNode().getStartMark().getLine() + 1;
            if (seen.put(key, line) != null) {
                throw new Malformed(fileName, line, key, "This field is here twice.");
            }
            object.set(key, convert(entry.getValueNode()));
        });
        return object;
    }

    /**
     * Only {@code true} and {@code false} are truth values, as in YAML 1.2: {@code NO} is an answer. Numbers stay text: measured
     * values are decimal strings.
     */
    private static JsonNode scalar(ScalarNode node) {
        JsonNodeFactory json = JsonNodeFactory.instance;
        if (node.getValue().equals("true") || node.getValue().equals("false")) {
            return json.booleanNode(node.getValue().equals("true"));
        }
        if (node.getTag().equals(Tag.NULL)) {
            return json.nullNode();
        }
        return json.textNode(node.getValue());
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
            throw malformed(value, field, "This has to be a text.");
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

    private ArrayNode array(ObjectNode node, String field) {
        @Nullable JsonNode value = node.get(field);
        if (value == null) {
            return JsonNodeFactory.instance.arrayNode();
        }
        if (value instanceof ArrayNode array) {
            return array;
        }
        throw malformed(value, field, "This has to be a list.");
    }

    private ObjectNode object(JsonNode node, String field) {
        if (node instanceof ObjectNode object) {
            return object;
        }
        throw malformed(node, field, "Fields are expected here.");
    }

    private int line(JsonNode node) {
        return lines.getOrDefault(node, 1);
    }

    private Malformed malformed(JsonNode node, String field, String sentence) {
        return new Malformed(fileName, line(node), field, sentence);
    }
}

package org.benchtrail.demo;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.StringReader;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Map;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.nodes.Tag;
import org.yaml.snakeyaml.reader.ReaderException;

/** A YAML file as a tree, with the place of everything that has fields and of every list. */
final class YamlPlaces {
    private final String fileName;

    /** Values are shared between places, so they have no place of their own. */
    private final Map<JsonNode, Scenario.FilePlace> places = new IdentityHashMap<>();

    YamlPlaces(String fileName) {
        this.fileName = fileName;
    }

    Scenario.FilePlace of(JsonNode node, Scenario.FilePlace otherwise) {
        return places.getOrDefault(node, otherwise);
    }

    /** @throws ScenarioFile.Malformed with the line, if it is no YAML */
    JsonNode read(String yaml) {
        try {
            Node root = new Yaml(new SafeConstructor(new LoaderOptions())).compose(new StringReader(yaml));
            if (root == null) {
                throw new ScenarioFile.Malformed(fileName, 1, "", "The file is empty.");
            }
            return convert(root);
        } catch (MarkedYAMLException e) {
            int line = e.getProblemMark() == null ? 1 : e.getProblemMark().getLine() + 1;
            throw new ScenarioFile.Malformed(fileName, line, "", "This is no YAML: " + e.getProblem() + ".");
        } catch (ReaderException e) {
            String before = yaml.substring(0, Math.min(e.getPosition(), yaml.length()));
            int line = 1 + (int) before.chars().filter(c -> c == '\n').count();
            throw new ScenarioFile.Malformed(fileName, line, "", "Here is a character that no text has. Take it away.");
        } catch (YAMLException e) {
            throw new ScenarioFile.Malformed(fileName, 1, "", "This YAML cannot be taken: " + e.getMessage());
        }
    }

    private JsonNode convert(Node node) {
        int line = node.getStartMark().getLine() + 1;
        if (node.isTwoStepsConstruction()) {
            throw new ScenarioFile.Malformed(fileName, line, "", "This contains itself.");
        }
        if (node instanceof MappingNode mapping) {
            return mapping(mapping);
        }
        if (node instanceof SequenceNode sequence) {
            ArrayNode array = JsonNodeFactory.instance.arrayNode();
            sequence.getValue().forEach(item -> array.add(convert(item)));
            places.put(array, new Scenario.FilePlace(line, Map.of()));
            return array;
        }
        return scalar((ScalarNode) node);
    }

    private ObjectNode mapping(MappingNode mapping) {
        ObjectNode object = JsonNodeFactory.instance.objectNode();
        Map<String, Integer> seen = new HashMap<>();
        mapping.getValue().forEach(entry -> {
            int line = entry.getKeyNode().getStartMark().getLine() + 1;
            if (!(entry.getKeyNode() instanceof ScalarNode keyNode)) {
                throw new ScenarioFile.Malformed(fileName, line, "", "The name of a field has to be a text.");
            }
            String key = keyNode.getValue();
            if (seen.put(key, line) != null) {
                throw new ScenarioFile.Malformed(fileName, line, key, "This field is here twice.");
            }
            object.set(key, convert(entry.getValueNode()));
        });
        places.put(object, new Scenario.FilePlace(mapping.getStartMark().getLine() + 1, seen));
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
}

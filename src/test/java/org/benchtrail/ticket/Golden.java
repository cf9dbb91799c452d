package org.benchtrail.ticket;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.TreeMap;
import java.util.regex.Pattern;

/** JSON written so that people can compare it: members in order of their names, what fits a line on one line. */
final class Golden {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .nodeFactory(JsonNodeFactory.withExactBigDecimals(true))
            .build();

    /** Escaped, because one that stands alone cannot be written to a file. */
    private static final Pattern SURROGATE = Pattern.compile("[\\ud800-\\udfff]");

    /** Numbers that all rise by one when an entry comes in between: of placeholders, entries, versions, facts told before, schemas. */
    private static final Pattern NUMBER_OF_PLACE = Pattern.compile(
            "(?<=\\{[a-z0-9]{1,20})-\\d+(?=})"
                    + "|(?<=entry\\\\?\":|version\\\\?\":|\"entry\": |\"version\": |\"If-Match\": |\"ETag\": \"\\\\\"|\"the first |component )\\d+");

    private static final int LINE = 180;
    private static final int LINES_AROUND = 4;

    private Golden() {}

    static JsonNode read(String json) {
        try {
            return MAPPER.readTree(json);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(json, e);
        }
    }

    /** What is no JSON as a text. */
    static JsonNode readOrText(String text) {
        try {
            return MAPPER.readTree(text);
        } catch (JsonProcessingException e) {
            return TextNode.valueOf(text);
        }
    }

    static ObjectNode object() {
        return MAPPER.createObjectNode();
    }

    static ArrayNode array() {
        return MAPPER.createArrayNode();
    }

    static String text(JsonNode node) {
        StringBuilder out = new StringBuilder();
        write(out, ordered(node, true), "");
        return SURROGATE
                .matcher(out)
                .replaceAll(found ->
                        "\\\\u" + HexFormat.of().toHexDigits(found.group().charAt(0)));
    }

    /** The members of an exchange stay in their order, all others are sorted. */
    private static JsonNode ordered(JsonNode node, boolean asIs) {
        if (node instanceof ArrayNode array) {
            ArrayNode copy = array();
            array.forEach(element -> copy.add(ordered(element, false)));
            return copy;
        }
        if (!(node instanceof ObjectNode object)) {
            return node;
        }
        ObjectNode copy = object();
        TreeMap<String, JsonNode> sorted = new TreeMap<>();
        object.properties().forEach(p -> sorted.put(p.getKey(), ordered(p.getValue(), false)));
        if (asIs) {
            object.fieldNames().forEachRemaining(name -> copy.set(name, sorted.get(name)));
        } else {
            sorted.forEach(copy::set);
        }
        return copy;
    }

    private static void write(StringBuilder out, JsonNode node, String indent) {
        String line = node.toString();
        if (!node.isContainerNode() || line.length() + indent.length() <= LINE) {
            out.append(line);
            return;
        }
        String deeper = indent + "  ";
        List<String> parts = new ArrayList<>();
        if (node instanceof ObjectNode object) {
            object.properties()
                    .forEach(p -> parts.add(TextNode.valueOf(p.getKey()) + ": " + written(p.getValue(), deeper)));
        } else {
            node.forEach(element -> parts.add(written(element, deeper)));
        }
        out.append(node.isObject() ? "{" : "[")
                .append("\n" + deeper)
                .append(String.join(",\n" + deeper, parts))
                .append("\n" + indent)
                .append(node.isObject() ? "}" : "]");
    }

    private static String written(JsonNode node, String indent) {
        StringBuilder out = new StringBuilder();
        write(out, node, indent);
        return out.toString();
    }

    static String unnumbered(String recording) {
        return NUMBER_OF_PLACE.matcher(recording).replaceAll("#");
    }

    /** The first lines that differ, each side with some lines around. */
    static String difference(String before, String after) {
        List<String> old = before.lines().toList();
        List<String> now = after.lines().toList();
        int first = 0;
        while (first < old.size() && first < now.size() && old.get(first).equals(now.get(first))) {
            first++;
        }
        String request = old.stream().limit(2).reduce("", (a, b) -> a + "\n" + b);
        return request + "\n...\nline " + (first + 1) + "\n--- recorded" + around(old, first) + "\n+++ now"
                + around(now, first);
    }

    private static String around(List<String> lines, int first) {
        StringBuilder out = new StringBuilder();
        for (int i = Math.max(0, first - LINES_AROUND); i < Math.min(lines.size(), first + LINES_AROUND); i++) {
            out.append(i == first ? "\n> " : "\n  ").append(lines.get(i));
        }
        return out.toString();
    }
}

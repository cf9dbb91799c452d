package org.benchtrail.ticket;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What an OpenAPI document says, with its components numbered by their order of appearance instead of named. */
final class OpenApiText {
    private static final String COMPONENT = "#/components/";

    private final Map<String, String> names = new LinkedHashMap<>();
    private final List<String> open = new ArrayList<>();

    private OpenApiText() {}

    /** The paths of the API, and the components that they use. */
    static JsonNode of(JsonNode document) {
        return new OpenApiText().text(document);
    }

    private JsonNode text(JsonNode document) {
        ObjectNode paths = Golden.object();
        document.at("/paths").properties().stream()
                .filter(p -> p.getKey().startsWith("/api/") && !p.getKey().startsWith("/api/test"))
                .sorted(Map.Entry.comparingByKey())
                .forEach(p -> paths.set(p.getKey(), renamed(p.getValue())));
        ObjectNode components = Golden.object();
        while (!open.isEmpty()) {
            String next = open.remove(0);
            components.set(names.get(next), renamed(document.at(next.substring(1))));
        }
        ObjectNode text = Golden.object();
        text.set("components", components);
        text.set("paths", paths);
        return text;
    }

    private JsonNode renamed(JsonNode node) {
        if (node instanceof ObjectNode object) {
            ObjectNode copy = Golden.object();
            TreeMap<String, JsonNode> sorted = new TreeMap<>();
            object.properties().forEach(p -> sorted.put(p.getKey(), p.getValue()));
            sorted.forEach((name, value) -> copy.set(name, renamed(value)));
            return copy;
        }
        if (node instanceof ArrayNode array) {
            ArrayNode copy = Golden.array();
            array.forEach(element -> copy.add(renamed(element)));
            return copy;
        }
        return node.isTextual() && node.asText().startsWith(COMPONENT) ? TextNode.valueOf(name(node.asText())) : node;
    }

    private String name(String reference) {
        return names.computeIfAbsent(reference, r -> {
            open.add(r);
            return "component " + String.format("%03d", names.size() + 1);
        });
    }
}

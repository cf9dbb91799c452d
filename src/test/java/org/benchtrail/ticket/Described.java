package org.benchtrail.ticket;

import static io.restassured.RestAssured.given;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaValidatorsConfig;
import com.networknt.schema.SpecVersion;
import io.restassured.response.Response;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** The description of the API, and what is answered held against it: status, headers that it promises, and the body by its schema. */
public final class Described {
    private static final int MOST_FAULTS = 30;

    private final JsonNode document;
    private final JsonSchemaFactory schemas = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012);
    private final Map<String, JsonSchema> made = new HashMap<>();
    private final Set<String> seen = new TreeSet<>();
    private final List<String> faults = new ArrayList<>();

    public Described() {
        document = Golden.read(given().get("/q/openapi?format=json").asString());
    }

    public JsonNode document() {
        return document;
    }

    /** What did not agree. */
    public List<String> faults() {
        return faults;
    }

    /** Of how many operations a good answer was seen. */
    int seen() {
        return seen.size();
    }

    private static String operation(String method, String path) {
        return method.toUpperCase(java.util.Locale.ROOT) + " " + path;
    }

    /**
     * Holds an answer, and the request if it was taken, against the description.
     *
     * @param body what was sent as JSON; null if nothing or bytes were
     */
    public void hold(String method, String target, @Nullable String body, Response answer) {
        String path = path(method, target.replaceFirst("\\?.*", ""));
        if (path.isEmpty()) {
            return;
        }
        JsonNode operation = document.get("paths").get(path).get(method.toLowerCase(java.util.Locale.ROOT));
        String name = operation(method, path) + " " + answer.statusCode();
        JsonNode response = resolved(operation.at("/responses").path("" + answer.statusCode()));
        if (response.isMissingNode()) {
            fault(name + " is not described");
            return;
        }
        boolean isGood = answer.statusCode() < 300;
        if (isGood) {
            seen.add(operation(method, path));
        }
        response.path("headers").fieldNames().forEachRemaining(header -> {
            if (!header.equals("Link") && answer.header(header) == null) {
                fault(name + " lacks the header " + header);
            }
        });
        JsonNode schema = response.path("content")
                .path(answer.contentType().split(";")[0])
                .path("schema");
        if (answer.contentType().contains("json")) {
            hold(name, schema, Golden.read(answer.asString()));
        } else if (!response.path("content").has("*/*") && response.has("content")) {
            fault(name + " answers " + answer.contentType());
        }
        JsonNode asked = resolved(operation.path("requestBody")).at("/content/application~1json/schema");
        if (isGood && body != null && !asked.isMissingNode()) {
            hold(name + ", its body", asked, Golden.read(body));
        }
    }

    /** Holds any value against a schema of the document. */
    public void hold(String name, JsonNode schema, JsonNode value) {
        if (schema.isMissingNode()) {
            fault(name + " has no schema for what was answered");
            return;
        }
        made.computeIfAbsent(schema.toString(), text -> schema(schema)).validate(value).stream()
                .limit(3)
                .forEach(fault -> fault(name + ": " + fault.getMessage()));
    }

    private JsonSchema schema(JsonNode schema) {
        ObjectNode root = Golden.object();
        root.set("components", document.get("components"));
        root.set("allOf", Golden.array().add(schema));
        return schemas.getSchema(root, SchemaValidatorsConfig.builder().build());
    }

    private void fault(String sentence) {
        if (faults.size() < MOST_FAULTS && !faults.contains(sentence)) {
            faults.add(sentence);
        }
    }

    private JsonNode resolved(JsonNode node) {
        return node.has("$ref") ? document.at(node.get("$ref").asText().substring(1)) : node;
    }

    /** The path of the description that stands for an address, one without variables first; empty if there is none. */
    private String path(String method, String address) {
        String found = "";
        for (Map.Entry<String, JsonNode> one : document.get("paths").properties()) {
            String pattern = Pattern.quote(one.getKey()).replaceAll("\\{[^}]+}", "\\\\E[^/]+\\\\Q");
            if (one.getValue().has(method.toLowerCase(java.util.Locale.ROOT))
                    && address.matches(pattern)
                    && (found.isEmpty() || !one.getKey().contains("{"))) {
                found = one.getKey();
            }
        }
        return found;
    }
}

package org.benchtrail.description;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.core.bench.Bench;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.Described;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The description of the API, read by the rules that linters of OpenAPI have. What it says is held against answers elsewhere. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class ApiDescriptionTest {
    private static final Set<String> METHODS = Set.of("get", "put", "post", "delete", "patch", "head", "options");
    private static final Pattern VARIABLE = Pattern.compile("\\{([^}]+)}");

    @Inject
    PeopleActs people;

    private String token = "";
    private Described described;
    private JsonNode document;
    private final List<String> findings = new ArrayList<>();

    private record Operation(String method, String path, JsonNode says) {
        String name() {
            return method + " " + path;
        }
    }

    @BeforeEach
    void read() {
        described = new Described();
        document = described.document();
    }

    private List<Operation> operations() {
        List<Operation> all = new ArrayList<>();
        document.get("paths")
                .properties()
                .forEach(path -> path.getValue().properties().forEach(one -> {
                    if (METHODS.contains(one.getKey())) {
                        all.add(new Operation(one.getKey(), path.getKey(), one.getValue()));
                    }
                }));
        return all;
    }

    private void require(boolean holds, String finding) {
        if (!holds) {
            findings.add(finding);
        }
    }

    @Test
    void document_saysWhatItIs() {
        require(document.path("openapi").asText().startsWith("3.1"), "openapi 3.1");
        for (String member : List.of("/info/title", "/info/version", "/info/description", "/info/license/name")) {
            require(!document.at(member).asText().isBlank(), member);
        }
        require(document.at("/servers").size() == 1, "servers");
        require(document.at("/components/securitySchemes/token/scheme").asText().equals("bearer"), "bearer");
        Set<String> schemes = new HashSet<>();
        document.at("/components/securitySchemes").fieldNames().forEachRemaining(schemes::add);
        require(schemes.equals(Set.of("token")), "one way to say who asks: " + schemes);
        require(document.at("/security/0").has("token"), "asked for everywhere");
        assertEquals(List.of(), findings);
    }

    @Test
    void everyOperation_hasAllThatItNeeds() {
        Set<String> tags = new HashSet<>();
        document.get("tags").forEach(tag -> {
            tags.add(tag.get("name").asText());
            require(!tag.path("description").asText().isBlank(), "tag " + tag);
        });
        Set<String> ids = new HashSet<>();
        Set<String> used = new TreeSet<>();
        for (Operation one : operations()) {
            String id = one.says().path("operationId").asText();
            require(id.matches("[A-Za-z][A-Za-z0-9-]+") && ids.add(id), one.name() + " operationId " + id);
            require(!one.says().path("summary").asText().isBlank(), one.name() + " summary");
            require(one.says().path("tags").size() == 1, one.name() + " tags");
            one.says().path("tags").forEach(tag -> used.add(tag.asText()));
            require(one.path().startsWith("/api/") && !one.path().endsWith("/"), one.name() + " path");
            parameters(one);
            responses(one);
        }
        require(used.equals(new TreeSet<>(tags)), "tags used " + used);
        assertTrue(ids.size() > 80, "operations: " + ids.size());
        assertEquals(List.of(), findings);
    }

    private void parameters(Operation one) {
        Set<String> inPath = new TreeSet<>();
        Matcher variables = VARIABLE.matcher(one.path());
        while (variables.find()) {
            inPath.add(variables.group(1));
        }
        Set<String> described = new TreeSet<>();
        Set<String> all = new HashSet<>();
        for (JsonNode parameter : one.says().path("parameters")) {
            String name = parameter.get("name").asText();
            require(all.add(parameter.get("in").asText() + " " + name), one.name() + " twice " + name);
            require(!parameter.path("schema").isEmpty(), one.name() + " schema of " + name);
            if (parameter.get("in").asText().equals("path")) {
                described.add(name);
                require(parameter.path("required").asBoolean(), one.name() + " required " + name);
            }
            if (parameter.at("/schema/type").asText().equals("string")
                    && !parameter.at("/schema").has("enum")) {
                require(parameter.at("/schema").has("maxLength"), one.name() + " length of " + name);
            }
        }
        require(inPath.equals(described), one.name() + " variables " + inPath + ", described " + described);
    }

    private void responses(Operation one) {
        JsonNode responses = one.says().path("responses");
        Set<String> statuses = new TreeSet<>();
        responses.fieldNames().forEachRemaining(statuses::add);
        require(statuses.stream().anyMatch(status -> status.startsWith("2")), one.name() + " good answer");
        require(
                statuses.containsAll(Set.of("400", "401", "403", "500", "503")),
                one.name() + " answers only " + statuses);
        require(one.says().has("requestBody") == statuses.contains("415"), one.name() + " 415");
        require(one.says().toString().contains("If-Match\"") == statuses.contains("428"), one.name() + " 428");
        responses.properties().forEach(response -> {
            JsonNode says = resolved(response.getValue());
            require(!says.path("description").asText().isBlank(), one.name() + " " + response.getKey());
            if (!Set.of("204", "304").contains(response.getKey())) {
                says.path("content")
                        .forEach(type -> require(!type.path("schema").isEmpty(), one.name() + " " + response.getKey()));
                require(says.has("content"), one.name() + " content of " + response.getKey());
            }
            boolean isProblem = response.getKey().compareTo("400") >= 0;
            require(
                    isProblem == says.path("content").has("application/problem+json"),
                    one.name() + " problem " + response.getKey());
        });
    }

    private JsonNode resolved(JsonNode node) {
        return node.has("$ref") ? document.at(node.get("$ref").asText().substring(1)) : node;
    }

    @Test
    void everyReference_leadsSomewhere_andEveryComponentIsUsed() {
        Set<String> used = new TreeSet<>();
        references(document, used);
        used.forEach(reference ->
                require(!document.at(reference.substring(1)).isMissingNode(), reference + " leads nowhere"));
        for (String kind : List.of("schemas", "responses", "requestBodies")) {
            document.at("/components/" + kind)
                    .fieldNames()
                    .forEachRemaining(name -> require(
                            used.contains("#/components/" + kind + "/" + name), kind + " " + name + " is not used"));
        }
        assertEquals(List.of(), findings);
    }

    private static void references(JsonNode node, Set<String> found) {
        if (node.has("$ref")) {
            found.add(node.get("$ref").asText());
        }
        if (node.has("mapping")) {
            node.get("mapping").forEach(one -> found.add(one.asText()));
        }
        node.forEach(below -> references(below, found));
    }

    @Test
    void everyObject_isClosed_andEveryTextOfARequestHasABound() {
        document.at("/components/schemas").properties().forEach(one -> schema(one.getKey(), one.getValue()));
        assertEquals(List.of(), findings);
    }

    private void schema(String name, JsonNode schema) {
        boolean isObject = schema.path("type").asText().equals("object");
        require(!isObject || schema.has("additionalProperties"), name + " is open");
        for (JsonNode required : schema.path("required")) {
            require(schema.path("properties").has(required.asText()), name + " requires what it has not: " + required);
        }
        boolean isOfRequests = name.contains("Body");
        if (isOfRequests && schema.path("type").toString().contains("\"string\"") && !schema.has("enum")) {
            require(schema.has("maxLength") || schema.has("const") || schema.has("format"), name + " has no length");
        }
        if (schema.path("type").toString().contains("\"array\"")) {
            require(schema.has("items"), name + " has no items");
        }
        schema.path("properties").properties().forEach(one -> schema(name + "." + one.getKey(), one.getValue()));
        if (schema.has("items")) {
            schema(name + "[]", schema.get("items"));
        }
    }

    @Test
    void everyExample_isValid_andEveryCalculationHasOne() {
        int examples = 0;
        for (Operation one : operations()) {
            JsonNode json = one.says().at("/requestBody/content/application~1json");
            if (json.has("example")) {
                described.hold(one.name() + ", its example", json.get("schema"), json.get("example"));
                examples++;
            }
        }
        assertEquals(List.of(), described.faults());
        assertEquals(Bench.all().size(), examples);
    }

    /** What the recorded journey does not come by, but for what takes two supervisors. */
    @Test
    void answersOfTheOtherOperations_areAsDescribed() {
        Actor dora = new Actor("told-dora", "Dora", Set.of(Role.SUPERVISOR, Role.ADMINISTRATOR));
        people.ensureAccount(dora.account(), dora.name(), dora.roles(), "a long enough password");
        token = people.createToken(dora, "one", 1).secret();
        people.createToken(dora, "two", 1);
        for (String path : List.of(
                "/api/catalogue",
                "/api/catalogue/versions",
                "/api/changes?size=3",
                "/api/learning/preview",
                "/api/site/policies",
                "/api/nodes",
                "/api/proposals",
                "/api/me/tokens")) {
            sent("GET", path, null, null);
        }
        String device =
                "{\"label\":\"told-1\",\"category\":\"OTHER\",\"model\":\"T\",\"serial\":\"\",\"place\":\"\",\"connection\":\"\",\"nameplate\":\"\","
                        + "\"warranty\":\"\",\"note\":\"\"}";
        sent("POST", "/api/devices", null, device);
        sent("GET", "/api/devices/told-1", null, null);
        sent("PUT", "/api/devices/told-1", "\"1\"", device.replace("\"T\"", "\"U\""));
        sent("GET", "/api/devices?limit=2", null, null);
        String place = "{\"name\":\"Told hall\",\"mains\":\"\",\"closed\":false}";
        String id = sent("POST", "/api/places", null, place).jsonPath().getString("id");
        sent("GET", "/api/places", null, null);
        sent("PUT", "/api/places/" + id, "\"1\"", place.replace("hall", "yard"));
        String second = sent("GET", "/api/me/tokens", null, null).jsonPath().getString("find { it.name == 'two' }.id");
        sent("DELETE", "/api/me/tokens/" + second, null, null);
        assertEquals(List.of(), described.faults());
    }

    private Response sent(String method, String path, @Nullable String version, @Nullable String body) {
        RequestSpecification request =
                given().header("Authorization", "Bearer " + token).contentType("application/json");
        if (version != null) {
            request.header("If-Match", version);
        }
        if (body != null) {
            request.body(body);
        }
        Response answer = request.request(method, path);
        assertTrue(answer.statusCode() < 300, method + " " + path + " " + answer.asString());
        described.hold(method, path, body, answer);
        return answer;
    }

    @Test
    void schemaThatIsBroken_isFound() {
        Map<String, String> wrong = Map.of("supply", "twelve");
        JsonNode schema = document.at("/paths/~1api~1bench~1soak/post/requestBody/content/application~1json/schema");
        described.hold("a wrong example", schema, new com.fasterxml.jackson.databind.ObjectMapper().valueToTree(wrong));
        assertEquals(1, described.faults().size(), described.faults().toString());
    }
}

package org.benchtrail.ticket.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.trail.FactJson;
import org.benchtrail.trail.Samples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The OpenAPI document describes every act as it is taken. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class ActSchemasTest {
    private JsonNode document;

    @BeforeEach
    void document() throws IOException {
        document = new ObjectMapper()
                .readTree(RestAssured.given()
                        .queryParam("format", "json")
                        .get("/q/openapi")
                        .asString());
    }

    private JsonNode resolved(JsonNode node) {
        String ref = node.path("$ref").asText();
        if (ref.isEmpty()) {
            return node;
        }
        JsonNode target = document.at(ref.substring(1));
        assertTrue(target.isObject(), () -> ref + " leads nowhere");
        return target;
    }

    @Test
    void actsOfATicket_areOneFactOrSeveral() {
        JsonNode posted = document.at("/paths/~1api~1tickets~1{number}~1acts/post/requestBody");
        JsonNode schema = resolved(posted).at("/content/application~1json/schema");
        assertEquals("#/components/schemas/Act", schema.at("/anyOf/0/$ref").asText());
        assertEquals("array", schema.at("/anyOf/1/type").asText());
        assertEquals(
                "#/components/schemas/Act", schema.at("/anyOf/1/items/$ref").asText());
    }

    @Test
    void everyKind_isToldApartByItsName() {
        JsonNode act = document.at("/components/schemas/Act");
        assertEquals("kind", act.at("/discriminator/propertyName").asText());
        Set<String> named = new TreeSet<>();
        act.at("/discriminator/mapping").fieldNames().forEachRemaining(named::add);
        Set<String> kinds = new TreeSet<>(FactKinds.all().keySet());
        kinds.removeAll(Set.of(
                "opened",
                "refused",
                "bench-result-attached",
                "soak-time-reckoned",
                "forecast-committed",
                "presence-signed"));
        assertEquals(kinds, named);
        assertEquals(kinds.size(), act.at("/oneOf").size());
        for (Map.Entry<String, Class<? extends Fact>> kind : FactKinds.all().entrySet()) {
            JsonNode schema =
                    document.at("/components/schemas/" + kind.getValue().getSimpleName());
            assertEquals(kind.getKey(), schema.at("/properties/kind/const").asText());
            assertEquals("kind", schema.at("/required/0").asText());
        }
    }

    /** A small validator of our own for what these schemas use. */
    @Test
    void everySample_fitsItsSchema() throws IOException {
        ObjectMapper mapper = FactJson.forRequests();
        for (Fact fact : Samples.all()) {
            JsonNode value = mapper.readTree(mapper.writerFor(Fact.class).writeValueAsString(fact));
            List<String> problems = new ArrayList<>();
            check(value, document.at("/components/schemas/" + fact.getClass().getSimpleName()), "$", problems);
            assertEquals(List.of(), problems, fact::toString);
        }
    }

    private void check(JsonNode value, JsonNode given, String path, List<String> problems) {
        JsonNode schema = resolved(given);
        assertFalse(schema.isMissingNode(), path);
        if (schema.has("oneOf") && schema.has("discriminator")) {
            String target = schema.at("/discriminator/mapping")
                    .path(value.path("kind").asText())
                    .asText();
            require(!target.isEmpty(), path + " is of no kind", problems);
            if (!target.isEmpty()) {
                check(value, document.at(target.substring(1)), path, problems);
            }
            return;
        }
        if (schema.has("anyOf")) {
            boolean fits = false;
            for (JsonNode one : schema.at("/anyOf")) {
                List<String> found = new ArrayList<>();
                check(value, one, path, found);
                fits |= found.isEmpty();
            }
            require(fits, path + " fits none", problems);
            return;
        }
        require(types(schema).contains(type(value)), path + " is no " + schema.path("type"), problems);
        if (schema.has("enum")) {
            Set<String> allowed = new TreeSet<>();
            schema.path("enum").forEach(name -> allowed.add(name.asText()));
            require(allowed.contains(value.asText()), path + " is not listed", problems);
        }
        value.fields().forEachRemaining(field -> {
            JsonNode property = schema.path("properties").path(field.getKey());
            JsonNode other = property.isMissingNode() ? schema.path("additionalProperties") : property;
            require(other.isObject(), path + "." + field.getKey() + " is not described", problems);
            if (other.isObject()) {
                check(field.getValue(), other, path + "." + field.getKey(), problems);
            }
        });
        if (value.isArray()) {
            value.forEach(item -> check(item, schema.path("items"), path + "[]", problems));
        }
    }

    private static void require(boolean holds, String problem, List<String> problems) {
        if (!holds) {
            problems.add(problem);
        }
    }

    private static Set<String> types(JsonNode schema) {
        Set<String> types = new TreeSet<>();
        if (schema.path("type").isArray()) {
            schema.path("type").forEach(type -> types.add(type.asText()));
        } else {
            types.add(schema.path("type").asText());
        }
        return types;
    }

    private static String type(JsonNode value) {
        return switch (value.getNodeType()) {
            case NUMBER -> "integer";
            default -> value.getNodeType().name().toLowerCase(java.util.Locale.ROOT);
        };
    }
}

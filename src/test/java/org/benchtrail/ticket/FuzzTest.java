package org.benchtrail.ticket;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.LogEar;
import org.benchtrail.platform.RawRequest;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;

/**
 * Sends what the description of the API allows, a little changed: no answer is a fault of the server, none is slow, and no refused
 * request writes a long line. A few hundred in each build; {@code -Dfuzz.requests=100000} for the long form, {@code -Dfuzz.seed} for
 * the same again.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class FuzzTest {
    private static final int REQUESTS = Integer.getInteger("fuzz.requests", 400);
    private static final long SLOW_MS = 2000;
    private static final int LONGEST_LINE = 300;
    private static final String PASSWORD = "a long enough password";
    private static final Actor FAYE =
            new Actor("fuzz-faye", "Faye", Set.of(Role.TECHNICIAN, Role.MENTOR, Role.SUPERVISOR));
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private static final String[] ODD = {
        "",
        "0",
        "-1",
        "99999999999999999999",
        "1e400",
        "null",
        "true",
        "%",
        "'",
        "\"",
        "\u0000",
        "\u202e",
        "\ud83d\udd25",
        "../../x",
        "a".repeat(3000),
        "2031-03-03T08:00:00Z",
        "OPEN",
        "[]",
        "{}",
        "<b>",
        "\r\nX: y",
        ";",
        "ＡＢ",
        "00000000-0"
    };

    @Inject
    PeopleActs people;

    private final long seed = Long.getLong("fuzz.seed", System.nanoTime());
    private final Random random = new Random(seed);
    private final Map<Integer, Integer> statuses = new TreeMap<>();
    private final List<String> wrong = new ArrayList<>();
    private String token = "";
    private String ticket = "";

    private record Operation(String path, String method, JsonNode about) {}

    @Test
    void noRequest_isAFaultOfTheServer() throws JsonProcessingException {
        people.ensureAccount(FAYE.account(), FAYE.name(), FAYE.roles(), PASSWORD);
        token = people.createToken(FAYE, "fuzz", 1).secret();
        ticket = given().header("Authorization", "Bearer " + token)
                .contentType("application/json")
                .body(report().toString())
                .post("/api/tickets")
                .jsonPath()
                .getString("number");
        List<Operation> operations = operations();
        assertTrue(operations.size() > 40, operations.size() + " operations");
        for (int i = 0; i < REQUESTS && wrong.size() < 20; i++) {
            send(operations.get(random.nextInt(operations.size())));
        }
        System.out.println("fuzz.seed=" + seed + ", " + REQUESTS + " requests by status: " + statuses);
        assertEquals(List.of(), wrong, "fuzz.seed=" + seed);
    }

    private static List<Operation> operations() throws JsonProcessingException {
        JsonNode description =
                JSON.readTree(given().get("/q/openapi?format=json").asString());
        List<Operation> all = new ArrayList<>();
        description
                .get("paths")
                .fields()
                .forEachRemaining(path -> path.getValue().fields().forEachRemaining(method -> {
                    // its own tokens are what the walk goes on with
                    if (!path.getKey().startsWith("/api/me/tokens")
                            && path.getKey().startsWith("/api/")
                            && !path.getKey().startsWith("/api/test-")) {
                        all.add(new Operation(
                                path.getKey(), method.getKey().toUpperCase(java.util.Locale.ROOT), method.getValue()));
                    }
                }));
        return all;
    }

    private void send(Operation operation) {
        String target = target(operation);
        Map<String, String> headers = new HashMap<>();
        headers.put("Authorization", "Bearer " + token);
        if (random.nextInt(4) > 0) {
            headers.put("If-Match", random.nextInt(3) == 0 ? header() : "\"" + (1 + random.nextInt(20)) + "\"");
        }
        if (random.nextInt(6) == 0) {
            headers.put("Idempotency-Key", header());
        }
        String body = "";
        if (operation.about().has("requestBody")) {
            headers.put("Content-Type", random.nextInt(15) == 0 ? header() : "application/json");
            body = body(operation.path());
        }
        RawRequest request = new RawRequest(operation.method(), target, headers, body.getBytes(StandardCharsets.UTF_8));
        try (LogEar ear = new LogEar()) {
            long start = System.nanoTime();
            int status = request.send().status();
            long took = (System.nanoTime() - start) / 1_000_000;
            statuses.merge(status, 1, Integer::sum);
            boolean longLine = ear.text().lines().anyMatch(line -> line.length() > LONGEST_LINE);
            if (status == 0 || status >= 500 || took > SLOW_MS || longLine) {
                wrong.add(status + " after " + took + " ms: " + operation.method() + " " + shortened(target) + " "
                        + headers + " " + shortened(body) + (longLine ? " logged " + shortened(ear.text()) : ""));
            }
        }
    }

    private static String shortened(String text) {
        return text.length() > 300 ? text.substring(0, 300) + "..." : text;
    }

    /** What can stand in a header: no line ends, nothing beyond Latin letters. */
    private String header() {
        return odd().replaceAll("[^\\x20-\\x7e]", "");
    }

    private String odd() {
        return ODD[random.nextInt(ODD.length)];
    }

    private String target(Operation operation) {
        StringBuilder path = new StringBuilder();
        for (String part : operation.path().substring(1).split("/")) {
            path.append('/').append(part.startsWith("{") ? value(part) : part);
        }
        String join = "?";
        for (JsonNode parameter : operation.about().path("parameters")) {
            if (parameter.path("in").asText().equals("query") && random.nextBoolean()) {
                path.append(join)
                        .append(parameter.get("name").asText())
                        .append('=')
                        .append(encoded(odd()));
                join = "&";
            }
        }
        return path.toString();
    }

    private String value(String placeholder) {
        if (placeholder.equals("{number}") && random.nextInt(5) > 0) {
            return ticket;
        }
        String odd = odd();
        return odd.isEmpty() ? "x" : encoded(odd);
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }

    private static ObjectNode report() {
        return NODES.objectNode()
                .put("title", "Fuzz")
                .put("words", "It hums")
                .put("category", "HEAT")
                .put("device", "Workstation")
                .put("place", "Drawing office")
                .put("requester", "Rae")
                .put("contact", "room 4")
                .put("impact", "ONE_PERSON")
                .put("urgency", "HINDERED");
    }

    private String body(String path) {
        try {
            JsonNode seedBody = path.endsWith("/acts") && path.contains("tickets")
                    ? JSON.readTree(ApiDesk.IDENTIFIED[random.nextInt(ApiDesk.IDENTIFIED.length)])
                    : path.equals("/api/tickets")
                            ? report()
                            : NODES.objectNode().put("name", "Fuzz").put("version", 1);
            String text = changed(seedBody).toString();
            return switch (random.nextInt(12)) {
                case 0 -> text.substring(0, random.nextInt(text.length() + 1));
                case 1 -> text.replaceFirst("\\{", "{\"kind\":\"advanced\",");
                case 2 -> text.replaceFirst(":\"", ":\"\\\\ud800");
                case 3 -> "[" + text + "," + text + "]";
                default -> text;
            };
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    private JsonNode changed(JsonNode node) {
        if (node instanceof ObjectNode object && !object.isEmpty() && random.nextInt(5) > 0) {
            List<String> names = new ArrayList<>();
            object.fieldNames().forEachRemaining(names::add);
            String name = names.get(random.nextInt(names.size()));
            if (random.nextInt(8) == 0) {
                object.remove(name);
            } else if (random.nextInt(8) == 0) {
                object.set(odd(), anything(0));
            } else {
                object.set(name, changed(object.get(name)));
            }
            return object;
        }
        if (node instanceof ArrayNode array && !array.isEmpty() && random.nextInt(5) > 0) {
            array.set(random.nextInt(array.size()), anything(0));
            return array;
        }
        return random.nextInt(6) == 0 ? node : anything(0);
    }

    private JsonNode anything(int depth) {
        return switch (random.nextInt(depth > 3 ? 6 : 8)) {
            case 0 -> NODES.nullNode();
            case 1 -> NODES.booleanNode(random.nextBoolean());
            case 2 -> NODES.numberNode(random.nextInt());
            case 3 -> NODES.numberNode(new java.math.BigDecimal("1e" + (random.nextInt(600) - 300)));
            case 4, 5 -> NODES.textNode(odd());
            case 6 -> NODES.arrayNode().add(anything(depth + 1)).add(anything(depth + 1));
            default -> NODES.objectNode().set(odd(), anything(depth + 1));
        };
    }
}

package org.benchtrail.ticket;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** A ticket that is worked over the API, and whose it is. */
final class ApiDesk {
    private static final ObjectMapper JSON = new ObjectMapper();
    /** Refusals because of who asks, which leave the ticket's trail alone. */
    static final Set<String> PERSONAL = Set.of(
            "not-yours",
            "not-your-role",
            "not-your-trainee",
            "own-work",
            "offer-it",
            "nobody-has-it",
            "second-person",
            "reopen-window-over");

    static final String ADVANCE = "{\"kind\":\"advanced\"}";
    static final String ONSET = "{\"kind\":\"onset-recorded\",\"known\":false}";

    /** What identify asks, on a computer that runs too hot. */
    static final String[] IDENTIFIED = {
        "{\"kind\":\"symptom-recorded\",\"words\":\"It dies on me\",\"observable\":\"Screen goes dark\"}",
        ONSET,
        "{\"kind\":\"changes-asked\",\"answers\":{\"HARDWARE\":\"NO\",\"SOFTWARE\":\"NO\",\"SETTINGS\":\"UNKNOWN\",\"PLACE\":\"NO\","
                + "\"INFRASTRUCTURE\":\"NO\"}}",
        "{\"kind\":\"scope-recorded\",\"scope\":\"ONE\"}",
        "{\"kind\":\"reproduction-tried\",\"outcome\":\"YES\",\"how\":\"Ten minutes of full load\"}",
        "{\"kind\":\"hazards-screened\",\"present\":{\"SMELL\":false,\"SMOKE\":false,\"HEAT\":false,\"SWELLING\":false,"
                + "\"LIQUID\":false,\"MAINS_LEAD\":false,\"EXPOSED_WIRING\":false,"
                + "\"SHOCK\":false,\"ARCING\":false,\"SHARP\":false,\"HEIGHT\":false}}",
        "{\"kind\":\"data-answered\",\"state\":\"BACKUP_VERIFIED\"}",
        reading("96.5"),
        "{\"kind\":\"logs-reviewed\",\"looked\":true,\"note\":\"Thermal trips\"}",
        "{\"kind\":\"likeness-checked\",\"shown\":[]}"
    };

    static final String OBVIOUS =
            "{\"kind\":\"obvious-questioned\",\"looks\":{\"POWER\":\"IN_ORDER\",\"CABLES\":\"IN_ORDER\",\"SETTINGS\":\"IN_ORDER\",\"RECENT_CHANGE\":\"NOT_APPLICABLE\"},\"note\":\"Nothing"
                    + " changed\"}";

    private final Function<String, RequestSpecification> as;
    String who;
    final String number;
    int version = 1;
    private int sent;

    ApiDesk(Function<String, RequestSpecification> as, String who, Map<String, Object> report) {
        this.as = as;
        this.who = who;
        Response answer =
                as.apply(who).contentType("application/json").body(report).post("/api/tickets");
        assertEquals(201, answer.statusCode(), answer.asString());
        assertEquals("\"1\"", answer.header("ETag"));
        number = answer.jsonPath().getString("number");
        assertTrue(answer.header("Location").endsWith("/api/tickets/" + number));
    }

    /** A ticket that is there already. */
    ApiDesk(Function<String, RequestSpecification> as, String who, String number) {
        this.as = as;
        this.who = who;
        this.number = number;
        version = sheet().getInt("version");
    }

    /** How many requests with acts were sent. */
    int sent() {
        return sent;
    }

    /** Does what has to be allowed, where the server may add entries of its own. */
    void goesOn(String login, List<String> facts) {
        Response answer = sends(login, version, "[" + String.join(",", facts) + "]");
        assertEquals(200, answer.statusCode(), answer.asString());
        version = answer.jsonPath().getInt("version");
    }

    Response sends(String login, int onVersion, String body) {
        sent++;
        return as.apply(login)
                .header("If-Match", "\"" + onVersion + "\"")
                .contentType("application/json")
                .body(body)
                .post("/api/tickets/" + number + "/acts");
    }

    /** Does what has to be allowed; the server may add what it says itself. Answers with the number of the last entry. */
    int lets(String login, String... facts) {
        Response answer = sends(login, version, "[" + String.join(",", facts) + "]");
        assertEquals(200, answer.statusCode(), answer.asString());
        int least = version + facts.length;
        version = answer.jsonPath().getInt("version");
        assertTrue(version >= least, answer::asString);
        assertEquals("\"" + version + "\"", answer.header("ETag"));
        return version;
    }

    int does(String... facts) {
        return lets(who, facts);
    }

    /** Tries what has to be refused for that alone, with that beginning of its sentence. */
    void shut(String login, String code, String sentence, String... facts) {
        JsonPath problem = refusal(login, facts);
        assertEquals(List.of(code), problem.getList("missing.code", String.class));
        told(problem, code, sentence);
    }

    /** Tries a move that has to be refused for that, whatever else is missing. */
    void lacks(String login, String code, String sentence, String... facts) {
        told(refusal(login, facts), code, sentence);
    }

    private static void told(JsonPath problem, String code, String sentence) {
        String told = problem.getString("missing.find { it.code == '" + code + "' }?.sentence");
        assertTrue(told != null && told.startsWith(sentence), () -> code + ": " + problem.prettify());
    }

    /** Tries what is malformed; nothing is recorded. */
    void malformed(String login, String field, String sentence, String... facts) {
        Response answer = sends(login, version, "[" + String.join(",", facts) + "]");
        assertEquals(422, answer.statusCode(), answer.asString());
        String told = answer.jsonPath().getString("errors.find { it.field == '" + field + "' }?.sentence");
        assertTrue(told != null && told.startsWith(sentence), answer::asString);
        assertEquals(version, entries());
    }

    /** Tries what has to be refused; answers with the codes of what is missing. */
    List<String> refused(String login, String... facts) {
        return refusal(login, facts).getList("missing.code", String.class);
    }

    private JsonPath refusal(String login, String... facts) {
        Response answer = sends(login, version, "[" + String.join(",", facts) + "]");
        assertEquals(409, answer.statusCode(), answer.asString());
        assertEquals("application/problem+json", answer.contentType().split(";")[0]);
        JsonPath problem = answer.jsonPath();
        assertEquals("urn:benchtrail:problem:requirement-missing", problem.getString("type"));
        problem.getList("missing.sentence", String.class).forEach(s -> assertFalse(s.isBlank()));
        List<String> codes = problem.getList("missing.code", String.class);
        int now = Integer.parseInt(answer.header("ETag").replace("\"", ""));
        assertTrue(now == version || now == version + 1, "a refusal is one entry at most");
        version = now;
        if (!PERSONAL.containsAll(codes)) { // the same within a minute is not written again
            JsonNode last = entry(version);
            assertEquals("refused", last.at("/payload/kind").asText());
            assertEquals(codes, strings(last.at("/payload/missing")));
        }
        return problem;
    }

    JsonPath sheet() {
        return as.apply(who)
                .get("/api/tickets/" + number)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    JsonNode entry(int entry) {
        return trail().get(entry - 1);
    }

    int entries() {
        return trail().size();
    }

    String state(String code) {
        return sheet().getString("gate.find { it.code == '" + code + "' }.state");
    }

    void identify() {
        identifies();
        does(ADVANCE);
    }

    /** What identify asks; a trainee skips the forecast before what is alike. */
    void identifies() {
        if (trainee()) {
            does(Arrays.copyOf(IDENTIFIED, IDENTIFIED.length - 1));
            skips("CAUSES_EARLY");
            does(IDENTIFIED[IDENTIFIED.length - 1]);
        } else {
            does(IDENTIFIED);
        }
    }

    private boolean trainee() {
        return sheet().getList("course.assigneeRoles").contains("TRAINEE");
    }

    /** Where the forecast is no matter of the test. */
    void skips(String forecast) {
        does("{\"kind\":\"forecast-skipped\",\"forecast\":\"" + forecast + "\",\"person\":\"" + who
                + "\",\"reason\":\"Urgent\"}");
    }

    int theory(String text) {
        if (trainee()) {
            skips("CAUSES");
        }
        int theory = does("{\"kind\":\"theory-stated\",\"text\":\"" + text + "\"}");
        does("{\"kind\":\"theory-chosen\",\"theory\":" + theory + "}", ADVANCE);
        return theory;
    }

    void tests(int theory, String outcome) {
        int check = does("{\"kind\":\"check-planned\",\"theory\":" + theory
                + ",\"what\":\"Open it\",\"expectation\":\"Dust between the fins\"}");
        does("{\"kind\":\"result-recorded\",\"check\":" + check + ",\"observation\":\"Seen\",\"outcome\":\"" + outcome
                + "\"}");
    }

    int plans() {
        int action = does(
                "{\"kind\":\"action-planned\",\"what\":\"Clean the cooler\",\"effect\":\"Runs cool\",\"impact\":\"One,"
                        + " half an hour\",\"wayBack\":\"Put the cover"
                        + " back\",\"irreversible\":false,\"touchesStorage\":false,\"usesPart\":false}");
        does("{\"kind\":\"maker-consulted\",\"applicable\":true,\"text\":\"Manual, chapter 4\"}");
        return action;
    }

    void carriesOut(int action) {
        does("{\"kind\":\"cautions-acknowledged\",\"about\":" + action + ",\"cautions\":[\"HEAT\"]}");
        does("{\"kind\":\"action-settled\",\"action\":" + action + ",\"settlement\":\"CARRIED_OUT\"}", ADVANCE);
    }

    void verifies() {
        List<Integer> symptoms = sheet().getList("facts.findAll { it.fact.kind == 'symptom-recorded' }.entry");
        for (int symptom : symptoms) {
            does("{\"kind\":\"symptom-rechecked\",\"symptom\":" + symptom + ",\"gone\":true,\"how\":\"Two hours\"}");
        }
        does(
                reading("68"),
                functions(sheet().getList("checklist", String.class)),
                "{\"kind\":\"requester-answered\",\"state\":\"AGREES\"}",
                "{\"kind\":\"prevention-considered\",\"applies\":true,\"text\":\"Clean it twice a year\"}",
                ADVANCE);
    }

    void documents() {
        does(
                "{\"kind\":\"cause-named\",\"cause\":\"Clogged cooler\",\"sureness\":\"BY_REPAIR\"}",
                "{\"kind\":\"summary-written\",\"findings\":\"Dust\",\"actions\":\"Cleaned\",\"outcome\":\"Runs"
                        + " cool\"}",
                "{\"kind\":\"knowledge-linked\",\"learned\":\"NOTHING\",\"text\":\"A common cause\"}",
                "{\"kind\":\"effort-recorded\",\"minutes\":45}",
                "{\"kind\":\"signed\",\"signatory\":\"ASSIGNEE\"}");
    }

    static String functions(List<String> checklist) {
        return checklist.stream()
                .map(function -> "\"" + function + "\":\"WORKS\"")
                .collect(Collectors.joining(",", "{\"kind\":\"function-checked\",\"answers\":{", "}}"));
    }

    static String reading(String value) {
        return "{\"kind\":\"reading-recorded\",\"quantity\":\"temperature\",\"value\":\"" + value
                + "\",\"unit\":\"\u00b0C\",\"point\":\"processor\",\"instrument\":\"sensor\",\"upper\":\"85\",\"limitSource\":\"nameplate\"}";
    }

    List<JsonNode> trail() {
        List<JsonNode> entries = new ArrayList<>();
        String trail = as.apply(who)
                .get("/api/tickets/" + number + "/trail")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        for (JsonNode line : tree(trail)) {
            entries.add(ShownWords.in(tree(line.at("/canonical").asText()), line.at("/words")));
        }
        return entries;
    }

    static List<String> strings(JsonNode list) {
        List<String> strings = new ArrayList<>();
        list.forEach(text -> strings.add(text.asText()));
        return strings;
    }

    static JsonNode tree(String json) {
        try {
            return JSON.readTree(json);
        } catch (IOException e) {
            throw new IllegalStateException(json, e);
        }
    }
}

package org.benchtrail;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.builder.MultiPartSpecBuilder;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Function;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.trail.Tampering;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** Every door takes and refuses the same characters, so that what was taken at one is refused at no later one. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class TextDoorsTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor ALMA =
            new Actor("doors-alma", "Alma", Set.of(Role.TECHNICIAN, Role.SUPERVISOR, Role.ADMINISTRATOR));

    /** Left of a letter and right of one: in the middle, where trimming does not reach it. */
    private static final List<String> TAKEN =
            List.of("\u007f", "\u0080", "\u0085", "\u009b", "\u2028", "\t", "\n", "\ud83d\udd25");

    private static final List<String> REFUSED = List.of("\u0000", "\u0007", "\u000b", "\u001b", "\u001f");

    /** No form can carry it. */
    private static final String LONE_SURROGATE = "\ud83d";

    /** Escapes what is not ASCII: a lone surrogate has no bytes. */
    private static final ObjectMapper JSON =
            JsonMapper.builder().enable(JsonWriteFeature.ESCAPE_NON_ASCII).build();

    @Inject
    PeopleActs people;

    private String token = "";
    private Browser browser = new Browser();

    @BeforeAll
    void alma() {
        people.ensureAccount(ALMA.account(), ALMA.name(), ALMA.roles(), PASSWORD);
        token = people.createToken(ALMA, "doors", 1).secret();
    }

    @BeforeEach
    void signIn() {
        browser = Browser.signedIn(ALMA.account(), PASSWORD);
        browser.get("/me");
    }

    private RequestSpecification api() {
        return given().header("Authorization", "Bearer " + token).contentType("application/json");
    }

    private Response sends(String path, Map<String, ?> body) {
        return api().body(json(body)).post(path);
    }

    private static String json(Map<String, ?> body) {
        try {
            return JSON.writeValueAsString(body);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    /** As {@link Browser#post}, in the character set of our pages. */
    private Response posts(String path, Map<String, ?> fields) {
        return browser.request()
                .contentType("application/x-www-form-urlencoded; charset=UTF-8")
                .formParams(fields)
                .formParam("csrf-token", browser.formToken())
                .post(path);
    }

    private static Map<String, String> report(String field, String text) {
        Map<String, String> report = new HashMap<>(Map.of(
                "title", "Doors",
                "category", "HEAT",
                "device", "Workstation",
                "place", "Drawing office",
                "requester", "Rae",
                "contact", "room 4",
                "impact", "ONE_PERSON",
                "urgency", "HINDERED"));
        report.put(field, text);
        return report;
    }

    private String ticket() {
        return sends("/api/tickets", report("title", "Doors")).jsonPath().getString("number");
    }

    private Response fact(String text) {
        return api().header("If-Match", "\"1\"")
                .body(json(Map.of("kind", "symptom-recorded", "words", text, "observable", "Goes dark")))
                .post("/api/tickets/" + ticket() + "/acts");
    }

    private Response symptomForm(String text) {
        return posts(
                "/tickets/" + ticket() + "/identify",
                Map.of("version", "1", "symptom.words", text, "symptom.observable", "Goes dark"));
    }

    private Response knowledge(String text) {
        return api().header("If-Match", "\"1\"")
                .body(json(Map.of("kind", "flag", "reason", text)))
                .post("/api/knowledge/999999999/acts");
    }

    private static String fresh(String prefix) {
        return prefix + UUID.randomUUID().toString().substring(0, 8);
    }

    private Map<String, Function<String, Response>> programs() {
        Map<String, Function<String, Response>> doors = new LinkedHashMap<>();
        doors.put("report title", text -> sends("/api/tickets", report("title", text)));
        doors.put("report words", text -> sends("/api/tickets", report("words", text)));
        doors.put("report requester", text -> sends("/api/tickets", report("requester", text)));
        doors.put("fact", this::fact);
        doors.put("knowledge", this::knowledge);
        doors.put("catalogue", text -> sends("/api/catalogue/versions/1/restoration", Map.of("base", 0, "note", text)));
        doors.put(
                "account",
                text -> sends(
                        "/api/people",
                        Map.of("login", fresh("d"), "name", text, "roles", List.of("TRAINEE"), "password", PASSWORD)));
        return doors;
    }

    private Map<String, Function<String, Response>> pages() {
        Map<String, Function<String, Response>> doors = new LinkedHashMap<>();
        doors.put("report form", text -> posts("/new-ticket", report("contact", text)));
        doors.put("fact form", this::symptomForm);
        doors.put(
                "limit form",
                text -> posts(
                        "/limits",
                        Map.of(
                                "id", fresh("doors-"),
                                "quantity", "Rail",
                                "unit", "V",
                                "upper", "40",
                                "source", "policy",
                                "note", text)));
        doors.put(
                "account form",
                text -> posts(
                        "/people",
                        Map.of("login", fresh("d"), "name", text, "roles", "trainee", "password", PASSWORD)));
        doors.put("practice job of a mentor", text -> posts("/own-jobs", Map.of("text", "# " + text)));
        doors.put("erasing form", text -> posts("/tickets/" + ticket() + "/erasing", Map.of("reason", text)));
        doors.put("mending form", text -> {
            String broken = ticket();
            Tampering.run(
                    "delete from trail_entry where ticket = ?",
                    TicketNumber.parse(broken).serial());
            return browser.request()
                    .multiPart("csrf-token", browser.formToken())
                    .multiPart(new MultiPartSpecBuilder(text)
                            .controlName("reason")
                            .charset(StandardCharsets.UTF_8)
                            .build())
                    .post("/tickets/" + broken + "/mending");
        });
        doors.put(
                "frozen limits",
                text -> posts(
                        "/figures/baselines",
                        Map.of("first", "2026-01-01", "last", "2026-01-31", "rules", "USUAL", "reason", text)));
        doors.put(
                "frozen limits of weeks",
                text -> posts(
                        "/figures/week-baselines",
                        Map.of("weeksFirst", "2026-01-01", "weeksLast", "2026-01-31", "weeksReason", text)));
        doors.put(
                "token form",
                text -> posts("/me/tokens", Map.of("name", text, "days", "1", "present", PASSWORD, "scope", "READ")));
        doors.put(
                "read-in",
                text -> given().header("Authorization", "Bearer " + token)
                        .queryParam("device", text)
                        .queryParam("quantity", "temperature")
                        .queryParam("unit", "Cel")
                        .contentType("text/plain")
                        .body("0 20\n1 21\n2 22\n3 23")
                        .post("/api/read-in/series"));
        return doors;
    }

    /** The doors where it was otherwise; what else a door may mind, such as a version, is no matter of the text. */
    private static void check(Map<String, Function<String, Response>> doors, List<String> marks, boolean refused) {
        Map<String, String> otherwise = new TreeMap<>();
        for (String mark : marks) {
            doors.forEach((door, send) -> {
                Response answer = send.apply("a" + mark + "b");
                String said = answer.asString();
                boolean minded = answer.statusCode() == 422
                        && (said.contains(PlainText.WHAT_TO_DO) || said.contains("\"field\":\"note\""));
                if (minded != refused || answer.statusCode() >= 500) {
                    otherwise.put(
                            door + String.format(" U+%04X", mark.codePointAt(0)),
                            answer.statusCode() + ": " + answer.asString());
                }
            });
        }
        assertEquals(Map.of(), otherwise);
    }

    @Test
    void whatAFactTakes_everyDoorTakes() {
        check(programs(), TAKEN, false);
        check(pages(), TAKEN, false);
    }

    @Test
    void whatAFactRefuses_everyDoorRefuses() {
        check(programs(), REFUSED, true);
        check(programs(), List.of(LONE_SURROGATE), true);
        check(pages(), REFUSED, true);
    }

    @Test
    void addressesAndSearches_neverStumbleOverText() {
        for (String path : List.of(
                "/api/people/a%00b", "/api/people?search=%00", "/api/people?after=%00", "/api/knowledge?q=%00")) {
            int status = given().urlEncodingEnabled(false)
                    .header("Authorization", "Bearer " + token)
                    .get(path)
                    .statusCode();
            assertEquals(path.contains("?") ? 422 : 404, status, path);
        }
        Browser stranger = new Browser();
        stranger.get("/sign-in");
        assertEquals(
                401,
                stranger.post("/sign-in", Map.of("login", "a\u0000b", "password", "wrong", "to", "/"))
                        .statusCode());
        assertEquals(
                404,
                browser.post("/limits/a%00b/offer", Map.of("offered", "false")).statusCode());
    }
}

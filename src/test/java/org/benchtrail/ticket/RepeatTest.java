package org.benchtrail.ticket;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A request that is sent again, because its answer got lost, is done once. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class RepeatTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor RENA = new Actor("again-rena", "Rena", Set.of(Role.TECHNICIAN));
    private static final Actor OLAF = new Actor("again-olaf", "Olaf", Set.of(Role.TECHNICIAN));
    private static final String SYMPTOM =
            "{\"kind\":\"symptom-recorded\",\"words\":\"%s\",\"observable\":\"Goes dark\"}";

    @Inject
    PeopleActs people;

    private final String key = UUID.randomUUID().toString();
    private String rena = "";
    private String olaf = "";

    @BeforeEach
    void tokens() {
        people.ensureAccount(RENA.account(), RENA.name(), RENA.roles(), PASSWORD);
        people.ensureAccount(OLAF.account(), OLAF.name(), OLAF.roles(), PASSWORD);
        rena = people.createToken(RENA, "again", 1).secret();
        olaf = people.createToken(OLAF, "again", 1).secret();
    }

    private static RequestSpecification as(String token) {
        return given().header("Authorization", "Bearer " + token).contentType("application/json");
    }

    private static Map<String, String> report(String title) {
        return Map.of(
                "title", title,
                "category", "HEAT",
                "device", "Workstation",
                "place", "Drawing office",
                "requester", "Rae",
                "contact", "room 4",
                "impact", "ONE_PERSON",
                "urgency", "HINDERED");
    }

    private Response opens(String token, String title) {
        return as(token).header("Idempotency-Key", key).body(report(title)).post("/api/tickets");
    }

    private Response acts(String number, int version, String words) {
        return as(rena).header("Idempotency-Key", key)
                .header("If-Match", "\"" + version + "\"")
                .body(SYMPTOM.formatted(words))
                .post("/api/tickets/" + number + "/acts");
    }

    private static String number(Response opened) {
        assertEquals(201, opened.statusCode(), opened.asString());
        return opened.jsonPath().getString("number");
    }

    @Test
    void openedAgain_isTheSameTicket_withTheSameAnswer() {
        Response first = opens(rena, "Once");
        Response second = opens(rena, "Once");
        assertEquals(number(first), number(second));
        assertEquals(first.asString(), second.asString());
        assertEquals(first.header("Location"), second.header("Location"));
        assertEquals(first.header("ETag"), second.header("ETag"));
        assertEquals(first.contentType(), second.contentType());
    }

    @Test
    void openedAtOnce_isOneTicket() {
        List<CompletableFuture<String>> tries = Stream.generate(
                        () -> CompletableFuture.supplyAsync(() -> number(opens(rena, "At once"))))
                .limit(6)
                .toList();
        assertEquals(1, tries.stream().map(CompletableFuture::join).distinct().count());
    }

    @Test
    void actSentAgain_answersWhatHappened_notThatItIsStale() {
        String number = number(as(rena).body(report("Act")).post("/api/tickets"));
        Response first = acts(number, 1, "It hums");
        assertEquals(200, first.statusCode(), first.asString());
        Response second = acts(number, 1, "It hums");
        assertEquals(200, second.statusCode(), second.asString());
        assertEquals(first.asString(), second.asString());
        assertEquals(412, acts2(number, 1, "It hums").statusCode(), "another key is another request");
    }

    private Response acts2(String number, int version, String words) {
        return as(rena).header("Idempotency-Key", UUID.randomUUID().toString())
                .header("If-Match", "\"" + version + "\"")
                .body(SYMPTOM.formatted(words))
                .post("/api/tickets/" + number + "/acts");
    }

    @Test
    void refusalSentAgain_isOneEntry() {
        String number = number(as(rena).body(report("Refused")).post("/api/tickets"));
        String advance = "{\"kind\":\"advanced\"}";
        Response first = as(rena).header("Idempotency-Key", key)
                .header("If-Match", "\"1\"")
                .body(advance)
                .post("/api/tickets/" + number + "/acts");
        Response second = as(rena).header("Idempotency-Key", key)
                .header("If-Match", "\"1\"")
                .body(advance)
                .post("/api/tickets/" + number + "/acts");
        assertEquals(409, first.statusCode());
        assertEquals(first.asString(), second.asString());
        assertEquals("application/problem+json", second.contentType().split(";")[0]);
    }

    @Test
    void sameKeyForSomethingElse_isRefused_andOfSomebodyElse_isAnotherRequest() {
        String number = number(opens(rena, "Mine"));
        Response other = opens(rena, "Another");
        assertEquals(422, other.statusCode());
        assertEquals("Idempotency-Key", other.jsonPath().getString("errors[0].field"));
        assertNotEquals(number, number(opens(olaf, "Mine")), "a key is its sender's own");
    }

    @Test
    void malformed_keepsNoAnswer_andAKeyThatIsNone_isRefused() {
        assertEquals(422, opens(rena, "").statusCode());
        assertEquals(201, opens(rena, "Put right").statusCode());
        assertEquals(
                422,
                as(rena).header("Idempotency-Key", "k".repeat(101))
                        .body(report("Long key"))
                        .post("/api/tickets")
                        .statusCode());
    }

    @Test
    void keptForADay() {
        String number = number(opens(rena, "Yesterday"));
        TestDatabase.run("update kept_answer set made = made - interval '25 hours' where key = ?", key);
        assertNotEquals(number, number(opens(rena, "Yesterday")));
    }

    @Test
    void formSentTwice_isOneTicket_withOtherContentsAnother() {
        Browser browser = Browser.signedIn(RENA.account(), PASSWORD);
        browser.get("/new-ticket");
        Map<String, String> form = new HashMap<>(report("By form"));
        form.put("csrf-key", key);
        String first = browser.post("/new-ticket", form).header("Location");
        assertEquals(first, browser.post("/new-ticket", form).header("Location"));
        form.put("title", "Another by form");
        assertNotEquals(first, browser.post("/new-ticket", form).header("Location"));
    }

    @Test
    void sheetFormSentTwice_leadsOn_andIsNotStale() {
        String number = number(as(rena).body(report("Sheet")).post("/api/tickets"));
        Browser browser = Browser.signedIn(RENA.account(), PASSWORD);
        String page = browser.get("/tickets/" + number).asString();
        assertEquals(true, page.contains("name=\"csrf-key\" value=\""), "every form has a key");
        Map<String, String> form =
                Map.of("version", "1", "symptom.words", "It hums", "symptom.observable", "Goes dark", "csrf-key", key);
        assertEquals(303, browser.post("/tickets/" + number + "/identify", form).statusCode());
        assertEquals(303, browser.post("/tickets/" + number + "/identify", form).statusCode());
        assertEquals(2, as(rena).get("/api/tickets/" + number).jsonPath().getInt("version"), "recorded once");
    }

    @Test
    void fileSentTwiceByItsForm_isOneEntry() {
        String number = number(as(rena).body(report("Sheet with a file")).post("/api/tickets"));
        Browser browser = Browser.signedIn(RENA.account(), PASSWORD);
        for (int i = 0; i < 2; i++) {
            Response answer = browser.request()
                    .multiPart("csrf-token", browser.formToken())
                    .multiPart("csrf-key", key)
                    .multiPart("version", "1")
                    .multiPart("shows", "The label")
                    .multiPart("file", "label.txt", "12 V".getBytes(StandardCharsets.US_ASCII))
                    .post("/tickets/" + number + "/attachments");
            assertEquals(303, answer.statusCode(), answer.asString());
        }
        assertEquals(2, as(rena).get("/api/tickets/" + number).jsonPath().getInt("version"), "recorded once");
    }
}

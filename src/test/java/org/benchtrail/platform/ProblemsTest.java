package org.benchtrail.platform;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class ProblemsTest {
    private static final String TYPE = "urn:benchtrail:problem:";

    private static JsonPath api(Response answer, int status, String code) {
        assertEquals(status, answer.statusCode());
        assertEquals("application/problem+json", answer.contentType().split(";")[0]);
        JsonPath json = answer.jsonPath();
        assertEquals(TYPE + code, json.getString("type"));
        assertEquals(status, json.getInt("status"));
        assertNotNull(json.getString("title"));
        assertNotNull(json.getString("detail"));
        assertNotNull(json.getString("reference"));
        return json;
    }

    /** A browser's Accept header takes anything; the path decides. */
    private static String page(Response answer, int status) {
        assertEquals(status, answer.statusCode());
        assertEquals("text/html;charset=UTF-8", answer.contentType());
        String html = answer.asString();
        for (String heading : List.of("What happened", "What was kept", "What to do next", "Reference")) {
            assertTrue(html.contains(heading), heading);
        }
        return html;
    }

    @ParameterizedTest
    @CsvSource({
        "invalid,422,422,invalid-input",
        "not-found,404,404,not-found",
        "forbidden,403,403,forbidden",
        "stale,412,409,stale",
        "optimistic,412,409,stale",
        "failed,500,500,failed",
        "teapot,418,418,refused"
    })
    void everyKind_hasTwoRenderers(String kind, int apiStatus, int pageStatus, String code) {
        api(given().get("/api/test-problems/" + kind), apiStatus, code);
        page(given().accept("text/html,application/json,*/*").get("/test-problems/" + kind), pageStatus);
    }

    @Test
    void invalid_namesEveryField() {
        JsonPath json = api(given().get("/api/test-problems/invalid"), 422, "invalid-input");
        assertEquals(List.of("loads[1].watts", "hours"), json.getList("errors.field"));
        assertEquals("Enter the hours.", json.getString("errors[1].sentence"));
        String html = page(given().get("/test-problems/invalid"), 422);
        assertTrue(html.contains("Enter at least 0 W, not &lt;-3&gt;."), html);
    }

    @Test
    void stale_showsWhatIsStored() {
        JsonPath json = api(given().get("/api/test-problems/stale"), 412, "stale");
        assertEquals(42, json.getInt("current.number"));
        assertTrue(page(given().get("/test-problems/stale"), 409).contains("42"));
    }

    @Test
    void textFromOutside_isEscaped() {
        String html = page(given().get("/test-problems/not-found"), 404);
        assertTrue(html.contains("&lt;b&gt;7&lt;/b&gt;"), html);
        assertFalse(html.contains("<b>7"));
    }

    @Test
    void tooMany_saysWhenTheNextIsAnswered() {
        Response answer = given().get("/api/test-problems/too-many");
        api(answer, 429, "too-many-requests");
        assertEquals("7", answer.header("Retry-After"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"/api/test-problems/failed", "/test-problems/failed", "/api/test-problems/optimistic"})
    void innerMatters_stayInside(String path) {
        String body = given().get(path).asString();
        assertFalse(body.contains("secret"), body);
        assertFalse(body.contains("Exception"), body);
        assertFalse(body.contains("org.benchtrail"), body);
    }

    @Test
    void failure_isLoggedUnderItsReference() {
        try (LogEar ear = new LogEar()) {
            String reference =
                    given().get("/api/test-problems/failed").jsonPath().getString("reference");
            assertTrue(ear.text().contains("reference " + reference + ": GET /api/test-problems/failed"), ear.text());
        }
    }

    private static Response send(String json) {
        return given().contentType("application/json").body(json).post("/api/test-problems/json");
    }

    @Test
    void brokenJson_namesThePlace() {
        JsonPath broken = api(send("{\n  \"volts\": 4.9,\n  oops\n}"), 400, "malformed-request");
        assertTrue(broken.getString("detail").contains("line 3, column"), broken.getString("detail"));
        JsonPath wrongType =
                api(send("{\"inner\": [{\"number\": 1}, {\"number\": \"pw1234\"}]}"), 400, "malformed-request");
        assertTrue(wrongType.getString("detail").contains("inner[1].number"), wrongType.getString("detail"));
        assertFalse(wrongType.getString("detail").contains("pw1234"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "null"})
    void missingBody_isInvalid(String body) {
        assertEquals(List.of("body"), api(send(body), 422, "invalid-input").getList("errors.field"));
    }

    @Test
    void unknownAddress_isNotFound() {
        api(given().get("/api/no/such"), 404, "not-found");
        page(given().get("/no/such"), 404);
    }

    @Test
    void wrongMethodAndType_areTold() {
        api(given().delete("/api/test-problems/json"), 405, "method-not-allowed");
        api(given().contentType("text/plain").body("x").post("/api/test-problems/json"), 415, "media-type");
    }

    @ParameterizedTest
    @ValueSource(strings = {"/sign-in", "/me", "/api/me", "/no/such", "/test-problems/failed", "/q/openapi"})
    void headers_areOnEveryAnswer(String path) {
        Response answer = given().redirects().follow(false).get(path);
        String policy = answer.header("Content-Security-Policy");
        assertTrue(policy.startsWith("default-src 'self';"), policy);
        assertTrue(policy.contains("frame-ancestors 'none'"), policy);
        assertFalse(policy.contains("unsafe-inline"), policy);
        assertEquals("nosniff", answer.header("X-Content-Type-Options"));
        assertEquals("same-origin", answer.header("Referrer-Policy"));
        if (!path.startsWith("/q/")) {
            assertEquals("no-store", answer.header("Cache-Control"));
        }
    }

    @Test
    void tooLargeABody_isRefused() throws IOException, InterruptedException {
        int status;
        try {
            status = sends(26).statusCode();
        } catch (IOException closedWhileSending) {
            status = 413;
        }
        assertEquals(413, status);
        assertEquals("bytes " + 24 * 1024 * 1024, sends(24).body());
    }

    private static HttpResponse<String> sends(int megabytes) throws IOException, InterruptedException {
        URI at = URI.create("http://localhost:" + RestAssured.port + "/api/test-problems/bytes");
        return HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(at)
                                .header("Content-Type", "image/png")
                                .POST(HttpRequest.BodyPublishers.ofByteArray(new byte[megabytes * 1024 * 1024]))
                                .build(),
                        HttpResponse.BodyHandlers.ofString());
    }
}

package org.benchtrail.platform;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.Cookie;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import org.benchtrail.people.Browser;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every form of a page needs the token of a page, whatever shape its endpoint has. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class FormsTest {
    private final Browser browser = new Browser();

    @BeforeEach
    void page() {
        browser.get("/sign-in");
    }

    private RequestSpecification form() {
        return browser.request().formParam("b", "2").formParam("a", "1", "3");
    }

    private static void assertFormRefused(Response answer) {
        assertEquals(400, answer.statusCode());
        assertTrue(answer.contentType().startsWith("text/html"), answer.contentType());
        assertTrue(answer.asString().contains("This form was not accepted"), answer.asString());
    }

    @Test
    void anyForm_withTheToken_reachesTheMap() {
        String answer = form().formParam("csrf-token", browser.formToken())
                .post("/test-forms/any")
                .asString();
        assertEquals("{a=[1, 3], b=[2], csrf-token=[" + browser.formToken() + "]}", answer);
    }

    @ParameterizedTest
    @ValueSource(strings = {"any", "unconstrained", "nothing", "file", "parts"})
    void form_withoutTheToken_isRefused(String path) {
        RequestSpecification sent = path.equals("file") || path.equals("parts")
                ? browser.request().multiPart("note", "n").multiPart("picture", "p.png", new byte[] {1})
                : form();
        assertFormRefused(sent.post("/test-forms/" + path));
    }

    @ParameterizedTest
    @ValueSource(strings = {"any", "unconstrained", "nothing"})
    void form_withAnotherToken_isRefused(String path) {
        Browser other = new Browser();
        other.get("/sign-in");
        assertFormRefused(form().formParam("csrf-token", other.formToken()).post("/test-forms/" + path));
    }

    @Test
    void form_withTheTokenAndNoCookie_isRefused() {
        assertFormRefused(given().formParam("csrf-token", browser.formToken()).post("/test-forms/any"));
    }

    @Test
    void form_withATokenInTheAddress_isRefused() {
        assertFormRefused(form().post("/test-forms/any?csrf-token=" + browser.formToken()));
    }

    @Test
    void form_withABrokenCookie_isRefused() {
        assertFormRefused(
                given().cookie("csrf-token", "x").formParam("csrf-token", "x").post("/test-forms/any"));
    }

    @ParameterizedTest
    @CsvSource({"nothing,text/plain", "unconstrained,text/plain", "unconstrained,application/json", "any,text/plain"})
    void bodyThatIsNoForm_isRefusedByPages(String path, String type) {
        Response answer = browser.request().contentType(type).body("a=1").post("/test-forms/" + path);
        assertTrue(answer.statusCode() == 400 || answer.statusCode() == 415, () -> "was " + answer.statusCode());
        assertFalse(answer.asString().startsWith("reached"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"nothing", "unconstrained"})
    void noBodyAtAll_isRefusedByPages(String path) {
        assertFormRefused(browser.request().post("/test-forms/" + path));
    }

    /** REST Assured always names a content type; the JDK's client names none here. */
    @ParameterizedTest
    @ValueSource(strings = {"any", "nothing", "unconstrained"})
    void noContentType_isRefusedByPages(String path) throws Exception {
        URI address = URI.create("http://localhost:" + io.restassured.RestAssured.port + "/test-forms/" + path);
        HttpRequest request = HttpRequest.newBuilder(address)
                .header("Cookie", "csrf-token=" + browser.cookie("csrf-token"))
                .POST(HttpRequest.BodyPublishers.noBody())
                .build();
        HttpResponse<String> answer = HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
        assertEquals(400, answer.statusCode());
        assertTrue(answer.body().contains("This form was not accepted"), answer.body());
    }

    @Test
    void tokenInTheHeader_isTakenAsWell() {
        Response answer =
                browser.request().header("X-CSRF-TOKEN", browser.formToken()).post("/test-forms/nothing");
        assertEquals("reached", answer.asString());
        assertEquals(
                400,
                browser.request()
                        .header("X-CSRF-TOKEN", "x")
                        .post("/test-forms/nothing")
                        .statusCode());
    }

    @Test
    void multipart_withTheToken_arrivesWhole() {
        RequestSpecification file = browser.request()
                .multiPart("csrf-token", browser.formToken())
                .multiPart("note", "burnt smell")
                .multiPart("picture", "p.png", new byte[300_000]);
        assertEquals("burnt smell: 300000", file.post("/test-forms/file").asString());
        RequestSpecification parts = browser.request()
                .multiPart("csrf-token", browser.formToken())
                .multiPart("picture", "p.png", new byte[10]);
        assertEquals("[csrf-token, picture]", parts.post("/test-forms/parts").asString());
    }

    @Test
    void longText_isTaken() {
        Response answer = browser.request()
                .formParam("csrf-token", browser.formToken())
                .formParam("log", "x".repeat(900_000))
                .post("/test-forms/any");
        assertEquals(200, answer.statusCode());
        assertTrue(answer.asString().length() > 900_000);
    }

    @Test
    void tokenCookie_lastsThirtyDays_outOfReachOfScripts() {
        Cookie cookie = new Browser().get("/sign-in").detailedCookies().get("csrf-token");
        assertEquals(30 * 24 * 3600, cookie.getMaxAge());
        assertTrue(cookie.isHttpOnly());
        assertEquals("Lax", cookie.getSameSite());
    }

    @Test
    void token_staysTheSameFromPageToPage_soThatSeveralWindowsWork() {
        String first = browser.formToken();
        browser.get("/sign-in");
        assertEquals(first, browser.formToken());
    }

    @Test
    void api_takesJsonAndBytesWithoutAToken_butNoForm() {
        assertEquals(
                200,
                given().contentType("application/json")
                        .body("{\"volts\": 4.9}")
                        .post("/api/test-problems/json")
                        .statusCode());
        assertEquals(
                "bytes 3",
                given().contentType("image/png")
                        .body(new byte[3])
                        .post("/api/test-problems/bytes")
                        .asString());
        Response form = given().formParam("a", "1").post("/api/test-problems/bytes");
        assertEquals(415, form.statusCode());
        assertEquals("urn:benchtrail:problem:media-type", form.jsonPath().getString("type"));
        Response multipart = given().multiPart("a", "1").post("/api/test-problems/bytes");
        assertEquals(415, multipart.statusCode());
    }
}

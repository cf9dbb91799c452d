package org.benchtrail.ticket;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a program is told that asks a little wrongly. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class ApiEdgesTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor EDDA =
            new Actor("edge-edda", "Edda", Set.of(Role.TECHNICIAN, Role.SUPERVISOR, Role.ADMINISTRATOR));
    private static final String REPORT =
            "{'title':'Edge','words':'','category':'HEAT','device':'W','place':'P','requester':'R','contact':'c',"
                    + "'impact':'ONE_PERSON','urgency':'HINDERED'}";

    @Inject
    PeopleActs people;

    private String token = "";

    @BeforeEach
    void makeToken() {
        people.ensureAccount(EDDA.account(), EDDA.name(), EDDA.roles(), PASSWORD);
        token = people.createToken(EDDA, "edges", 1).secret();
    }

    private RequestSpecification api() {
        return given().header("Authorization", "Bearer " + token).contentType("application/json");
    }

    private Response opens(String report) {
        return api().body(report.replace('\'', '"')).post("/api/tickets");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'title':'Edge' | 'title':'Edge','titel':'x' | titel",
                "'title':'Edge' | 'title':'Edge','title':'Other' | body",
                "'title':'Edge' | 'title':7 | title",
                "'impact':'ONE_PERSON' | 'impact':0 | impact",
                "'urgency':'HINDERED' | 'urgency':'HINDERED','queued':'true' | queued",
                "'urgency':'HINDERED' | 'urgency':'HINDERED','queued':1 | queued"
            },
            quoteCharacter = '~')
    void bodyThatIsNotStrictlyRight_is400_withItsPlace(String right, String wrong, String field) {
        Response answer = opens(REPORT.replace(right, wrong));
        assertEquals(400, answer.statusCode(), answer.asString());
        assertEquals(
                "urn:benchtrail:problem:malformed-request", answer.jsonPath().getString("type"));
        assertEquals(List.of(field), answer.jsonPath().getList("errors.field"));
    }

    @Test
    void somethingAfterTheEnd_is400() {
        assertEquals(400, opens(REPORT + "{}").statusCode());
        assertEquals(201, opens(REPORT).statusCode());
    }

    @Test
    void nullInAList_is400_withItsPlace() {
        Response answer = api().body("{\"roles\":[null]}").put("/api/people/" + EDDA.account() + "/roles");
        assertEquals(400, answer.statusCode(), answer.asString());
        assertTrue(answer.jsonPath().getString("errors[0].field").startsWith("roles"), answer.asString());
    }

    @Test
    void withoutIfMatch_is428() {
        String number = opens(REPORT).jsonPath().getString("number");
        Response answer = api().body("{\"kind\":\"advanced\"}").post("/api/tickets/" + number + "/acts");
        assertEquals(428, answer.statusCode());
        assertEquals("urn:benchtrail:problem:version-needed", answer.jsonPath().getString("type"));
    }

    @Test
    void parameterThatNobodyReads_is400_andSoIsOneThatDoesNotFit() {
        Response unknown = api().get("/api/tickets?standng=CLOSED&size=3");
        assertEquals(400, unknown.statusCode());
        assertEquals(List.of("standng"), unknown.jsonPath().getList("errors.field"));
        assertEquals(400, api().get("/api/tickets?size=many").statusCode());
        assertEquals(400, api().get("/api/tickets?standing=AJAR").statusCode());
        assertEquals(200, api().get("/api/tickets?standing=CLOSED&size=3").statusCode());
    }

    @Test
    void pathWithParametersOfItsOwn_is400() {
        assertEquals(
                400, api().urlEncodingEnabled(false).get("/api/tickets;a=b").statusCode());
        assertEquals(400, api().urlEncodingEnabled(false).get("/api;/people").statusCode());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "DELETE | /api/tickets | GET,HEAD,OPTIONS,POST",
                "GET | /api/tickets/40718-6/acts | OPTIONS,POST",
                "PUT | /api/tickets/40718-6/attachments | OPTIONS,POST",
                "POST | /api/people/somebody | GET,HEAD,OPTIONS",
                "GET | /api/people/somebody/roles | OPTIONS,PUT",
                "PATCH | /api/devices/w | GET,HEAD,OPTIONS,PUT",
                "POST | /queue | GET,HEAD,OPTIONS",
                "DELETE | /sign-in | GET,HEAD,OPTIONS,POST"
            })
    void methodThatIsNotThere_is405_andTheOthersAreNamed(String method, String path, String allowed) {
        Response answer = api().contentType("application/x-www-form-urlencoded")
                .header("X-CSRF-TOKEN", "x")
                .request(method, path);
        if (path.startsWith("/api")) {
            answer = api().request(method, path);
        }
        assertEquals(405, answer.statusCode());
        assertEquals(allowed, answer.header("Allow").replace(" ", ""));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/api/me",
                "/api/people/edge-edda",
                "/api/tickets/{n}",
                "/api/bench/soak",
                "/api/site/policies",
                "/api/tickets/{n}/trail"
            })
    void unchangedAnswer_isNotSentAgain(String path) {
        String at = path.replace("{n}", opens(REPORT).jsonPath().getString("number"));
        Response first = api().get(at);
        assertEquals(200, first.statusCode(), first.asString());
        String tag = first.header("ETag");
        assertEquals("attachment; filename=\"answer.json\"", first.header("Content-Disposition"));
        Response again = api().header("If-None-Match", "\"other\", W/" + tag).get(at);
        assertEquals(304, again.statusCode());
        assertEquals("", again.asString());
        assertEquals(tag, again.header("ETag"));
        assertEquals(200, api().header("If-None-Match", "\"other\"").get(at).statusCode());
    }

    @Test
    void sheetThatSaysSomethingElse_hasAnotherTag_thoughItsVersionIsTheSame() throws SQLException {
        String alike = REPORT.replace("'Edge'", "'Quixotrope hums'").replace("'HEAT'", "'" + withoutKnownCause() + "'");
        String at = "/api/tickets/" + opens(alike).jsonPath().getString("number");
        String tag = api().get(at).header("ETag");
        opens(alike);
        Response later = api().header("If-None-Match", tag).get(at);
        assertEquals(200, later.statusCode());
        assertEquals(1, later.jsonPath().getInt("version"));
    }

    /** A kind of trouble for which other tests have left no known cause to look at. */
    private static String withoutKnownCause() throws SQLException {
        Set<String> known = new HashSet<>();
        try (Connection owner = TestDatabase.owner();
                ResultSet rows = owner.createStatement().executeQuery("select category from known_cause")) {
            while (rows.next()) {
                known.add(rows.getString(1));
            }
        }
        return Stream.of(Category.values())
                .map(Category::name)
                .filter(category -> !known.contains(category))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void tagOfWhatWasRead_servesAsIfMatch() {
        String number = opens(REPORT).jsonPath().getString("number");
        String tag = api().get("/api/tickets/" + number).header("ETag");
        assertTrue(tag.startsWith("\"1-"), tag);
        assertEquals(200, acts(number, tag, ApiDesk.ONSET).statusCode());
        assertEquals(412, acts(number, tag, ApiDesk.ONSET).statusCode());
    }

    private Response acts(String number, String tag, String body) {
        return api().header("If-Match", tag).body(body).post("/api/tickets/" + number + "/acts");
    }

    @Test
    void fileIsGivenOut_wholeOrInParts_underItsNameAndType() {
        String number = opens(REPORT).jsonPath().getString("number");
        byte[] content = "0123456789".getBytes(StandardCharsets.US_ASCII);
        String sha256 = api().header("If-Match", "\"1\"")
                .contentType("text/csv")
                .body(content)
                .urlEncodingEnabled(false)
                .post("/api/tickets/" + number + "/attachments?shows=Load&fileName=%C3%96lil%20%22x%22.csv")
                .jsonPath()
                .getString("facts.find { it.fact.kind == 'attachment-added' }.fact.sha256");
        String at = "/api/tickets/" + number + "/attachments/" + sha256;
        Response whole = api().get(at);
        assertEquals("0123456789", whole.asString());
        assertEquals("text/csv", whole.contentType().split(";")[0]);
        assertEquals("attachment; filename*=UTF-8''%C3%96lil%20%22x%22.csv", whole.header("Content-Disposition"));
        assertEquals("bytes", whole.header("Accept-Ranges"));
        String tag = whole.header("ETag");
        Response part = api().header("Range", "bytes=2-4").get(at);
        assertEquals(206, part.statusCode());
        assertEquals("234", part.asString());
        assertEquals("bytes 2-4/10", part.header("Content-Range"));
        Response beyond = api().header("Range", "bytes=10-").get(at);
        assertEquals(416, beyond.statusCode());
        assertEquals("bytes */10", beyond.header("Content-Range"));
        assertEquals("urn:benchtrail:problem:range-not-there", beyond.jsonPath().getString("type"));
        assertEquals(
                206,
                api().header("Range", "bytes=2-4")
                        .header("If-Range", tag)
                        .get(at)
                        .statusCode());
        assertEquals(
                200,
                api().header("Range", "bytes=2-4")
                        .header("If-Range", "\"x\"")
                        .get(at)
                        .statusCode());
        assertEquals(304, api().header("If-None-Match", tag).get(at).statusCode());
    }

    @Test
    void whoMayNot_isTold_beforeTheBodyHasCome() throws IOException {
        people.ensureAccount("edge-ada", "Ada", Set.of(Role.ADMINISTRATOR), PASSWORD);
        String ada = people.createToken(new Actor("edge-ada", "Ada", Set.of(Role.ADMINISTRATOR)), "edges", 1)
                .secret();
        String head = "POST /api/tickets HTTP/1.1\r\nHost: localhost\r\nAuthorization: Bearer " + ada
                + "\r\nContent-Type: application/json\r\nContent-Length: 1000\r\n\r\n";
        try (Socket socket = new Socket("localhost", RestAssured.port)) {
            socket.setSoTimeout(5_000);
            socket.getOutputStream().write(head.getBytes(StandardCharsets.US_ASCII));
            byte[] begun = socket.getInputStream().readNBytes(12);
            assertEquals("HTTP/1.1 403", new String(begun, StandardCharsets.US_ASCII));
        }
    }

    /** What a page weighs would tell, guess by guess, what its form's token is, if it held words of a stranger beside it. */
    @Test
    void answersToPrograms_areCompressed_pagesAreNot() throws Exception {
        for (String path : List.of("/api/bench", "/css/base.css")) {
            HttpResponse<byte[]> answer = raw(path, "gzip");
            assertEquals(200, answer.statusCode(), path);
            assertEquals("gzip", answer.headers().firstValue("Content-Encoding").orElse("none"), path);
            byte[] opened = new GZIPInputStream(new ByteArrayInputStream(answer.body())).readAllBytes();
            assertArrayEquals(raw(path, "identity").body(), opened, path);
        }
        assertNotEquals(Optional.of("gzip"), raw("/sign-in", "gzip").headers().firstValue("Content-Encoding"));
    }

    private HttpResponse<byte[]> raw(String path, String coding) throws IOException, InterruptedException {
        return HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(URI.create("http://localhost:" + RestAssured.port + path))
                                .header("Authorization", "Bearer " + token)
                                .header("Accept-Encoding", coding)
                                .build(),
                        HttpResponse.BodyHandlers.ofByteArray());
    }
}

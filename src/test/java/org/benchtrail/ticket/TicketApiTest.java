package org.benchtrail.ticket;

import static io.restassured.RestAssured.given;
import static org.benchtrail.ticket.ApiDesk.ADVANCE;
import static org.benchtrail.ticket.ApiDesk.OBVIOUS;
import static org.benchtrail.ticket.ApiDesk.ONSET;
import static org.benchtrail.ticket.ApiDesk.reading;
import static org.benchtrail.ticket.ApiDesk.tree;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Tickets over the API, as a program sees them. In the end every trail of these tests is read again and held to its word. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class TicketApiTest {
    private static final String PASSWORD = "a long enough password";

    @Inject
    PeopleActs people;

    private final Map<String, String> tokens = new HashMap<>();
    private final Set<String> opened = new TreeSet<>();

    @BeforeAll
    void people() {
        person("api-ines", Role.TECHNICIAN);
        person("api-ole", Role.TECHNICIAN);
        person("api-tom", Role.TRAINEE);
        person("api-marek", Role.MENTOR);
        person("api-sue", Role.SUPERVISOR);
    }

    private void person(String login, Role role) {
        people.ensureAccount(login, login, Set.of(role), PASSWORD);
        tokens.put(
                login,
                people.createToken(new Actor(login, login, Set.of(role)), "api", 1)
                        .secret());
    }

    private io.restassured.specification.RequestSpecification as(String login) {
        return given().header("Authorization", "Bearer " + tokens.get(login));
    }

    private static Map<String, Object> report(String title) {
        return new HashMap<>(Map.of(
                "title", title,
                "category", "HEAT",
                "device", "Workstation",
                "place", "Drawing office",
                "requester", "Rae",
                "contact", "room 4",
                "impact", "ONE_PERSON",
                "urgency", "HINDERED"));
    }

    private ApiDesk desk(String title) {
        return desk("api-ines", title);
    }

    private ApiDesk desk(String who, String title) {
        return desk(who, report(title));
    }

    private ApiDesk desk(String who, Map<String, Object> report) {
        ApiDesk desk = new ApiDesk(this::as, who, report);
        opened.add(desk.number);
        return desk;
    }

    private static List<String> fields(Response answer) {
        assertEquals(422, answer.statusCode(), answer.asString());
        assertEquals("application/problem+json", answer.contentType().split(";")[0]);
        return answer.jsonPath().getList("errors.field", String.class);
    }

    // ---- what is answered

    @Test
    void actWithoutTheSheet_isAnsweredByItsVersion_alsoWhenItIsSentAgain() {
        ApiDesk desk = desk("Answers little");
        for (int times = 0; times < 2; times++) {
            Response little = act(desk.number, "return=minimal, wait=5");
            assertEquals(204, little.statusCode(), little.asString());
            assertEquals("\"2\"", little.header("ETag"));
            assertEquals("", little.asString());
        }
        String tag = as("api-ines").get("/api/tickets/" + desk.number).header("ETag");
        assertTrue(tag.startsWith("\"2"), tag);
        Response refused = as("api-ines")
                .contentType("application/json")
                .header("If-Match", "\"2\"")
                .header("Prefer", "return=minimal")
                .body(ApiDesk.ADVANCE)
                .post("/api/tickets/" + desk.number + "/acts");
        assertEquals(409, refused.statusCode());
        assertTrue(refused.jsonPath().getList("missing").size() > 5, "what is missing is told in any case");
        Response whole = act(desk("Answers all").number, "return=representation");
        assertEquals(200, whole.statusCode());
        assertEquals(2, whole.jsonPath().getInt("version"));
    }

    private Response act(String number, String prefer) {
        return as("api-ines")
                .contentType("application/json")
                .header("If-Match", "\"1\"")
                .header("Prefer", prefer)
                .header("Idempotency-Key", "little-" + number)
                .body(ApiDesk.ONSET)
                .post("/api/tickets/" + number + "/acts");
    }

    // ---- the way of a ticket

    @Test
    void wholeJourney_withATheoryRuledOut() {
        desk("Switches off after ten minutes");
        ApiDesk desk = desk("Switches off after ten minutes");
        List<String> missing = desk.refused("api-ines", ADVANCE);
        assertEquals(
                List.of(
                        "symptom-observed",
                        "onset-known",
                        "changes-asked",
                        "scope-known",
                        "reproduced",
                        "hazards-screened",
                        "data-protected",
                        "evidence-attached",
                        "logs-reviewed",
                        "likeness-checked"),
                missing);
        desk.identify();
        assertEquals(
                List.of("simple-things-first", "theory-stated", "theory-chosen"), desk.refused("api-ines", ADVANCE));
        desk.does(OBVIOUS);
        int first = desk.theory("Power supply");
        assertEquals(
                List.of("expectation-first", "result-recorded", "theory-supported"), desk.refused("api-ines", ADVANCE));
        desk.tests(first, "REFUTES");
        assertEquals(List.of("theory-supported"), desk.refused("api-ines", ADVANCE));
        desk.does("{\"kind\":\"ruled-out\"}");
        assertEquals(2, desk.sheet().getInt("course.round"));
        assertEquals("THEORIZE", desk.sheet().getString("course.step"));
        int second = desk.theory("Clogged cooler");
        desk.tests(second, "SUPPORTS");
        desk.does(ADVANCE);
        assertEquals(List.of("action-planned", "maker-consulted"), desk.refused("api-ines", ADVANCE));
        desk.carriesOut(desk.plans());
        assertTrue(desk.refused("api-ines", ADVANCE).contains("readings-back"));
        desk.verifies();
        assertTrue(desk.refused("api-ines", "{\"kind\":\"closed\"}").contains("cause-named"));
        desk.documents();
        desk.does("{\"kind\":\"closed\"}");
        assertEquals("CLOSED", desk.sheet().getString("course.standing"));
        assertEquals(List.of("ticket-closed"), desk.refused("api-ines", ONSET));
        desk.lets("api-sue", "{\"kind\":\"reopened\",\"reason\":\"It is back\"}");
        assertEquals("IDENTIFY", desk.sheet().getString("course.step"));
        assertEquals(3, desk.sheet().getInt("course.round"));
    }

    @Test
    void traineesTicket_needsAMentorTwice() {
        ApiDesk desk = desk("api-tom", "A trainee's ticket");
        desk.identify();
        desk.does(OBVIOUS);
        desk.tests(desk.theory("Clogged cooler"), "SUPPORTS");
        desk.does(ADVANCE);
        int action = desk.plans();
        String settled = "{\"kind\":\"action-settled\",\"action\":" + action + ",\"settlement\":\"CARRIED_OUT\"}";
        String approved = "{\"kind\":\"plan-approved\",\"actions\":[" + action + "]}";
        assertEquals(List.of("plan-approved", "cautions-taken"), desk.refused("api-tom", settled));
        assertEquals(List.of("not-your-role"), desk.refused("api-tom", approved));
        assertEquals(List.of("not-your-role"), desk.refused("api-ole", approved));
        desk.lets("api-marek", approved);
        desk.carriesOut(action);
        desk.verifies();
        desk.documents();
        String mentor = "{\"kind\":\"signed\",\"signatory\":\"MENTOR\"}";
        assertEquals(List.of("mentor-signed"), desk.refused("api-tom", "{\"kind\":\"closed\"}"));
        assertEquals(List.of("not-your-role"), desk.refused("api-tom", mentor));
        desk.lets("api-marek", mentor);
        desk.does("{\"kind\":\"closed\"}");
        assertEquals("CLOSED", desk.sheet().getString("course.standing"));
    }

    @Test
    void waiver_isASupervisorsAndOfAWaivableRequirement() {
        ApiDesk desk = desk("Logs cannot be read");
        String logs = "{\"kind\":\"waived\",\"requirement\":\"logs-reviewed\",\"reason\":\"The disk is gone\"}";
        assertEquals(List.of("not-your-role"), desk.refused("api-ines", logs));
        assertEquals("MISSING", desk.state("logs-reviewed"));
        desk.lets("api-sue", logs);
        assertEquals("WAIVED", desk.state("logs-reviewed"));
        assertEquals(
                List.of("not-waivable"),
                desk.refused(
                        "api-sue", "{\"kind\":\"waived\",\"requirement\":\"onset-known\",\"reason\":\"Why not\"}"));
        assertEquals(List.of("nothing-to-waive"), desk.refused("api-sue", logs));
        String none = "[{\"kind\":\"waived\",\"requirement\":\"no-such\",\"reason\":\"Why not\"}]";
        assertEquals(List.of("requirement"), fields(desk.sends("api-sue", desk.version, none)));
        ApiDesk own = desk("api-sue", "Her own");
        assertEquals(List.of("own-work"), own.refused("api-sue", logs));
    }

    @Test
    void ticketOfSomebodyElse_isNotWorked_butEvidenceIsTaken() {
        ApiDesk desk = desk("Not his");
        assertEquals(List.of("not-yours"), desk.refused("api-ole", ONSET));
        assertEquals(1, desk.entries(), "whom it does not concern leaves no trace on the ticket");
        desk.lets("api-ole", reading("71"));
    }

    @Test
    void handOver_namesSomebodyWhoWorksTickets() {
        ApiDesk desk = desk("Given on");
        assertEquals(
                List.of("to"),
                fields(desk.sends("api-ines", 1, "{\"kind\":\"handed-over\",\"to\":\"nobody-here\",\"note\":\"\"}")));
        String over = "{\"kind\":\"handed-over\",\"to\":\"api-tom\",\"toRoles\":[\"SUPERVISOR\"]}";
        assertEquals(List.of("offer-it"), desk.refused("api-ines", over));
        desk.does("{\"kind\":\"hand-over-offered\",\"to\":\"api-tom\"}");
        assertEquals("api-ines", desk.sheet().getString("course.assignee"));
        assertEquals("api-tom", desk.sheet().getString("course.offered"));
        assertEquals(List.of("not-yours"), desk.refused("api-ole", over));
        desk.lets("api-tom", over);
        assertEquals("api-tom", desk.sheet().getString("course.assignee"));
        assertEquals(List.of("TRAINEE"), desk.sheet().getList("course.assigneeRoles"));
        assertEquals(List.of("not-yours"), desk.refused("api-ines", ONSET));
    }

    // ---- what is refused without a trace

    @ParameterizedTest
    @ValueSource(ints = {0, 2, 99})
    void anotherVersion_is412_andNothingIsRecorded(int version) {
        ApiDesk desk = desk("Stale");
        Response answer = desk.sends("api-ines", version, ONSET);
        assertEquals(412, answer.statusCode(), answer.asString());
        assertEquals("urn:benchtrail:problem:stale", answer.jsonPath().getString("type"));
        assertEquals(1, answer.jsonPath().getInt("current"));
        assertEquals(1, desk.entries());
    }

    @Test
    void missingIfMatch_is428_anOddOne422_andBothSayWhatToDo() {
        ApiDesk desk = desk("No version");
        String path = "/api/tickets/" + desk.number + "/acts";
        Response none =
                as("api-ines").contentType("application/json").body(ONSET).post(path);
        assertEquals(428, none.statusCode());
        assertTrue(none.jsonPath().getString("detail").contains("ETag"));
        for (String odd : List.of("*", "W/\"1\"", "-1", "1.0", "\"99999999999\"", "one")) {
            Response answer = as("api-ines")
                    .header("If-Match", odd)
                    .contentType("application/json")
                    .body(ONSET)
                    .post(path);
            assertEquals(List.of("If-Match"), fields(answer), odd);
        }
        assertEquals(1, desk.entries());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "when | {\"kind\":\"onset-recorded\",\"known\":true}",
                "scope | {\"kind\":\"scope-recorded\"}",
                "scope | {\"kind\":\"scope-recorded\",\"scope\":\"MOON\"}",
                "scope | {\"kind\":\"scope-recorded\",\"scope\":1}",
                "minutes | {\"kind\":\"soak-run\",\"minutes\":\"ten\"}",
                "minutes | {\"kind\":\"soak-run\",\"minutes\":\"10\"}",
                "minutes | {\"kind\":\"soak-run\",\"minutes\":1.5}",
                "minutes | {\"kind\":\"soak-run\",\"minutes\":99999999999}",
                "minutes | {\"kind\":\"soak-run\"}",
                "intermittent | {\"kind\":\"symptom-recorded\",\"words\":\"a\",\"observable\":\"b\",\"intermittent\":\"maybe\"}",
                "intermitent | {\"kind\":\"symptom-recorded\",\"words\":\"a\",\"observable\":\"b\",\"intermitent\":true}",
                "words | {\"kind\":\"symptom-recorded\",\"words\":\"\\u0000\",\"observable\":\"b\"}",
                "words | {\"kind\":\"symptom-recorded\",\"words\":\"\\ud83d\",\"observable\":\"b\"}",
                "causeId | {\"kind\":\"theory-stated\",\"text\":\"a\",\"causeId\":\"\\ude00\"}",
                "followUp | {\"kind\":\"held\",\"waitingFor\":\"PART\",\"followUp\":\"tomorrow\"}",
                "followUp | {\"kind\":\"held\",\"waitingFor\":\"PART\",\"followUp\":\"+1000000000-12-31T23:59:59Z\"}",
                "followUp | {\"kind\":\"held\",\"waitingFor\":\"PART\",\"followUp\":\"2001-01-01T00:00:00Z\"}",
                "duplicateOf | {\"kind\":\"cancelled\",\"reason\":\"Same\",\"duplicateOf\":\"40718-5\"}",
                "sha256 | {\"kind\":\"attachment-added\",\"fileName\":\"a\",\"mediaType\":\"a/b\",\"bytes\":1,\"sha256\":\"abc\",\"shows\":\"x\"}",
                "replacement.scope | {\"kind\":\"corrected\",\"entry\":1,\"reason\":\"r\",\"replacement\":{\"kind\":\"scope-recorded\"}}",
                "replacement.scope | {\"kind\":\"corrected\",\"entry\":1,\"reason\":\"r\",\"replacement\":{\"kind\":\"scope-recorded\",\"scope\":\"MOON\"}}",
                "replacement.kind | {\"kind\":\"corrected\",\"entry\":1,\"reason\":\"r\",\"replacement\":{\"kind\":\"nonsense\"}}",
                "entry | {\"kind\":\"corrected\",\"entry\":99,\"reason\":\"r\"}",
                "about | {\"kind\":\"cautions-acknowledged\",\"about\":99,\"cautions\":[\"HEAT\"]}",
                "kind | {\"kind\":\"nonsense\"}",
                "kind | {\"kind\":null}",
                "kind | {\"words\":\"no kind\"}",
                "kind | {\"kind\":\"refused\",\"act\":\"advanced\",\"missing\":[]}",
                "kind | {\"kind\":\"org.benchtrail.core.method.MoveFact$Advanced\"}",
                "[0].scope | [{\"kind\":\"scope-recorded\"}]",
                "[1].kind | [{\"kind\":\"onset-recorded\"},{\"kind\":\"nonsense\"}]",
                "[1].kind | [{\"kind\":\"onset-recorded\"},5]",
                "body | []",
                "body | {}",
                "body | 5",
                "body | \"text\"",
                "body | null"
            })
    void malformedFact_is422_andNamesTheField(String field, String body) {
        ApiDesk desk = desk("Malformed");
        Response answer = desk.sends("api-ines", 1, body);
        assertTrue(fields(answer).contains(field), answer.asString());
        String told = answer.asString();
        assertFalse(told.contains("org.benchtrail.core") && !body.contains("org.benchtrail.core"), told);
        assertFalse(told.contains("com.fasterxml"), told);
        assertEquals(1, desk.entries());
    }

    @Test
    void unknownKind_isNamed_andEnumsAreListed() {
        ApiDesk desk = desk("Unknown");
        assertTrue(desk.sends("api-ines", 1, "{\"kind\":\"cured\"}").asString().contains("'cured'"));
        assertTrue(desk.sends("api-ines", 1, "{\"kind\":\"scope-recorded\",\"scope\":\"MOON\"}")
                .asString()
                .contains("ONE, SEVERAL, SITE"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"{", "[{]", "{\"kind\":\"advanced\"", "kind=advanced", "\u0000"})
    void noJson_is400(String body) {
        ApiDesk desk = desk("No JSON");
        Response answer = desk.sends("api-ines", 1, body);
        assertEquals(400, answer.statusCode(), answer.asString());
        assertEquals(1, desk.entries());
    }

    @Test
    void severalActs_areDoneAllOrNone() {
        ApiDesk desk = desk("All or none");
        assertEquals(
                List.of("step-not-reached"),
                desk.refused("api-ines", ONSET, "{\"kind\":\"theory-stated\",\"text\":\"Too early\"}"));
        assertEquals(2, desk.entries());
        assertEquals(List.of("opened", "refused"), desk.sheet().getList("facts.fact.kind"));
        String second = "[" + ONSET + ",{\"kind\":\"theory-stated\"}]";
        assertEquals(List.of("[1].text"), fields(desk.sends("api-ines", 2, second)));
        String later = "[" + ONSET + ",{\"kind\":\"corrected\",\"entry\":77,\"reason\":\"r\"}]";
        assertEquals(List.of("entry"), fields(desk.sends("api-ines", 2, later)));
        assertEquals(2, desk.entries());
        desk.does(ONSET, "{\"kind\":\"scope-recorded\",\"scope\":\"SITE\"}");
        assertEquals(4, desk.entries());
    }

    @Test
    void manyLongSymptoms_areKept() {
        ApiDesk desk = desk("A long story");
        java.util.SplittableRandom random = new java.util.SplittableRandom(7);
        String[] symptoms = new String[300];
        for (int i = 0; i < symptoms.length; i++) {
            StringBuilder words = new StringBuilder();
            while (words.length() < 3_980) {
                words.append(Long.toString(random.nextLong(1L << 40), 36)).append(' ');
            }
            symptoms[i] = "{\"kind\":\"symptom-recorded\",\"words\":\"" + words + "\",\"observable\":\"x\"}";
        }
        desk.does(symptoms);
    }

    @ParameterizedTest
    @CsvSource({
        "title, ''",
        "device, ''",
        "place, ' '",
        "requester, ''",
        "contact, ''",
        "requester, a\u0000b",
        "contact, a\u0007b",
        "title, a\u0000b"
    })
    void malformedReport_is422(String field, String value) {
        Map<String, Object> report = report("A report");
        report.put(field, value);
        assertEquals(
                List.of(field),
                fields(as("api-ines")
                        .contentType("application/json")
                        .body(report)
                        .post("/api/tickets")));
    }

    @Test
    void ticketsThatAreNotThere() {
        for (String path : List.of("", "/trail", "/trail/verification")) {
            assertEquals(
                    404,
                    as("api-ines")
                            .get("/api/tickets/" + new org.benchtrail.core.method.TicketNumber(999_999_999) + path)
                            .statusCode());
            assertEquals(422, as("api-ines").get("/api/tickets/40718-5" + path).statusCode());
            assertEquals(422, as("api-ines").get("/api/tickets/' or 1=1" + path).statusCode());
        }
    }

    // ---- attachments

    private Response attach(ApiDesk desk, String login, byte[] content, String fileName, String shows) {
        return as(login)
                .header("If-Match", "\"" + desk.version + "\"")
                .contentType("image/png")
                .queryParam("fileName", fileName)
                .queryParam("shows", shows)
                .body(content)
                .post("/api/tickets/" + desk.number + "/attachments");
    }

    @Test
    void file_comesBackAsItWas_onItsTicketOnly() throws NoSuchAlgorithmException {
        ApiDesk desk = desk("With a picture");
        ApiDesk other = desk("Without");
        byte[] content = new byte[100_000];
        new java.util.Random(3).nextBytes(content);
        String sha256 =
                HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        Response answer = attach(desk, "api-ole", content, "fan.png", "Dust");
        assertEquals(200, answer.statusCode(), answer.asString());
        desk.version = 2;
        JsonNode payload = desk.entry(2).at("/payload");
        assertEquals(sha256, payload.at("/sha256").asText());
        assertEquals(100_000, payload.at("/bytes").asInt());
        assertTrue(payload.at("/mediaType").asText().startsWith("image/png"));
        Response file = as("api-marek").get("/api/tickets/" + desk.number + "/attachments/" + sha256);
        assertTrue(file.contentType().startsWith("image/png"), file.contentType());
        assertTrue(file.header("Content-Disposition").startsWith("attachment;"));
        assertArrayEquals(content, file.asByteArray());
        assertEquals(
                404,
                as("api-marek")
                        .get("/api/tickets/" + other.number + "/attachments/" + sha256)
                        .statusCode());
        String told =
                "{\"kind\":\"attachment-added\",\"fileName\":\"same.png\",\"mediaType\":\"image/png\",\"bytes\":1,\"sha256\":\""
                        + sha256 + "\",\"shows\":\"The same\"}";
        other.does(told);
        assertEquals(100_000, other.entry(2).at("/payload/bytes").asInt(), "the size is the server's to say");
        assertEquals(List.of("sha256"), fields(other.sends("api-ines", 2, told.replace(sha256, "0".repeat(64)))));
        assertEquals(List.of("fileName"), fields(attach(desk, "api-ines", content, "", "Dust")));
        assertEquals(List.of("shows"), fields(attach(desk, "api-ines", content, "fan.png", "")));
        desk.version = 1;
        assertEquals(412, attach(desk, "api-ines", content, "fan.png", "Dust").statusCode());
        assertEquals(2, desk.entries());
    }

    // ---- many at once

    private static <T> List<T> together(Callable<T> one, Callable<T> other) throws Exception {
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            List<T> results = new ArrayList<>();
            for (Future<T> future : two.invokeAll(List.of(one, other))) {
                results.add(future.get());
            }
            return results;
        } finally {
            two.shutdown();
        }
    }

    @Test
    void twoActsOnOneVersion_exactlyOneLands() throws Exception {
        ApiDesk desk = desk("Two at once");
        for (int round = 0; round < 20; round++) {
            int version = desk.version;
            List<Integer> statuses = together(
                    () -> desk.sends("api-ines", version, reading("60")).statusCode(),
                    () -> desk.sends("api-ole", version, reading("61")).statusCode());
            assertEquals(List.of(200, 412), statuses.stream().sorted().toList());
            desk.version++;
            assertEquals(desk.version, desk.entries());
        }
    }

    @Test
    void sameFileOnTwoTicketsAtOnce_isTakenTwice() throws Exception {
        for (int round = 0; round < 5; round++) {
            ApiDesk one = desk("File here");
            ApiDesk other = desk("File there");
            byte[] content = ("the same bytes " + one.number).getBytes(StandardCharsets.UTF_8);
            assertEquals(
                    List.of(200, 200),
                    together(
                            () -> attach(one, "api-ines", content, "a.png", "x").statusCode(),
                            () -> attach(other, "api-ole", content, "b.png", "x")
                                    .statusCode()));
        }
    }

    // ---- the queue

    private static final Pattern NEXT = Pattern.compile("<([^>]+)>; rel=\"next\"");

    @Test
    void queue_isWalkedPageByPage_noneTwiceNoneMissed() {
        String place = "Hall of " + opened.size() + " and " + System.nanoTime();
        Set<String> made = new TreeSet<>();
        for (int i = 0; i < 60; i++) {
            Map<String, Object> report = report("Row " + i);
            report.put("place", place);
            report.put("urgency", i % 3 == 0 ? "STOPPED" : "CAN_WAIT");
            made.add(desk("api-ines", report).number);
        }
        for (int size : new int[] {1, 7, 59, 60, 61, 200}) {
            List<String> seen = new ArrayList<>();
            List<String> due = new ArrayList<>();
            Response page = as("api-ole")
                    .queryParam("place", place)
                    .queryParam("size", size)
                    .get("/api/tickets");
            while (true) {
                assertEquals(200, page.statusCode(), page.asString());
                assertEquals(60, page.jsonPath().getInt("total"));
                seen.addAll(page.jsonPath().getList("tickets.number", String.class));
                due.addAll(page.jsonPath().getList("tickets.due", String.class));
                Matcher next = NEXT.matcher(String.valueOf(page.header("Link")));
                if (!next.find()) {
                    break;
                }
                assertTrue(next.group(1).startsWith("/api/tickets?"), next.group(1));
                page = as("api-ole").urlEncodingEnabled(false).get(next.group(1));
            }
            assertEquals(60, seen.size());
            assertEquals(made, new TreeSet<>(seen));
            assertEquals(
                    due.stream().map(java.time.Instant::parse).sorted().toList(),
                    due.stream().map(java.time.Instant::parse).toList());
        }
    }

    private List<String> numbers(Map<String, ?> query) {
        Response answer =
                as("api-ole").queryParams(query).queryParam("size", 200).get("/api/tickets");
        assertEquals(200, answer.statusCode(), answer.asString());
        return answer.jsonPath().getList("tickets.number", String.class);
    }

    @Test
    void filters_findWhatFits() {
        Map<String, Object> report = report("Quexitron hums");
        report.put("place", "Cellar 9");
        ApiDesk desk = desk("api-ines", report);
        report.put("queued", true);
        ApiDesk queued = desk("api-ines", report);
        java.time.Instant finerThanAColumn = java.time.Instant.ofEpochSecond(
                java.time.Instant.now().plus(java.time.Duration.ofDays(30)).getEpochSecond(), 123_456_789);
        desk.does("{\"kind\":\"held\",\"waitingFor\":\"PART\",\"followUp\":\"" + finerThanAColumn + "\"}");
        Map<String, String> here = Map.of("place", "cellar 9");
        assertEquals(Set.of(desk.number, queued.number), Set.copyOf(numbers(here)));
        assertEquals(List.of(desk.number), numbers(Map.of("place", "Cellar 9", "assignee", "api-ines")));
        assertEquals(List.of(queued.number), numbers(Map.of("place", "Cellar 9", "assignee", "-")));
        assertEquals(List.of(desk.number), numbers(Map.of("place", "Cellar 9", "held", "true")));
        assertEquals(List.of(queued.number), numbers(Map.of("place", "Cellar 9", "held", "false")));
        assertEquals(List.of(), numbers(Map.of("place", "Cellar 9", "overdue", "true")));
        assertEquals(2, numbers(Map.of("place", "Cellar 9", "overdue", "false")).size());
        assertEquals(2, numbers(Map.of("place", "Cellar 9", "category", "HEAT")).size());
        assertEquals(List.of(), numbers(Map.of("place", "Cellar 9", "category", "PRINTING")));
        assertEquals(
                2, numbers(Map.of("place", "Cellar 9", "device", "Workstation")).size());
        assertEquals(List.of(), numbers(Map.of("place", "Cellar 9", "device", "Workbench")));
        assertEquals(List.of(), numbers(Map.of("place", "Cellar 9", "step", "TEST")));
        assertEquals(2, numbers(Map.of("place", "Cellar 9", "step", "IDENTIFY")).size());
        assertEquals(List.of(), numbers(Map.of("place", "Cellar 9", "standing", "CLOSED")));
        for (String words : List.of("quexitron", "QUEX", "hums quex", "quex!", "'quexitron'")) {
            assertEquals(2, numbers(Map.of("text", words)).size(), words);
        }
        assertEquals(List.of(), numbers(Map.of("text", "quexitron absent")));
        JsonPath alike = as("api-ole")
                .queryParam("text", "my quexitron hums")
                .get("/api/tickets/alike")
                .jsonPath();
        assertTrue(alike.getList("number").contains(desk.number));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "' | & !:*",
                "' or 1=1 --",
                "a & b | !c <-> d",
                ":*",
                "\\",
                "'':*",
                "%_%",
                "\u0000",
                "a\u0000b",
                "\ud83d\udd25",
                "\u0130stanbul",
                "\u5bb6\u5177"
            })
    void anyText_isOnlyText(String text) {
        assertNotNull(numbers(Map.of("text", text)));
        assertEquals(
                200,
                as("api-ole").queryParam("text", text).get("/api/tickets/alike").statusCode());
        for (String field : List.of("place", "assignee")) {
            Response answer = as("api-ole").queryParam(field, text).get("/api/tickets");
            boolean control = text.indexOf('\u0000') >= 0;
            assertEquals(control ? 422 : 200, answer.statusCode(), answer.asString());
        }
    }

    @Test
    void endlessWord_isOnlyText() {
        assertEquals(List.of(), numbers(Map.of("text", "x".repeat(3_000))));
        assertEquals(
                200,
                as("api-ole")
                        .queryParam("text", "y".repeat(3_000))
                        .get("/api/tickets/alike")
                        .statusCode());
    }

    @ParameterizedTest
    @CsvSource({"0,422", "-1,422", "1,200", "200,200", "201,422", "1000000,422"})
    void sizeOfAPage_is1To200(String size, int status) {
        assertEquals(
                status,
                as("api-ole").queryParam("size", size).get("/api/tickets").statusCode());
    }

    @ParameterizedTest
    @ValueSource(strings = {"x", "%%%", "MjAzMS0wMy0wM1QwODowMDowMFo", "KzEwMDAwMDAwMDAtMTItMzFUMjM6NTk6NTlaIDE", "!"})
    void placeThatIsNone_is422(String after) {
        assertEquals(
                List.of("after"),
                fields(as("api-ole").queryParam("after", after).get("/api/tickets")));
    }

    @ParameterizedTest
    @CsvSource({"standing,MOON", "step,MOON", "size,many"})
    void choiceThatIsNone_isRefused(String name, String value) {
        int status = as("api-ole").queryParam(name, value).get("/api/tickets").statusCode();
        assertTrue(status >= 400 && status < 500, () -> "answered " + status);
    }

    // ---- in the end

    /** Every trail: hashes made anew here, each naming the one before, and every fact on the sheet as it was recorded. */
    @Test
    @Order(Integer.MAX_VALUE)
    void everyTrail_holdsAndTellsTheSheet() throws NoSuchAlgorithmException {
        desk("The last one");
        for (String number : opened) {
            Response verified = as("api-ole").get("/api/tickets/" + number + "/trail/verification");
            assertTrue(verified.jsonPath().getBoolean("holds"), number + ": " + verified.asString());
            JsonNode stored =
                    tree(as("api-ole").get("/api/tickets/" + number + "/trail").asString());
            JsonNode sheet = tree(as("api-ole").get("/api/tickets/" + number).asString());
            assertEquals(stored.size(), sheet.at("/version").asInt());
            Map<Integer, JsonNode> payloads = linked(number, stored);
            int told = 0;
            for (JsonNode line : sheet.at("/facts")) {
                if (line.at("/correctedBy").isNull()) {
                    assertEquals(payloads.get(line.at("/entry").asInt()), line.at("/fact"), number);
                    told++;
                }
            }
            assertTrue(told > 0);
        }
    }

    private static Map<Integer, JsonNode> linked(String number, JsonNode stored) throws NoSuchAlgorithmException {
        Map<Integer, JsonNode> payloads = new HashMap<>();
        String previous = "0".repeat(64);
        for (JsonNode one : stored) {
            byte[] canonical = one.at("/canonical").asText().getBytes(StandardCharsets.UTF_8);
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update((byte) 0);
            String hash = HexFormat.of().formatHex(digest.digest(canonical));
            assertEquals(hash, one.at("/hash").asText(), number);
            JsonNode entry = tree(one.at("/canonical").asText());
            assertEquals(previous, entry.at("/previous").asText(), number);
            assertEquals(number, entry.at("/ticket").asText());
            assertEquals(payloads.size() + 1, entry.at("/entry").asInt());
            assertNull(payloads.put(
                    payloads.size() + 1, ShownWords.in(entry, one.at("/words")).at("/payload")));
            previous = hash;
        }
        return payloads;
    }
}

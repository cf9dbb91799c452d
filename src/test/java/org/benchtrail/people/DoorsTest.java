package org.benchtrail.people;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Path;
import java.lang.annotation.Annotation;
import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every door of the server, tried by every role and by a stranger, against the one table of rights. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DoorsTest {
    private static final String PASSWORD = "a long enough password";

    /** What a door asks for: a permission, or only to be signed in (null). */
    record Door(String method, String path, @Nullable Permission permission) {
        boolean isApi() {
            return path.startsWith("/api/");
        }
    }

    private static final List<Door> CLOSED_DOORS = List.of(
            new Door("GET", "/people", Permission.MANAGE_ACCOUNTS),
            new Door("POST", "/people", Permission.MANAGE_ACCOUNTS),
            new Door("GET", "/people/{login}", Permission.MANAGE_ACCOUNTS),
            new Door("POST", "/people/{login}/roles", Permission.MANAGE_ACCOUNTS),
            new Door("POST", "/people/{login}/deactivation", Permission.MANAGE_ACCOUNTS),
            new Door("POST", "/people/{login}/reactivation", Permission.MANAGE_ACCOUNTS),
            new Door("POST", "/people/{login}/password", Permission.MANAGE_ACCOUNTS),
            new Door("POST", "/people/{login}/mentor", Permission.MANAGE_ACCOUNTS),
            new Door("POST", "/people/{login}/absences", Permission.MANAGE_ACCOUNTS),
            new Door("POST", "/people/{login}/sessions/end", Permission.MANAGE_ACCOUNTS),
            new Door("POST", "/people/{login}/second-factor/removal", Permission.MANAGE_ACCOUNTS),
            new Door("GET", "/people-events", Permission.MANAGE_ACCOUNTS),
            new Door("GET", "/me", null),
            new Door("GET", "/me/data", null),
            new Door("GET", "/me/second-factor", null),
            new Door("POST", "/me/second-factor/begin", null),
            new Door("POST", "/me/second-factor/confirm", null),
            new Door("POST", "/me/second-factor/end", null),
            new Door("POST", "/me/password", null),
            new Door("POST", "/me/zone", null),
            new Door("POST", "/me/name", null),
            new Door("POST", "/me/absences", null),
            new Door("POST", "/me/absences/{id}/end", null),
            new Door("POST", "/me/sessions/{id}/end", null),
            new Door("POST", "/me/sessions/end-others", null),
            new Door("POST", "/me/tokens", Permission.OWN_TOKENS),
            new Door("POST", "/me/tokens/{id}/revocation", Permission.OWN_TOKENS),
            new Door("GET", "/seal", Permission.SEE_ALARMS),
            new Door("GET", "/seal/heads", Permission.SEE_ALARMS),
            new Door("GET", "/webhooks", Permission.SEE_ALARMS),
            new Door("POST", "/seal/looks", Permission.SEE_ALARMS),
            new Door("POST", "/seal/note", Permission.KEEP_LOG),
            new Door("POST", "/seal/looks/end", Permission.SEE_ALARMS),
            new Door("GET", "/audit", Permission.REVIEW),
            new Door("GET", "/audit/plan", Permission.PLAN_AUDITS),
            new Door("POST", "/audit/plan", Permission.PLAN_AUDITS),
            new Door("GET", "/audit/{lot}", Permission.REVIEW),
            new Door("GET", "/audit/{lot}/report", Permission.REVIEW),
            new Door("GET", "/audit/{lot}/report.pdf", Permission.REVIEW),
            new Door("GET", "/audit/{lot}/list.csv", Permission.REVIEW),
            new Door("POST", "/audit/{lot}/reviews", Permission.REVIEW),
            new Door("POST", "/audit/{lot}/settlements", Permission.REVIEW),
            new Door("POST", "/audit/{lot}/talks", Permission.REVIEW),
            new Door("POST", "/audit/{lot}/addenda", Permission.REVIEW),
            new Door("POST", "/audit/{lot}/addenda/closings", Permission.PLAN_AUDITS),
            new Door("POST", "/audit/{lot}/rest", Permission.PLAN_AUDITS),
            new Door("POST", "/audit/{lot}/chosen", Permission.PLAN_AUDITS),
            new Door("POST", "/audit/{lot}/signals", Permission.PLAN_AUDITS),
            new Door("POST", "/audit/{lot}/conclusion", Permission.PLAN_AUDITS),
            new Door("GET", "/audit/{lot}/reviews/{ticket}/{turn}", Permission.REVIEW),
            new Door("POST", "/audit/{lot}/reviews/{ticket}/{turn}/marks", Permission.REVIEW),
            new Door("POST", "/audit/{lot}/reviews/{ticket}/{turn}/not-asked", Permission.REVIEW),
            new Door("POST", "/audit/{lot}/reviews/{ticket}/{turn}/signature", Permission.REVIEW),
            new Door("POST", "/audit/{lot}/reviews/{ticket}/{turn}/decline", Permission.REVIEW),
            new Door("GET", "/audit-coaching", Permission.COACH),
            new Door("GET", "/audit-coaching/{login}", Permission.COACH),
            new Door("GET", "/figures", Permission.SEE_FIGURES),
            new Door("GET", "/figures/tickets", Permission.SEE_FIGURES),
            new Door("GET", "/figures/{figure}.csv", Permission.SEE_FIGURES),
            new Door("GET", "/figures/{month}.pdf", Permission.SEE_FIGURES),
            new Door("POST", "/figures/baselines", Permission.SEE_FIGURES),
            new Door("POST", "/figures/week-baselines", Permission.SEE_FIGURES),
            new Door("GET", "/exports", Permission.SEE_FIGURES),
            new Door("GET", "/exports/benchtrail.xesext", Permission.SEE_FIGURES),
            new Door("GET", "/exports/{month}.xes", Permission.SEE_FIGURES),
            new Door("GET", "/exports/{month}.csv", Permission.SEE_FIGURES),
            new Door("GET", "/exports/{month}.jsonl", Permission.SEE_FIGURES),
            new Door("GET", "/tickets/{number}/trail.jsonl", Permission.SEE_TICKETS),
            new Door("GET", "/my-reviews", Permission.WORK_TICKETS),
            new Door("GET", "/site", Permission.SEE_TICKETS),
            new Door("POST", "/site/places", Permission.KEEP_SITE),
            new Door("POST", "/site/places/{id}", Permission.KEEP_SITE),
            new Door("POST", "/site/teams", Permission.KEEP_SITE),
            new Door("POST", "/site/teams/{id}", Permission.KEEP_SITE),
            new Door("GET", "/site/policies", Permission.SEE_TICKETS),
            new Door("POST", "/site/policies", Permission.SET_POLICIES),
            new Door("GET", "/devices", Permission.SEE_TICKETS),
            new Door("POST", "/devices", Permission.ADD_DEVICES),
            new Door("GET", "/devices/{label}", Permission.SEE_TICKETS),
            new Door("POST", "/devices/{label}", Permission.KEEP_SITE),
            new Door("GET", "/device-labels", Permission.SEE_TICKETS),
            new Door("GET", "/d/{code}", Permission.SEE_TICKETS),
            new Door("GET", "/api/devices", Permission.SEE_TICKETS),
            new Door("POST", "/api/devices", Permission.ADD_DEVICES),
            new Door("GET", "/api/devices/{label}", Permission.SEE_TICKETS),
            new Door("PUT", "/api/devices/{label}", Permission.KEEP_SITE),
            new Door("GET", "/api/places", Permission.SEE_TICKETS),
            new Door("POST", "/api/places", Permission.KEEP_SITE),
            new Door("PUT", "/api/places/{id}", Permission.KEEP_SITE),
            new Door("GET", "/api/site/policies", Permission.SEE_TICKETS),
            new Door("POST", "/api/site/policies", Permission.SET_POLICIES),
            new Door("GET", "/api/people", Permission.MANAGE_ACCOUNTS),
            new Door("POST", "/api/people", Permission.MANAGE_ACCOUNTS),
            new Door("GET", "/api/people/{login}", Permission.MANAGE_ACCOUNTS),
            new Door("PUT", "/api/people/{login}/roles", Permission.MANAGE_ACCOUNTS),
            new Door("PUT", "/api/people/{login}/active", Permission.MANAGE_ACCOUNTS),
            new Door("PUT", "/api/people/{login}/password", Permission.MANAGE_ACCOUNTS),
            new Door("GET", "/api/me", null),
            new Door("PUT", "/api/me/zone", null),
            new Door("GET", "/api/me/tokens", Permission.OWN_TOKENS),
            new Door("DELETE", "/api/me/tokens/{id}", Permission.OWN_TOKENS),
            new Door("GET", "/", null),
            new Door("GET", "/today", Permission.SEE_TICKETS),
            new Door("GET", "/queue", Permission.SEE_TICKETS),
            new Door("GET", "/queue.csv", Permission.SEE_TICKETS),
            new Door("POST", "/queue/filters", Permission.SEE_TICKETS),
            new Door("POST", "/queue/filters/{id}/removal", Permission.SEE_TICKETS),
            new Door("GET", "/queue/hand-over", null),
            new Door("POST", "/queue/hand-over", Permission.WORK_TICKETS),
            new Door("GET", "/keys", null),
            new Door("GET", "/search", Permission.SEE_TICKETS),
            new Door("GET", "/alarms", Permission.SEE_ALARMS),
            new Door("POST", "/alarms/{number}/check", Permission.SEE_ALARMS),
            new Door("GET", "/new-ticket", Permission.WORK_TICKETS),
            new Door("GET", "/new-ticket/alike", Permission.SEE_TICKETS),
            new Door("POST", "/new-ticket", Permission.WORK_TICKETS),
            new Door("GET", "/bench", Permission.SEE_TICKETS),
            new Door("GET", "/bench/{id}", Permission.SEE_TICKETS),
            new Door("GET", "/api/bench", Permission.SEE_TICKETS),
            new Door("GET", "/api/bench/{id}", Permission.SEE_TICKETS),
            new Door("POST", "/api/bench/{id}", Permission.SEE_TICKETS),
            new Door("GET", "/read-in", Permission.SEE_TICKETS),
            new Door("POST", "/read-in", Permission.SEE_TICKETS),
            new Door("POST", "/read-in/record", Permission.WORK_TICKETS),
            new Door("POST", "/api/read-in/{kind}", Permission.SEE_TICKETS),
            new Door("GET", "/tickets/{number}/presence/{about}", Permission.SEE_TICKETS),
            new Door("POST", "/tickets/{number}/presence/{about}", Permission.WORK_TICKETS),
            new Door("POST", "/tickets/{number}/presence/{about}/end", Permission.WORK_TICKETS),
            new Door("POST", "/api/tickets/{number}/presences", Permission.WORK_TICKETS),
            new Door("GET", "/forecasts", Permission.WORK_TICKETS),
            new Door("GET", "/forecasts/{login}", Permission.WORK_TICKETS),
            new Door("POST", "/forecasts/erasures", Permission.WORK_TICKETS),
            new Door("GET", "/progress", Permission.WORK_TICKETS),
            new Door("GET", "/progress/{login}", Permission.WORK_TICKETS),
            new Door("GET", "/progress/record.pdf", Permission.WORK_TICKETS),
            new Door("GET", "/coach", Permission.WORK_TICKETS),
            new Door("GET", "/coach/{login}", Permission.WORK_TICKETS),
            new Door("POST", "/coach/choices", Permission.WORK_TICKETS),
            new Door("GET", "/recall", Permission.WORK_TICKETS),
            new Door("POST", "/recall/answers", Permission.WORK_TICKETS),
            new Door("POST", "/recall/skips", Permission.WORK_TICKETS),
            new Door("POST", "/recall/erasures", Permission.WORK_TICKETS),
            new Door("GET", "/coach-tests", Permission.WORK_TICKETS),
            new Door("POST", "/coach-tests", Permission.STATE_TRIALS),
            new Door("POST", "/coach-tests/{id}/people", Permission.WORK_TICKETS),
            new Door("POST", "/coach-tests/{id}/jobs", Permission.WORK_TICKETS),
            new Door("POST", "/coach-tests/broken-off/{id}", Permission.WORK_TICKETS),
            new Door("GET", "/own-jobs", Permission.WRITE_PRACTICE),
            new Door("POST", "/own-jobs", Permission.WRITE_PRACTICE),
            new Door("GET", "/own-jobs/new", Permission.WRITE_PRACTICE),
            new Door("GET", "/own-jobs/{id}", Permission.WRITE_PRACTICE),
            new Door("POST", "/own-jobs/{id}", Permission.WRITE_PRACTICE),
            new Door("POST", "/own-jobs/{id}/check", Permission.WRITE_PRACTICE),
            new Door("POST", "/own-jobs/{id}/people", Permission.WRITE_PRACTICE),
            new Door("POST", "/own-jobs/{id}/withdraw", Permission.WRITE_PRACTICE),
            new Door("GET", "/practice", Permission.WORK_TICKETS),
            new Door("POST", "/practice", Permission.WORK_TICKETS),
            new Door("GET", "/practice/{id}", Permission.WORK_TICKETS),
            new Door("GET", "/practice/{id}/sheet/trail", Permission.WORK_TICKETS),
            new Door("GET", "/practice/{id}/sheet/entries/{entry}", Permission.WORK_TICKETS),
            new Door("POST", "/practice/{id}/sheet/{form}", Permission.WORK_TICKETS),
            new Door("POST", "/practice/{id}/act", Permission.WORK_TICKETS),
            new Door("POST", "/practice/{id}/mentor", Permission.WORK_TICKETS),
            new Door("POST", "/practice/{id}/give-up", Permission.WORK_TICKETS),
            new Door("GET", "/tickets/{number}/erasing", Permission.DECIDE_PROPOSALS),
            new Door("POST", "/tickets/{number}/erasing", Permission.DECIDE_PROPOSALS),
            new Door("GET", "/tickets/{number}/erasing/words", Permission.DECIDE_PROPOSALS),
            new Door("POST", "/tickets/{number}/erasing/words", Permission.DECIDE_PROPOSALS),
            new Door("GET", "/tickets/{number}/mending", Permission.MEND_TRAILS),
            new Door("POST", "/tickets/{number}/mending", Permission.MEND_TRAILS),
            new Door("POST", "/tickets/{number}/mending/{id}/agreement", Permission.MEND_TRAILS),
            new Door("POST", "/tickets/{number}/mending/{id}/withdrawal", Permission.MEND_TRAILS),
            new Door("GET", "/api/tickets/{number}/mending", Permission.MEND_TRAILS),
            new Door("POST", "/api/tickets/{number}/mending", Permission.MEND_TRAILS),
            new Door("POST", "/api/tickets/{number}/mending/{id}/agreement", Permission.MEND_TRAILS),
            new Door("POST", "/api/tickets/{number}/mending/{id}/withdrawal", Permission.MEND_TRAILS),
            new Door("GET", "/limits", Permission.SEE_TICKETS),
            new Door("POST", "/limits", Permission.KEEP_LIMITS),
            new Door("POST", "/limits/{id}/offer", Permission.KEEP_LIMITS),
            new Door("GET", "/tickets/{number}/ranking", Permission.SEE_TICKETS),
            new Door("GET", "/api/tickets/{number}/ranking", Permission.SEE_TICKETS),
            new Door("POST", "/attach/{id}", Permission.WORK_TICKETS),
            new Door("POST", "/api/tickets/{number}/bench-results", Permission.WORK_TICKETS),
            new Door("GET", "/knowledge", Permission.SEE_TICKETS),
            new Door("GET", "/knowledge/{id}", Permission.SEE_TICKETS),
            new Door("POST", "/knowledge/{id}/{act}", Permission.TEND_KNOWLEDGE),
            new Door("GET", "/api/knowledge", Permission.SEE_TICKETS),
            new Door("GET", "/api/knowledge/{id}", Permission.SEE_TICKETS),
            new Door("POST", "/api/knowledge/{id}/acts", Permission.TEND_KNOWLEDGE),
            new Door("GET", "/tickets/{number}", Permission.SEE_TICKETS),
            new Door("POST", "/tickets/{number}/{form}", Permission.WORK_TICKETS),
            new Door("POST", "/tickets/{number}/draft/keep/{form}", Permission.WORK_TICKETS),
            new Door("POST", "/tickets/{number}/forecast", Permission.WORK_TICKETS),
            new Door("POST", "/api/tickets/{number}/forecasts", Permission.WORK_TICKETS),
            new Door("POST", "/tickets/{number}/draft/discard", Permission.WORK_TICKETS),
            new Door("GET", "/tickets/{number}/live", Permission.SEE_TICKETS),
            new Door("POST", "/tickets/{number}/attachments", Permission.WORK_TICKETS),
            new Door("GET", "/tickets/{number}/attachments/{sha256}", Permission.SEE_TICKETS),
            new Door("GET", "/tickets/{number}/attachments/{sha256}/picture", Permission.SEE_TICKETS),
            new Door("GET", "/tickets/{number}/trail", Permission.SEE_TICKETS),
            new Door("GET", "/tickets/{number}/pictures/{entry}", Permission.SEE_TICKETS),
            new Door("POST", "/tickets/{number}/pictures/{entry}", Permission.WORK_TICKETS),
            new Door("GET", "/tickets/{number}/record", Permission.SEE_TICKETS),
            new Door("GET", "/tickets/{number}/record.pdf", Permission.SEE_TICKETS),
            new Door("GET", "/tickets/{number}/entries/{entry}", Permission.SEE_TICKETS),
            new Door("POST", "/tickets/{number}/entries/{entry}", Permission.WORK_TICKETS),
            new Door("GET", "/api/nodes", Permission.MANAGE_ACCOUNTS),
            new Door("GET", "/api/changes", Permission.SEE_TICKETS),
            new Door("GET", "/api/tickets", Permission.SEE_TICKETS),
            new Door("POST", "/api/tickets", Permission.WORK_TICKETS),
            new Door("GET", "/api/tickets/alike", Permission.SEE_TICKETS),
            new Door("GET", "/api/tickets/{number}", Permission.SEE_TICKETS),
            new Door("POST", "/api/tickets/{number}/acts", Permission.WORK_TICKETS),
            new Door("POST", "/api/tickets/{number}/attachments", Permission.WORK_TICKETS),
            new Door("GET", "/api/tickets/{number}/attachments/{sha256}", Permission.SEE_TICKETS),
            new Door("GET", "/api/tickets/{number}/trail", Permission.SEE_TICKETS),
            new Door("GET", "/api/tickets/{number}/trail/verification", Permission.VERIFY_TRAIL),
            new Door("GET", "/catalogue", Permission.SEE_TICKETS),
            new Door("GET", "/catalogue/edit", Permission.KEEP_CATALOGUE),
            new Door("POST", "/catalogue/edit", Permission.KEEP_CATALOGUE),
            new Door("POST", "/catalogue/edit/file", Permission.KEEP_CATALOGUE),
            new Door("GET", "/catalogue/versions", Permission.SEE_TICKETS),
            new Door("GET", "/catalogue/versions/{version}", Permission.SEE_TICKETS),
            new Door("GET", "/catalogue/versions/{version}.yaml", Permission.SEE_TICKETS),
            new Door("POST", "/catalogue/versions/{version}/restoration", Permission.KEEP_CATALOGUE),
            new Door("GET", "/api/catalogue", Permission.SEE_TICKETS),
            new Door("POST", "/api/catalogue/checks", Permission.KEEP_CATALOGUE),
            new Door("GET", "/api/catalogue/versions", Permission.SEE_TICKETS),
            new Door("POST", "/api/catalogue/versions", Permission.KEEP_CATALOGUE),
            new Door("GET", "/api/catalogue/versions/{version}", Permission.SEE_TICKETS),
            new Door("POST", "/api/catalogue/versions/{version}/restoration", Permission.KEEP_CATALOGUE),
            new Door("GET", "/proposals", Permission.DECIDE_PROPOSALS),
            new Door("GET", "/proposals/{id}", Permission.DECIDE_PROPOSALS),
            new Door("POST", "/proposals/{id}/confirmation", Permission.DECIDE_PROPOSALS),
            new Door("POST", "/proposals/{id}/declining", Permission.DECIDE_PROPOSALS),
            new Door("POST", "/proposals/{id}/withdrawal", Permission.DECIDE_PROPOSALS),
            new Door("GET", "/api/proposals", Permission.DECIDE_PROPOSALS),
            new Door("GET", "/api/proposals/{id}", Permission.DECIDE_PROPOSALS),
            new Door("POST", "/api/proposals/{id}/confirmation", Permission.DECIDE_PROPOSALS),
            new Door("POST", "/api/proposals/{id}/declining", Permission.DECIDE_PROPOSALS),
            new Door("POST", "/api/proposals/{id}/withdrawal", Permission.DECIDE_PROPOSALS),
            new Door("GET", "/learning", Permission.KEEP_CATALOGUE),
            new Door("POST", "/learning/accepted", Permission.KEEP_CATALOGUE),
            new Door("POST", "/learning/left-out", Permission.KEEP_CATALOGUE),
            new Door("GET", "/learning/cases", Permission.KEEP_CATALOGUE),
            new Door("POST", "/learning/withdrawn", Permission.KEEP_CATALOGUE),
            new Door("GET", "/learning/preview", Permission.KEEP_CATALOGUE),
            new Door("POST", "/learning/versions", Permission.KEEP_CATALOGUE),
            new Door("POST", "/learning/undoing", Permission.KEEP_CATALOGUE),
            new Door("GET", "/learning/calibration", Permission.KEEP_CATALOGUE),
            new Door("GET", "/api/learning/waiting", Permission.KEEP_CATALOGUE),
            new Door("GET", "/api/learning/cases", Permission.KEEP_CATALOGUE),
            new Door("POST", "/api/learning/accepted", Permission.KEEP_CATALOGUE),
            new Door("POST", "/api/learning/left-out", Permission.KEEP_CATALOGUE),
            new Door("POST", "/api/learning/withdrawn", Permission.KEEP_CATALOGUE),
            new Door("GET", "/api/learning/preview", Permission.KEEP_CATALOGUE),
            new Door("POST", "/api/learning/versions", Permission.KEEP_CATALOGUE),
            new Door("POST", "/api/learning/undoing", Permission.KEEP_CATALOGUE),
            new Door("GET", "/api/learning/calibration", Permission.KEEP_CATALOGUE));

    private static final Set<String> OPEN_DOORS = Set.of(
            "GET /sign-in",
            "POST /sign-in",
            "POST /sign-in/code",
            "POST /sign-out",
            "GET /log/checkpoint",
            "GET /log/tile/{path:.+}");

    @Inject
    PeopleActs acts;

    @Inject
    TicketActs tickets;

    private String ticket = "";

    private final Map<Role, String> tokens = new EnumMap<>(Role.class);
    private final Map<Role, Browser> browsers = new EnumMap<>(Role.class);

    static Stream<Door> doors() {
        return CLOSED_DOORS.stream();
    }

    static Stream<Arguments> doorsAndRoles() {
        return CLOSED_DOORS.stream()
                .flatMap(door -> Arrays.stream(Role.values()).map(role -> Arguments.of(door, role)));
    }

    @BeforeAll
    void people() {
        acts.ensureAccount("door-target", "Door Target", Set.of(Role.TECHNICIAN), PASSWORD);
        for (Role role : Role.values()) {
            acts.ensureAccount(login(role), "Door " + role, Set.of(role), PASSWORD);
        }
        TestDatabase.run("update account set active = true where login like 'door-%'");
        NewTicket report = new NewTicket(
                "A door that creaks",
                "",
                Category.OTHER,
                "Door",
                "Hall",
                "Door Target",
                "by the door",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                true);
        ticket = tickets.open(report, new Actor(login(Role.TECHNICIAN), "Door", Set.of(Role.TECHNICIAN)))
                .number()
                .toString();
    }

    private static String login(Role role) {
        return "door-" + RoleNames.of(role);
    }

    private String token(Role role) {
        return tokens.computeIfAbsent(
                role,
                r -> acts.createToken(new Actor(login(r), "Door", Set.of(r)), "doors", 1)
                        .secret());
    }

    /** What is read is there; what would be changed is not, so that every role finds the same, nor what is told without end. */
    private String filled(Door door) {
        boolean there = door.method().equals("GET") && !door.path().endsWith("/live");
        String number = there ? ticket : new TicketNumber(999_999_999).toString();
        return door.path()
                .replace("{login}", "door-target")
                .replace("{id}", "999999999")
                .replace("{month}", "2020-01")
                .replace("{figure}", "steps")
                .replace("{lot}", "1999-01")
                .replace("{ticket}", number)
                .replace("{turn}", "1")
                .replace("{kind}", "series")
                .replace("{number}", number)
                .replace("{form}", "resume")
                .replace("{act}", "confirm")
                .replace("{sha256}", "0".repeat(64))
                .replace("{entry}", "1")
                .replace("{about}", "1")
                .replace("{version}", "1")
                .replace("{label}", "door-device")
                .replace("{code}", "999999999");
    }

    private static RequestSpecification withBody(Door door, RequestSpecification request) {
        String body = door.path().endsWith("/acts") ? "{\"kind\":\"resumed\"}" : "{}";
        return door.method().equals("GET")
                ? request
                : request.header("If-Match", "\"1\"")
                        .contentType("application/json")
                        .body(body);
    }

    private Response open(Door door, Role role) {
        if (door.isApi()) {
            RequestSpecification request = given().header("Authorization", "Bearer " + token(role));
            return sent(door, withBody(door, request));
        }
        return sent(door, page(door, browsers.computeIfAbsent(role, DoorsTest::signedIn)));
    }

    private static Browser signedIn(Role role) {
        Browser browser = Browser.signedIn(login(role), PASSWORD);
        browser.get("/me");
        return browser;
    }

    private static RequestSpecification page(Door door, Browser browser) {
        RequestSpecification request = browser.request();
        if (door.method().equals("GET")) {
            return request;
        }
        return door.path().endsWith("/attachments")
                        || door.path().endsWith("/file")
                        || (door.path().endsWith("/mending") && !door.isApi())
                        || door.path().startsWith("/read-in")
                ? request.multiPart("csrf-token", browser.formToken()).multiPart("file", "a.txt", new byte[] {1})
                : request.formParam("csrf-token", browser.formToken());
    }

    private Response sent(Door door, RequestSpecification request) {
        return request.request(door.method(), filled(door));
    }

    @ParameterizedTest
    @MethodSource("doorsAndRoles")
    void door_opensToThoseInTheTable(Door door, Role role) {
        int status = open(door, role).statusCode();
        boolean allowed = door.permission() == null
                || Permissions.roles(door.permission()).contains(role);
        if (allowed) {
            // a trainee forecasts before causes are told
            boolean forecast =
                    role == Role.TRAINEE && status == 409 && door.path().endsWith("/ranking");
            assertTrue(
                    forecast || Set.of(200, 201, 204, 303, 404, 422).contains(status),
                    () -> door + " answered " + status);
        } else {
            assertEquals(403, status);
        }
    }

    @ParameterizedTest
    @MethodSource("doors")
    void door_isClosedToStrangers(Door door) {
        if (door.isApi()) {
            assertEquals(401, sent(door, withBody(door, given())).statusCode());
            return;
        }
        Browser stranger = new Browser();
        stranger.get("/sign-in");
        Response answer = sent(door, page(door, stranger));
        assertEquals(door.method().equals("GET") ? 303 : 401, answer.statusCode());
        assertFalse(answer.asString().contains("Door Target"));
    }

    @Test
    void everyEndpointIsInThisTable() {
        Set<String> listed = Stream.concat(
                        CLOSED_DOORS.stream().map(door -> door.method() + " " + door.path()), OPEN_DOORS.stream())
                .collect(Collectors.toCollection(TreeSet::new));
        Set<String> there = endpoints().map(DoorsTest::address).collect(Collectors.toCollection(TreeSet::new));
        Set<String> missing = new TreeSet<>(there);
        missing.removeAll(listed);
        assertEquals(Set.of(), missing, "doors without a row in this table");
        listed.removeAll(there);
        assertEquals(Set.of(), listed, "rows of doors that are not there");
    }

    private static Stream<Method> endpoints() {
        return new ClassFileImporter()
                        .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                        .importPackages("org.benchtrail")
                        .stream()
                        .filter(type -> type.isAnnotatedWith(Path.class))
                        .map(JavaClass::reflect)
                        .flatMap(type -> Arrays.stream(type.getDeclaredMethods()))
                        .filter(method -> !verb(method).isEmpty());
    }

    private static String verb(Method method) {
        return Arrays.stream(method.getAnnotations())
                .map(Annotation::annotationType)
                .filter(type -> type.isAnnotationPresent(HttpMethod.class))
                .map(type -> type.getAnnotation(HttpMethod.class).value())
                .findFirst()
                .orElse("");
    }

    private static String address(Method method) {
        String base = method.getDeclaringClass().getAnnotation(Path.class).value();
        Path own = method.getAnnotation(Path.class);
        String joined = own == null ? base : base + "/" + own.value();
        return verb(method) + " " + joined.replaceAll("/+", "/");
    }
}

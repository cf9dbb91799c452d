package org.benchtrail.people;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.platform.LogEar;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;

/** An administrator's morning, by page and by program. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@Order(Integer.MAX_VALUE) // empties tables that the log has sealed
class PeoplePageTest {
    private static final String PASSWORD = "a long enough password";

    @Inject
    PeopleActs acts;

    private final String login = "n" + UUID.randomUUID().toString().substring(0, 8);

    @BeforeEach
    void keeper() {
        acts.ensureAccount("keeper", "Keeper", Set.of(Role.ADMINISTRATOR), PASSWORD);
        TestDatabase.run("update account set active = true, roles = array['ADMINISTRATOR'] where login = 'keeper'");
    }

    private Browser keeperAtPeople() {
        Browser browser = Browser.signedIn("keeper", PASSWORD);
        browser.get("/people");
        return browser;
    }

    private Map<String, Object> newAccount(String password) {
        return Map.of(
                "login",
                login,
                "name",
                "Nell <Example>",
                "roles",
                List.of("technician", "mentor"),
                "password",
                password);
    }

    @Test
    void account_isMadeFoundChangedAndClosedByForms() {
        Browser browser = keeperAtPeople();
        Response made = browser.post("/people", newAccount(PASSWORD));
        assertEquals(303, made.statusCode());
        assertTrue(made.header("Location").endsWith("/people/" + login));
        String page = browser.get("/people/" + login).asString();
        assertTrue(page.contains("Nell &lt;Example&gt;") && page.contains("technician, mentor"), page);
        assertTrue(browser.get("/people?search=" + login).asString().contains("/people/" + login));

        assertEquals(
                303,
                browser.post("/people/" + login + "/roles", Map.of("roles", "trainee"))
                        .statusCode());
        assertTrue(browser.get("/people/" + login).asString().contains("<dd>trainee</dd>"));

        Browser own = Browser.signedIn(login, PASSWORD);
        browser.post("/people/" + login + "/password", Map.of("password", "given by the keeper"));
        assertEquals(303, own.get("/me").statusCode());
        assertEquals(
                200, Browser.signedIn(login, "given by the keeper").get("/me").statusCode());

        browser.post("/people/" + login + "/deactivation", Map.of());
        assertTrue(browser.get("/people/" + login).asString().contains("<dd>closed</dd>"));
        browser.post("/people/" + login + "/reactivation", Map.of());
        assertTrue(browser.get("/people/" + login).asString().contains("<dd>active</dd>"));
    }

    /** By the page and by a program's token. */
    @Test
    void nobodyGivesARoleToThemselves_byAnyDoor() {
        Browser browser = keeperAtPeople();
        browser.get("/people/keeper");
        Response page = browser.post("/people/keeper/roles", Map.of("roles", List.of("administrator", "supervisor")));
        assertEquals(422, page.statusCode());
        assertTrue(page.asString().contains("Nobody gives a role to their own account"), page.asString());
        String token = acts.createToken(new Actor("keeper", "Keeper", Set.of(Role.ADMINISTRATOR)), "roles", 1)
                .secret();
        Response program = given().header("Authorization", "Bearer " + token)
                .contentType("application/json")
                .body(Map.of("roles", List.of("ADMINISTRATOR", "SUPERVISOR")))
                .put("/api/people/keeper/roles");
        assertEquals(422, program.statusCode());
        assertTrue(program.asString().contains("Nobody gives a role to their own account"), program.asString());
        assertTrue(browser.get("/people/keeper").asString().contains("<dd>administrator</dd>"));
    }

    @Test
    void traineeWhoIsMentor_isRefused_byAnyDoor() {
        Browser browser = keeperAtPeople();
        Map<String, Object> both = new java.util.HashMap<>(newAccount(PASSWORD));
        both.put("roles", List.of("trainee", "mentor"));
        Response page = browser.post("/people", both);
        assertEquals(422, page.statusCode());
        assertTrue(page.asString().contains("Choose trainee or mentor"), page.asString());
        String token = acts.createToken(new Actor("keeper", "Keeper", Set.of(Role.ADMINISTRATOR)), "roles", 1)
                .secret();
        both.put("roles", List.of("TRAINEE", "MENTOR"));
        Response program = given().header("Authorization", "Bearer " + token)
                .contentType("application/json")
                .body(both)
                .post("/api/people");
        assertEquals(422, program.statusCode());
        assertTrue(program.asString().contains("Choose trainee or mentor"), program.asString());
    }

    @Test
    void closingAnAccount_listsItsOpenTickets_andWhatToDo() {
        acts.ensureAccount(login, "Nell", Set.of(Role.TECHNICIAN), PASSWORD);
        String own = acts.createToken(new Actor(login, "Nell", Set.of(Role.TECHNICIAN)), "t", 1)
                .secret();
        String number = given().header("Authorization", "Bearer " + own)
                .contentType("application/json")
                .body(Map.of(
                        "title", "Left behind " + login,
                        "category", "OTHER",
                        "device", "Lamp",
                        "place", "Hall",
                        "requester", "Rae",
                        "contact", "room 4",
                        "impact", "ONE_PERSON",
                        "urgency", "CAN_WAIT"))
                .post("/api/tickets")
                .jsonPath()
                .getString("number");
        Browser browser = keeperAtPeople();
        assertTrue(browser.get("/people/" + login).asString().contains("Closing the account leaves them there."));
        browser.post("/people/" + login + "/deactivation", Map.of());
        String page = browser.get("/people/" + login).asString();
        assertTrue(page.contains("<dd>closed</dd>") && page.contains("/tickets/" + number), page);
        assertTrue(page.contains("Nobody works on them any more.") && page.contains("A supervisor assigns each"), page);
        String token = acts.createToken(new Actor("keeper", "Keeper", Set.of(Role.ADMINISTRATOR)), "t", 1)
                .secret();
        Response program = given().header("Authorization", "Bearer " + token)
                .contentType("application/json")
                .body(Map.of("active", false))
                .put("/api/people/" + login + "/active");
        assertEquals(List.of(number), program.jsonPath().getList("openTickets.number"), program.asString());
        assertEquals(1, program.jsonPath().getInt("openTicketsTotal"));
        assertEquals(login, program.jsonPath().getString("login"));
        assertFalse(program.jsonPath().getBoolean("active"));
    }

    @Test
    void administrator_isShownNoDoorToANewTicket() {
        Browser browser = keeperAtPeople();
        assertFalse(browser.get("/people").asString().contains("/new-ticket"));
        assertFalse(browser.get("/queue").asString().contains("/new-ticket"));
        assertEquals(403, browser.get("/new-ticket").statusCode());
        acts.ensureAccount(login, "Nell", Set.of(Role.TECHNICIAN), PASSWORD);
        assertTrue(Browser.signedIn(login, PASSWORD).get("/queue").asString().contains("/new-ticket"));
    }

    @Test
    void wrongEntries_keepWhatWasTypedExceptThePassword() {
        Response answer = keeperAtPeople().post("/people", newAccount("shortpass"));
        assertEquals(422, answer.statusCode());
        String page = answer.asString();
        assertTrue(page.contains("Choose a password of at least 12 characters."), page);
        assertTrue(page.contains("value=\"" + login + "\""));
        assertTrue(page.contains("value=\"Nell &lt;Example&gt;\""));
        assertTrue(page.contains("value=\"mentor\" checked"));
        assertFalse(page.contains("value=\"trainee\" checked"));
        assertFalse(page.contains("shortpass"));
    }

    @Test
    void listIsReadStretchByStretch() {
        for (int i = 10; i < 37; i++) {
            acts.ensureAccount(login + i, "Many", Set.of(Role.TRAINEE), PASSWORD);
        }
        Browser browser = keeperAtPeople();
        String first = browser.get("/people?search=" + login).asString();
        assertTrue(first.contains(login + "34<") && !first.contains(login + "35<"));
        assertTrue(first.contains("name=\"after\" value=\"" + login + "34\""));
        String second = browser.get("/people?search=" + login + "&after=" + login + "34")
                .asString();
        assertTrue(second.contains(login + "36<") && !second.contains(login + "34<"));
        assertFalse(second.contains("Further accounts"));
    }

    @Test
    void ownZone_isSetAndUsed() {
        acts.ensureAccount(login, "Nell", Set.of(Role.TECHNICIAN), PASSWORD);
        Browser browser = Browser.signedIn(login, PASSWORD);
        browser.get("/me");
        assertEquals(
                303, browser.post("/me/zone", Map.of("zone", "Asia/Kolkata")).statusCode());
        browser.post("/me/tokens", Map.of("name", "script", "days", "1", "present", PASSWORD, "scope", "READ"));
        assertTrue(browser.get("/me").asString().matches("(?s).*\\d\\d:\\d\\d Asia/Kolkata.*"));
        assertEquals(422, browser.post("/me/zone", Map.of("zone", "nowhere")).statusCode());
        assertEquals(
                422,
                browser.post(
                                "/me/tokens",
                                Map.of("name", "script", "days", "many", "present", PASSWORD, "scope", "READ"))
                        .statusCode());
    }

    @Test
    void api_doesTheSame() {
        String bearer = "Bearer "
                + acts.createToken(new Actor("keeper", "Keeper", Set.of(Role.ADMINISTRATOR)), "t", 1)
                        .secret();
        Response made = given().header("Authorization", bearer)
                .contentType("application/json")
                .body(Map.of("login", login, "name", "Nell", "roles", List.of("TRAINEE"), "password", PASSWORD))
                .post("/api/people");
        assertEquals(201, made.statusCode());
        assertTrue(made.header("Location").endsWith("/api/people/" + login));
        assertFalse(made.asString().toLowerCase(java.util.Locale.ROOT).contains("password"));
        Response closed = given().header("Authorization", bearer)
                .contentType("application/json")
                .body(Map.of("active", false))
                .put("/api/people/" + login + "/active");
        assertFalse(closed.jsonPath().getBoolean("active"));
        Response unknownRole = given().header("Authorization", bearer)
                .contentType("application/json")
                .body(Map.of("roles", List.of("KING")))
                .put("/api/people/" + login + "/roles");
        assertEquals(400, unknownRole.statusCode());
        Response stretch = given().header("Authorization", bearer).get("/api/people?limit=1");
        assertEquals(1, stretch.jsonPath().getList("$").size());
        assertTrue(stretch.header("Link").contains("rel=\"next\""), stretch.header("Link"));
    }

    @Test
    void noSecretIsLoggedOrInAnAddress() {
        try (LogEar ear = new LogEar()) {
            Browser browser = keeperAtPeople();
            browser.post("/people", newAccount(PASSWORD));
            Response in = new Browser().post("/sign-in", Map.of("login", login, "password", "wrong but private"));
            assertEquals(400, in.statusCode());
            Browser own = Browser.signedIn(login, PASSWORD);
            own.get("/me");
            Response made =
                    own.post("/me/tokens", Map.of("name", "script", "days", "1", "present", PASSWORD, "scope", "READ"));
            given().header("Authorization", "Bearer bt_wrongbutprivate").get("/api/me");
            Response changed = own.post("/me/password", Map.of("present", PASSWORD, "password", "another private one"));
            String secret = made.asString().replaceAll("(?s).*<code>(secret-token:bt_[^<]+)</code>.*", "$1");
            assertEquals(59, secret.length());
            for (String hidden :
                    List.of(PASSWORD, "wrong but private", "another private one", "bt_wrongbutprivate", secret)) {
                assertFalse(ear.text().contains(hidden), () -> "logged: " + hidden);
            }
            assertEquals(null, made.header("Location"));
            assertEquals(null, changed.header("Location"));
        }
    }

    @Test
    void firstAdministrator_isMadeOnlyOnAnEmptyServer() {
        Optional<String> given = Optional.of(login);
        new FirstAdministrator(acts, given, Optional.of(PASSWORD)).atStart(new io.quarkus.runtime.StartupEvent());
        Actor keeper = new Actor("keeper", "Keeper", Set.of(Role.ADMINISTRATOR));
        assertTrue(acts.list(keeper, login, "", 1).accounts().isEmpty());
        TestDatabase.run(
                "truncate account, api_token, sign_in_session, absence, known_browser, second_factor, recovery_code");
        try (LogEar ear = new LogEar()) {
            new FirstAdministrator(acts, given, Optional.empty()).atStart(new io.quarkus.runtime.StartupEvent());
            assertTrue(ear.text().contains("set BENCHTRAIL_FIRST_ADMINISTRATOR and"), ear.text());
            assertTrue(acts.nobodyYet());
        }
        new FirstAdministrator(acts, given, Optional.of(PASSWORD)).atStart(new io.quarkus.runtime.StartupEvent());
        assertEquals(Set.of(Role.ADMINISTRATOR), acts.account(keeper, login).roles());
        assertEquals(200, Browser.signedIn(login, PASSWORD).get("/people").statusCode());
    }
}

package org.benchtrail.people;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Administrators see who tried what, from where. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class EventsPageTest {
    private static final String PASSWORD = "a long enough password";

    @Inject
    PeopleActs acts;

    private String login;

    @BeforeEach
    void account() {
        login = "e" + UUID.randomUUID().toString().substring(0, 8);
        acts.ensureAccount("keeper", "Keeper", Set.of(Role.ADMINISTRATOR), PASSWORD);
        acts.ensureAccount(login, "Eve", Set.of(Role.TECHNICIAN), PASSWORD);
    }

    private String events() {
        return Browser.signedIn("keeper", PASSWORD)
                .get("/people-events?about=" + login)
                .asString();
    }

    private static int times(String part, String page) {
        return page.split(part, -1).length - 1;
    }

    @Test
    void failedSignIns_areThere_withTheAddress_andNoPassword() {
        Browser stranger = new Browser();
        stranger.get("/sign-in");
        stranger.request()
                .header("X-Forwarded-For", "203.0.113.77")
                .formParams(Map.of("login", login, "password", "guessed quietly", "csrf-token", stranger.formToken()))
                .post("/sign-in");
        String page = events();
        assertTrue(page.contains("sign-in failed"), page);
        assertTrue(page.contains("203.0.113.77"), page);
        assertFalse(page.contains("guessed"), page);
    }

    @Test
    void refusedDoors_areThere_onceAMinuteEach() {
        Browser browser = Browser.signedIn(login, PASSWORD);
        for (int i = 0; i < 3; i++) {
            assertEquals(403, browser.get("/people").statusCode());
        }
        String token = acts.createToken(new Actor(login, "Eve", Set.of(Role.TECHNICIAN)), "e", 1)
                .secret();
        assertEquals(
                403,
                given().header("Authorization", "Bearer " + token)
                        .get("/api/people?search=secret")
                        .statusCode());
        String page = events();
        assertEquals(1, times("<td>GET /people</td>", page), page);
        assertEquals(1, times("<td>GET /api/people</td>", page), page);
        assertFalse(page.contains("secret"), "what was asked there is nobody's");
    }

    @Test
    void changesOfAccounts_areThere() {
        Set<Role> more = Set.of(Role.MENTOR, Role.SUPERVISOR);
        acts.setRoles(new Actor("keeper", "Keeper", Set.of(Role.ADMINISTRATOR)), login, more);
        String page = events();
        assertTrue(page.contains("from technician to mentor, supervisor"), page);
        assertTrue(page.contains("<td>roles technician</td>"), page);
    }
}

package org.benchtrail.platform;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Map;
import java.util.Set;
import java.util.function.BooleanSupplier;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What people and programs meet while the database is away, or goes while an act is made lasting. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class OutageTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor TESS = new Actor("away-tess", "Tess", Set.of(Role.TECHNICIAN));

    @Inject
    PeopleActs people;

    private Browser browser = new Browser();
    private String token = "";
    private Connection owner;
    private Connection cutter;

    @TestHTTPResource(value = "/health/ready", management = true)
    String ready;

    @TestHTTPResource(value = "/health/live", management = true)
    String live;

    @BeforeEach
    void signIn() throws SQLException {
        owner = TestDatabase.owner();
        cutter = TestDatabase.server();
        people.ensureAccount(TESS.account(), TESS.name(), TESS.roles(), PASSWORD);
        token = people.createToken(TESS, "away", 1).secret();
        browser = Browser.signedIn(TESS.account(), PASSWORD);
        browser.get("/me");
    }

    @AfterEach
    void backAgain() throws SQLException {
        letIn(-1);
        await(() -> given().get(ready).statusCode() == 200);
        TestDatabase.run("drop trigger if exists breaks_at_commit on ticket");
        TestDatabase.run("drop function if exists breaks_at_commit");
        owner.close();
    }

    /** Nobody may connect any more, and the server is cut off: as when the database is gone. */
    private void goAway() throws SQLException {
        letIn(0);
        try (var statement = cutter.createStatement()) {
            statement.execute("select pg_terminate_backend(pid) from pg_stat_activity"
                    + " where usename = current_user and pid <> pg_backend_pid()");
        }
        cutter.close();
    }

    private void letIn(int most) throws SQLException {
        try (var statement = owner.createStatement()) {
            statement.execute("alter database " + owner.getCatalog() + " connection limit " + most);
        }
    }

    private static void await(BooleanSupplier reached) {
        for (int i = 0; i < 100 && !reached.getAsBoolean(); i++) {
            try {
                Thread.sleep(100);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
        assertTrue(reached.getAsBoolean(), "not reached in ten seconds");
    }

    private static Map<String, String> report(String title) {
        return Map.ofEntries(
                Map.entry("title", title),
                Map.entry("words", "It hums, then <b>nothing</b>"),
                Map.entry("category", "HEAT"),
                Map.entry("device", "Workstation"),
                Map.entry("place", "Drawing office"),
                Map.entry("requester", "Rae"),
                Map.entry("contact", "room 4"),
                Map.entry("impact", "ONE_PERSON"),
                Map.entry("urgency", "HINDERED"));
    }

    private Response opens(String title) {
        return given().header("Authorization", "Bearer " + token)
                .contentType("application/json")
                .body(report(title))
                .post("/api/tickets");
    }

    private static void isAway(Response answer) {
        assertEquals(503, answer.statusCode());
        assertEquals("5", answer.header("Retry-After"));
        assertFalse(answer.asString().contains("Exception"), answer.asString());
    }

    @Test
    void databaseGone_pagesKeepWhatWasTyped_programsGetAProblem_theLogGetsOneLineAndOneAtItsEnd() throws SQLException {
        try (LogEar ear = new LogEar()) {
            goAway();
            Response page = browser.get("/queue");
            isAway(page);
            assertTrue(page.contentType().startsWith("text/html"), page.contentType());
            assertTrue(page.asString().contains("http-equiv=\"refresh\""));

            Response form = browser.post("/new-ticket", report("Kept while away"));
            isAway(form);
            String html = form.asString();
            assertTrue(html.contains("name=\"title\" value=\"Kept while away\""), html);
            assertTrue(html.contains("&lt;b&gt;nothing&lt;/b&gt;"), html);
            assertTrue(html.contains("action=\"/new-ticket\""), html);
            assertTrue(html.contains("name=\"csrf-token\" value=\"" + browser.formToken()), html);

            Response program = opens("Never opened");
            isAway(program);
            assertEquals("application/problem+json", program.contentType().split(";")[0]);
            assertEquals(
                    "urn:benchtrail:problem:database-away", program.jsonPath().getString("type"));

            Response password = browser.post("/me/password", Map.of("present", PASSWORD, "password", "x y z 1 2 3 4"));
            isAway(password);
            assertFalse(password.asString().contains("x y z"), "a secret stands on no page");

            assertEquals(503, given().get(ready).statusCode(), ready);
            assertEquals(200, given().get(live).statusCode());

            letIn(-1);
            await(() -> ear.text().contains("The database answers again"));
            String log = ear.text();
            assertEquals(log.indexOf("does not answer"), log.lastIndexOf("does not answer"), log);
            assertTrue(log.matches("(?s).*; [45] requests were refused meanwhile.*"), log);
            assertFalse(log.contains("\tat "), log);
        }
        assertEquals(200, browser.get("/queue").statusCode());
    }

    @Test
    void connectionBreaksAtCommit_isToldSo_andWhereToLook() throws SQLException {
        breaksAtCommit();
        Response program = opens("commit breaks");
        isAway(program);
        assertEquals("urn:benchtrail:problem:maybe-recorded", program.jsonPath().getString("type"));
        assertNotNull(program.jsonPath().getString("detail"));

        Response page = browser.post("/new-ticket", report("commit breaks"));
        isAway(page);
        assertTrue(page.asString().contains("may or may not have been recorded"), page.asString());
        assertTrue(page.asString().contains("name=\"title\" value=\"commit breaks\""), page.asString());
    }

    private void breaksAtCommit() throws SQLException {
        try (var statement = owner.createStatement()) {
            statement.execute("create or replace function breaks_at_commit() returns trigger language plpgsql as"
                    + " $$ begin perform pg_terminate_backend(pg_backend_pid()); return null; end $$");
            statement.execute("create constraint trigger breaks_at_commit after insert on ticket deferrable"
                    + " initially deferred for each row when (new.title like 'commit breaks%')"
                    + " execute function breaks_at_commit()");
        }
    }
}

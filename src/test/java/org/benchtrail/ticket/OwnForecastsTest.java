package org.benchtrail.ticket;

import static org.benchtrail.ticket.ApiDesk.ADVANCE;
import static org.benchtrail.ticket.AttackSite.MENTOR_SIGNS;
import static org.benchtrail.ticket.AttackSite.approved;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.Browser;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;

/** Forecasts are read by their author and the mentor of the moment, scored by accepted cases alone, and can be erased. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class OwnForecastsTest extends AttackCase {
    private static final String PASSWORD = "a long enough password";
    private static final String TESS = "own-tess";

    @Inject
    EntityManager database;

    private Browser page(String login) {
        return Browser.signedIn(login, PASSWORD);
    }

    private void committed(ApiDesk desk, String kind, String causes) {
        committed(TESS, desk, kind, causes);
    }

    private void committed(String login, ApiDesk desk, String kind, String causes) {
        Response answer = site.as(login)
                .header("If-Match", "\"" + desk.version + "\"")
                .contentType("application/json")
                .body("{\"forecast\":\"" + kind + "\",\"causes\":{" + causes + "},\"nextTest\":\"h3\"}")
                .post("/api/tickets/" + desk.number + "/forecasts");
        assertEquals(200, answer.statusCode(), answer.asString());
        desk.version = answer.jsonPath().getInt("version");
    }

    /** A trainee's ticket from report to closure, with both forecasts. */
    private ApiDesk closed(String login) {
        ApiDesk desk = site.desk(login);
        desk.does(Arrays.copyOf(ApiDesk.IDENTIFIED, ApiDesk.IDENTIFIED.length - 1));
        committed(login, desk, "CAUSES_EARLY", "\"heat/dust\":60");
        desk.does("{\"kind\":\"likeness-checked\",\"shown\":[]}", ADVANCE);
        committed(login, desk, "CAUSES", "\"heat/dust\":0,\"heat/clock-raised\":80");
        desk.does(ApiDesk.OBVIOUS);
        int theory = desk.does("{\"kind\":\"theory-stated\",\"text\":\"Dusty\"}");
        desk.does("{\"kind\":\"theory-chosen\",\"theory\":" + theory + ",\"reason\":\"Seen\"}", ADVANCE);
        desk.tests(theory, "SUPPORTS");
        desk.does(ADVANCE);
        int action = desk.plans();
        desk.lets("way-marek", approved(action));
        desk.carriesOut(action);
        desk.verifies();
        desk.documents();
        desk.does(
                "{\"kind\":\"cause-named\",\"cause\":\"Dust\",\"causeId\":\"heat/dust\",\"sureness\":\"BY_REPAIR\"}",
                "{\"kind\":\"signed\",\"signatory\":\"ASSIGNEE\"}");
        desk.lets("way-marek", MENTOR_SIGNS);
        desk.does(AttackSite.CLOSE);
        return desk;
    }

    private void judged(String how, ApiDesk desk) {
        Response answer = site.as("way-sue")
                .contentType("application/json")
                .body("{\"tickets\":[\"" + desk.number + "\"],\"reason\":\"For the test\"}")
                .post("/api/learning/" + how);
        assertEquals(200, answer.statusCode(), answer.asString());
    }

    private static int entry(ApiDesk desk, int which) {
        int found = 0;
        for (int entry = 1; ; entry++) {
            if (desk.entry(entry).at("/payload/kind").asText().equals("forecast-committed") && ++found == which) {
                return entry;
            }
        }
    }

    /** Nobody types again what they said before; and nobody else is shown it. */
    @Test
    void theSecondForecast_beginsWithTheFirst_forItsAuthorAlone() {
        site.hire(TESS, Role.TRAINEE);
        ApiDesk desk = site.desk(TESS);
        desk.does(Arrays.copyOf(ApiDesk.IDENTIFIED, ApiDesk.IDENTIFIED.length - 1));
        String first = page(TESS).get("/tickets/" + desk.number).asString();
        assertFalse(first.contains("As you said before"), first);
        committed(desk, "CAUSES_EARLY", "\"heat/dust\":60,\"heat/clock-raised\":15");
        desk.does("{\"kind\":\"likeness-checked\",\"shown\":[]}", ADVANCE);
        for (String path : new String[] {"", "/ranking"}) {
            String again = page(TESS).get("/tickets/" + desk.number + path).asString();
            assertTrue(again.contains("As you said before"), again);
            assertTrue(again.matches("(?s).*name=\"cause.1\".*?value=\"heat/dust\" selected.*"), again);
            assertTrue(again.contains("name=\"percent.1\" value=\"60\""), again);
            assertTrue(again.contains("name=\"percent.2\" value=\"15\""), again);
            assertTrue(again.contains("value=\"h3\" selected"), again);
            assertTrue(again.contains("name=\"other\" value=\"\""), "what is left follows by itself");
        }
        for (String other : new String[] {"way-tom", "way-marek", "way-sue"}) {
            String page = page(other).get("/tickets/" + desk.number).asString();
            assertFalse(page.contains("As you said before") || page.contains("value=\"60\""), other);
        }
    }

    @Test
    void forecast_isScoredByTheAcceptedCaseAlone_readByWhoMay_andErased() {
        site.hire(TESS, Role.TRAINEE);
        ApiDesk desk = closed(TESS);
        Browser tess = page(TESS);
        String own = tess.get("/forecasts").asString();
        assertTrue(own.contains("not scored: no accepted cause") && own.contains("60 %"), own);
        assertTrue(own.contains("Nothing is scored yet"), own);
        assertFalse(own.contains("Erase"), "not before it is scored");

        judged("accepted", desk);
        own = tess.get("/forecasts").asString();
        // (0.6 - 1)^2 + 0.4^2, halved; and all that was stated went elsewhere: 1 + 0.8^2 + 0.2^2, halved
        assertTrue(own.contains("Brier score 0.16"), own);
        assertTrue(own.contains("It had been given 0 %; Brier score 0.84"), own);
        assertTrue(own.contains("Too few tickets to hold how sure against how right"), own);

        // nobody else, by role or by a guessed address; the mentor as long as they are
        for (String other : new String[] {"way-ole", "way-tom", "way-marek", "way-sue"}) {
            assertEquals(404, page(other).get("/forecasts/" + TESS).statusCode(), other);
            assertFalse(page(other).get("/forecasts").asString().contains(desk.number), other);
        }
        people.ensureAccount("own-ada", "own-ada", Set.of(Role.ADMINISTRATOR), PASSWORD);
        assertEquals(403, page("own-ada").get("/forecasts").statusCode());
        Actor ada = new Actor("own-ada", "own-ada", Set.of(Role.ADMINISTRATOR));
        people.setMentor(ada, TESS, "way-marek");
        assertTrue(page("way-marek").get("/forecasts/" + TESS).asString().contains("Brier score 0.16"));
        assertFalse(page("way-marek").get("/forecasts/" + TESS).asString().contains("Erase"));
        assertTrue(tess.get("/forecasts").asString().contains("Read by a mentor"));
        people.setMentor(ada, TESS, "");
        assertEquals(404, page("way-marek").get("/forecasts/" + TESS).statusCode());

        assertKeptApart(database, "forecast.content");

        judged("withdrawn", desk);
        own = tess.get("/forecasts").asString();
        assertTrue(own.contains("Nothing is scored yet"), "withdrawn");
        Map<String, String> first = Map.of("ticket", desk.number, "entry", "" + entry(desk, 1));
        assertEquals(404, tess.post("/forecasts/erasures", first).statusCode());
        judged("accepted", desk);
        assertEquals(404, page("way-tom").post("/forecasts/erasures", first).statusCode(), "another's");
        assertEquals(303, tess.post("/forecasts/erasures", first).statusCode());
        own = tess.get("/forecasts").asString();
        assertFalse(own.contains("60 %"), own);
        assertTrue(own.contains("Brier score 0.84"), "the other one stays");
        assertTrue(site.as("way-ole")
                .get("/api/tickets/" + desk.number + "/trail/verification")
                .jsonPath()
                .getBoolean("holds"));
        long erased = QuarkusTransaction.requiringNew()
                .call(() -> ((Number)
                                database.createNativeQuery("select count(*) from site_record where stream = 'erasures'")
                                        .getSingleResult())
                        .longValue());
        assertTrue(erased > 0, "that it was erased is recorded");

        desk.does("{\"kind\":\"reopened\",\"reason\":\"It came back\"}");
        own = tess.get("/forecasts").asString();
        assertTrue(own.contains("Nothing is scored yet") && own.contains("not scored: no accepted cause"), own);
        assertFalse(own.contains("Brier score 0.84"), "opened again");
    }

    /** Whoever forecast it has no say in whether it counts, not even as a supervisor. */
    @Test
    void nobodyAcceptsWhatTheyForecast_byAnyRole() {
        String both = "own-both";
        site.hire(both, Role.TRAINEE);
        ApiDesk desk = closed(both);
        people.ensureAccount("own-ada", "own-ada", Set.of(Role.ADMINISTRATOR), PASSWORD);
        Actor ada = new Actor("own-ada", "own-ada", Set.of(Role.ADMINISTRATOR));
        people.setRoles(ada, both, Set.of(Role.TRAINEE, Role.SUPERVISOR));
        Response own = page(both).post("/learning/accepted", Map.of("tickets", desk.number));
        assertTrue(own.statusCode() == 422 || own.statusCode() == 403, own.statusCode() + own.asString());
        people.setRoles(ada, both, Set.of(Role.TRAINEE));
        String shown = page(both).get("/forecasts").asString();
        assertFalse(shown.matches("(?s).*" + desk.number + ".{0,900}Brier score.*"), shown);
    }
}

package org.benchtrail.ticket;

import static org.benchtrail.ticket.ApiDesk.ADVANCE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.util.Map;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.Browser;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;

/** Chances of checks, findings and actions: offered to the trainee who has the ticket, and told to nobody else. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class ChanceForecastTest extends AttackCase {
    private static final String PASSWORD = "a long enough password";
    private static final String TESS = "chance-tess";

    private Response sends(ApiDesk desk, String who, String body) {
        Response answer = site.as(who)
                .header("If-Match", "\"" + desk.version + "\"")
                .contentType("application/json")
                .body(body)
                .post("/api/tickets/" + desk.number + "/forecasts");
        if (answer.statusCode() == 200) {
            desk.version = answer.jsonPath().getInt("version");
        }
        return answer;
    }

    /** A trainee's ticket at Test. */
    private ApiDesk testing() {
        site.hire(TESS, Role.TRAINEE);
        ApiDesk desk = site.desk(TESS);
        desk.identifies();
        desk.does(ADVANCE);
        desk.does(ApiDesk.OBVIOUS);
        desk.skips("CAUSES");
        int theory = desk.does("{\"kind\":\"theory-stated\",\"text\":\"Dusty\"}");
        desk.does("{\"kind\":\"theory-chosen\",\"theory\":" + theory + ",\"reason\":\"Seen\"}", ADVANCE);
        return desk;
    }

    @Test
    void aChance_goesFromTheSheetToTheScore_andWhatItSaysStaysWithItsAuthor() {
        ApiDesk desk = testing();
        Browser tess = Browser.signedIn(TESS, PASSWORD);
        String sheet = tess.get("/tickets/" + desk.number).asString();
        assertTrue(sheet.contains("Say what you expect") && sheet.contains("FINDING h31 yes"), sheet);
        for (String other : new String[] {"way-ines", "way-marek", "way-sue", "way-tom"}) {
            assertFalse(
                    Browser.signedIn(other, PASSWORD)
                            .get("/tickets/" + desk.number)
                            .asString()
                            .contains("Say what you expect"),
                    other);
        }
        // typed on the sheet
        Response typed = tess.post(
                "/tickets/" + desk.number + "/forecast",
                Map.of("version", String.valueOf(desk.version), "expected", "FINDING h31 yes", "chance", "85"));
        assertEquals(303, typed.statusCode(), typed.asString());
        desk.version++;
        String entry = desk.entry(desk.version).toString();
        assertTrue(entry.contains("FINDING") && entry.contains("h31"), entry);
        assertFalse(entry.contains("85") && entry.contains("0.85"), entry);

        // what is malformed, late, or of something else
        assertEquals(
                422,
                sends(desk, TESS, "{\"forecast\":\"FINDING\",\"finding\":\"h31\",\"value\":\"perhaps\",\"percent\":50}")
                        .statusCode());
        assertEquals(
                422,
                sends(desk, TESS, "{\"forecast\":\"FINDING\",\"finding\":\"h4\",\"value\":\"yes\",\"percent\":73}")
                        .statusCode());
        assertEquals(
                422,
                sends(desk, TESS, "{\"forecast\":\"CHECK\",\"percent\":50}").statusCode());
        assertEquals(
                409,
                sends(desk, TESS, "{\"forecast\":\"FINDING\",\"finding\":\"h31\",\"value\":\"no\",\"percent\":50}")
                        .statusCode());
        desk.version = desk.entries();
        desk.does(
                "{\"kind\":\"finding-answered\",\"finding\":\"h31\",\"question\":\"Dust?\",\"value\":\"yes\",\"source\":\"SEEN\"}");

        String own = tess.get("/forecasts").asString();
        assertTrue(own.contains("85 %") && own.contains("it came"), own);
        // (1 - 0.85)^2
        assertTrue(own.contains("1 scored, Brier score 0.02"), own);
        assertTrue(own.contains("Skipped: 2 of 2"), "a chance is no forecast that was due");
        String trail =
                site.as("way-sue").get("/api/tickets/" + desk.number + "/trail").asString();
        assertFalse(trail.contains("0.85"), trail);
    }
}

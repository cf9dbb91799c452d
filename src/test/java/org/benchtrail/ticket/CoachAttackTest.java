package org.benchtrail.ticket;

import static org.benchtrail.ticket.ApiDesk.ADVANCE;
import static org.benchtrail.ticket.AttackSite.MENTOR_SIGNS;
import static org.benchtrail.ticket.AttackSite.approved;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.Browser;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;

/** Who is coached, who sees how much, and how somebody might come by less of it without being better. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class CoachAttackTest extends AttackCase {
    private static final String PASSWORD = "a long enough password";
    private static final String MARK = "<details class=\"coach";
    private static final String THEORY_EXAMPLE = "A dust mat between fan and fins";
    private static final Actor ADA = new Actor("coach-ada", "coach-ada", Set.of(Role.ADMINISTRATOR));

    @Inject
    EntityManager database;

    private Browser page(String login) {
        return Browser.signedIn(login, PASSWORD);
    }

    private static String sheet(Browser who, ApiDesk desk) {
        return who.get("/tickets/" + desk.number).asString();
    }

    private static int count(String page, String part) {
        return page.split(java.util.regex.Pattern.quote(part), -1).length - 1;
    }

    private void forecast(ApiDesk desk, String kind) {
        Response answer = site.as(desk.who)
                .header("If-Match", "\"" + desk.version + "\"")
                .contentType("application/json")
                .body("{\"forecast\":\"" + kind + "\",\"causes\":{\"heat/dust\":60},\"nextTest\":\"h3\"}")
                .post("/api/tickets/" + desk.number + "/forecasts");
        assertEquals(200, answer.statusCode(), answer.asString());
        desk.version = answer.jsonPath().getInt("version");
    }

    @Test
    void aTrainee_isCoachedOnTheirOwnWork_andNobodyElseIs() {
        site.hire("coach-tess", Role.TRAINEE);
        ApiDesk own = site.desk("coach-tess");
        Browser tess = page("coach-tess");
        String page = sheet(tess, own);
        assertEquals(10, count(page, MARK), "one beside each requirement of identify");
        assertTrue(page.contains("The till freezes when we are busy."), page);
        assertEquals(2, count(page, "<details class=\"coach whole\""), "hazards and data are nowhere cut short");

        // the same sheet for whoever looks on, and the same person on what is not theirs
        for (String other : List.of("way-ines", "way-marek", "way-sue", "way-tom")) {
            assertFalse(sheet(page(other), own).contains(MARK), other);
        }
        assertFalse(sheet(tess, site.desk("way-ines")).contains(MARK));
        ApiDesk technicians = site.desk("way-ole");
        assertFalse(sheet(page("way-ole"), technicians).contains(MARK), "a technician's own");

        // whoever asks reads the texts, without any level
        String texts = page("way-ole").get("/coach").asString();
        assertEquals(36, count(texts, MARK));
        assertFalse(texts.contains("On the job sheet:") || texts.contains("Show me"), texts);
    }

    @Test
    void coach_tellsNoTheory_whileTheForecastIsDue() {
        site.hire("coach-una", Role.TRAINEE);
        ApiDesk desk = site.desk("coach-una");
        desk.does(Arrays.copyOf(ApiDesk.IDENTIFIED, ApiDesk.IDENTIFIED.length - 1));
        forecast(desk, "CAUSES_EARLY");
        desk.does("{\"kind\":\"likeness-checked\",\"shown\":[]}", ADVANCE);
        Browser una = page("coach-una");
        String veiled = sheet(una, desk);
        assertTrue(veiled.contains("Only a theory that could be shown wrong"), veiled);
        assertFalse(veiled.contains(THEORY_EXAMPLE), veiled);
        forecast(desk, "CAUSES");
        assertTrue(sheet(una, desk).contains(THEORY_EXAMPLE), "else the search is blind");
    }

    /** The whole way, with as little as the gates take: nobody looked at it, so it says nothing. */
    @Test
    void aClosedTicketThatNobodyLookedAt_fadesNothing_andARefusedLeaveIsAMiss() {
        site.hire("coach-vin", Role.TRAINEE);
        ApiDesk desk = site.desk("coach-vin");
        Browser vin = page("coach-vin");
        desk.does(Arrays.copyOf(ApiDesk.IDENTIFIED, ApiDesk.IDENTIFIED.length - 1));
        forecast(desk, "CAUSES_EARLY");
        desk.does("{\"kind\":\"likeness-checked\",\"shown\":[]}", ADVANCE);
        forecast(desk, "CAUSES");
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
        desk.lets("way-marek", MENTOR_SIGNS);
        desk.does(AttackSite.CLOSE);
        String own = vin.get("/coach").asString();
        assertFalse(own.contains("met at this level"), own);
        assertEquals(36, count(own, "nothing looked at yet at this level"));

        ApiDesk second = site.desk("coach-vin");
        assertEquals(
                409,
                second.sends("coach-vin", second.version, "[" + ADVANCE + "]").statusCode());
        own = vin.get("/coach").asString();
        assertEquals(10, count(own, "0 of 1 met at this level"), own);
    }

    @Test
    void levels_areReadByTheirPersonAndTheMentorOfTheMoment() {
        site.hire("coach-wim", Role.TRAINEE);
        people.ensureAccount(ADA.account(), ADA.name(), ADA.roles(), PASSWORD);
        for (String other : List.of("way-ole", "way-tom", "way-marek", "way-sue")) {
            Response answer = page(other).get("/coach/coach-wim");
            assertEquals(404, answer.statusCode(), other);
            assertFalse(page(other).get("/coach").asString().contains("coach-wim"), other);
        }
        assertEquals(403, page(ADA.account()).get("/coach").statusCode());
        assertEquals(404, page("coach-wim").get("/coach/coach-wim").statusCode(), "one's own stands at /coach");
        people.setMentor(ADA, "coach-wim", "way-marek");
        String read = page("way-marek").get("/coach/coach-wim").asString();
        assertEquals(36, count(read, "On the job sheet:"), read);
        assertFalse(read.contains("Show me"), "a mentor chooses nothing");
        assertTrue(page("way-marek").get("/coach").asString().contains("/coach/coach-wim"));
        people.setMentor(ADA, "coach-wim", "");
        assertEquals(404, page("way-marek").get("/coach/coach-wim").statusCode());
    }

    @Test
    void aChoice_isOnesOwn_holdsAtOnce_andLeavesSafetyAPrompt() {
        site.hire("coach-xan", Role.TRAINEE);
        site.hire("coach-yul", Role.TRAINEE);
        ApiDesk desk = site.desk("coach-xan");
        Browser xan = page("coach-xan");
        assertEquals(
                303,
                xan.post("/coach/choices", Map.of("code", "", "level", "SILENT"))
                        .statusCode());
        String page = sheet(xan, desk);
        assertEquals(8, count(page, "<span aria-hidden=\"true\">?</span>"), page);
        assertTrue(page.contains("Each of the list answered by itself at the device"), "hazards: a prompt");
        assertTrue(page.contains("Where the backup lies"), "data: a prompt");
        assertEquals(
                303,
                xan.post("/coach/choices", Map.of("code", "scope-known", "level", "COMPLETION"))
                        .statusCode());
        page = sheet(xan, desk);
        assertTrue(page.contains("<span class=\"blank\">"), page);
        assertFalse(page.contains("desk 13 on the same switch is clear"), "the part that is left open");
        assertTrue(page.contains("Desks 11, 12 and 14 crackle on calls"), page);
        assertEquals(
                303, xan.post("/coach/choices", Map.of("code", "", "level", "")).statusCode());
        assertEquals(0, count(sheet(xan, desk), "<span aria-hidden=\"true\">?</span>"));

        // what is not offered, by the text door
        for (Map<String, String> form : List.of(
                Map.of("code", "no-such", "level", "SILENT"),
                Map.of("code", "scope-known' or '1", "level", "SILENT"),
                Map.of("code", "", "level", "NOTHING"),
                Map.of("code", "", "level", "3"))) {
            assertEquals(422, xan.post("/coach/choices", form).statusCode(), form.toString());
        }
        String another = sheet(page("coach-yul"), site.desk("coach-yul"));
        assertTrue(another.contains("The till freezes when we are busy.") && !another.contains("class=\"blank\""));

        assertKeptApart(database, "coach.choice");
        assertNotEquals(
                200,
                page(ADA.account())
                        .post("/coach/choices", Map.of("code", "", "level", ""))
                        .statusCode());
    }
}

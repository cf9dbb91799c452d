package org.benchtrail.ticket;

import static org.benchtrail.ticket.ApiDesk.ADVANCE;
import static org.benchtrail.ticket.AttackSite.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.Browser;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A trainee tries dangerous work without their mentor, and others try to stand in for one; each by page or API. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class PresenceAttackTest extends AttackCase {
    private static final String PASSWORD = "a long enough password";
    private static final String ALONE = "This is dangerous work: your mentor signs in to be present";
    private static final Actor ADA = new Actor("pre-ada", "pre-ada", Set.of(Role.ADMINISTRATOR));
    private static final String TIA = "pre-tia";
    private static final String MENTOR = "pre-mona";
    private static final String DEPUTY = "pre-dirk";

    @Inject
    EntityManager database;

    @Inject
    MovedClock clock;

    @BeforeEach
    void aTraineeWithAMentor() {
        people.ensureAccount(ADA.account(), ADA.name(), ADA.roles(), PASSWORD);
        site.hire(TIA, Role.TRAINEE);
        site.hire(MENTOR, Role.MENTOR);
        site.hire(DEPUTY, Role.MENTOR);
        people.setMentor(ADA, TIA, MENTOR);
    }

    @AfterEach
    void now() {
        clock.putRight();
    }

    /** A check on live mains, with its cautions taken. */
    private static int liveCheck(ApiDesk desk) {
        int check = desk.does(check(theory(desk), "Measure 230 V at the socket", "It is not there"));
        desk.does(acknowledged(check, "LIVE", "MAINS"));
        return check;
    }

    private Response signs(String who, ApiDesk desk, int about) {
        Response answer = site.as(who)
                .header("If-Match", "\"" + desk.version + "\"")
                .contentType("application/json")
                .body("{\"about\":" + about + "}")
                .post("/api/tickets/" + desk.number + "/presences");
        if (answer.statusCode() == 200) {
            desk.version = answer.jsonPath().getInt("version");
        }
        return answer;
    }

    private void assertAlone(ApiDesk desk, String... facts) {
        desk.shut(TIA, "mentor-present", ALONE, facts);
    }

    /** Whether the access record says that this account was refused to be present on that ticket, for that reason. */
    private boolean accessRecordSays(String account, ApiDesk desk, String code) {
        return QuarkusTransaction.requiringNew()
                        .call(() -> ((Number) database.createNativeQuery(
                                                "select count(*) from account_record where who = :who and what = 'refused' and detail = :detail")
                                        .setParameter("who", account)
                                        .setParameter("detail", desk.number + ", presence-signed: " + code)
                                        .getSingleResult())
                                .longValue())
                > 0;
    }

    private void assertNotPresent(String who, ApiDesk desk, int about, String code) {
        int before = desk.entries();
        Response answer = signs(who, desk, about);
        assertEquals(409, answer.statusCode(), answer.asString());
        assertEquals(List.of(code), answer.jsonPath().getList("missing.code"));
        assertEquals(before, desk.entries(), "who asks is no matter of the ticket's trail");
        assertTrue(accessRecordSays(who, desk, code), who + ": " + code);
    }

    @Test
    void withoutAStart_refused_onTheTrail_withOne_allowedOnce() {
        ApiDesk desk = site.atTest(TIA);
        int check = liveCheck(desk);
        assertAlone(desk, result(check, "SUPPORTS"));
        assertEquals(200, signs(MENTOR, desk, check).statusCode());
        JsonNode start = desk.entry(desk.version);
        assertEquals("presence-signed", start.at("/payload/kind").asText());
        assertEquals(MENTOR, start.at("/actor").asText());
        desk.does(result(check, "INCONCLUSIVE"));
        int second = liveCheck(desk);
        assertAlone(desk, result(second, "SUPPORTS"));
        assertEquals(422, signs(MENTOR, desk, check).statusCode(), "that one is done");
        int started = start.at("/entry").asInt();
        desk.lets(
                MENTOR,
                "{\"kind\":\"presence-ended\",\"presence\":" + started + ",\"stayed\":true,\"saw\":\"Leads whole\"}");
    }

    @Test
    void aPresence_ofAnotherTicket_ofAnotherEntry_ofACorrectedOne_orOfHalfAnHourAgo_opensNothing() {
        ApiDesk other = site.atTest(TIA);
        int elsewhere = liveCheck(other);
        ApiDesk desk = site.atTest(TIA);
        int check = liveCheck(desk);
        int beside = liveCheck(desk);
        assertEquals(200, signs(MENTOR, other, elsewhere).statusCode());
        assertAlone(desk, result(check, "SUPPORTS"));
        assertEquals(200, signs(MENTOR, desk, beside).statusCode());
        assertAlone(desk, result(check, "SUPPORTS"));
        assertEquals(200, signs(MENTOR, desk, check).statusCode());
        desk.does(corrected(check, check(theory(desk), "Measure 230 V at the other socket", "It is not there")));
        desk.does(acknowledged(check, "LIVE", "MAINS"));
        assertAlone(desk, result(check, "SUPPORTS"));
        assertEquals(200, signs(MENTOR, desk, check).statusCode());
        clock.putForward(Duration.ofMinutes(31));
        assertAlone(desk, result(check, "SUPPORTS"));
        assertEquals(200, signs(MENTOR, desk, check).statusCode());
        desk.does(result(check, "SUPPORTS"));
    }

    @Test
    void nobodyStandsInForTheMentor() {
        ApiDesk desk = site.desk(MENTOR);
        desk.does(ApiDesk.ONSET);
        desk.lets("way-sue", handed(TIA));
        desk.who = TIA;
        desk.identify();
        desk.does(ApiDesk.OBVIOUS);
        desk.theory("Dead socket");
        int check = liveCheck(desk);
        assertNotPresent(TIA, desk, check, "not-your-role");
        assertNotPresent("way-ole", desk, check, "not-your-role");
        assertNotPresent("way-sue", desk, check, "not-your-role");
        assertNotPresent(DEPUTY, desk, check, "not-your-trainee");
        assertNotPresent(MENTOR, desk, check, "own-work");
        people.setMentor(ADA, TIA, DEPUTY);
        assertEquals(200, signs(DEPUTY, desk, check).statusCode());
        desk.does(result(check, "SUPPORTS"));
    }

    @Test
    void nobodyPostsItAsAnAct() {
        ApiDesk desk = site.atTest(TIA);
        int check = liveCheck(desk);
        for (String who : List.of(TIA, MENTOR)) {
            Response answer = desk.sends(
                    who,
                    desk.version,
                    "{\"kind\":\"presence-signed\",\"about\":" + check + ",\"trainee\":\"" + TIA + "\"}");
            assertEquals(422, answer.statusCode(), answer.asString());
        }
        assertAlone(desk, result(check, "SUPPORTS"));
    }

    @Test
    void anActionThatIsCarriedOut_andALiveMeasurement_needOneToo() {
        ApiDesk desk = site.atTest(TIA);
        desk.does(acknowledged(1, "LIVE"));
        String live =
                "{\"kind\":\"reading-recorded\",\"quantity\":\"voltage\",\"value\":\"231 V\",\"point\":\"outlet\"}";
        assertAlone(desk, live);
        assertEquals(200, signs(MENTOR, desk, 1).statusCode());
        desk.does(live);
        assertAlone(desk, live);
        desk.tests(theory(desk), "SUPPORTS");
        desk.does(ADVANCE);
        int action = desk.does(
                action(
                        "Swap the power supply",
                        "\"irreversible\":false,\"touchesStorage\":false,\"usesPart\":false,\"against\":\"The old one goes back in\""));
        desk.does("{\"kind\":\"maker-consulted\",\"applicable\":true,\"text\":\"Manual, chapter 4\"}");
        desk.lets("way-marek", approved(action));
        desk.does(acknowledged(
                action,
                ApiDesk.strings(desk.entry(action).at("/payload/cautions")).toArray(String[]::new)));
        assertAlone(desk, settled(action, "CARRIED_OUT"));
        assertEquals(200, signs(MENTOR, desk, action).statusCode());
        desk.does(settled(action, "CARRIED_OUT"));
    }

    /** On the trainee's own device, who stays signed in there. */
    @Test
    void onThePage_theMentorsOwnPasswordOpensIt_andFiveWrongOnesLockThatAndNotTheTrainee() {
        ApiDesk desk = site.atTest(TIA);
        int check = liveCheck(desk);
        Browser tia = Browser.signedIn(TIA, PASSWORD);
        String sheet = tia.get("/tickets/" + desk.number).asString();
        String door = "/tickets/" + desk.number + "/presence/" + check;
        assertTrue(sheet.contains("href=\"" + door + "\""), sheet);
        String page = tia.get(door).asString();
        assertTrue(page.contains("Measure 230 V at the socket") && page.contains("value=\"" + MENTOR + "\""), page);
        Response own = tia.post(door, form(desk, TIA, PASSWORD));
        assertEquals(409, own.statusCode());
        assertTrue(own.asString().contains("Only a mentor is present"), own.asString());
        assertTrue(accessRecordSays(TIA, desk, "not-your-role"));
        Response wrong = tia.post(door, form(desk, MENTOR, "not it at all"));
        assertEquals(422, wrong.statusCode());
        assertFalse(wrong.asString().contains("not it at all"), "a password is not given back");
        assertEquals(303, tia.post(door, form(desk, MENTOR, PASSWORD)).statusCode());
        desk.version++;
        assertTrue(tia.get("/tickets/" + desk.number).asString().contains("Mentor present:"));
        assertTrue(tia.get("/me").asString().contains(TIA), "who was signed in stays so");
        Map<String, String> ended = form(desk, MENTOR, PASSWORD);
        ended.putAll(Map.of("presence", "" + desk.version, "stayed", "false", "saw", "Called away"));
        assertEquals(303, tia.post(door + "/end", ended).statusCode());
        desk.version++;
        assertAlone(desk, result(check, "SUPPORTS"));
        for (int i = 0; i < 5; i++) {
            assertEquals(422, tia.post(door, form(desk, DEPUTY, "wrong " + i)).statusCode());
        }
        assertEquals(422, tia.post(door, form(desk, DEPUTY, PASSWORD)).statusCode(), "locked");
        assertEquals(200, tia.get("/me").statusCode());
        assertEquals(303, tia.post(door, form(desk, MENTOR, PASSWORD)).statusCode());
        desk.version++;
        desk.does(result(check, "SUPPORTS"));
    }

    private static Map<String, String> form(ApiDesk desk, String login, String password) {
        return new HashMap<>(Map.of("version", "" + desk.version, "login", login, "password", password, "code", ""));
    }
}

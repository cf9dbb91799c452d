package org.benchtrail.ticket;

import static io.restassured.RestAssured.given;
import static org.benchtrail.ticket.ApiDesk.ADVANCE;
import static org.benchtrail.ticket.ApiDesk.reading;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** Ways round the method that hurried or dishonest people have tried, through the API: each is refused with its code. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class AttackTest {
    private static final String PASSWORD = "a long enough password";
    private static final String CLOSE = "{\"kind\":\"closed\"}";

    @Inject
    PeopleActs people;

    private final Map<String, String> tokens = new HashMap<>();

    @BeforeEach
    void people() {
        if (tokens.isEmpty()) {
            person("way-ines", Role.TECHNICIAN);
            person("way-ole", Role.TECHNICIAN);
            person("way-tom", Role.TRAINEE);
            person("way-marek", Role.MENTOR);
            person("way-sue", Role.SUPERVISOR);
            person("way-boris", Role.SUPERVISOR);
        }
    }

    private void person(String login, Role role) {
        people.ensureAccount(login, login, Set.of(role), PASSWORD);
        tokens.put(
                login,
                people.createToken(new Actor(login, login, Set.of(role)), "way", 1)
                        .secret());
    }

    private RequestSpecification as(String login) {
        return given().header("Authorization", "Bearer " + tokens.get(login));
    }

    private ApiDesk desk(String who) {
        return new ApiDesk(
                this::as,
                who,
                Map.of(
                        "title", "It switches off",
                        "category", "HEAT",
                        "device", "Workstation",
                        "place", "Drawing office",
                        "requester", "Rae",
                        "contact", "room 4",
                        "impact", "ONE_PERSON",
                        "urgency", "HINDERED"));
    }

    private ApiDesk atTest(String who) {
        ApiDesk desk = desk(who);
        desk.identify();
        desk.does(ApiDesk.OBVIOUS);
        desk.theory("Clogged cooler");
        return desk;
    }

    private ApiDesk atVerify(String who) {
        ApiDesk desk = desk(who);
        desk.identify();
        desk.does(ApiDesk.OBVIOUS);
        desk.tests(desk.theory("Clogged cooler"), "SUPPORTS");
        desk.does(ADVANCE);
        desk.carriesOut(desk.plans());
        return desk;
    }

    private ApiDesk atDocument(String who) {
        ApiDesk desk = atVerify(who);
        desk.verifies();
        desk.documents();
        return desk;
    }

    private static String corrected(int entry, String replacement) {
        return "{\"kind\":\"corrected\",\"entry\":" + entry + ",\"reason\":\"Misheard\",\"replacement\":" + replacement
                + "}";
    }

    private static int first(ApiDesk desk, String kind) {
        return desk.sheet().getInt("facts.find { it.fact.kind == '" + kind + "' }.entry");
    }

    private static String handed(String to) {
        return "{\"kind\":\"handed-over\",\"to\":\"" + to + "\"}";
    }

    // ---- closed with something open

    @Test
    void symptomRecordedAtTheEnd_keepsItOpen() {
        ApiDesk desk = atDocument("way-ines");
        desk.does("{\"kind\":\"symptom-recorded\",\"words\":\"It hums\",\"observable\":\"A hum\"}");
        assertEquals(List.of("symptoms-gone"), desk.refused("way-ines", CLOSE));
    }

    @Test
    void readingOutsideItsLimitAtTheEnd_keepsItOpen() {
        ApiDesk desk = atDocument("way-ines");
        desk.does(reading("97"));
        assertEquals(List.of("readings-back"), desk.refused("way-ines", CLOSE));
        desk.lets(
                "way-boris",
                "{\"kind\":\"waived\",\"requirement\":\"readings-back\",\"reason\":\"The sensor is known to be off\"}");
        desk.does(reading("98"));
        assertEquals(List.of("readings-back"), desk.refused("way-ines", CLOSE), "a waiver covers what was known");
    }

    @Test
    void widerLimitThanTheOneThatWasBroken_doesNotBringAReadingBack() {
        ApiDesk desk = atVerify("way-ines");
        desk.does(reading("97").replace("\"85\"", "\"120\""));
        assertTrue(desk.refused("way-ines", ADVANCE).contains("readings-back"));
        desk.does(reading("331.15").replace("\u00b0C", "K").replace("\"85\"", "\"400\""));
        assertTrue(!desk.refused("way-ines", ADVANCE).contains("readings-back"), "58 degrees, said in kelvin");
    }

    // ---- corrected away

    @Test
    void symptomStruckOut_isOwedUntilASupervisorAgreesWhoHasNotWorkedOnIt() {
        ApiDesk desk = atVerify("way-ines");
        int symptom = first(desk, "symptom-recorded");
        int struck = desk.does(corrected(symptom, "null"));
        assertTrue(desk.refused("way-ines", ADVANCE).contains("symptoms-gone"));
        assertEquals(List.of(symptom), desk.sheet().getList("lessenings.entry", Integer.class));
        String agreed = "{\"kind\":\"lessening-agreed\",\"correction\":" + struck + ",\"reason\":\"Another device\"}";
        assertEquals(List.of("not-your-role"), desk.refused("way-ines", agreed));
        assertEquals(List.of("not-your-role"), desk.refused("way-marek", agreed));
        desk.lets("way-sue", agreed);
        assertEquals(List.of(), desk.sheet().getList("lessenings.entry"));
    }

    @Test
    void readingCorrectedIntoItsLimit_isOwedOn() {
        ApiDesk desk = atVerify("way-ines");
        desk.does(corrected(first(desk, "reading-recorded"), reading("71")));
        assertTrue(desk.refused("way-ines", ADVANCE).contains("readings-back"));
    }

    @Test
    void slipInIdentify_isPutRightWithoutASupervisor() {
        ApiDesk desk = desk("way-ines");
        int symptom = desk.does(
                "{\"kind\":\"symptom-recorded\",\"words\":\"It dies\",\"observable\":\"Screen dark\",\"intermittent\":true}");
        desk.does(corrected(symptom, "null"));
        assertEquals(List.of(), desk.sheet().getList("lessenings.entry"));
    }

    // ---- handed over, waived, approved by oneself

    @Test
    void traineesWork_isSignedByAMentor_whoeverHasItAtTheEnd() {
        ApiDesk desk = desk("way-tom");
        desk.does(ApiDesk.ONSET);
        desk.lets("way-sue", handed("way-ines"));
        ApiDesk same = desk;
        same.who = "way-ines";
        same.identify();
        same.does(ApiDesk.OBVIOUS);
        same.tests(same.theory("Clogged cooler"), "SUPPORTS");
        same.does(ADVANCE);
        same.carriesOut(same.plans());
        same.verifies();
        same.documents();
        assertEquals(List.of("mentor-signed"), same.refused("way-ines", CLOSE));
        same.lets("way-marek", "{\"kind\":\"sent-back\",\"reason\":\"Say what was measured\"}");
        same.lets("way-marek", "{\"kind\":\"signed\",\"signatory\":\"MENTOR\"}");
        same.does("{\"kind\":\"effort-recorded\",\"minutes\":50}");
        assertEquals(List.of("summary-written", "mentor-signed"), same.refused("way-ines", CLOSE), "void signatures");
        same.does("{\"kind\":\"signed\",\"signatory\":\"ASSIGNEE\"}");
        same.lets("way-marek", "{\"kind\":\"signed\",\"signatory\":\"MENTOR\"}");
        same.does(CLOSE);
    }

    @Test
    void ticketIsNotThrownAtSomebody() {
        ApiDesk desk = desk("way-ines");
        assertEquals(List.of("offer-it"), desk.refused("way-ines", handed("way-ole")));
        desk.does("{\"kind\":\"hand-over-offered\",\"to\":\"way-ole\"}");
        assertEquals("way-ines", desk.sheet().getString("course.assignee"));
        desk.lets("way-ole", handed("way-ole"));
        assertEquals("way-ole", desk.sheet().getString("course.assignee"));
    }

    @Test
    void supervisorWhoWorkedOnIt_neitherWaivesNorAgreesNorApproves_andWhoWaivedDoesNotWork() {
        ApiDesk desk = desk("way-sue");
        desk.does(ApiDesk.ONSET);
        desk.lets("way-sue", handed("way-ines"));
        String waived = "{\"kind\":\"waived\",\"requirement\":\"logs-reviewed\",\"reason\":\"No logs\"}";
        assertEquals(List.of("own-work"), desk.refused("way-sue", waived));
        desk.lets("way-boris", waived);
        assertEquals(List.of("has-judged"), desk.refused("way-boris", handed("way-boris")));
        desk.who = "way-ines";
        assertEquals(
                List.of("has-judged"),
                desk.refused("way-ines", "{\"kind\":\"hand-over-offered\",\"to\":\"way-boris\"}"));
    }

    // ---- all in one request, or the wrong way round

    @Test
    void expectationAndResultInOneRequest_proveNothing() {
        ApiDesk desk = atTest("way-ines");
        int theory = first(desk, "theory-stated");
        String check = "{\"kind\":\"check-planned\",\"theory\":" + theory
                + ",\"what\":\"Look\",\"expectation\":\"Dust between the fins\"}";
        String result = "{\"kind\":\"result-recorded\",\"check\":" + (desk.version + 1)
                + ",\"observation\":\"Dust\",\"outcome\":\"SUPPORTS\"}";
        assertEquals(List.of("expectation-first"), desk.refused("way-ines", check, result));
    }

    @Test
    void readingFromBeforeTheCheck_isNoResultOfIt_andWhereAValueIsExpectedItDecides() {
        ApiDesk desk = atTest("way-ines");
        int theory = first(desk, "theory-stated");
        int check = desk.does("{\"kind\":\"check-planned\",\"theory\":" + theory
                + ",\"what\":\"Measure under load\",\"expectation\":\"Above 90\","
                + "\"expected\":{\"lower\":\"90\",\"unit\":\"\u00b0C\"}}");
        String result = "{\"kind\":\"result-recorded\",\"check\":" + check
                + ",\"observation\":\"Measured\",\"outcome\":\"SUPPORTS\",\"reading\":";
        Response old = desk.sends("way-ines", desk.version, "[" + result + first(desk, "reading-recorded") + "}]");
        assertEquals(List.of("reading"), fields(old));
        int cold = desk.does(reading("60"));
        assertEquals(List.of("outcome"), fields(desk.sends("way-ines", desk.version, "[" + result + cold + "}]")));
        desk.does(result + cold + ",\"against\":\"The load had not begun\"}");
    }

    @Test
    void actionWhoseWordsSayThatItWipes_isNotPlannedAsHarmless() {
        ApiDesk desk = atTest("way-ines");
        desk.tests(first(desk, "theory-stated"), "SUPPORTS");
        desk.does(ADVANCE);
        String wipe = "{\"kind\":\"action-planned\",\"what\":\"Format the drive and reinstall\",\"effect\":\"Clean\","
                + "\"impact\":\"One\",\"wayBack\":\"None needed\",\"irreversible\":false,\"touchesStorage\":false,"
                + "\"usesPart\":false}";
        assertEquals(
                List.of("touchesStorage", "irreversible"),
                fields(desk.sends("way-ines", desk.version, "[" + wipe + "]")));
        String unasked = wipe.replace(",\"touchesStorage\":false", "");
        assertEquals(List.of("touchesStorage"), fields(desk.sends("way-ines", desk.version, "[" + unasked + "]")));
    }

    @Test
    void checklist_isNotAnsweredByPlaces_norByAllNotApplicable() {
        ApiDesk desk = atVerify("way-ines");
        String places = "[{\"kind\":\"function-checked\",\"items\":{\"0\":\"WORKS\"}}]";
        assertEquals(List.of("answers"), fields(desk.sends("way-ines", desk.version, places)));
        String none = ApiDesk.functions(desk.sheet().getList("checklist", String.class))
                .replace("WORKS", "NOT_APPLICABLE");
        desk.does(none);
        assertTrue(desk.refused("way-ines", ADVANCE).contains("function-checked"));
    }

    @Test
    void disagreement_isNotAnsweredByNotReaching() {
        ApiDesk desk = atVerify("way-ines");
        desk.does("{\"kind\":\"requester-answered\",\"state\":\"DISAGREES\"}");
        desk.does("{\"kind\":\"requester-answered\",\"state\":\"NOT_REACHED\",\"tries\":3}");
        assertTrue(desk.refused("way-ines", ADVANCE).contains("requester-agrees"));
    }

    @Test
    void failedAction_asksForApprovalAndCautionsLikeAnyOther() {
        ApiDesk desk = atTest("way-ines");
        desk.tests(first(desk, "theory-stated"), "SUPPORTS");
        desk.does(ADVANCE);
        int action = desk.plans();
        String failed = "{\"kind\":\"action-settled\",\"action\":" + action
                + ",\"settlement\":\"FAILED\",\"note\":\"It broke\"}";
        assertEquals(List.of("cautions-taken"), desk.refused("way-ines", failed));
    }

    @Test
    void duplicates_makeNoCircle_andNameATicketThatIs() {
        ApiDesk one = desk("way-ines");
        ApiDesk two = desk("way-ines");
        String of = "{\"kind\":\"cancelled\",\"reason\":\"Same\",\"duplicateOf\":\"";
        assertEquals(List.of("[0].duplicateOf"), fields(one.sends("way-ines", one.version, "[" + of + "99999-4\"}]")));
        one.does(of + two.number + "\"}");
        assertEquals(
                List.of("duplicateOf"), fields(two.sends("way-ines", two.version, "[" + of + one.number + "\"}]")));
    }

    // ---- after the end

    @Test
    void reopened_asksAgain_andAClosedTicketTakesAnAddendumThatASecondPersonSigns() {
        ApiDesk desk = atDocument("way-ines");
        desk.does(CLOSE);
        String addendum = "{\"kind\":\"addendum\",\"about\":\"CAUSE\",\"text\":\"The fan was worn as well\"}";
        assertEquals(List.of("not-yours"), desk.refused("way-ole", addendum));
        int added = desk.does(addendum);
        String signed = "{\"kind\":\"addendum-countersigned\",\"addendum\":" + added + ",\"note\":\"Seen\"}";
        assertEquals(List.of("not-your-role"), desk.refused("way-ines", signed));
        desk.lets("way-sue", signed);
        assertEquals("CLOSED", desk.sheet().getString("course.standing"));
        desk.does("{\"kind\":\"reopened\",\"reason\":\"It is back\"}");
        assertEquals(
                List.of("symptom-observed", "hazards-screened", "data-protected", "evidence-attached"),
                desk.refused("way-ines", ADVANCE));
    }

    @Test
    void sameRefusalWithinAMinute_isWrittenOnce() {
        ApiDesk desk = desk("way-ines");
        desk.refused("way-ines", ADVANCE);
        Response again = desk.sends("way-ines", desk.version, "[" + ADVANCE + "]");
        assertEquals(409, again.statusCode());
        assertEquals("\"" + desk.version + "\"", again.header("ETag"));
        assertEquals(2, desk.entries());
    }

    private static List<String> fields(Response answer) {
        assertEquals(422, answer.statusCode(), answer.asString());
        return answer.jsonPath().getList("errors.field", String.class);
    }
}

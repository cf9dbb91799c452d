package org.benchtrail.ticket;

import static io.restassured.RestAssured.given;
import static org.benchtrail.ticket.ApiDesk.ADVANCE;
import static org.benchtrail.ticket.ApiDesk.OBVIOUS;
import static org.benchtrail.ticket.ApiDesk.reading;
import static org.junit.jupiter.api.Assertions.assertEquals;

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

/** Ways round the cautions and the hazards, through the API: each is refused with its code. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class CautionAttackTest {
    @Inject
    PeopleActs people;

    private final Map<String, String> tokens = new HashMap<>();

    @BeforeEach
    void people() {
        if (tokens.isEmpty()) {
            person("caution-ines", Role.TECHNICIAN);
            person("caution-ole", Role.TECHNICIAN);
            person("caution-tom", Role.TRAINEE);
        }
    }

    private void person(String login, Role role) {
        people.ensureAccount(login, login, Set.of(role), "a long enough password");
        tokens.put(
                login,
                people.createToken(new Actor(login, login, Set.of(role)), "caution", 1)
                        .secret());
    }

    private RequestSpecification as(String login) {
        return given().header("Authorization", "Bearer " + tokens.get(login));
    }

    private ApiDesk desk(String title) {
        return new ApiDesk(
                this::as,
                "caution-ines",
                Map.of(
                        "title", title,
                        "category", "HEAT",
                        "device", "Workstation",
                        "place", "Drawing office",
                        "requester", "Rae",
                        "contact", "room 4",
                        "impact", "ONE_PERSON",
                        "urgency", "HINDERED"));
    }

    private static List<String> fields(Response answer) {
        assertEquals(422, answer.statusCode(), answer.asString());
        return answer.jsonPath().getList("errors.field", String.class);
    }

    private static final String SCREENED_BUT =
            "{\"kind\":\"hazards-screened\",\"present\":{\"SMELL\":false,\"SMOKE\":%s,\"HEAT\":%s,\"SWELLING\":false,"
                    + "\"LIQUID\":false,\"MAINS_LEAD\":false,\"EXPOSED_WIRING\":false,\"SHOCK\":false,\"ARCING\":false,"
                    + "\"SHARP\":false,\"HEIGHT\":false}}";

    private static String acknowledged(int about, String... cautions) {
        return "{\"kind\":\"cautions-acknowledged\",\"about\":" + about + ",\"cautions\":[\""
                + String.join("\",\"", cautions) + "\"]}";
    }

    @Test
    void measuring230V_isNotRecordedWithoutTheCautionOfLiveMeasurements_norWithItInOneRequest() {
        ApiDesk desk = desk("Dead outlet");
        desk.identify();
        desk.does(OBVIOUS);
        int check = desk.does("{\"kind\":\"check-planned\",\"theory\":" + desk.theory("Outlet")
                + ",\"what\":\"Measure 230 V at the socket\",\"expectation\":\"It is not there\"}");
        assertEquals(
                List.of("LIVE", "MAINS"),
                List.of(
                        desk.entry(check).at("/payload/cautions/0").asText(),
                        desk.entry(check).at("/payload/cautions/1").asText()));
        assertEquals(2, desk.entry(check).at("/payload/cautions").size());
        String seen = "{\"kind\":\"result-recorded\",\"check\":" + check
                + ",\"observation\":\"Nothing there\",\"outcome\":\"SUPPORTS\"}";
        assertEquals(List.of("invasive-guarded"), desk.refused("caution-ines", seen));
        assertEquals(
                List.of("invasive-guarded"), desk.refused("caution-ines", acknowledged(check, "LIVE", "MAINS"), seen));
        desk.does(acknowledged(check, "MAINS", "STATIC"));
        assertEquals(List.of("invasive-guarded"), desk.refused("caution-ines", seen));
        desk.does(acknowledged(check, "LIVE"));
        desk.does(seen);
    }

    @Test
    void mainsReading_isNotRecordedWithoutItsCaution() {
        ApiDesk desk = desk("Lamp flickers");
        String live =
                "{\"kind\":\"reading-recorded\",\"quantity\":\"voltage\",\"value\":\"231 V\",\"point\":\"outlet\"}";
        assertEquals(List.of("live-guarded"), desk.refused("caution-ines", live));
        assertEquals(List.of("live-guarded"), desk.refused("caution-ines", acknowledged(1, "LIVE"), live));
        desk.does(acknowledged(1, "LIVE"));
        desk.does(live);
    }

    @Test
    void hazardsScreenedAllInOne_areAskedForOneByOne() {
        ApiDesk desk = desk("Smells odd");
        assertEquals(
                9,
                fields(desk.sends(
                                "caution-ines",
                                1,
                                "{\"kind\":\"hazards-screened\",\"present\":{\"SMELL\":false,\"SHOCK\":false}}"))
                        .size());
        String shorter = SCREENED_BUT.formatted(false, false).replaceFirst(",\"SHOCK.*\\}\\}", "}}");
        assertEquals(
                List.of("present.SHOCK", "present.ARCING", "present.SHARP", "present.HEIGHT"),
                fields(desk.sends("caution-ines", 1, shorter)));
    }

    @Test
    void whileAHazardStands_nothingIsDone_andTheAssigneeDoesNotClearSmoke() {
        ApiDesk desk = desk("Smokes");
        desk.identify();
        desk.does(OBVIOUS);
        int check = desk.does("{\"kind\":\"check-planned\",\"theory\":" + desk.theory("Dust")
                + ",\"what\":\"Ask again\",\"expectation\":\"Dust\"}");
        desk.does(SCREENED_BUT.formatted(true, false));
        desk.does(SCREENED_BUT.formatted(false, true));
        String seen = "{\"kind\":\"result-recorded\",\"check\":" + check
                + ",\"observation\":\"Dust\",\"outcome\":\"SUPPORTS\"}";
        assertEquals(List.of("hazards-screened"), desk.refused("caution-ines", seen));
        assertEquals(List.of("hazards-screened"), desk.refused("caution-ines", reading("70")));
        String cleared = "{\"kind\":\"stop-work-cleared\",\"how\":\"Aired\",\"acknowledged\":true}";
        assertEquals(List.of("second-person"), desk.refused("caution-ines", cleared));
        assertEquals(List.of("second-person"), desk.refused("caution-tom", cleared));
        desk.lets("caution-ole", cleared);
        desk.does(seen);
    }

    @Test
    void correctionThatTakesTheWordsOut_takesNoCautionAway() {
        ApiDesk desk = desk("Dead supply");
        desk.identify();
        desk.does(OBVIOUS);
        desk.tests(desk.theory("Supply"), "SUPPORTS");
        desk.does(ADVANCE);
        String planned =
                "{\"kind\":\"action-planned\",\"irreversible\":false,\"touchesStorage\":false,\"usesPart\":false,\"against\":\"The old one goes back in\",\"what\":\"%s\",\"effect\":\"Runs\",\"impact\":\"One\","
                        + "\"wayBack\":\"The old one is kept\"}";
        int action = desk.does(planned.formatted("Swap the power supply"));
        String corrected = "{\"kind\":\"corrected\",\"entry\":" + action
                + ",\"reason\":\"Other words\",\"replacement\":" + planned.formatted("Make it good") + "}";
        assertEquals(List.of("cautions-kept"), desk.refused("caution-ines", corrected));
        desk.does("{\"kind\":\"maker-consulted\",\"applicable\":true,\"text\":\"Manual, chapter 4\"}");
        String settled = "{\"kind\":\"action-settled\",\"action\":" + action + ",\"settlement\":\"CARRIED_OUT\"}";
        String taken = acknowledged(action, "MAINS", "CAPACITOR");
        assertEquals(List.of("cautions-taken"), desk.refused("caution-ines", taken, settled));
        desk.does(taken);
        assertEquals(List.of("cautions-kept"), desk.refused("caution-ines", corrected));
        desk.does(settled);
    }
}

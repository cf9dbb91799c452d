package org.benchtrail.ticket;

import static io.restassured.RestAssured.given;
import static org.benchtrail.ticket.ApiDesk.ADVANCE;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.PeopleActs;

/** People who try ways round the method through the API, and tickets at each step for them to try it on. */
final class AttackSite {
    static final String CLOSE = "{\"kind\":\"closed\"}";
    static final String MENTOR_SIGNS = "{\"kind\":\"signed\",\"signatory\":\"MENTOR\"}";
    static final String SIGNS = "{\"kind\":\"signed\",\"signatory\":\"ASSIGNEE\"}";
    static final String CLEARED = "{\"kind\":\"stop-work-cleared\",\"how\":\"Aired\",\"acknowledged\":true}";

    private static final int DAYS = 300; // some attacks put the clock forward

    private final Map<String, String> tokens = new HashMap<>();

    private final PeopleActs people;

    AttackSite(PeopleActs people) {
        this.people = people;
        for (Map.Entry<String, Role> person : Map.of(
                        "ines", Role.TECHNICIAN,
                        "ole", Role.TECHNICIAN,
                        "tom", Role.TRAINEE,
                        "marek", Role.MENTOR,
                        "sue", Role.SUPERVISOR,
                        "boris", Role.SUPERVISOR)
                .entrySet()) {
            hire("way-" + person.getKey(), person.getValue());
        }
    }

    /** One more who works here. */
    final void hire(String login, Role role) {
        Set<Role> roles = Set.of(role);
        people.ensureAccount(login, login, roles, "a long enough password");
        tokens.put(
                login,
                people.createToken(new Actor(login, login, roles), "way", DAYS).secret());
    }

    RequestSpecification as(String login) {
        return given().header("Authorization", "Bearer " + tokens.get(login));
    }

    /** A new ticket of that person. */
    ApiDesk desk(String who) {
        return desk(who, "HEAT");
    }

    ApiDesk desk(String who, String category) {
        return new ApiDesk(
                this::as,
                who,
                Map.of(
                        "title", "It switches off",
                        "category", category,
                        "device", "Workstation",
                        "place", "Drawing office",
                        "requester", "Rae",
                        "contact", "room 4",
                        "impact", "ONE_PERSON",
                        "urgency", "HINDERED"));
    }

    ApiDesk atTheorize(String who) {
        ApiDesk desk = desk(who);
        desk.identify();
        desk.does(ApiDesk.OBVIOUS);
        return desk;
    }

    ApiDesk atTest(String who) {
        ApiDesk desk = atTheorize(who);
        desk.theory("Clogged cooler");
        return desk;
    }

    ApiDesk atPlan(String who) {
        ApiDesk desk = atTest(who);
        desk.tests(theory(desk), "SUPPORTS");
        desk.does(ADVANCE);
        return desk;
    }

    ApiDesk atVerify(String who) {
        ApiDesk desk = atPlan(who);
        desk.carriesOut(desk.plans());
        return desk;
    }

    ApiDesk atDocument(String who) {
        ApiDesk desk = atVerify(who);
        desk.verifies();
        desk.documents();
        return desk;
    }

    static int theory(ApiDesk desk) {
        return first(desk, "theory-stated");
    }

    /** Entry of the first fact of a kind. */
    static int first(ApiDesk desk, String kind) {
        return desk.sheet().getInt("facts.find { it.fact.kind == '" + kind + "' }.entry");
    }

    static String corrected(int entry, String replacement) {
        return "{\"kind\":\"corrected\",\"entry\":" + entry + ",\"reason\":\"Misheard\",\"replacement\":" + replacement
                + "}";
    }

    static String struck(int entry) {
        return corrected(entry, "null");
    }

    static String symptom(String words, String observable, boolean intermittent) {
        return "{\"kind\":\"symptom-recorded\",\"words\":\"" + words + "\",\"observable\":\"" + observable
                + "\",\"intermittent\":" + intermittent + "}";
    }

    static String handed(String to) {
        return "{\"kind\":\"handed-over\",\"to\":\"" + to + "\"}";
    }

    static String offered(String to) {
        return "{\"kind\":\"hand-over-offered\",\"to\":\"" + to + "\"}";
    }

    static String waived(String requirement) {
        return "{\"kind\":\"waived\",\"requirement\":\"" + requirement + "\",\"reason\":\"It has to be\"}";
    }

    static String agreed(int correction) {
        return "{\"kind\":\"lessening-agreed\",\"correction\":" + correction + ",\"reason\":\"Another device\"}";
    }

    static String approved(int action) {
        return "{\"kind\":\"plan-approved\",\"actions\":[" + action + "]}";
    }

    static String settled(int action, String settlement) {
        return "{\"kind\":\"action-settled\",\"action\":" + action + ",\"settlement\":\"" + settlement
                + "\",\"note\":\"So it went\"}";
    }

    static String acknowledged(int about, String... cautions) {
        return "{\"kind\":\"cautions-acknowledged\",\"about\":" + about + ",\"cautions\":[\""
                + String.join("\",\"", cautions) + "\"]}";
    }

    /** A check without a result. */
    static String check(int theory, String what, String expectation) {
        return "{\"kind\":\"check-planned\",\"theory\":" + theory + ",\"what\":\"" + what + "\",\"expectation\":\""
                + expectation + "\"}";
    }

    static String result(int check, String outcome) {
        return "{\"kind\":\"result-recorded\",\"check\":" + check + ",\"observation\":\"Seen\",\"outcome\":\"" + outcome
                + "\"}";
    }

    /** An action that is harmless; {@code more} are further fields, such as {@code "cost":"80"}. */
    static String action(String what, String... more) {
        return "{\"kind\":\"action-planned\",\"what\":\"" + what + "\",\"effect\":\"Runs cool\",\"impact\":\"One\","
                + "\"wayBack\":\"Put it back\","
                + (more.length == 0 ? HARMLESS : String.join(",", more)) + "}";
    }

    private static final String HARMLESS = "\"irreversible\":false,\"touchesStorage\":false,\"usesPart\":false";

    /** Every hazard answered, those named with yes. */
    static String screened(String... present) {
        String none = "{\"kind\":\"hazards-screened\",\"present\":{\"SMELL\":false,\"SMOKE\":false,\"HEAT\":false,"
                + "\"SWELLING\":false,\"LIQUID\":false,\"MAINS_LEAD\":false,\"EXPOSED_WIRING\":false,\"SHOCK\":false,"
                + "\"ARCING\":false,\"SHARP\":false,\"HEIGHT\":false}}";
        for (String hazard : present) {
            none = none.replace("\"" + hazard + "\":false", "\"" + hazard + "\":true");
        }
        return none;
    }

    /** Fields that a malformed act was refused for. */
    static List<String> fields(Response answer) {
        assertEquals(422, answer.statusCode(), answer.asString());
        return answer.jsonPath().getList("errors.field", String.class);
    }
}

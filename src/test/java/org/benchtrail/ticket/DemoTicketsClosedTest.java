package org.benchtrail.ticket;

import static io.restassured.RestAssured.given;
import static org.benchtrail.ticket.ApiDesk.ADVANCE;
import static org.benchtrail.ticket.AttackSite.CLOSE;
import static org.benchtrail.ticket.AttackSite.MENTOR_SIGNS;
import static org.benchtrail.ticket.AttackSite.SIGNS;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.demo.Scenarios;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Each of the five demo tickets, taken from where its scenario leaves it to closure the honest way: by who has it, with a
 * supervisor and a mentor where they are asked for. Nothing is waived, and nothing refused on the way.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class DemoTicketsClosedTest {
    /** A simple ticket takes at most so many submissions from report to closure. */
    private static final int MOST = 12;

    @Inject
    Scenarios scenarios;

    @Inject
    PeopleActs people;

    private final Map<String, String> tokens = new HashMap<>();

    @BeforeEach
    void people() {
        person(new Actor("ines", "Ines Harrow", Set.of(Role.TECHNICIAN)));
        person(new Actor("tomasz", "Tomasz Birk", Set.of(Role.TRAINEE)));
        person(new Actor("ruth", "Ruth Calloway", Set.of(Role.TECHNICIAN, Role.MENTOR)));
        person(new Actor("omar", "Omar Vance", Set.of(Role.SUPERVISOR)));
    }

    private void person(Actor who) {
        people.ensureAccount(who.account(), who.name(), who.roles(), Scenarios.DEMO_PASSWORD);
        tokens.put(who.account(), people.createToken(who, "closed", 1).secret());
    }

    private RequestSpecification as(String login) {
        return given().header("Authorization", "Bearer " + tokens.get(login));
    }

    /** A copy of its own, so that no other test has worked on it. */
    private ApiDesk loaded(String scenario, String who) throws IOException {
        String text = Files.readString(Path.of("demo-scenarios", scenario + ".yaml"), StandardCharsets.UTF_8);
        List<String> opened = scenarios
                .load("closed-" + scenario + ".yaml", text.replace("name: " + scenario, "name: closed-" + scenario))
                .orElseThrow();
        return new ApiDesk(this::as, who, opened.get(0));
    }

    private static String json(String fact) {
        return fact.replace('\'', '"');
    }

    private static void goesOn(ApiDesk desk, String... facts) {
        desk.goesOn(
                desk.who,
                List.of(facts).stream().map(DemoTicketsClosedTest::json).toList());
    }

    /** Entries of a kind, in their order. */
    private static List<Integer> entries(ApiDesk desk, String kind) {
        return desk.sheet().getList("facts.findAll { it.fact.kind == '" + kind + "' }.entry", Integer.class);
    }

    private static int last(ApiDesk desk, String kind) {
        List<Integer> all = entries(desk, kind);
        return all.get(all.size() - 1);
    }

    /** Theory, choice and the way to test, in one request. */
    private static void theorizes(ApiDesk desk, String theory, String... before) {
        List<String> facts = new ArrayList<>(List.of(before));
        facts.add("{'kind':'theory-stated','text':'" + theory + "'}");
        facts.add("{'kind':'theory-chosen','theory':" + (desk.version + facts.size())
                + ",'reason':'What was seen points there','newEvidence':''}");
        facts.add(ADVANCE);
        goesOn(desk, facts.toArray(String[]::new));
    }

    private static void checks(ApiDesk desk, String what, String expectation, String observation) {
        goesOn(
                desk,
                "{'kind':'check-planned','theory':" + last(desk, "theory-stated") + ",'what':'" + what
                        + "','expectation':'" + expectation + "'}");
        finds(desk, observation);
    }

    /** Takes the precautions of the last check, if it has any, and records what was seen. */
    private static void finds(ApiDesk desk, String observation) {
        int check = last(desk, "check-planned");
        takesPrecautions(desk, List.of(check));
        goesOn(
                desk,
                "{'kind':'result-recorded','check':" + check + ",'observation':'" + observation
                        + "','outcome':'SUPPORTS'}",
                ADVANCE);
    }

    private static void takesPrecautions(ApiDesk desk, List<Integer> about) {
        List<String> taken = new ArrayList<>();
        for (int entry : about) {
            List<String> cautions = ApiDesk.strings(desk.entry(entry).at("/payload/cautions"));
            if (!cautions.isEmpty()) {
                taken.add("{'kind':'cautions-acknowledged','about':" + entry + ",'cautions':['"
                        + String.join("','", cautions) + "']}");
            }
        }
        if (!taken.isEmpty()) {
            goesOn(desk, taken.toArray(String[]::new));
        }
    }

    private static void carriesOut(ApiDesk desk) {
        List<Integer> actions = entries(desk, "action-planned");
        takesPrecautions(desk, actions);
        List<String> done = new ArrayList<>();
        actions.forEach(a -> done.add("{'kind':'action-settled','action':" + a + ",'settlement':'CARRIED_OUT'}"));
        done.add(ADVANCE);
        goesOn(desk, done.toArray(String[]::new));
    }

    private static void verifies(ApiDesk desk, String... readings) {
        List<String> facts = new ArrayList<>(List.of(readings));
        for (int symptom : entries(desk, "symptom-recorded")) {
            facts.add(
                    "{'kind':'symptom-rechecked','symptom':" + symptom + ",'gone':true,'how':'Looked for it an hour'}");
        }
        facts.add(ApiDesk.functions(desk.sheet().getList("checklist", String.class)));
        facts.add("{'kind':'requester-answered','state':'AGREES'}");
        facts.add("{'kind':'prevention-considered','applies':true,'text':'Put on the list of yearly looks'}");
        facts.add(ADVANCE);
        goesOn(desk, facts.toArray(String[]::new));
    }

    private static void documents(ApiDesk desk, String cause, String... last) {
        List<String> facts = new ArrayList<>(List.of(
                "{'kind':'cause-named','cause':'" + cause + "','sureness':'BY_REPAIR'}",
                "{'kind':'summary-written','findings':'" + cause + "','actions':'As planned','outcome':'It works'}",
                "{'kind':'knowledge-linked','learned':'NOTHING','text':'A common cause'}",
                "{'kind':'effort-recorded','minutes':60}",
                SIGNS));
        facts.addAll(List.of(last));
        goesOn(desk, facts.toArray(String[]::new));
    }

    private static void assertClosed(ApiDesk desk, String scenario, String step) {
        assertEquals("CLOSED", desk.sheet().getString("course.standing"));
        assertTrue(desk.trail().stream()
                .map(e -> e.at("/payload/kind").asText())
                .noneMatch(Set.of("waived", "refused")::contains));
        assertTrue(desk.sent() <= MOST, desk.sent() + " submissions");
        System.out.printf(
                "%s: closed from %s in %d submissions, %d entries%n", scenario, step, desk.sent(), desk.version);
    }

    @Test
    void hotDesktop_fromIdentify() throws IOException {
        ApiDesk desk = loaded("hot-desktop", "ines");
        List<String> identified = new ArrayList<>(List.of(ApiDesk.IDENTIFIED));
        identified.removeIf(fact -> fact.contains("reading-recorded")); // the scenario has measured
        identified.add(ADVANCE);
        goesOn(desk, identified.toArray(String[]::new));
        theorizes(desk, "Heat sink clogged by dust", ApiDesk.OBVIOUS);
        checks(
                desk,
                "Unplugged, look through the grille with a torch",
                "A mat of dust on the fins",
                "The fins are covered");
        goesOn(
                desk,
                "{'kind':'action-planned','what':'Clean the fins and the filter','effect':'Air passes','impact':'One,"
                        + " half an hour','wayBack':'Nothing is"
                        + " altered','irreversible':false,'touchesStorage':false,'usesPart':false}",
                "{'kind':'maker-consulted','applicable':true,'text':'Manual, chapter on cleaning'}");
        carriesOut(desk);
        verifies(
                desk,
                "{'kind':'reading-recorded','quantity':'processor"
                        + " temperature','value':'66','unit':'\u00b0C','point':'firmware screen','instrument':'the board"
                        + " sensor'}");
        documents(desk, "Heat sink clogged by dust", CLOSE);
        assertClosed(desk, "hot-desktop", "identify");
    }

    @Test
    void driveWarning_fromTheorize() throws IOException {
        ApiDesk desk = loaded("drive-warning", "ines");
        theorizes(desk, "The drive wears out");
        checks(
                desk,
                "Read the attributes of the drive again",
                "Attribute 5 has risen since this morning",
                "215, three more");
        goesOn(
                desk,
                "{'kind':'action-planned','what':'Replace the drive and copy the data back','effect':'A sound"
                        + " drive','impact':'One, two hours','wayBack':'The old drive is"
                        + " kept','irreversible':false,'touchesStorage':true,'usesPart':true,'part':'SATA drive 1"
                        + " TB','cost':'70'}",
                "{'kind':'part-fit-checked','action':" + (desk.version + 1)
                        + ",'fit':'FITS','basis':'SATA for SATA, 2.5 inch, 7 mm, twice the size'}",
                "{'kind':'maker-consulted','applicable':true,'text':'Manual, chapter on drives'}");
        carriesOut(desk);
        verifies(
                desk,
                "{'kind':'reading-recorded','quantity':'reallocated sectors','value':'0','unit':'count','point':'drive"
                        + " 0, attribute 5','instrument':'record of the drive'}");
        documents(desk, "Worn drive", CLOSE);
        assertClosed(desk, "drive-warning", "theorize");
    }

    @Test
    void arrayMember_fromTest_withThePartCheckedOnTheBench() throws IOException {
        ApiDesk desk = loaded("array-member", "ruth");
        finds(desk, "Errors on the drive in bay 3 only");
        goesOn(
                desk,
                "{'kind':'action-planned','what':'Replace the drive in bay 3 like with like','effect':'The array is"
                        + " whole after the rebuild','impact':'Nobody; slower for four hours','wayBack':'The array runs"
                        + " degraded','irreversible':false,'touchesStorage':true,'usesPart':true,'part':'SAS drive 4 TB'}",
                "{'kind':'maker-consulted','applicable':true,'text':'Manual of the server: change while it runs'}");
        fitsOnTheBench(desk, last(desk, "action-planned"));
        carriesOut(desk);
        verifies(desk);
        documents(desk, "Failed drive", CLOSE);
        assertClosed(desk, "array-member", "test");
    }

    private void fitsOnTheBench(ApiDesk desk, int action) {
        Map<String, Object> input =
                new HashMap<>(as("ruth").get("/api/bench/drive-fit").jsonPath().getMap("example"));
        input.put("bayPower", 24);
        var answer = as("ruth")
                .header("If-Match", "\"" + desk.version + "\"")
                .contentType("application/json")
                .body(Map.of("calculation", "drive-fit", "action", action, "input", input))
                .post("/api/tickets/" + desk.number + "/bench-results");
        assertEquals(200, answer.statusCode(), answer.asString());
        desk.version = answer.jsonPath().getInt("version");
    }

    @Test
    void upsOffice_fromPlan_approvedByASupervisor() throws IOException {
        ApiDesk desk = loaded("ups-office", "ines");
        String actions = String.join(
                ",",
                entries(desk, "action-planned").stream().map(String::valueOf).toList());
        desk.goesOn(
                "omar", List.of("{\"kind\":\"plan-approved\",\"actions\":[" + actions + "],\"note\":\"At 12:30\"}"));
        carriesOut(desk);
        verifies(desk);
        documents(desk, "Loads on outlets without battery", CLOSE);
        assertClosed(desk, "ups-office", "plan");
    }

    @Test
    void fastClock_fromVerify_signedByAMentor() throws IOException {
        ApiDesk desk = loaded("fast-clock", "tomasz");
        verifies(
                desk,
                "{'kind':'reading-recorded','quantity':'processor temperature','value':'72','unit':'\u00b0C',"
                        + "'point':'board sensor, render load','instrument':'the board sensor'}",
                "{'kind':'reading-recorded','quantity':'clock','value':'3.6','unit':'GHz','point':'firmware screen',"
                        + "'instrument':'firmware'}");
        documents(desk, "Clock set above its rating");
        desk.goesOn("ruth", List.of(MENTOR_SIGNS));
        goesOn(desk, CLOSE);
        assertClosed(desk, "fast-clock", "verify");
    }
}

package org.benchtrail.ticket;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.bench.TicketValues;
import org.benchtrail.bench.TicketValues.Known;
import org.benchtrail.core.bench.Bench;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.ChangeAnswer;
import org.benchtrail.core.method.identify.ChangeKind;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.EvidenceImpossible;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.LikenessChecked;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReadingVerdict;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.Fit;
import org.benchtrail.core.method.plan.PartFitChecked;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.Inspection;
import org.benchtrail.core.method.theorize.Obvious;
import org.benchtrail.core.method.theorize.ObviousQuestioned;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** What the bench and the ranking leave on a job sheet, and what of it only the server records. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class BenchOnTheSheetTest {
    private static final Actor PIA = new Actor("bench-pia", "Pia", Set.of(Role.TECHNICIAN));

    @Inject
    TicketActs acts;

    @Inject
    TicketQueries look;

    @Inject
    PeopleActs people;

    @Inject
    TicketValues values;

    private String token = "";

    @BeforeAll
    void people() {
        people.ensureAccount(PIA.account(), PIA.name(), PIA.roles(), "a long enough password");
        token = people.createToken(PIA, "bench", 1).secret();
    }

    private RequestSpecification api() {
        return given().header("Authorization", "Bearer " + token).contentType("application/json");
    }

    private TicketNumber open(Category category) {
        return open(category, "Device", "Bench");
    }

    private TicketNumber open(Category category, String device, String place) {
        NewTicket report = new NewTicket(
                "Something to calculate",
                "",
                category,
                device,
                place,
                "Rae",
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.HINDERED,
                false);
        return acts.open(report, PIA).number();
    }

    private JobSheet sheet(TicketNumber number) {
        return look.ticket(number, PIA).sheet();
    }

    private Outcome does(TicketNumber number, Fact... facts) {
        List<Act> list = java.util.Arrays.stream(facts).<Act>map(f -> s -> f).toList();
        return acts.perform(number, sheet(number).entries(), list, PIA);
    }

    private String version(TicketNumber number) {
        return "\"" + sheet(number).entries() + "\"";
    }

    /** Through identify without a catalogue question: everything that gate asks. */
    private void identify(TicketNumber number) {
        Outcome outcome = does(
                number,
                new SymptomRecorded("It is hot", "Switches off", false),
                new OnsetRecorded(false, ""),
                new ChangesAsked(each(ChangeKind.class, ChangeAnswer.NO), ""),
                new ScopeRecorded(Scope.ONE, ""),
                new ReproductionTried(Reproduction.YES, "Full load"),
                new HazardsScreened(each(Hazard.class, false)),
                new DataAnswered(DataState.BACKUP_VERIFIED, ""),
                new EvidenceImpossible("Nothing to measure with"),
                new LogsReviewed(true, "Nothing"),
                new LikenessChecked(List.of()),
                new Advanced(),
                new ObviousQuestioned(each(Obvious.class, Inspection.IN_ORDER), ""));
        assertEquals(List.of(), outcome.missing());
    }

    private static <K extends Enum<K>, V> Map<K, V> each(Class<K> keys, V value) {
        Map<K, V> map = new java.util.EnumMap<>(keys);
        for (K key : keys.getEnumConstants()) {
            map.put(key, value);
        }
        return map;
    }

    private static FindingAnswered answer(String finding, String value) {
        return new FindingAnswered(finding, "as asked", value, Source.SEEN);
    }

    // ---- the bench

    @Test
    void benchResult_isKeptWithInputVersionAndVerdict_andCanBeCalculatedAgain() {
        TicketNumber ticket = open(Category.POWER);
        api().header("If-Match", version(ticket))
                .body("{\"calculation\":\"soak\",\"input\":{\"every\":24,\"doubt\":5}}")
                .post("/api/tickets/" + ticket + "/bench-results")
                .then()
                .statusCode(200);
        BenchResultAttached kept =
                sheet(ticket).latest(BenchResultAttached.class).orElseThrow().fact();
        assertEquals("soak time", kept.verdict());
        assertEquals("/bench/soak?every=24.0&doubt=5.0#result", org.benchtrail.bench.BenchRun.again(kept));
    }

    /** Its ratings hold on its next ticket; how it was loaded then does not. */
    @Test
    void ratingsGivenForTheDeviceBefore_areFilledIn() {
        String device = "UPS U-3, 1000 VA";
        TicketNumber before = open(Category.POWER, device, "Cellar");
        api().header("If-Match", version(before))
                .body("{\"calculation\":\"ups-load\",\"input\":{\"ratedWatts\":700,\"ratedVa\":990,\"watts\":300,"
                        + "\"va\":400}}")
                .post("/api/tickets/" + before + "/bench-results")
                .then()
                .statusCode(200);
        TicketNumber now = open(Category.POWER, device, "Cellar");
        does(now, new ReadingRecorded("Load", "420", "W", "outlet 1", "display", null, null, ""));
        Known known = known(now);
        assertEquals(Map.of("ratedWatts", "700.0", "ratedVa", "1000 VA", "watts", "420 W"), known.values());
        assertEquals("the device's name, 1000 VA; Load 420 W; ticket " + before + " of the same device", known.from());
        assertEquals(
                Map.of("ratedVa", "1000 VA"),
                known(open(Category.POWER, device, "Attic")).values());
        assertEquals(Map.of(), known(open(Category.POWER, "UPS U-4", "Cellar")).values());
    }

    private Known known(TicketNumber ticket) {
        return values.known(ticket.toString(), Bench.find("ups-load").orElseThrow(), PIA);
    }

    @Test
    void valuesThatCannotBeMeant_areRefusedFieldByField_andNothingIsKept() {
        TicketNumber ticket = open(Category.POWER);
        int before = sheet(ticket).entries();
        api().header("If-Match", version(ticket))
                .body("{\"calculation\":\"soak\",\"input\":{\"every\":-1,\"doubt\":5}}")
                .post("/api/tickets/" + ticket + "/bench-results")
                .then()
                .statusCode(422)
                .body("errors.field", hasItem("every"));
        assertEquals(before, sheet(ticket).entries());
    }

    @Test
    void partCheck_fillsPartsFit_ofAPlannedPartOnly() {
        TicketNumber ticket = open(Category.ARRAY);
        identify(ticket);
        does(ticket, new TheoryStated("Member failed", null));
        int theory = sheet(ticket).entries();
        does(ticket, new TheoryChosen(theory, "", ""), new Advanced());
        does(ticket, new CheckPlanned(theory, "Read the counters", "Errors in bay 3", false, Set.of()));
        int check = sheet(ticket).entries();
        does(ticket, new ResultRecorded(check, "As expected", CheckOutcome.SUPPORTS, null), new Advanced());
        does(
                ticket,
                new ActionPlanned(
                        "Put the new one in bay 3",
                        "Whole again",
                        "Nobody",
                        "Take it out",
                        false,
                        true,
                        false,
                        false,
                        null,
                        "SAS drive 4 TB",
                        Set.of()));
        int action = sheet(ticket).entries();
        String order = "{\"calculation\":\"drive-fit\",\"action\":%d,\"input\":%s}";
        String input = driveFit("SAS");
        api().header("If-Match", version(ticket))
                .body(String.format(order, check, input))
                .post("/api/tickets/" + ticket + "/bench-results")
                .then()
                .statusCode(422)
                .body("errors.field", hasItem("action"));
        api().header("If-Match", version(ticket))
                .body(String.format(order, action, driveFit("SATA")))
                .post("/api/tickets/" + ticket + "/bench-results")
                .then()
                .statusCode(200);
        assertEquals(Fit.DOES_NOT_FIT, fit(ticket).fit());
        assertTrue(fit(ticket).basis().contains("Not met: interface, mixing inside an array."));
        api().header("If-Match", version(ticket))
                .body(String.format(order, action, input))
                .post("/api/tickets/" + ticket + "/bench-results")
                .then()
                .statusCode(200);
        assertEquals(Fit.FITS, fit(ticket).fit());
        assertEquals(action, fit(ticket).action());
    }

    private PartFitChecked fit(TicketNumber ticket) {
        return sheet(ticket).latest(PartFitChecked.class).orElseThrow().fact();
    }

    private String driveFit(String newInterface) {
        String example =
                api().get("/api/bench/drive-fit").then().extract().jsonPath().getString("example.newInterface");
        assertEquals("SAS", example);
        Map<String, Object> input = new java.util.HashMap<>(
                api().get("/api/bench/drive-fit").then().extract().jsonPath().getMap("example"));
        input.put("newInterface", newInterface);
        input.put("bayPower", 24);
        try {
            return new com.fasterxml.jackson.databind.ObjectMapper().writeValueAsString(input);
        } catch (com.fasterxml.jackson.core.JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void failingDrive_putsDataFirst() {
        TicketNumber ticket = open(Category.STORAGE);
        Map<String, Object> example =
                api().get("/api/bench/drive-health").then().extract().jsonPath().getMap("example");
        Map<String, Object> measured = new java.util.HashMap<>(example);
        measured.put("followed", 197);
        api().header("If-Match", version(ticket))
                .body(Map.of("calculation", "drive-health", "input", measured))
                .post("/api/tickets/" + ticket + "/bench-results")
                .then()
                .statusCode(200);
        assertTrue(sheet(ticket).driveFailure().isPresent());
        Outcome tooEasy = does(ticket, new DataAnswered(DataState.NO_USER_DATA, "A test machine"));
        assertEquals(List.of(), tooEasy.missing());
        api().get("/api/tickets/" + ticket)
                .then()
                .body("gate.find { it.code == 'data-protected' }.state", equalTo("MISSING"));
    }

    @Test
    void untouchedExample_isAttachedByNoDoor() {
        TicketNumber ticket = open(Category.STORAGE);
        for (String id : List.of("drive-health", "soak", "supply-size")) {
            Map<String, Object> example =
                    api().get("/api/bench/" + id).then().extract().jsonPath().getMap("example");
            api().header("If-Match", version(ticket))
                    .body(Map.of("calculation", id, "input", example))
                    .post("/api/tickets/" + ticket + "/bench-results")
                    .then()
                    .statusCode(422)
                    .body("errors.field", hasItem("values"));
        }
        assertEquals(1, sheet(ticket).entries());
    }

    @Test
    void whatOnlyTheServerRecords_isRefusedFromOutside() {
        TicketNumber ticket = open(Category.HEAT);
        for (String forged : List.of(
                "{\"kind\":\"bench-result-attached\",\"calculation\":\"soak\",\"version\":1,\"title\":\"Soak\",\"input\":\"{}\",\"level\":\"GOOD\",\"verdict\":\"fine\",\"reason\":\"because\"}",
                "{\"kind\":\"soak-time-reckoned\",\"minutes\":1,\"basis\":\"a feeling\"}",
                "{\"kind\":\"theories-ranked\",\"order\":[],\"basis\":\"a feeling\",\"causes\":[],\"catalogue\":1}")) {
            api().header("If-Match", version(ticket))
                    .body(forged)
                    .post("/api/tickets/" + ticket + "/acts")
                    .then()
                    .statusCode(422);
        }
        assertEquals(1, sheet(ticket).entries());
    }

    // ---- readings

    @Test
    void readingWithAccuracy_getsTheSitesGuardBand_whateverThePosterSays() {
        TicketNumber ticket = open(Category.POWER);
        api().header("If-Match", version(ticket))
                .body("{\"kind\":\"reading-recorded\",\"quantity\":\"+12 V"
                        + " rail\",\"value\":\"11,38V\",\"point\":\"plug\",\"lower\":\"11.4\",\"upper\":\"12.6\",\"limitSource\":\"design"
                        + " guide\",\"accuracy\":\"0.5 % + 2\",\"guard\":\"0\"}")
                .post("/api/tickets/" + ticket + "/acts")
                .then()
                .statusCode(200);
        ReadingRecorded reading =
                sheet(ticket).latest(ReadingRecorded.class).orElseThrow().fact();
        assertEquals("2", reading.guard());
        assertEquals(ReadingVerdict.TOO_CLOSE, reading.verdict());
    }

    // ---- the ranking

    @Test
    void chosenTheory_isRecordedWithTheRankingOfThatMoment_andAnotherThanTheFirstNeedsAReason() {
        TicketNumber ticket = open(Category.HEAT);
        identify(ticket);
        does(ticket, answer("h12", "yes"), answer("h11", "above"));
        does(ticket, new TheoryStated("Dust", "heat/dust"));
        int dust = sheet(ticket).entries();
        does(ticket, new TheoryChosen(dust, "", ""));
        TheoriesRanked ranked =
                sheet(ticket).latest(TheoriesRanked.class).orElseThrow().fact();
        assertEquals("heat/clock-raised", ranked.causes().get(0).causeId());
        assertNotNull(ranked.catalogue());
        List<Missing> missing = does(ticket, new Advanced()).missing();
        assertEquals(
                List.of("theory-chosen"), missing.stream().map(Missing::code).toList());
        does(ticket, new TheoryChosen(dust, "Quicker to look at", ""));
        assertEquals(List.of(), does(ticket, new Advanced()).missing(), "any reason is enough");
    }

    @Test
    void withoutEvidence_nothingIsRanked_andNothingAsked() {
        TicketNumber ticket = open(Category.HEAT);
        identify(ticket);
        does(ticket, new TheoryStated("A cause of my own", null));
        does(ticket, new TheoryChosen(sheet(ticket).entries(), "", ""));
        assertFalse(sheet(ticket).latest(TheoriesRanked.class).isPresent());
        assertEquals(List.of(), does(ticket, new Advanced()).missing());
    }

    @Test
    void ranking_isToldOverTheApi_withItsVersion() {
        TicketNumber ticket = open(Category.HEAT);
        does(ticket, answer("h3", "below"));
        int version = api().get("/api/tickets/" + ticket + "/ranking")
                .then()
                .statusCode(200)
                .body("causes[0].id", equalTo("heat/fan-failed"))
                .body("causes[0].why[0]", containsString("speaks"))
                .extract()
                .path("catalogue");
        api().get("/api/tickets/" + ticket + "/ranking?version=" + version)
                .then()
                .statusCode(200)
                .body("causes[0].id", equalTo("heat/fan-failed"));
        api().get("/api/tickets/" + ticket + "/ranking?version=999999").then().statusCode(404);
        api().get("/api/tickets/" + open(Category.OTHER) + "/ranking").then().statusCode(404);
    }

    // ---- cautions

    @Test
    void actions_raiseTheCautionsOfWhatTheyTouch() {
        TicketNumber ticket = open(Category.HEAT);
        identify(ticket);
        does(ticket, new TheoryStated("Paste", null));
        int theory = sheet(ticket).entries();
        does(ticket, new TheoryChosen(theory, "", ""), new Advanced());
        does(ticket, new CheckPlanned(theory, "Take the cooler off", "Dry paste", true, Set.of()));
        Set<org.benchtrail.core.method.Caution> raised =
                sheet(ticket).latest(CheckPlanned.class).orElseThrow().fact().cautions();
        assertTrue(raised.contains(org.benchtrail.core.method.Caution.HEAT), raised::toString);
    }
}

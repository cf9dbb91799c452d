package org.benchtrail.ticket;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.benchtrail.core.learning.WorkedTicket;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.plan.MakerConsulted;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.pages.Html;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What the page of a job sheet asks, keeps and tells; and that a program is asked no more. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class SheetPageTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor INES = new Actor("sheet-ines", "Ines", Set.of(Role.TECHNICIAN));
    private static final Actor SUE = new Actor("sheet-sue", "Sue", Set.of(Role.SUPERVISOR));
    private static final String ADVANCED = "{\"kind\":\"advanced\"}";

    /** How many of the facts of a ticket come before it was looked at what is alike. */
    private static final int BEFORE_LIKENESS = 9;

    /** Facts until the theory is tested. */
    private static final int UNTIL_TESTED = 15;

    /** Facts until the plan is made. */
    private static final int UNTIL_PLANNED = 20;

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    TicketQueries look;

    /** In no other ticket. */
    private final String word = "w" + UUID.randomUUID().toString().replace("-", "");

    @BeforeEach
    void people() {
        people.ensureAccount(INES.account(), INES.name(), INES.roles(), PASSWORD);
        people.ensureAccount(SUE.account(), SUE.name(), SUE.roles(), PASSWORD);
    }

    private TicketNumber opens() {
        NewTicket report = new NewTicket(
                word,
                "",
                Category.PRINTING,
                word,
                "Hall",
                "Rae",
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                false);
        return tickets.open(report, INES).number();
    }

    /** From one fact of the ticket to another. */
    private void does(TicketNumber number, int from, int to) {
        new WorkedTicket(word, null)
                .requests(from, to)
                .forEach(request ->
                        does(number, request.stream().map(f -> (Act) f::apply).toList()));
    }

    private void does(TicketNumber number, List<Act> acts) {
        assertEquals(
                List.of(), tickets.perform(number, version(number), acts, INES).missing());
    }

    private int version(TicketNumber number) {
        return look.ticket(number, INES).sheet().entries();
    }

    private List<String> kinds(TicketNumber number) {
        return look.trail(number, INES).stream().map(entry -> entry.kind()).toList();
    }

    private Response program(TicketNumber number, String acts) {
        String token = people.createToken(INES, "sheet", 1).secret();
        return given().header("Authorization", "Bearer " + token)
                .header("If-Match", "\"" + version(number) + "\"")
                .contentType("application/json")
                .body(acts)
                .post("/api/tickets/" + number + "/acts");
    }

    private static Browser page(Actor who, TicketNumber number) {
        Browser browser = Browser.signedIn(who.account(), PASSWORD);
        browser.get("/tickets/" + number);
        return browser;
    }

    private static String shown(Browser browser, TicketNumber number) {
        return browser.get("/tickets/" + number).asString();
    }

    @Test
    void nothingAlike_asksForNoTick_andTheServerRecordsIt_byProgram() {
        TicketNumber number = opens();
        does(number, 0, BEFORE_LIKENESS);
        Response moved = program(number, ADVANCED);
        assertEquals(200, moved.statusCode(), moved.asString());
        assertEquals("THEORIZE", moved.jsonPath().getString("course.step"));
        assertEquals(
                List.of("likeness-checked", "advanced"),
                kinds(number).subList(1 + BEFORE_LIKENESS, 3 + BEFORE_LIKENESS));
    }

    @Test
    void nothingAlike_asksForNoTick_onThePage() {
        TicketNumber number = opens();
        does(number, 0, BEFORE_LIKENESS);
        Browser ines = page(INES, number);
        String before = shown(ines, number);
        assertTrue(before.contains("Nothing like it is on record"), before);
        assertFalse(before.contains("likeness.looked"), "no tick is asked for");
        assertTrue(before.contains("All 10 answered"), before);
        Response moved =
                ines.post("/tickets/" + number + "/identify", Map.of("version", "" + version(number), "then", "move"));
        assertEquals(303, moved.statusCode(), moved.asString());
        assertTrue(kinds(number).contains("likeness-checked"));
    }

    @Test
    void somethingAlike_hasToBeLookedAt_byAnyDoor() {
        opens();
        TicketNumber number = opens();
        does(number, 0, BEFORE_LIKENESS);
        Response moved = program(number, ADVANCED);
        assertEquals(409, moved.statusCode(), moved.asString());
        assertEquals(List.of("likeness-checked"), moved.jsonPath().getList("missing.code"));
        Browser ines = page(INES, number);
        assertTrue(shown(ines, number).contains("likeness.looked"));
        Response form =
                ines.post("/tickets/" + number + "/identify", Map.of("version", "" + version(number), "then", "move"));
        assertEquals(409, form.statusCode());
        assertFalse(kinds(number).contains("likeness-checked"));
    }

    @Test
    void decliningWithoutAReason_keepsTheChoice() {
        TicketNumber number = opens();
        does(number, 0, UNTIL_PLANNED);
        Browser sue = page(SUE, number);
        Map<String, String> fields = new HashMap<>(
                Map.of("version", "" + version(number), "answer", "decline", "approval.note", "Not like this"));
        Response refused = sue.post("/tickets/" + number + "/approve", fields);
        assertEquals(422, refused.statusCode());
        String kept = refused.asString();
        assertTrue(kept.contains("value=\"decline\" checked"), kept);
        assertFalse(kept.contains("value=\"approve\" checked"));
        assertTrue(kept.contains("Not like this") && kept.contains("Say what must change"), kept);
    }

    /** Looked at again with the same outcome, the answer is fresh again; a plan that is saved for something else says nothing. */
    @Test
    void sameAnswerAboutDataAtPlan_isRecordedWhenItIsGiven_andOnlyThen() {
        TicketNumber number = opens();
        does(number, 0, UNTIL_PLANNED);
        Browser ines = page(INES, number);
        String shown = shown(ines, number);
        assertTrue(shown.contains("Last answered: "), shown);
        assertFalse(shown.contains("name=\"datanow.state\" value=\"BACKUP_VERIFIED\" checked"), shown);
        long before = answersAboutData(number);
        Map<String, String> maker = Map.of("maker.text", "Manual, chapter 9");
        for (int given = 0; given < 2; given++) {
            Map<String, String> fields = new HashMap<>(maker);
            fields.put("version", "" + version(number));
            fields.put("datanow.state", given == 0 ? "" : "BACKUP_VERIFIED");
            Response saved = ines.post("/tickets/" + number + "/plan", fields);
            assertEquals(303, saved.statusCode(), saved.asString());
            assertEquals(before + given, answersAboutData(number));
        }
    }

    private long answersAboutData(TicketNumber number) {
        return kinds(number).stream().filter("data-answered"::equals).count();
    }

    /** A yes says what, a no says why: never both, and never neither of them under a choice. */
    @Test
    void makersInstructions_areNamedInOneLine_orMissedInTheOther() {
        TicketNumber number = opens();
        does(number, 0, UNTIL_PLANNED);
        Browser ines = page(INES, number);
        String plan = "/tickets/" + number + "/plan";
        String version = "" + version(number);
        Response both = ines.post(plan, Map.of("version", version, "maker.text", "Manual 9", "nomaker.text", "None"));
        assertEquals(422, both.statusCode());
        assertTrue(both.asString().contains("Fill in one of the two lines"), both.asString());
        assertEquals(
                303,
                ines.post(plan, Map.of("version", version, "nomaker.text", "None of it"))
                        .statusCode());
        MakerConsulted said = look.ticket(number, INES)
                .sheet()
                .latest(MakerConsulted.class)
                .orElseThrow()
                .fact();
        assertEquals(new MakerConsulted(false, "None of it"), said);
        Document shown = Html.read(shown(ines, number));
        assertEquals("", shown.getElementById("maker.text").val());
        assertEquals("None of it", shown.getElementById("nomaker.text").val());
        Response other = ines.post(
                plan, Map.of("version", "" + version(number), "maker.text", "Manual, chapter 9", "nomaker.text", ""));
        assertEquals(303, other.statusCode(), other.asString());
        assertEquals(
                new MakerConsulted(true, "Manual, chapter 9"),
                look.ticket(number, INES)
                        .sheet()
                        .latest(MakerConsulted.class)
                        .orElseThrow()
                        .fact());
    }

    /** What the answer says is not asked for a second time; without an answer it is asked for. */
    @Test
    void answerToTheQuestionOfACheck_saysWhatWasSeen() {
        TicketNumber number = opens();
        does(number, 0, UNTIL_TESTED);
        int theory =
                look.ticket(number, INES).sheet().activeTheory().orElseThrow().entry();
        does(number, List.of(s -> new CheckPlanned(theory, "Look", "It shows", false, Set.of(), "r1", null)));
        Browser ines = page(INES, number);
        Map<String, String> fields = new HashMap<>(Map.of(
                "version", "" + version(number),
                "result.check", "" + version(number),
                "result.outcome", "SUPPORTS"));
        Response silent = ines.post("/tickets/" + number + "/result", fields);
        assertEquals(422, silent.statusCode());
        assertTrue(silent.asString().contains("Say what was seen"), silent.asString());
        fields.put("result.answer", "yes");
        Response said = ines.post("/tickets/" + number + "/result", fields);
        assertEquals(303, said.statusCode(), said.asString());
        String seen = look.ticket(number, INES)
                .sheet()
                .latest(ResultRecorded.class)
                .orElseThrow()
                .fact()
                .observation();
        assertTrue(seen.endsWith(": yes") && seen.length() > ": yes".length(), seen);
    }

    @Test
    void theoryOnAnEndedTicket_saysHowItEnded() {
        TicketNumber number = opens();
        does(number, 0, UNTIL_PLANNED);
        Browser ines = page(INES, number);
        assertTrue(shown(ines, number).contains("<span class=\"mark\">active</span>"));
        does(number, UNTIL_PLANNED, new WorkedTicket(word, null).facts().size());
        String closed = shown(ines, number);
        assertFalse(closed.contains("<span class=\"mark\">active</span>"), closed);
        assertTrue(closed.contains("<span class=\"mark\">borne out</span>"), closed);
    }

    /** A form that no template shows stands below its step, with a field for each component, and keeps what was refused. */
    @Test
    void drawnForm_standsBelowItsStep_keepsWhatIsRefused_andRecords() {
        TicketNumber number = opens();
        does(number, 0, UNTIL_PLANNED);
        Browser ines = page(INES, number);
        String form = "details#rethink form[action=/tickets/" + number + "/rethink]";
        Document shown = Html.read(shown(ines, number));
        assertEquals(1, shown.select(form + " textarea[name=rethink.reason]").size());
        assertEquals(
                1,
                shown.select(form + " input[type=checkbox][name=rethink.theoryWrong]")
                        .size());
        assertEquals(0, shown.select("details#persists, details#rethink[open]").size(), "the form of another step");
        assertEquals(
                0,
                Html.read(shown(page(SUE, number), number))
                        .select("details#rethink")
                        .size(),
                "who does not work on the step");
        Response refused = ines.post(
                "/tickets/" + number + "/rethink",
                Map.of("version", "" + version(number), "rethink.theoryWrong", "true"));
        assertEquals(422, refused.statusCode());
        Document again = Html.read(refused.asString());
        assertEquals(
                "Say what carrying out the plan has shown.",
                again.select("details#rethink[open] label.wrong em").text());
        assertEquals(1, again.select("details#rethink input[checked]").size());
        Response taken = ines.post(
                "/tickets/" + number + "/rethink",
                Map.of("version", "" + version(number), "rethink.reason", "It is dry"));
        assertEquals(303, taken.statusCode(), taken.asString());
        assertEquals("rethought", kinds(number).get(version(number) - 1));
    }
}

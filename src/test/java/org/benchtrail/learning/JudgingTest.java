package org.benchtrail.learning;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import org.benchtrail.catalogue.Catalogues;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.learning.WorkedTicket;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.document.Sureness;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.Forbidden;
import org.benchtrail.platform.RecordBroken;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.trail.Tampering;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** A supervisor judges closed tickets: by the page, by the API, and within the rules. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class JudgingTest {
    @Inject
    LearningActs acts;

    @Inject
    LearnedFigures figures;

    @Inject
    CalibrationQueries calibration;

    @Inject
    Catalogues catalogues;

    @Inject
    TicketActs tickets;

    @Inject
    TicketQueries look;

    @Inject
    PeopleActs people;

    private TestSite site;
    private Actor ines;
    private Actor omar;
    private Actor nadia;

    @BeforeAll
    void people() {
        site = new TestSite(tickets, people);
        ines = site.person("judge-ines", Role.TECHNICIAN);
        omar = site.person("judge-omar", Role.SUPERVISOR);
        nadia = site.person("judge-nadia", Role.SUPERVISOR);
    }

    private static WorkedTicket dusty() {
        return new WorkedTicket("heatsink or filter clogged by dust", "heat/dust").answers("h4", "yes");
    }

    private static List<String> sentences(Invalid e) {
        return e.problems().stream().map(Invalid.Problem::sentence).toList();
    }

    private WaitingView waiting(TicketNumber ticket, Actor as) {
        String after = null;
        do {
            WaitingPart part = acts.waiting(after, 200, as);
            var found = part.tickets().stream()
                    .filter(t -> t.ticket().equals(ticket.toString()))
                    .findFirst();
            if (found.isPresent()) {
                return found.get();
            }
            after = part.next();
        } while (after != null);
        throw new AssertionError(ticket + " is not waiting");
    }

    private CaseView judged(TicketNumber ticket, CaseState state) {
        return acts.judged(state, Long.MAX_VALUE, 200, omar).stream()
                .filter(c -> c.ticket().equals(ticket.toString()))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void closedTicket_waits_isAccepted_andWithdrawn() {
        TicketNumber ticket = site.closes(dusty(), ines);
        WaitingView waits = waiting(ticket, omar);
        assertEquals("heat/dust", waits.entry());
        // the answer, four kinds of change that were asked for and answered with no, and how many are affected
        assertEquals(6, waits.findings());
        assertNull(waits.obstacle());
        CaseView accepted = acts.accept(List.of(ticket), omar).get(0);
        assertEquals("heat", accepted.category());
        assertEquals("larkfield surveyors", accepted.site());
        assertEquals("judge-ines", accepted.technician());
        assertEquals("judge-omar", accepted.acceptedBy());
        assertThrows(AssertionError.class, () -> waiting(ticket, omar));
        Invalid twice = assertThrows(Invalid.class, () -> acts.accept(List.of(ticket), nadia));
        assertTrue(sentences(twice).get(0).endsWith("is accepted already."), twice.getMessage());
        assertThrows(Invalid.class, () -> acts.withdraw(List.of(ticket), " ", nadia));
        acts.withdraw(List.of(ticket), "Wrong cause", nadia);
        assertEquals("judge-nadia", judged(ticket, CaseState.WITHDRAWN).withdrawnBy());
        assertNull(acts.accept(List.of(ticket), omar).get(0).reason());
        acts.withdraw(List.of(ticket), "End of the test", omar);
    }

    @Test
    void technician_cannotJudge_norTheSupervisorWhoWorkedOnIt() {
        TicketNumber ticket = site.closes(dusty(), omar);
        assertThrows(Forbidden.class, () -> acts.accept(List.of(ticket), ines));
        assertThrows(Forbidden.class, () -> acts.leaveOut(List.of(ticket), "Mine", ines));
        assertThrows(Forbidden.class, () -> acts.withdraw(List.of(ticket), "Mine", ines));
        assertThrows(Forbidden.class, () -> acts.waiting(null, 10, ines));
        assertThrows(Forbidden.class, () -> figures.preview(ines));
        assertThrows(Forbidden.class, () -> figures.undo(1, "Mine", ines));
        assertThrows(Forbidden.class, () -> calibration.view("", ines));
        Invalid own = assertThrows(Invalid.class, () -> acts.accept(List.of(ticket), omar));
        assertTrue(sentences(own).get(0).contains("you worked on"), own.getMessage());
        assertTrue(String.valueOf(waiting(ticket, omar).obstacle()).contains("another supervisor"));
        acts.accept(List.of(ticket), nadia);
        acts.withdraw(List.of(ticket), "End of the test", nadia);
    }

    @Test
    void whoeverWaivedOnATicket_doesNotAcceptIt_byAnyDoor() {
        TicketNumber ticket = site.closesWithoutLogs(dusty(), ines, omar);
        assertTrue(String.valueOf(waiting(ticket, omar).obstacle()).contains("waived, approved or signed"));
        Response program =
                as(omar).body(Map.of("tickets", List.of(ticket.toString()))).post("/api/learning/accepted");
        assertEquals(422, program.statusCode(), program.asString());
        assertTrue(program.asString().contains("another supervisor has to judge it"), program.asString());
        Browser page = Browser.signedIn("judge-omar", TestSite.PASSWORD);
        page.get("/learning");
        Response form = page.post("/learning/accepted", Map.of("tickets", ticket.toString()));
        assertEquals(422, form.statusCode());
        assertTrue(form.asString().contains("another supervisor has to judge it"), form.asString());
        acts.accept(List.of(ticket), nadia);
        acts.withdraw(List.of(ticket), "End of the test", nadia);
    }

    @Test
    void severalAtOnce_areAcceptedAllOrNone_withEveryReason() {
        TicketNumber good = site.closes(dusty(), ines);
        TicketNumber presumed = site.closes(dusty().sure(Sureness.PRESUMED), ines);
        TicketNumber odd = site.closes(new WorkedTicket("odd", null).of(Category.OTHER), ines);
        Invalid refused = assertThrows(Invalid.class, () -> acts.accept(List.of(good, presumed, odd), omar));
        assertEquals(2, refused.problems().size(), refused.getMessage());
        assertTrue(refused.getMessage().contains("only presumed"));
        assertTrue(refused.getMessage().contains("no category"));
        assertNull(waiting(good, omar).obstacle());
        acts.leaveOut(List.of(presumed, odd), "Nothing to learn", omar);
        assertEquals("Nothing to learn", judged(odd, CaseState.LEFT_OUT).reason());
        acts.leaveOut(List.of(good), "End of the test", omar);
    }

    @Test
    void reopenedTicket_teachesNothing_untilItIsJudgedAnew() {
        TicketNumber ticket = site.closes(dusty(), ines);
        acts.accept(List.of(ticket), omar);
        int version = look.ticket(ticket, omar).sheet().entries();
        Act reopen = sheet -> new Reopened("It is back");
        tickets.perform(ticket, version, List.of(reopen), nadia);
        CaseView back = judged(ticket, CaseState.WITHDRAWN);
        assertEquals("Opened again: It is back", back.reason());
        Invalid open = assertThrows(Invalid.class, () -> acts.accept(List.of(ticket), omar));
        assertTrue(open.getMessage().contains("opened again since"), open.getMessage());
    }

    @Test
    void ticketWhoseRecordDoesNotHold_teachesNothing_andIsNotReopened() {
        TicketNumber good = site.closes(dusty(), ines);
        for (String broken : List.of(
                "delete from trail_entry where ticket = ? and entry = (select entries from ticket where serial = ticket)",
                "update trail_entry set canonical = 'no JSON' where ticket = ? and entry = 5")) {
            TicketNumber ticket = site.closes(dusty(), ines);
            int version = look.ticket(ticket, omar).sheet().entries();
            Tampering.run(broken, ticket.serial());
            assertTrue(String.valueOf(waiting(ticket, omar).obstacle()).contains("does not hold"));
            assertThrows(RecordBroken.class, () -> acts.accept(List.of(good, ticket), omar));
            assertNull(waiting(good, omar).obstacle(), "none of them was accepted");
            Act reopen = sheet -> new Reopened("It is back");
            for (int seen : new int[] {version - 1, version}) {
                assertThrows(RecordBroken.class, () -> tickets.perform(ticket, seen, List.of(reopen), nadia));
            }
            acts.leaveOut(List.of(ticket), "Its record does not hold", omar);
        }
        acts.leaveOut(List.of(good), "End of the test", omar);
    }

    private RequestSpecification as(Actor who) {
        return given().header("Authorization", "Bearer " + site.token(who)).contentType("application/json");
    }

    @Test
    void api_judgesPreviewsAppliesAndUndoes() {
        TicketNumber ticket = site.closes(dusty(), ines);
        TicketNumber other = site.closes(dusty(), ines);
        assertEquals(403, as(ines).get("/api/learning/waiting").statusCode());
        assertEquals(
                200,
                as(omar).get("/api/learning/waiting?size=1").then().extract().statusCode());
        Response accepted =
                as(omar).body(Map.of("tickets", List.of(ticket.toString()))).post("/api/learning/accepted");
        assertEquals(200, accepted.statusCode(), accepted.asString());
        assertEquals(
                422,
                as(omar).body(Map.of("tickets", List.of(other.toString())))
                        .post("/api/learning/left-out")
                        .statusCode());
        assertEquals(
                422,
                as(omar).body(Map.of("tickets", List.of(other.toString()), "reason", "The same\u0007again"))
                        .post("/api/learning/left-out")
                        .statusCode());
        assertEquals(
                200,
                as(omar).body(Map.of("tickets", List.of(other.toString()), "reason", "The same\u007f\nagain"))
                        .post("/api/learning/left-out")
                        .statusCode());
        Response preview = as(omar).get("/api/learning/preview");
        assertTrue(preview.jsonPath().getInt("cases") >= 1);
        int base = preview.jsonPath().getInt("base");
        Map<String, Object> apply = Map.of(
                "base",
                base,
                "at",
                preview.jsonPath().getString("at"),
                "fingerprint",
                preview.jsonPath().getString("fingerprint"),
                "approved",
                true,
                "note",
                "One more");
        Response proposed = as(omar).body(apply).post("/api/learning/versions");
        assertEquals(202, proposed.statusCode(), proposed.asString());
        assertEquals(base, catalogues.inForce().number());
        String at = "/api/proposals/" + proposed.jsonPath().getLong("id") + "/confirmation";
        Response alone = as(omar).post(at);
        assertEquals(422, alone.statusCode());
        assertTrue(alone.asString().contains("You proposed this yourself"), alone.asString());
        assertEquals(base, catalogues.inForce().number());
        assertEquals(200, as(nadia).post(at).statusCode());
        assertEquals(base + 1, catalogues.inForce().number());
        assertEquals(422, as(omar).body(apply).post("/api/learning/versions").statusCode(), "it is applied already");
        Response undone = as(omar).body(Map.of("base", base + 1, "note", "No")).post("/api/learning/undoing");
        assertEquals(202, undone.statusCode(), undone.asString());
        assertEquals(base + 1, catalogues.inForce().number());
        as(nadia).post("/api/proposals/" + undone.jsonPath().getLong("id") + "/confirmation");
        assertEquals(
                base,
                as(omar).get("/api/catalogue/versions/" + (base + 2)).jsonPath().getInt("version.restores"));
        Response back = as(omar).body(Map.of("tickets", List.of(ticket.toString()), "reason", "End of the test"))
                .post("/api/learning/withdrawn");
        assertEquals("WITHDRAWN", back.jsonPath().getString("[0].state"), back.asString());
    }

    @Test
    void pages_showJudgeAndKeepWhatWasTicked() {
        TicketNumber ticket = site.closes(dusty(), ines);
        Browser page = Browser.signedIn("judge-omar", TestSite.PASSWORD);
        page.get("/learning");
        Response none = page.post("/learning/accepted", Map.of());
        assertEquals(422, none.statusCode());
        assertTrue(none.asString().contains("Tick at least one ticket."));
        Response noReason = page.post("/learning/left-out", Map.of("tickets", ticket.toString()));
        assertEquals(422, noReason.statusCode());
        assertEquals(
                303,
                page.post("/learning/accepted", Map.of("tickets", ticket.toString()))
                        .statusCode());
        assertTrue(page.get("/learning/cases").asString().contains(ticket.toString()));
        String preview = page.get("/learning/preview").asString();
        assertTrue(preview.contains("heatsink or filter clogged by dust"), preview);
        Response stale = page.post(
                "/learning/versions",
                Map.of("base", catalogues.inForce().number(), "at", "2020-01-01T00:00:00Z", "note", "x"));
        assertEquals(422, stale.statusCode());
        assertTrue(stale.asString().contains("too old"));
        assertEquals(
                303,
                page.post("/learning/withdrawn", Map.of("tickets", ticket.toString(), "reason", "End of the test"))
                        .statusCode());
        assertTrue(page.get("/learning/cases?state=WITHDRAWN").asString().contains("End of the test"));
    }

    @Test
    void calibration_isEmptyWithoutForecasts_andShowsThemOnceThereAreSome() {
        TicketNumber right = site.closes(battery(), ines);
        TicketNumber wrong = site.closes(battery(), ines);
        acts.accept(List.of(right, wrong), omar);
        Browser page = Browser.signedIn("judge-omar", TestSite.PASSWORD);
        assertTrue(page.get("/learning/calibration?category=battery").asString().contains("Not enough cases yet"));
        forecast(right, "battery/battery-worn", "0.8");
        forecast(wrong, "battery/battery-worn", "0.1");
        CalibrationView view = calibration.view("battery", omar);
        // by hand: .8 for the truth and .2 for the rest give .04 + .04; .1 and .9 give .81 + .81
        assertEquals((0.08 + 1.62) / 2, view.figures().brier(), 1e-12);
        assertEquals((0.321928 + 3.321928) / 2, view.figures().logScore(), 1e-6);
        assertNull(view.beta());
        String shown = page.get("/learning/calibration?category=battery").asString();
        assertTrue(shown.contains("class=\"chart\" role=\"img\""));
        assertTrue(shown.contains("0.850"));
        assertFalse(shown.contains("Not enough cases yet"));
        acts.withdraw(List.of(right, wrong), "End of the test", omar);
    }

    private static WorkedTicket battery() {
        return new WorkedTicket("battery worn", "battery/battery-worn").of(Category.BATTERY);
    }

    /** As if the catalogue had ranked the cause before the test. */
    private static void forecast(TicketNumber ticket, String cause, String probability) {
        TestDatabase.run(
                "update shop_case set forecast = ? where ticket = ?",
                "{\"entry\":14,\"catalogue\":1,\"causes\":[{\"cause\":\"" + cause + "\",\"probability\":\""
                        + probability + "\"}]}",
                ticket.serial());
    }
}

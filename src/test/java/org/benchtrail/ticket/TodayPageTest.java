package org.benchtrail.ticket;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What waits is shown to whom it waits for, with the evidence, and is decided where it is shown. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class TodayPageTest {
    private static final String PASSWORD = "a long enough password";

    @Inject
    PeopleActs people;

    @Inject
    MovedClock clock;

    private AttackSite site;

    @BeforeEach
    void site() {
        site = new AttackSite(people);
    }

    @AfterEach
    void putRight() {
        clock.putRight();
    }

    private static Browser browser(String login) {
        return Browser.signedIn(login, PASSWORD);
    }

    private static String today(Browser browser) {
        Response page = browser.get("/today");
        assertEquals(200, page.statusCode(), page.asString());
        return page.asString();
    }

    private static boolean waits(Browser browser, ApiDesk desk) {
        return today(browser).contains("id=\"wait-" + desk.number + "-");
    }

    private static Response decides(Browser browser, ApiDesk desk, String form, Map<String, String> fields) {
        Map<String, String> all = new HashMap<>(fields);
        all.put("version", Integer.toString(desk.version));
        all.put("back", "today");
        return browser.post("/tickets/" + desk.number + "/" + form, all);
    }

    private static void assertBackOnToday(Response answer) {
        assertEquals(303, answer.statusCode(), answer.asString());
        assertTrue(answer.header("Location").endsWith("/today"), answer.header("Location"));
    }

    @Test
    void planThatNeedsAnApproval_isDecidedBesideItsEvidence_byWhoHadNoHandInIt() {
        ApiDesk desk = site.atPlan("way-ines");
        desk.does(
                AttackSite.action(
                        "Fit another cooler",
                        "\"irreversible\":false",
                        "\"touchesStorage\":false",
                        "\"usesPart\":false",
                        "\"cost\":\"900\""),
                "{\"kind\":\"asked\",\"what\":\"APPROVAL\",\"note\":\"Before noon, it is needed\"}");
        Browser sue = browser("way-sue");
        Browser boris = browser("way-boris");
        String page = today(sue);
        for (String shown : new String[] {
            "To approve", "Fit another cooler", "Costs 900", "Before noon, it is needed", "Clogged cooler", "96.5"
        }) {
            assertTrue(page.contains(shown), shown);
        }
        Browser ines = browser("way-ines");
        assertFalse(waits(ines, desk), "whose plan it is decides nothing");
        assertTrue(today(ines).contains("waits for an approval of the plan"));
        today(boris);
        assertBackOnToday(decides(sue, desk, "approve", Map.of("answer", "approve")));
        assertFalse(waits(sue, desk));
        Response late = decides(boris, desk, "approve", Map.of("answer", "approve"));
        assertEquals(409, late.statusCode());
        assertTrue(late.asString().contains("way-sue"), "the second is told who was quicker");
        assertFalse(waits(boris, desk));
    }

    @Test
    void waiver_isDecidedOnToday_andARefusedFormKeepsWhatWasTyped() {
        ApiDesk desk = site.desk("way-ines");
        desk.does(
                "{\"kind\":\"asked\",\"what\":\"WAIVER\",\"requirement\":\"logs-reviewed\",\"note\":\"It keeps none\"}");
        Browser sue = browser("way-sue");
        assertTrue(waits(sue, desk));
        assertTrue(today(sue).contains("It keeps none"));
        Response empty = decides(sue, desk, "waive", Map.of("waive.requirement", "logs-reviewed", "waive.reason", ""));
        assertEquals(422, empty.statusCode());
        assertTrue(waits(sue, desk));
        today(sue);
        assertBackOnToday(decides(
                sue, desk, "waive", Map.of("waive.requirement", "logs-reviewed", "waive.reason", "A lamp has none")));
        assertFalse(waits(sue, desk));
    }

    @Test
    void hold_waitsFromItsFollowUpOn_andIsHeldLongerOnToday() {
        ApiDesk desk = site.desk("way-ines");
        Instant soon = Instant.now().plus(Duration.ofMinutes(15));
        desk.does("{\"kind\":\"held\",\"waitingFor\":\"PART\",\"followUp\":\"" + soon + "\",\"note\":\"Ordered\"}");
        Browser ines = browser("way-ines");
        assertFalse(waits(ines, desk));
        clock.putForward(Duration.ofMinutes(20));
        assertTrue(waits(ines, desk));
        assertBackOnToday(decides(
                ines,
                desk,
                "hold",
                Map.of("hold.waitingFor", "PART", "hold.note", "Ordered", "hold.followUp", "2031-05-05T08:00")));
        assertFalse(waits(ines, desk));
        assertEquals(
                "2031-05-05T08:00:00Z",
                desk.sheet().getString("course.hold.followUp"),
                "held on, with one resumption between");
    }

    @Test
    void offer_isTakenOnToday() {
        ApiDesk desk = site.desk("way-ines");
        desk.does(AttackSite.offered("way-ole"));
        Browser ole = browser("way-ole");
        assertTrue(waits(ole, desk));
        assertBackOnToday(decides(ole, desk, "hand-over", Map.of("hand.to", "way-ole")));
        assertFalse(waits(ole, desk));
        assertEquals("way-ole", desk.sheet().getString("course.assignee"));
    }

    @Test
    void whatWaitsForSomebodyAway_isSeenByWhoStandsIn_whoDecidesNothingInTheirName() {
        ApiDesk desk = site.desk("way-ines");
        desk.does(AttackSite.offered("way-ole"));
        Browser ole = browser("way-ole");
        Browser tom = browser("way-tom");
        assertFalse(waits(tom, desk));
        int before = counted(tom);
        String today = LocalDate.now(ZoneOffset.UTC).toString();
        Response away = ole.post("/me/absences", Map.of("first", today, "last", today, "delegate", "way-tom"));
        assertEquals(303, away.statusCode(), away.asString());
        try {
            assertTrue(waits(tom, desk));
            assertTrue(counted(tom) > before, "the band counts it as well");
            String page = today(tom);
            assertTrue(page.contains("who is away; you stand in"), page);
            assertTrue(page.contains("You stand in for"), page);
            assertFalse(page.contains("Take " + desk.number), "an offer is answered by whom it was made to");
            assertTrue(waits(ole, desk), "it waits for them as before");
        } finally {
            String id = ole.get("/me").asString().replaceAll("(?s).*/me/absences/(\\d+)/end.*", "$1");
            ole.post("/me/absences/" + id + "/end", Map.of());
        }
        assertFalse(waits(tom, desk));
        assertEquals(before, counted(tom));
    }

    @Test
    void band_countsWhatWaits_onEveryPage() {
        Browser marek = browser("way-marek");
        int before = counted(marek);
        ApiDesk desk = site.desk("way-tom");
        desk.does("{\"kind\":\"asked\",\"what\":\"MENTOR\",\"note\":\"Which fuse?\"}");
        assertEquals(before + 1, counted(marek));
    }

    private static int counted(Browser browser) {
        String page = browser.get("/bench").asString();
        Matcher count = Pattern.compile("aria-label=\"(\\d+) wait for you\"").matcher(page);
        return count.find() ? Integer.parseInt(count.group(1)) : 0;
    }
}

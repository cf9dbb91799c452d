package org.benchtrail.ticket;

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
import java.util.regex.Pattern;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The page of the queue: its filters, those that are kept, the file of it, and handing over from it. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class QueuePageTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor TEO = new Actor("queue-teo", "Teo Marsh", Set.of(Role.TECHNICIAN));
    private static final Actor UMA = new Actor("queue-uma", "Uma Fields", Set.of(Role.TECHNICIAN));
    private static final Actor SUE = new Actor("queue-sue", "Sue Lane", Set.of(Role.SUPERVISOR));

    @Inject
    PeopleActs people;

    @Inject
    TicketActs acts;

    @Inject
    TicketQueries tickets;

    private final String place = "Queue hall " + UUID.randomUUID();
    private final String encoded = place.replace(" ", "%20");

    @BeforeEach
    void accounts() {
        for (Actor actor : List.of(TEO, UMA, SUE)) {
            people.ensureAccount(actor.account(), actor.name(), actor.roles(), PASSWORD);
        }
    }

    private TicketNumber open(String title, Category category, boolean queued) {
        return acts.open(
                        new NewTicket(
                                title,
                                "",
                                category,
                                "=Lamp, \"old\"",
                                place,
                                "Rae",
                                "room 4",
                                Priority.Impact.ONE_PERSON,
                                Priority.Urgency.CAN_WAIT,
                                queued),
                        TEO)
                .number();
    }

    private String assignee(TicketNumber number) {
        return String.valueOf(tickets.ticket(number, SUE).sheet().course().assignee());
    }

    private static Browser browser(Actor actor) {
        Browser browser = Browser.signedIn(actor.account(), PASSWORD);
        browser.get("/queue");
        return browser;
    }

    @Test
    void filters_narrowTheList() {
        String heat = open("Runs hot", Category.HEAT, false).toString();
        String other = open("Is dark", Category.OTHER, true).toString();
        Browser browser = browser(TEO);
        String all = browser.get("/queue?place=" + encoded).asString();
        assertTrue(all.contains(heat) && all.contains(other), all);
        for (String only : List.of("category=HEAT", "who=me", "due=ahead&sort=number&text=hot", "held=no&text=runs")) {
            String page = browser.get("/queue?place=" + encoded + "&" + only).asString();
            assertTrue(page.contains(heat) && !page.contains(other), () -> only + page);
        }
        for (String none : List.of("due=over", "held=yes", "waits=yes", "device=Lamp", "standing=CLOSED")) {
            String page = browser.get("/queue?place=" + encoded + "&" + none).asString();
            assertTrue(page.contains("No ticket fits this filter."), () -> none + page);
        }
        acts.perform(
                TicketNumber.parse(heat),
                1,
                sheet -> new Work(List.of(), new org.benchtrail.core.method.desk.HandOverOffered("queue-uma", "")),
                TEO);
        assertTrue(browser.get("/queue?waits=yes&place=" + encoded).asString().contains(heat));
    }

    @Test
    void aKeptFilter_isOnesOwn_andCanBeRemoved() {
        String name = "Mine <b>" + UUID.randomUUID().toString().substring(0, 8);
        Browser browser = browser(TEO);
        Map<String, String> form = new HashMap<>(Map.of("name", name, "place", place, "who", "me"));
        Response kept = browser.post("/queue/filters", form);
        assertEquals(303, kept.statusCode(), kept.asString());
        String escaped = name.replace("<", "&lt;").replace(">", "&gt;");
        String page = browser.get("/queue").asString();
        assertTrue(page.contains(">" + escaped + "</a>") && page.contains("who=me&amp;place=Queue+hall"), page);
        assertFalse(browser(UMA).get("/queue").asString().contains(escaped));
        String id = page.replaceAll("(?s).*" + Pattern.quote(escaped) + ".*?/queue/filters/(\\d+)/removal.*", "$1");
        assertEquals(
                404,
                browser(UMA).post("/queue/filters/" + id + "/removal", Map.of()).statusCode());
        assertEquals(
                303, browser.post("/queue/filters/" + id + "/removal", Map.of()).statusCode());
        assertFalse(browser.get("/queue").asString().contains(escaped));
        Response nothing = browser.post("/queue/filters", Map.of("name", "All"));
        assertEquals(422, nothing.statusCode());
        assertTrue(nothing.asString().contains("Choose something to filter by first."));
    }

    @Test
    void theFile_holdsWhatIsSeen_andNothingThatRuns() {
        open("-2+3", Category.OTHER, false);
        open("Zed", Category.HEAT, true);
        Response answer = browser(TEO).get("/queue.csv?for=spreadsheet&place=" + encoded + "&sort=number-back");
        assertEquals("attachment; filename=\"queue-for-a-spreadsheet.csv\"", answer.header("Content-Disposition"));
        assertEquals(200, answer.statusCode());
        assertTrue(answer.contentType().startsWith("text/csv"), answer.contentType());
        String[] lines = answer.asString().split("\r\n");
        assertEquals(3, lines.length, answer.asString());
        assertTrue(lines[0].startsWith("number,what is wrong,"), lines[0]);
        assertTrue(lines[1].contains(",Zed,Overheating,"), lines[1]);
        assertTrue(lines[2].contains(",'-2+3,") && lines[2].contains(",\"'=Lamp, \"\"old\"\"\","), lines[2]);
        assertTrue(lines[2].contains(",Teo Marsh,") && lines[2].matches(".*\\d{2}:\\d{2}:\\d{2}Z,.*"), lines[2]);
        assertFalse(answer.asString().contains("Rae"));
        Response plain = browser(TEO).get("/queue.csv?place=" + encoded + "&sort=number-back");
        assertEquals("attachment; filename=\"queue.csv\"", plain.header("Content-Disposition"));
        String line = plain.asString().split("\r\n")[2];
        assertTrue(
                line.contains(",-2+3,") && line.contains(",\"=Lamp, \"\"old\"\"\","),
                "true to what was typed: " + line);
    }

    /** More than a stretch, and each once. */
    @Test
    void theFile_goesOnToTheEnd() {
        for (int n = 0; n < 203; n++) {
            open("Lamp " + n, Category.OTHER, true);
        }
        String file = browser(TEO).get("/queue.csv?place=" + encoded).asString();
        assertEquals(
                203, file.lines().filter(l -> l.contains(",Lamp ")).distinct().count());
        assertEquals(204, file.lines().count());
    }

    private static Map<String, Object> giving(String to, List<String> seen) {
        return Map.of("ticket", seen, "to", to, "note", "Shift ends");
    }

    @Test
    void aSupervisor_assignsWhatIsTicked_andIsToldWhatCouldNotBe() {
        TicketNumber one = open("One", Category.OTHER, false);
        TicketNumber two = open("Two", Category.OTHER, true);
        TicketNumber changed = open("Three", Category.OTHER, true);
        acts.perform(changed, 1, List.of(sheet -> new FindingRecorded("Dust", false)), TEO);
        Response answer = browser(SUE)
                .post("/queue/hand-over", giving("queue-uma", List.of(one + "/1", two + "/1", changed + "/1")));
        assertEquals(200, answer.statusCode(), answer.asString());
        String page = answer.asString().replaceAll("\\s+", " ");
        assertTrue(page.contains("<span class=\"num\">2</span> of <span class=\"num\">3</span> done"), page);
        assertTrue(page.contains("Somebody else changed it meanwhile"), page);
        assertEquals("queue-uma", assignee(one));
        assertEquals("queue-uma", assignee(two));
        assertEquals("null", assignee(changed));
        assertEquals(2, tickets.ticket(one, SUE).sheet().entries());
    }

    @Test
    void anybodyElse_offersWhatIsTheirs_andNothingMore() {
        TicketNumber own = open("One", Category.OTHER, false);
        TicketNumber free = open("Two", Category.OTHER, true);
        Browser browser = browser(TEO);
        Response answer = browser.post("/queue/hand-over", giving("queue-uma", List.of(own + "/1", free + "/1")));
        assertTrue(answer.asString().contains("Offered."), answer.asString());
        assertTrue(answer.asString().contains("Not done."), answer.asString());
        assertEquals("queue-teo", assignee(own));
        assertEquals("queue-uma", tickets.ticket(own, SUE).sheet().course().offered());
        assertEquals("null", assignee(free));
        assertEquals(
                200,
                browser.post("/queue/hand-over", giving("queue-teo", List.of(free + "/1")))
                        .statusCode());
        assertEquals("queue-teo", assignee(free));
        browser(UMA).post("/queue/hand-over", giving("queue-uma", List.of(free + "/2")));
        assertEquals("queue-teo", assignee(free));
    }

    @Test
    void everyTicketOfTheFilter_isHandedOverInOneGo() {
        List<TicketNumber> all = List.of(open("One", Category.OTHER, false), open("Two", Category.OTHER, false));
        Browser browser = browser(SUE);
        Response answer = browser.post(
                "/queue/hand-over", Map.of("all", "true", "to", "queue-uma", "place", place, "who", "queue-teo"));
        assertEquals(200, answer.statusCode());
        all.forEach(number -> assertEquals("queue-uma", assignee(number)));
        assertEquals(303, browser.get("/queue/hand-over").statusCode());
    }

    @Test
    void nothingTicked_orNobodyChosen_isToldOnThePage() {
        TicketNumber one = open("One", Category.OTHER, false);
        Response answer = browser(SUE)
                .post("/queue/hand-over", Map.of("ticket", one + "/1", "place", place, "note", "Kept words"));
        assertEquals(422, answer.statusCode());
        assertTrue(answer.asString().contains("Choose who takes them."), answer.asString());
        assertTrue(answer.asString().contains("value=\"" + one + "/1\"")
                && answer.asString().contains("checked"));
        assertTrue(answer.asString().contains("Kept words"));
        assertEquals(
                422,
                browser(SUE).post("/queue/hand-over", Map.of("to", "queue-uma")).statusCode());
    }
}

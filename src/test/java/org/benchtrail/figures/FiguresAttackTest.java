package org.benchtrail.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.knowledge.ClosedTickets;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Each way to read from figures what they must not say, or to make them say what is not so. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class FiguresAttackTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor TESS = new Actor("figures-tess", "Tess Hollin", Set.of(Role.TECHNICIAN));
    private static final Actor TRUDE = new Actor("figures-trude", "Trude Palm", Set.of(Role.TRAINEE));
    private static final Actor MARK = new Actor("figures-mark", "Mark Ebbing", Set.of(Role.TECHNICIAN, Role.MENTOR));
    private static final Actor SALLY = new Actor("figures-sally", "Sally Orme", Set.of(Role.SUPERVISOR));
    private static final List<String> DOORS = List.of(
            "/figures", "/figures/steps.csv", "/figures/closings.csv", "/figures/tickets?figure=steps&row=TEST");

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    private Browser sally = new Browser();

    @BeforeEach
    void persons() {
        for (Actor person : List.of(TESS, TRUDE, MARK, SALLY)) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
        sally = Browser.signedIn(SALLY.account(), PASSWORD);
    }

    private TicketNumber open(String place) {
        return tickets.open(
                        new NewTicket(
                                "A lamp that flickers",
                                "It flickers",
                                Category.OTHER,
                                "Lamp",
                                place,
                                "Rae",
                                "room 4",
                                Priority.Impact.ONE_PERSON,
                                Priority.Urgency.CAN_WAIT,
                                false),
                        TESS)
                .number();
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    private String read(String path) {
        Response answer = sally.get(path);
        assertEquals(200, answer.statusCode(), answer.asString());
        return answer.asString();
    }

    /** The row of a file that begins so. */
    private static String row(String csv, String begins) {
        return csv.lines().filter(l -> l.startsWith(begins)).findFirst().orElseThrow();
    }

    @Test
    void whoWorksOnTickets_readsNoFigure_byAnyDoor() {
        for (Actor person : List.of(TESS, TRUDE, MARK)) {
            Browser browser = Browser.signedIn(person.account(), PASSWORD);
            for (String door : DOORS) {
                assertEquals(403, browser.get(door).statusCode(), person.account() + " " + door);
            }
            assertFalse(browser.get("/today").asString().contains("href=\"/figures\""));
        }
        DOORS.forEach(this::read);
        assertTrue(read("/today").contains("href=\"/figures\""));
    }

    @Test
    void nobodyIsNamed_andNobodyIsCountedByName() {
        ClosedTickets.one(tickets, TESS);
        List<String> tables = Stream.of("steps", "closings", "late-weeks")
                .map(table -> read("/figures/" + table + ".csv"))
                .toList();
        String own = (read("/figures") + String.join("", tables)).replace(SALLY.name(), "");
        for (String word : List.of(TESS.account(), TESS.name())) {
            assertFalse(own.contains(word), word);
        }
        // A place may be called anything: what is counted by is told by the heads of the tables.
        for (String table : tables) {
            String head = table.lines().findFirst().orElseThrow().toLowerCase(Locale.ROOT);
            for (String word : List.of("person", "name", "assign", "technician")) {
                assertFalse(head.contains(word), head);
            }
        }
        assertEquals(404, sally.get("/figures/persons.csv").statusCode());
    }

    @Test
    void whatIsTooFew_isNotShown() {
        String place = "Few " + System.nanoTime();
        for (int i = 0; i < 3; i++) {
            open(place);
        }
        String steps = read("/figures/steps.csv?place=" + encoded(place));
        assertEquals(
                "Identify,3,0,3,0,0,0 of 10 needed,0 of 10 needed",
                row(steps, "Identify"),
                "open ones are not gone on");
        assertEquals("From opening to closing,3,0,3,0,0,0 of 10 needed,0 of 10 needed", row(steps, "From opening"));
        String page = read("/figures?place=" + encoded(place));
        assertTrue(page.contains("0 closed tickets of 20 needed"), page);
        assertFalse(page.contains("class=\"chart\""), "nothing is drawn of three");
    }

    @Test
    void aCancelledTicket_isNeitherClosedNorOpen() {
        String place = "Cancelled " + System.nanoTime();
        TicketNumber number = open(place);
        assertEquals(
                List.of(),
                tickets.perform(number, 1, List.<Act>of(s -> new Cancelled("It was the bulb", null)), SALLY)
                        .missing());
        String steps = read("/figures/steps.csv?place=" + encoded(place));
        assertEquals("From opening to closing,1,0,0,0,1,0 of 10 needed,0 of 10 needed", row(steps, "From opening"));
        assertEquals(
                1, read("/figures/closings.csv?place=" + encoded(place)).lines().count(), "a head and no closing");
    }

    /** Closed once: one closing, in it the ticket itself; the list behind the number leads to it. */
    @Test
    void aClosedTicket_countsOnce_andEachNumberLeadsToItsTickets() {
        TicketNumber number = ClosedTickets.one(tickets, TESS);
        String closings = read("/figures/closings.csv");
        assertEquals(1, closings.lines().filter(l -> l.startsWith(number + ",")).count());
        Matcher link = Pattern.compile("href=\"(/figures/tickets\\?figure=closings&amp;row=" + number + "[^\"]*)\"")
                .matcher(read("/figures"));
        assertTrue(link.find());
        assertTrue(read(link.group(1).replace("&amp;", "&")).contains("/tickets/" + number));
        assertEquals(404, sally.get("/figures/tickets?figure=steps&row=NONE").statusCode());
    }

    @Test
    void whatSomebodyTyped_runsInNoSpreadsheet() {
        String place = "=HYPERLINK(\"http://x\") " + System.nanoTime();
        for (int i = 0; i < 10; i++) {
            open(place);
        }
        TestDatabase.run("update ticket set due = opened where place = ?", place);
        String csv = read("/figures/late-places.csv");
        assertTrue(csv.contains("\"'=HYPERLINK(\"\"http://x\"\")"), csv);
        assertFalse(csv.lines().anyMatch(l -> l.startsWith("=") || l.startsWith("\"=")));
        TestDatabase.run("update ticket set due = opened + interval '30 days' where place = ?", place);
    }

    @Test
    void daysThatAreNone_areToldAtTheirField() {
        for (String wrong : List.of(
                "from=yesterday",
                "from=2026-02-30",
                "from=2026-11-27&until=2026-11-26",
                "from=1900-01-01&until=2026-01-01",
                "until=99999-01-01")) {
            Response answer = sally.get("/figures?" + wrong);
            assertEquals(422, answer.statusCode(), wrong);
            assertTrue(answer.asString().contains("class=\"error\""), wrong);
        }
        assertEquals(
                200,
                sally.get("/figures?from=2026-11-27&until=2026-11-27&category=NONE&step=NONE")
                        .statusCode());
    }
}

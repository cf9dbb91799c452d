package org.benchtrail.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.benchtrail.catalogue.Catalogues;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.knowledge.ClosedTickets;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.platform.sql.SqlText;
import org.benchtrail.site.PlaceActs;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.jspecify.annotations.Nullable;
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
    private static final Actor TOM = new Actor("figures-tom", "Tom Wicket", Set.of(Role.TECHNICIAN));
    private static final List<String> DOORS = List.of(
            "/figures", "/figures/steps.csv", "/figures/closings.csv", "/figures/tickets?figure=steps&row=TEST");

    @Inject
    FigureQueries queries;

    @Inject
    ChartBaselines baselines;

    @Inject
    EntityManager database;

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    PlaceActs places;

    @Inject
    Catalogues catalogues;

    @Inject
    MovedClock clock;

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

    private PlaceActs.TeamView team(String name, Actor... members) {
        return places.addTeam(
                new PlaceActs.TeamText(
                        name, Stream.of(members).map(Actor::account).toList(), false),
                SALLY);
    }

    private static void give(List<TicketNumber> numbers, @Nullable Actor to) {
        numbers.forEach(n -> TestDatabase.run(
                "update ticket set assignee = ? where serial = ?", to == null ? null : to.account(), n.serial()));
    }

    private static void due(List<TicketNumber> numbers, int hours) {
        numbers.forEach(n -> TestDatabase.run(
                "update ticket set due = due - make_interval(hours => ?) where serial = ?", hours, n.serial()));
    }

    /** A team of one or two would be a figure of persons; what a team's tickets are is told by who has them, who is told nowhere. */
    @Test
    void aTeam_isAFigureOfItsTickets_fromThreePeople() {
        for (Actor person : List.of(TOM)) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
        String name = "Bench " + System.nanoTime();
        PlaceActs.TeamView three = team(name, TESS, MARK, TOM);
        PlaceActs.TeamView two = team(name + " two", TESS, MARK);
        String place = "Team " + System.nanoTime();
        List<TicketNumber> theirs = Stream.generate(() -> open(place)).limit(10).toList();
        TicketNumber others = open(place);
        give(theirs, TOM);
        give(List.of(others), TRUDE);
        due(theirs, 9600);
        try {
            String at = "place=" + encoded(place);
            String of = at + "&team=" + three.id();
            assertTrue(row(read("/figures/steps.csv?" + at), "Identify").startsWith("Identify,11,"));
            assertTrue(row(read("/figures/steps.csv?" + of), "Identify").startsWith("Identify,10,"));
            String page = read("/figures?" + of);
            assertTrue(page.contains("team " + name + ": 10"), page);
            assertTrue(page.contains("or had it last, is in the team today"), page);
            assertFalse(page.contains("Freeze"), "who is in a team changes");
            String behind = read("/figures/tickets?figure=steps&row=IDENTIFY&" + of);
            assertTrue(behind.contains("/tickets/" + theirs.get(0)));
            assertFalse(behind.contains("/tickets/" + others));
            String teams = read("/figures/late-teams.csv?" + at);
            assertTrue(row(teams, name + ",").startsWith(name + ",10,10,"), teams);
            assertFalse(teams.contains(name + " two"), "two people are no team that figures are of");
            assertFalse(teams.contains(TOM.account()) || teams.contains(TOM.name()), teams);
            String all = read("/figures?" + at);
            assertTrue(all.contains("fewer than 3 people"), "what is not shown is said");
            assertFalse(all.contains(name + " two"), "and is not offered");
            told(sally.get("/figures?" + at + "&team=" + two.id()), "at least 3 people");
            told(sally.get("/figures?" + at + "&team=0"), "at least 3 people");
            assertEquals(
                    422,
                    sally.get("/figures/steps.csv?" + at + "&team=" + two.id()).statusCode());
            Map<String, String> wanted = new HashMap<>(limits(place, LocalDate.of(2026, 1, 31)));
            wanted.put("team", String.valueOf(three.id()));
            told(sally.post("/figures/baselines", wanted), "Freeze limits for all teams");
            assertEquals(
                    403,
                    Browser.signedIn(TOM.account(), PASSWORD)
                            .get("/figures?" + of)
                            .statusCode());
        } finally {
            due(theirs, -9600);
            give(theirs, null);
            give(List.of(others), null);
            for (PlaceActs.TeamView made : List.of(three, two)) {
                places.changeTeam(
                        made.id(), new PlaceActs.TeamText(made.name(), made.members(), true), made.version(), SALLY);
            }
        }
    }

    private static void named(List<TicketNumber> closed, @Nullable String cause) {
        closed.forEach(
                n -> TestDatabase.run("update closed_case set cause_id = ? where serial = ?", cause, n.serial()));
    }

    @Test
    void aCause_isAFigureOfTheTicketsClosedWithIt_andSaysWhoIsMissing() {
        String place = "Cause " + System.nanoTime();
        List<TicketNumber> closed = closedAt(place, 11);
        TicketNumber open = open(place);
        FigureCause cause = FigureGroups.of(List.of(), catalogues.inForce()).causes().values().stream()
                .filter(c -> c.category() == Category.OTHER || c.category() == Category.POWER)
                .findFirst()
                .orElseThrow();
        List<TicketNumber> with = closed.subList(0, 10);
        String kind = TestDatabase.one("select category from closed_case where serial = "
                + closed.get(0).serial());
        closed.forEach(n -> TestDatabase.run(
                "update closed_case set category = ? where serial = ?",
                cause.category().name(),
                n.serial()));
        named(with, cause.ids().get(0));
        try {
            String at = "place=" + encoded(place);
            String of = at + "&cause=" + encoded(cause.key());
            assertTrue(read("/figures?" + at).contains("value=\"" + cause.key() + "\""), "it is offered");
            assertTrue(row(read("/figures/steps.csv?" + at), "From opening")
                    .startsWith("From opening to closing,12,11,1,"));
            assertTrue(row(read("/figures/steps.csv?" + of), "From opening")
                    .startsWith("From opening to closing,10,10,0,"));
            assertEquals(11, read("/figures/closings.csv?" + of).lines().count(), "the head and ten");
            String page = read("/figures?" + of);
            assertTrue(page.contains("Tickets that are still open are not among these"), page);
            assertFalse(page.contains("Freeze"), page);
            String behind = read("/figures/tickets?figure=steps&row=WHOLE&" + of);
            assertTrue(behind.contains("/tickets/" + with.get(0)));
            assertFalse(behind.contains("/tickets/" + closed.get(10)) || behind.contains("/tickets/" + open));
            TestDatabase.run(
                    "update closed_case set reopened = true where serial = ?",
                    with.get(0).serial());
            assertTrue(
                    row(read("/figures/steps.csv?" + of), "From opening").startsWith("From opening to closing,9,9,0,"));
            TestDatabase.run(
                    "update closed_case set reopened = false where serial = ?",
                    with.get(0).serial());
            due(closed, 9600);
            String causes = read("/figures/late-causes.csv?" + at);
            assertEquals(2, causes.lines().count(), causes);
            assertTrue(causes.lines().skip(1).findFirst().orElseThrow().contains(",10,10,"), causes);
            assertTrue(read("/figures?" + at).contains("1 tickets that are open, or were closed with a cause"), page);
            due(closed, -9600);
        } finally {
            named(with, null);
            closed.forEach(
                    n -> TestDatabase.run("update closed_case set category = ? where serial = ?", kind, n.serial()));
            putBack(closed);
        }
    }

    @Test
    void twoGroups_areDrawnTogether_withHowManyAreWatchedBelow() {
        String place = "Beside " + System.nanoTime();
        List<TicketNumber> closed = closedAt(place, 10);
        try {
            String at = "place=" + encoded(place);
            assertTrue(read("/figures?" + at).contains("value=\"others\""), "offered once there is a group");
            assertFalse(read("/figures").contains("value=\"others\""));
            String page = read("/figures?" + at + "&beside=others");
            assertTrue(page.contains(">Still watched, " + place + "<"), page);
            String csv = read("/figures/curve.csv?" + at + "&beside=others");
            assertTrue(csv.startsWith("Working time [h],Group,Watched until then,"), csv);
            assertTrue(csv.lines().skip(1).findFirst().orElseThrow().contains("," + place + ",10,"), csv);
            String kind = "HEAT"
                            .equals(TestDatabase.one("select category from ticket where serial = "
                                    + closed.get(0).serial()))
                    ? "POWER"
                    : "HEAT";
            String few = read("/figures?" + at + "&category=OTHER&beside=kind:" + kind);
            assertTrue(few.contains("Whether the two differ is not told from fewer than 10"), few);
            assertTrue(few.contains("0 of 10 needed: too few are over to draw."), few);
            assertFalse(
                    read("/figures?" + at + "&beside=kind:NONE").contains("Still watched, "), "none that is offered");
        } finally {
            putBack(closed);
        }
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    /** On paper stands what the page says of the same month and filter: each figure, its table, and what is too few. */
    @Test
    void aMonthOnPaper_saysWhatThePageSays() throws IOException {
        String place = "Paper & <b> " + System.nanoTime();
        List<TicketNumber> closed = closedAt(place, 12);
        YearMonth month = YearMonth.from(LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC));
        String days = "from=" + month.atDay(1) + "&until=" + month.atEndOfMonth();
        try {
            String at = "place=" + encoded(place);
            Matcher link = Pattern.compile("href=\"(/figures/" + month + "\\.pdf[^\"]*)\"")
                    .matcher(read("/figures?" + at));
            assertTrue(link.find(), "the page leads to it");
            Response answer = sally.get(link.group(1).replace("&amp;", "&"));
            assertEquals("application/pdf", answer.contentType());
            String paper = text(answer.asByteArray());
            Files.write(
                    Path.of("target", "figures.pdf"),
                    sally.get("/figures/" + month + ".pdf?" + at + "&beside=others")
                            .asByteArray());
            assertTrue(paper.contains("Figures of " + month), paper);
            assertTrue(paper.contains(place), paper);
            FigureQueries.Report report = queries.report(
                    FiguresAsked.of(
                            month.atDay(1).toString(), month.atEndOfMonth().toString(), "", place, ""),
                    SALLY,
                    ZoneId.of("UTC"));
            for (Figure figure : report.figures()) {
                assertTrue(paper.contains(figure.title()), figure.title());
                assertTrue(paper.contains(figure.few()), figure.few());
                for (Figure.Row row : figure.rows()) {
                    row.cells()
                            .forEach(cell ->
                                    assertTrue(paper.contains(cell), figure.id() + ": " + cell + " in " + paper));
                }
            }
            assertEquals(
                    12, read("/figures/closings.csv?" + days + "&" + at).lines().count() - 1);
            closed.forEach(n -> assertTrue(paper.contains(n.toString())));
            assertTrue(paper.contains("Newest head of the log") || paper.contains("Head of the log"), paper);
            for (String none : List.of("2026-13", "2026-1", "1999-12", "steps")) {
                assertEquals(404, sally.get("/figures/" + none + ".pdf").statusCode(), none);
            }
            assertEquals(
                    403,
                    Browser.signedIn(TESS.account(), PASSWORD)
                            .get("/figures/" + month + ".pdf")
                            .statusCode());
        } finally {
            putBack(closed);
        }
    }

    @Test
    void whatSomebodyTyped_runsInNoSpreadsheet() {
        String place = "=HYPERLINK(\"http://x\") " + System.nanoTime();
        for (int i = 0; i < 10; i++) {
            open(place);
        }
        TestDatabase.run("update ticket set due = due - interval '9600 hours' where place = ?", place);
        String csv = read("/figures/late-places.csv?for=spreadsheet");
        assertTrue(csv.contains("\"'=HYPERLINK(\"\"http://x\"\")"), csv);
        assertFalse(csv.lines().anyMatch(l -> l.startsWith("=") || l.startsWith("\"=")));
        assertTrue(
                read("/figures/late-places.csv").contains("\"=HYPERLINK(\"\"http://x\"\")"),
                "the plain one stays true");
        TestDatabase.run("update ticket set due = due + interval '9600 hours' where place = ?", place);
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

    /** Closed tickets of a place of their own, as if each had taken some days; the rows are put back afterwards. */
    private List<TicketNumber> closedAt(String place, int count) {
        List<TicketNumber> closed = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            TicketNumber number = ClosedTickets.one(tickets, TESS);
            closed.add(number);
            TestDatabase.run(
                    "update ticket set place = ?, opened = opened - make_interval(days => ?) where serial = ?",
                    place,
                    1 + i % 4,
                    number.serial());
        }
        return closed;
    }

    private static void putBack(List<TicketNumber> closed) {
        for (int i = 0; i < closed.size(); i++) {
            TestDatabase.run(
                    "update ticket set place = 'Drawing office', opened = opened + make_interval(days => ?) where serial = ?",
                    1 + i % 4,
                    closed.get(i).serial());
        }
    }

    private void daysPass(int days) {
        clock.putForward(Duration.ofDays(days));
        sally = Browser.signedIn(SALLY.account(), PASSWORD);
    }

    private static Map<String, String> limits(String place, LocalDate last) {
        return Map.of(
                "place",
                place,
                "first",
                last.minusDays(40).toString(),
                "last",
                last.toString(),
                "rules",
                "ALL",
                "reason",
                "A quiet time <b>");
    }

    private static long frozen(String place) throws SQLException {
        try (Connection connection = TestDatabase.owner();
                var statement = connection.prepareStatement(
                        "select count(*) from chart_baseline where place = lower(?) and frozen_by = 'figures-sally'")) {
            statement.setString(1, place);
            ResultSet row = statement.executeQuery();
            row.next();
            return row.getLong(1);
        }
    }

    @Test
    void limits_areFrozenOnce_byWhoMay_ofATimeThatIsOver_andStay() throws SQLException {
        String place = "Frozen " + System.nanoTime();
        LocalDate today = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
        List<TicketNumber> closed = closedAt(place, 19);
        try {
            Browser tess = Browser.signedIn(TESS.account(), PASSWORD);
            assertEquals(
                    403, tess.post("/figures/baselines", limits(place, today)).statusCode());
            told(sally.post("/figures/baselines", limits(place, today.plusDays(1))), "a last day that is over");
            daysPass(2);
            told(sally.post("/figures/baselines", limits(place, today)), "need 20 closings, and this time has 19");
            assertFalse(read("/figures?place=" + encoded(place)).contains("Frozen limits"));
            closed.addAll(closedAt(place, 1));
            Map<String, String> wanted = limits(place, today.plusDays(2));
            told(sally.post("/figures/baselines", wanted), "a last day that is over");
            daysPass(1);
            told(sally.post("/figures/baselines", without(wanted, "reason")), "Say why");
            told(sally.post("/figures/baselines", without(wanted, "rules")), "Choose when");
            told(sally.post("/figures/baselines", without(wanted, "first")), "The first day is not later");
            assertEquals(0, frozen(place));
            assertEquals(303, sally.post("/figures/baselines", wanted).statusCode());
            assertEquals(1, frozen(place));
            String page = read("/figures?place=" + encoded(place));
            assertTrue(page.contains("The limits are frozen"), page);
            assertTrue(page.contains("20 closings from"), page);
            assertTrue(page.contains(SALLY.name()) && page.contains("A quiet time &lt;b&gt;"), page);
            assertTrue(page.contains("one false alarm in about 92 points"), page);
            assertFalse(read("/figures").contains("Frozen limits"), "another filter has limits of its own");
            assertTrue(read("/figures?place=" + encoded(place.toUpperCase(Locale.ROOT)))
                    .contains("Frozen limits"));
            assertThrows(
                    IllegalStateException.class,
                    () -> TestDatabase.run("update chart_baseline set centre = '0' where place = lower(?)", place));
            assertThrows(
                    IllegalStateException.class,
                    () -> TestDatabase.run("delete from chart_baseline where place = lower(?)", place));
            assertEquals(List.of(), unlike(), "each is recorded in the log as it stands, its words by commitment");
        } finally {
            putBack(closed);
            clock.putRight();
        }
    }

    /** Sixteen weeks of twelve tickets each, half of them late, and in the last but two all; in a schema of their own. */
    private static void weeksAt(String place, LocalDate monday) {
        SqlText text = SqlText.of(FigureBenchmark.class);
        TestDatabase.run(text.statement("none"));
        TestDatabase.run(text.statement("schema"));
        TestDatabase.run(
                "insert into many_moves.ticket (serial, title, category, device, place, requester, impact, urgency, priority, step,"
                        + " standing, round, assignee, opened, due, escalated, entries, touched, ended, words, last_hash)"
                        + " select i, 'Invented', 'HEAT', 'device', ?, 1, 'ONE_PERSON', 'CAN_WAIT', 'THIS_WEEK', 'DOCUMENT', 'CLOSED', 1,"
                        + " 'nobody', opened, opened + interval '1 day', false, 1, opened,"
                        + " opened + case when late then interval '2 days' else interval '2 hours' end, '', ''"
                        + " from (select i, cast(? as timestamptz) + i / 12 * interval '7 days' + i % 12 * interval '1 hour' as opened,"
                        + " i % 2 = 0 or i / 12 = 13 as late from generate_series(0, 191) i) t",
                place, monday + "T08:00:00Z");
        TestDatabase.run(text.statement("rights"));
    }

    private <T> T amongThese(java.util.concurrent.Callable<T> work) {
        return QuarkusTransaction.requiringNew().call(() -> {
            database.createNativeQuery("set local search_path = many_moves, public")
                    .executeUpdate();
            return work.call();
        });
    }

    private static Map<String, String> weekLimits(String place, LocalDate first, LocalDate last) {
        return Map.of(
                "place",
                place,
                "weeksFirst",
                first.toString(),
                "weeksLast",
                last.toString(),
                "weeksReason",
                "A quiet time <b>");
    }

    @Test
    void limitsOfWeeks_areFrozenOnce_byWhoMay_ofWeeksThatAreOver_andStay() throws SQLException {
        String place = "Weeks " + System.nanoTime();
        LocalDate today = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
        LocalDate monday = LateFigures.monday(today).minusWeeks(16);
        String door = "/figures/week-baselines";
        Map<String, String> wanted = weekLimits(place, monday, monday.plusWeeks(11));
        assertEquals(
                403,
                Browser.signedIn(TESS.account(), PASSWORD).post(door, wanted).statusCode());
        told(sally.post(door, weekLimits(place, monday, today)), "a last day that is over");
        told(sally.post(door, weekLimits(place, today, monday)), "The first day is not later");
        told(sally.post(door, weekLimits(place, monday.minusYears(2), monday)), "two years at most");
        told(sally.post(door, without(wanted, "weeksReason")), "Say why");
        told(sally.post(door, wanted), "this time has");
        assertEquals(0, frozen(place));
        weeksAt(place, monday);
        try {
            FiguresAsked asked = FiguresAsked.of(monday.toString(), today.toString(), "", place, "");
            Figure own = amongThese(() -> queries.report(asked, SALLY, ZoneOffset.UTC))
                    .figure("late-weeks");
            assertEquals(16, own.rows().size(), own.few());
            amongThese(() -> {
                baselines.freezeWeeks(
                        asked,
                        new ChartBaselines.WeeksAsked(
                                monday.plusDays(3).toString(),
                                monday.plusWeeks(11).plusDays(2).toString(),
                                "A quiet time <b>"),
                        SALLY);
                return "";
            });
            assertEquals(1, frozen(place));
            FigureQueries.Report report = amongThese(() -> queries.report(asked, SALLY, ZoneOffset.UTC));
            Figure held = report.figure("late-weeks");
            assertTrue(held.says().contains("The limits are frozen"), held.says());
            // half of twelve, and three standard deviations of that
            assertEquals(
                    List.of("12", "6", "50", "6.7 to 93.3", ""),
                    held.rows().get(15).cells().subList(1, 6));
            assertEquals(
                    List.of("12", "12", "100", "6.7 to 93.3", "outside"),
                    held.rows().get(13).cells().subList(1, 6));
            assertEquals(
                    1,
                    report.unusual().stream()
                            .filter(l -> l.startsWith("Of the tickets opened"))
                            .count());
            assertTrue(held.chart() != null);
        } finally {
            TestDatabase.run(SqlText.of(FigureBenchmark.class).statement("none"));
        }
        String page = read("/figures?place=" + encoded(place));
        assertTrue(page.contains("12 weeks, or joined weeks, from") && page.contains("none of them outside"), page);
        assertTrue(page.contains("50 % are usual; limits by chance alone"), page);
        assertTrue(page.contains("A quiet time &lt;b&gt;"), page);
        assertFalse(page.contains("each closing is held against"), "those of closings are frozen by themselves");
        assertFalse(read("/figures").contains("weeks, or joined weeks, from"), "another filter has limits of its own");
        assertEquals(List.of(), unlike(), "each is recorded in the log as it stands, its words by commitment");
    }

    private static List<String> unlike() throws SQLException {
        List<String> found = new ArrayList<>();
        try (Connection connection = TestDatabase.owner();
                ResultSet rows = connection
                        .createStatement()
                        .executeQuery(
                                "select row_key || ' ' || fault from rows_unlike_records('figures', 'chart_baseline', 'id')")) {
            while (rows.next()) {
                found.add(rows.getString(1));
            }
        }
        return found;
    }

    private static Map<String, String> without(Map<String, String> all, String one) {
        Map<String, String> left = new HashMap<>(all);
        left.remove(one);
        return left;
    }

    private static void told(Response answer, String words) {
        assertEquals(422, answer.statusCode(), answer.asString());
        assertTrue(answer.asString().contains(words), answer.asString());
    }
}

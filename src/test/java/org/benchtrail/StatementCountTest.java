package org.benchtrail;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.hibernate.orm.PersistenceUnitExtension;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.pages.Endpoint;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.platform.sql.SentStatements;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How many statements a page and an act send to the database, signing in included: not many, and no more for a long list than
 * for a short one.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class StatementCountTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor CLEO =
            new Actor("count-cleo", "Cleo", Set.of(Role.TECHNICIAN, Role.SUPERVISOR, Role.ADMINISTRATOR));

    private static final String ADVANCED = "{'kind':'advanced'}";

    /** What takes a ticket from its opening through every step, one string for each. */
    private static final List<String> STEPS = List.of(
            "[{'kind':'symptom-recorded','words':'Dark','observable':'No picture'},{'kind':'onset-recorded','known':false},"
                    + "{'kind':'changes-asked','answers':{'HARDWARE':'NO','SOFTWARE':'NO','SETTINGS':'NO','PLACE':'NO','INFRASTRUCTURE':'NO'}},"
                    + "{'kind':'scope-recorded','scope':'ONE'},{'kind':'reproduction-tried','outcome':'YES','how':'Switch on'},"
                    + "{'kind':'hazards-screened','present':{'SMELL':false,'SMOKE':false,'HEAT':false,'SWELLING':false,'LIQUID':false,'MAINS_LEAD':false,'EXPOSED_WIRING':false,'SHOCK':false,'ARCING':false,'SHARP':false,'HEIGHT':false}},"
                    + "{'kind':'data-answered','state':'BACKUP_VERIFIED'},{'kind':'extract-recorded','source':'Log','text':'Nothing'},"
                    + "{'kind':'logs-reviewed','looked':true,'note':'Nothing'},{'kind':'likeness-checked','shown':[]},"
                    + ADVANCED + "]",
            "[{'kind':'obvious-questioned','looks':{'POWER':'IN_ORDER','CABLES':'IN_ORDER','SETTINGS':'IN_ORDER','RECENT_CHANGE':'IN_ORDER'}},"
                    + "{'kind':'theory-stated','text':'Lamp'},{'kind':'theory-chosen','theory':14}," + ADVANCED + "]",
            "[{'kind':'check-planned','theory':14,'what':'Look','expectation':'Black'}]",
            "[{'kind':'result-recorded','check':17,'observation':'Black','outcome':'SUPPORTS'}," + ADVANCED + "]",
            "[{'kind':'action-planned','what':'Seat it','effect':'Light','impact':'Nobody','wayBack':'Take it out','irreversible':false,'touchesStorage':false,'usesPart':false},"
                    + "{'kind':'maker-consulted','applicable':false,'text':'None'},{'kind':'action-settled','action':20,'settlement':'CARRIED_OUT'},"
                    + ADVANCED + "]",
            "[{'kind':'symptom-rechecked','symptom':2,'gone':true,'how':'Twice'},"
                    + "{'kind':'function-checked','answers':{'What the user does with it every day works':'WORKS',"
                    + "'Starts from cold':'WORKS','No new errors in the logs':'WORKS'}},{'kind':'requester-answered','state':'AGREES'},"
                    + "{'kind':'prevention-considered','applies':false,'text':'Age'}," + ADVANCED + "]",
            "[{'kind':'cause-named','cause':'Lamp','sureness':'BY_REPAIR'},"
                    + "{'kind':'summary-written','findings':'Black','actions':'Swapped','outcome':'Light'},"
                    + "{'kind':'knowledge-linked','learned':'NOTHING','text':'Common'},{'kind':'effort-recorded','minutes':5},"
                    + "{'kind':'signed','signatory':'ASSIGNEE'},{'kind':'closed'}]");

    private static final Map<String, Integer> OF_A_CLOSED_TICKET = Map.of(
            "",
            14,
            "/trail",
            6,
            "/entries/2",
            6,
            "/presence/1",
            8,
            "/record",
            7,
            "/record.pdf",
            15,
            "/erasing",
            8,
            "/erasing/words",
            8,
            "/mending",
            9);

    /** Pages whose statements are not counted here, and why. */
    private static final Map<String, String> LEFT_OUT = new HashMap<>();

    static {
        leftOut("it only leads on", "/", "/d/*", "/queue/hand-over");
        leftOut("it reads the trail of every case that waits: three statements for each on the page", "/learning");
        leftOut("of a ticket that causes are ranked for; for a lamp there are none", "/tickets/*/ranking");
        leftOut("nobody is signed in yet", "/sign-in");
        leftOut("it is there once the log has been sealed", "/tickets/*/trail.jsonl");
        leftOut("it stays open while the ticket changes", "/tickets/*/live");
        leftOut("one's own, which is counted, shown to a mentor", "/coach/*", "/progress/*");
        leftOut(
                "a file that was added first",
                "/tickets/*/attachments/*",
                "/tickets/*/attachments/*/picture",
                "/tickets/*/pictures/*");
        leftOut(
                "of a lot that is planned, frozen and drawn first",
                "/audit/*",
                "/audit/*/list.csv",
                "/audit/*/report",
                "/audit/*/report.pdf",
                "/audit/*/reviews/*/*",
                "/audit-coaching/*");
        leftOut(
                "of a practice job that is begun first",
                "/practice/*",
                "/practice/*/sheet/entries/*",
                "/practice/*/sheet/trail");
        leftOut(
                "of one thing that is made first",
                "/devices/*",
                "/forecasts/*",
                "/knowledge/*",
                "/own-jobs/*",
                "/proposals/*");
    }

    private static void leftOut(String why, String... pages) {
        for (String page : pages) {
            LEFT_OUT.put(page, why);
        }
    }

    @Inject
    PeopleActs people;

    @Inject
    @PersistenceUnitExtension
    SentStatements sent;

    private Browser browser;
    private String token = "";

    /** Before a test, not before all: only then is it known where the server listens. */
    @BeforeEach
    void signIn() {
        if (browser == null) {
            people.ensureAccount(CLEO.account(), CLEO.name(), CLEO.roles(), PASSWORD);
            token = people.createToken(CLEO, "count", 1).secret();
            browser = Browser.signedIn(CLEO.account(), PASSWORD);
        }
    }

    private Response post(String path, int version, String body) {
        return given().header("Authorization", "Bearer " + token)
                .header("If-Match", "\"" + version + "\"")
                .contentType("application/json")
                .body(body.replace('\'', '"'))
                .post(path);
    }

    private String open(String place) {
        Response opened = post(
                "/api/tickets",
                0,
                "{'title':'Lamp is dark','category':'OTHER','device':'Lamp','place':'" + place
                        + "','requester':'Rae','contact':'room 4','impact':'ONE_PERSON','urgency':'CAN_WAIT'}");
        assertEquals(201, opened.statusCode(), opened.asString());
        return opened.jsonPath().getString("number");
    }

    private List<String> sentFor(String path) {
        return sent.during(() -> assertEquals(200, browser.get(path).statusCode(), path));
    }

    private int count(String path) {
        return sentFor(path).size();
    }

    private void assertAtMost(int most, String path) {
        List<String> statements = sentFor(path);
        assertTrue(!statements.isEmpty(), "the pages of the signed-in ask who that is");
        assertTrue(
                statements.size() <= most,
                () -> path + " sent " + statements.size() + " statements:\n" + String.join("\n", statements));
    }

    /**
     * A few more than were seen, where they follow from what other tests left. The queue asks a supervisor's way whether an alarm
     * stands.
     */
    @ParameterizedTest
    @CsvSource({
        "/today, 17",
        "/audit, 4",
        "/audit/plan, 8",
        "/my-reviews, 4",
        "/figures, 15",
        "/exports, 6",
        "/exports/2026-11.csv, 8",
        "/queue, 10",
        "/queue?standing=CLOSED&text=lamp&sort=priority-back, 11",
        "/queue.csv?due=week, 3",
        "/keys, 2",
        "/search, 2",
        "/search?q=lamp+in+the+hall, 31",
        "/alarms, 5",
        "/new-ticket, 6",
        "/new-ticket/alike?title=lamp+is+dark&device=lamp&category=OTHER, 16",
        "/knowledge, 5",
        "/knowledge?q=lamp, 15",
        "/bench, 2",
        "/bench/soak, 4",
        "/people, 3",
        "/people/count-cleo, 8",
        "/me, 10",
        "/site, 6",
        "/site/policies, 6",
        "/devices, 5",
        "/limits, 3",
        "/catalogue, 7",
        "/catalogue/versions, 6",
        "/proposals, 6",
        "/seal/heads, 4",
        "/forecasts, 13",
        "/coach, 6",
        "/progress, 20",
        "/coach-tests, 10",
        "/practice, 8",
        "/own-jobs, 6",
        "/own-jobs/new, 2",
        "/recall, 3",
        "/read-in, 4",
        "/audit-coaching, 4",
        "/catalogue/edit, 6",
        "/catalogue/versions/1, 6",
        "/catalogue/versions/1.yaml, 3",
        "/device-labels, 4",
        "/figures/steps.csv, 12",
        "/figures/2026-11.pdf, 15",
        "/figures/tickets?figure=steps&row=TEST, 13",
        "/learning/calibration, 6",
        "/me/second-factor, 4",
        "/people-events, 4",
        "/progress/record.pdf, 14",
        "/seal, 18",
        "/learning/cases, 6",
        "/webhooks, 4",
        "/learning/preview, 9",
        // a tile of 256 leaves is asked for once by each stretch of tickets that has entries in it
        "/exports/2026-11.jsonl, 24",
        "/exports/2026-11.xes, 8",
        "/exports/benchtrail.xesext, 2"
    })
    void page_sendsAFewStatements(String path, int most) {
        assertAtMost(most, path);
    }

    @Test
    void everyPage_isCounted_orLeftOutForAReason() throws NoSuchMethodException {
        Set<String> pages = Endpoint.all().stream()
                .filter(e -> e.method().equals("get"))
                .map(Endpoint::path)
                .collect(Collectors.toCollection(TreeSet::new));
        String[] rows = getClass()
                .getDeclaredMethod("page_sendsAFewStatements", String.class, int.class)
                .getAnnotation(CsvSource.class)
                .value();
        Set<String> counted = Stream.concat(
                        Stream.of(rows).map(row -> row.replaceAll("[?,].*", "")),
                        OF_A_CLOSED_TICKET.keySet().stream().map(path -> "/tickets/1" + path))
                .map(path -> page(path, pages))
                .collect(Collectors.toCollection(TreeSet::new));
        pages.removeAll(counted);
        Set<String> forgotten = new TreeSet<>(pages);
        forgotten.removeAll(LEFT_OUT.keySet());
        assertEquals(Set.of(), forgotten, "pages that are neither counted nor left out");
        Set<String> left = new TreeSet<>(LEFT_OUT.keySet());
        left.removeAll(pages);
        assertEquals(Set.of(), left, "left out, but counted or not there");
    }

    /** Which page answers at a path: the one that says most of it. */
    private static String page(String path, Set<String> pages) {
        return pages.stream()
                .filter(page -> path.matches(page.replace(".", "\\.").replace("*", "[^/]+")))
                .max(Comparator.comparing(page -> page.replace("*", "").length()))
                .orElseThrow(() -> new AssertionError("no page answers at " + path));
    }

    @Test
    void sheetTrailAndEntry_sendAFewStatements_atEveryStep() {
        String number = open("Count room");
        int version = 1;
        for (String step : STEPS) {
            assertAtMost(25, "/tickets/" + number);
            Response answer = post("/api/tickets/" + number + "/acts", version, step);
            assertEquals(200, answer.statusCode(), answer.asString());
            version = answer.jsonPath().getInt("version");
        }
        OF_A_CLOSED_TICKET.forEach((path, most) -> assertAtMost(most, "/tickets/" + number + path));
    }

    @Test
    void longLists_costNoMoreThanShortOnes() {
        String place = "Count hall " + System.nanoTime();
        open(place);
        String queue = "/queue?place=" + place.replace(" ", "%20");
        int one = count(queue);
        for (int i = 0; i < 20; i++) {
            open(place);
        }
        assertEquals(one, count(queue));
        int people = count("/people?search=count-");
        for (int i = 0; i < 5; i++) {
            this.people.ensureAccount("count-" + i, "Count " + i, Set.of(Role.TRAINEE), PASSWORD);
        }
        assertEquals(people, count("/people?search=count-"));
    }

    /** One statement for each entry, and as few beside them as it takes to ask what the site decided, lock, replay, renew and answer. */
    @Test
    void act_sendsAStatementForEachEntry_andAFewBeside() {
        String number = open("Count act room");
        String path = "/api/tickets/" + number + "/acts";
        String finding = "{'kind':'finding-recorded','text':'Seen'}";
        int one = sent.during(() -> assertEquals(200, post(path, 1, finding).statusCode()))
                .size();
        int five = sent.during(() -> assertEquals(
                        200,
                        post(path, 2, "[" + String.join(",", Collections.nCopies(5, finding)) + "]")
                                .statusCode()))
                .size();
        assertTrue(one <= 13, () -> "one act sent " + one);
        assertEquals(one + 4, five);
        int refused = sent.during(
                        () -> assertEquals(409, post(path, 7, ADVANCED).statusCode()))
                .size();
        assertTrue(refused <= 10, () -> "a refusal sent " + refused);
    }

    /** Practice has an account of its own: taking it on and laying it down are two statements around each thing that an act keeps. */
    @Test
    void actOfPractice_sendsAFewStatements() {
        String job = browser.post("/practice", Map.of("family", "desktop")).header("Location");
        List<String> statements = sent.during(() -> assertEquals(
                303,
                browser.post(job + "/act", Map.of("version", "2", "act", "look-dust"))
                        .statusCode()));
        assertTrue(
                statements.size() <= 21,
                () -> "it sent " + statements.size() + " statements:\n" + String.join("\n", statements));
    }
}

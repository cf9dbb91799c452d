package org.benchtrail.training;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.training.FaultWords;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A mentor's own practice job, from its text to a trainee's debrief, and the ways to what is true of it. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class OwnJobTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor MARA = new Actor("wrote-mara", "Mara Fen", Set.of(Role.TECHNICIAN, Role.MENTOR));
    private static final Actor OTTO = new Actor("wrote-otto", "Otto Gale", Set.of(Role.TECHNICIAN, Role.MENTOR));
    private static final Actor SUE = new Actor("wrote-sue", "Sue Hart", Set.of(Role.SUPERVISOR));
    private static final Actor TESS = new Actor("wrote-tess", "Tess Lowe", Set.of(Role.TRAINEE));
    private static final Actor TILL = new Actor("wrote-till", "Till Moor", Set.of(Role.TRAINEE, Role.SUPERVISOR));

    /** Its words stand nowhere else. */
    private static final String TEXT = """
            # zebrawood is the author's note
            family: array
            symptom: The archive server beeps since Monday
            message: It beeps. I saved everything, I hope.
            faults:
              CACHE:
                CHARGE: 0.123
            knows:
              ask-power: unknown
            backup: unreadable
            hazards:
              MAINS_LEAD: The lead of the server is crushed by its own wheel.
            """;

    @Inject
    PeopleActs people;

    @Inject
    PracticeQueries queries;

    private Browser mara = new Browser();
    private Browser tess = new Browser();

    @BeforeEach
    void signIn() {
        for (Actor person : List.of(MARA, OTTO, SUE, TESS, TILL)) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
        TestDatabase.run("update account set mentor = 'wrote-mara' where login = 'wrote-tess'");
        mara = in(MARA);
        tess = in(TESS);
    }

    private static Browser in(Actor person) {
        Browser browser = Browser.signedIn(person.account(), PASSWORD);
        browser.get("/practice");
        return browser;
    }

    private static String at(Response saved) {
        assertEquals(303, saved.statusCode(), saved.asString());
        return saved.header("Location").replaceFirst(".*/own-jobs", "/own-jobs");
    }

    /** Its page, once no check is going on. */
    private static String settled(Browser who, String at) throws InterruptedException {
        for (int i = 0; i < 240; i++) {
            Response page = who.get(at);
            if (page.header("Refresh") == null) {
                return page.asString();
            }
            Thread.sleep(250);
        }
        throw new AssertionError("still being checked");
    }

    private String checked(String text) throws InterruptedException {
        String at = at(mara.post("/own-jobs", Map.of("text", text)));
        settled(mara, at);
        return at;
    }

    private static String version(String page) {
        return page.replaceFirst("(?s).*name=\"version\" value=\"(\\d+)\".*", "$1");
    }

    private String given(String at) {
        Response given = mara.post(at + "/people", Map.of("version", "1", "person", TESS.account()));
        assertEquals(303, given.statusCode(), given.asString());
        return tess.get("/practice").asString().replaceFirst("(?s).*name=\"given\" value=\"(\\d+)\".*", "$1");
    }

    private String begun(String offer) {
        Response begun = tess.post("/practice", Map.of("given", offer));
        assertEquals(303, begun.statusCode(), begun.asString());
        return begun.header("Location").replaceFirst(".*/practice", "/practice");
    }

    private Response does(String job, String path, String... fields) {
        int id = Integer.parseInt(job.substring(job.lastIndexOf('/') + 1));
        Map<String, String> all = new HashMap<>(
                Map.of("version", "" + queries.job(id, TESS).trail().size()));
        for (int i = 0; i < fields.length; i += 2) {
            all.put(fields[i], fields[i + 1]);
        }
        return tess.post(job + path, all);
    }

    /** The whole walk: written, checked, given, begun, worked, debriefed. */
    @Test
    void mentorsJob_isCheckedGivenAndDebriefed() throws InterruptedException {
        assertTrue(mara.get("/own-jobs/new").asString().contains("family: array"));
        String example = settled(mara, checked(OwnJobPage.example()));
        assertTrue(example.contains("Nothing fails: it can be given."), example);
        String at = checked(TEXT);
        String page = settled(mara, at);
        assertTrue(page.contains("Nothing fails: it can be given."), page);
        assertTrue(page.contains("200 of 200"), page);
        assertTrue(mara.get("/own-jobs").asString().contains("can be given"));
        String job = begun(given(at));
        String sheet = tess.get(job).asString();
        assertTrue(sheet.contains("The archive server beeps since Monday"), sheet);
        assertTrue(sheet.contains("It beeps. I saved everything, I hope."), sheet);
        assertEquals(303, does(job, "/act", "act", "ask-power").statusCode());
        assertTrue(tess.get(job).asString().contains("They do not know."));
        assertFalse(tess.get(job).asString().contains("crushed by its own wheel"));
        assertEquals(303, does(job, "/act", "act", "look-cache").statusCode());
        assertTrue(tess.get(job).asString().contains("crushed by its own wheel"), "whoever looks notices it");
        assertEquals(303, does(job, "/act", "act", "read-back").statusCode());
        assertTrue(tess.get(job).asString().contains("No file of it can be opened."));
        assertEquals(303, does(job, "/give-up").statusCode());
        String debrief = tess.get(job).asString();
        assertTrue(debrief.contains("It is what was sealed before the first act."), debrief);
        assertTrue(debrief.contains(FaultWords.of("CACHE")), debrief);
        assertTrue(debrief.contains("you did not name it."), debrief);
        String told = mara.get(at).asString();
        assertTrue(told.contains("Tess Lowe, text 1"), told);
        assertTrue(told.contains(", begun"), told);
        assertEquals(422, tess.post("/practice", Map.of("given", "1000000")).statusCode());
    }

    @Test
    void hazardThatWasNamed_isToldSo() throws InterruptedException {
        String job = begun(given(checked(TEXT)));
        List<String> screened = new ArrayList<>(List.of("then", "stay"));
        for (Hazard hazard : Hazard.values()) {
            screened.addAll(List.of("hazards.present." + hazard, Boolean.toString(hazard == Hazard.MAINS_LEAD)));
        }
        assertEquals(
                303,
                does(job, "/sheet/identify", screened.toArray(String[]::new)).statusCode());
        does(job, "/give-up");
        assertTrue(tess.get(job).asString().contains("you named it."));
    }

    /** Whatever a trainee asks for: text, fault, number and backup are in no answer before the debrief. */
    @Test
    void truth_isBehindNoDoorOfATrainee() throws InterruptedException {
        String at = checked(TEXT);
        String job = begun(given(at));
        given(at);
        List<String> secrets =
                List.of("zebrawood", "CACHE", FaultWords.of("CACHE"), "0.123", "UNREADABLE", "unreadable");
        StringBuilder told = new StringBuilder();
        List<Browser> trainees = List.of(tess, in(TILL));
        for (Browser who : trainees) {
            for (String door : List.of(at, at + "?version=1", "/own-jobs", "/own-jobs/new")) {
                Response answer = who.get(door);
                assertEquals(403, answer.statusCode(), door);
                told.append(answer.asString()).append(answer.headers());
            }
            for (String act : List.of("", "/check", "/people", "/withdraw")) {
                Response answer = who.post(at + act, Map.of("version", "1", "text", "x", "person", TESS.account()));
                assertEquals(403, answer.statusCode(), act);
                told.append(answer.asString()).append(answer.headers());
            }
            for (String page :
                    List.of("/practice", "/me/data", "/me", "/today", "/search?q=zebra", "/coach", "/progress")) {
                Response answer = who.get(page);
                told.append(answer.asString()).append(answer.headers());
            }
        }
        for (String page : List.of("", "/sheet/trail")) {
            Response answer = tess.get(job + page);
            told.append(answer.asString()).append(answer.headers());
        }
        told.append(does(job, "/act", "act", "look-state").asString());
        told.append(does(job, "/sheet/identify", "then", "move").asString());
        told.append(tess.get(job).asString());
        secrets.forEach(secret -> assertFalse(told.toString().contains(secret), secret));
        for (String secret : List.of("zebrawood", "CACHE", "0.123", "unreadable")) {
            assertTrue(mara.get(at).asString().contains(secret), "the search is not blind: " + secret);
        }
    }

    @Test
    void draft_isItsAuthorsAlone_andWhatIsGiven_supervisorsReadAndWithdraw() throws InterruptedException {
        String at = checked(TEXT);
        Browser otto = in(OTTO);
        Browser sue = in(SUE);
        assertEquals(404, otto.get(at).statusCode());
        assertEquals(404, sue.get(at).statusCode());
        String offer = given(at);
        assertEquals(404, otto.get(at).statusCode());
        assertFalse(otto.get("/own-jobs").asString().contains(at + "\""));
        assertTrue(sue.get("/own-jobs").asString().contains(at + "\""));
        String read = sue.get(at).asString();
        assertTrue(read.contains("zebrawood"), read);
        assertFalse(read.contains("<textarea"), "read, not changed");
        assertEquals(
                422, sue.post(at, Map.of("version", "1", "text", TEXT + "#")).statusCode());
        assertEquals(303, sue.post(at + "/withdraw", Map.of()).statusCode());
        assertEquals(422, tess.post("/practice", Map.of("given", offer)).statusCode());
        assertFalse(tess.get("/practice").asString().contains("value=\"" + offer + "\""));
        assertEquals(
                422, mara.post(at, Map.of("version", "1", "text", TEXT + "#")).statusCode());
    }

    /** Nothing typed is lost, and what is wrong is named by its line; nobody is given it. */
    @Test
    void mistakes_areSavedAsADraft_andGivenToNobody() throws InterruptedException {
        String at = at(mara.post("/own-jobs", Map.of("text", TEXT.replace("CHARGE: 0.123", "CHARGE: 12"))));
        String page = mara.get(at).asString();
        assertTrue(page.contains("CHARGE: 12"), page);
        assertTrue(page.replaceAll("\\s+", " ").contains("data-unit=\"line\">7<"), page);
        assertTrue(page.contains("CHARGE goes from 0 to 1: keep within that."), page);
        assertEquals(
                422,
                mara.post(at + "/people", Map.of("version", "1", "person", TESS.account()))
                        .statusCode());
        String fails = checked(TEXT.replace("CHARGE: 0.123", "CHARGE: 0.99"));
        String told = mara.get(fails).asString();
        assertTrue(told.contains("the symptom shows in 0 of 200 first draws"), told);
        assertEquals(
                422,
                mara.post(fails + "/people", Map.of("version", "1", "person", TESS.account()))
                        .statusCode());
    }

    @Test
    void textIsChanged_andAJobThatWasBegunStaysWhatItWas() throws InterruptedException {
        String at = checked(TEXT);
        String job = begun(given(at));
        assertEquals("1", version(mara.get(at).asString()));
        assertEquals(
                303,
                mara.post(at, Map.of("version", "1", "text", TEXT.replace("since Monday", "since Friday")))
                        .statusCode());
        settled(mara, at);
        assertEquals(
                409,
                mara.post(at, Map.of("version", "1", "text", TEXT + "# two tabs"))
                        .statusCode());
        assertTrue(tess.get(job).asString().contains("since Monday"));
        assertTrue(mara.get(at).asString().contains("since Friday"));
        assertTrue(mara.get(at + "?version=1").asString().contains("since Monday"));
        assertEquals(404, mara.get(at + "?version=7").statusCode());
        does(job, "/give-up");
        assertTrue(tess.get(job).asString().contains("It is what was sealed before the first act."));
    }

    @Test
    void jobIsGiven_toOnesOwnTraineesOnly_andBegunByNobodyElse() throws InterruptedException {
        String at = checked(TEXT);
        assertEquals(
                422,
                mara.post(at + "/people", Map.of("version", "1", "person", TILL.account()))
                        .statusCode());
        String offer = given(at);
        assertEquals(422, in(TILL).post("/practice", Map.of("given", offer)).statusCode());
        assertEquals(
                422,
                mara.post(at + "/people", Map.of("version", "1", "person", TESS.account()))
                        .statusCode(),
                "they have it already");
        begun(offer);
        assertEquals(422, tess.post("/practice", Map.of("given", offer)).statusCode(), "once");
    }
}

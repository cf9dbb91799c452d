package org.benchtrail.ticket;

import static org.benchtrail.ticket.ApiDesk.ADVANCE;
import static org.benchtrail.ticket.AttackSite.MENTOR_SIGNS;
import static org.benchtrail.ticket.AttackSite.approved;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.Browser;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** How the questions of a day could be answered for somebody, before or after they are told, or tell what is not to be read. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class RecallAttackTest extends AttackCase {
    private static final String PASSWORD = "a long enough password";
    private static final Pattern ITEM = Pattern.compile("name=\"item\" value=\"([^\"]+)\"");
    private static final Pattern CHOICE = Pattern.compile("name=\"answer\" value=\"([^\"]+)\"");
    private static final String RIGHT = "Right is:";

    @Inject
    EntityManager database;

    @Inject
    MovedClock clock;

    @AfterEach
    void today() {
        clock.putRight();
    }

    private static Browser page(String login) {
        return Browser.signedIn(login, PASSWORD);
    }

    private static String day(Browser who) {
        Response answer = who.get("/recall");
        assertEquals(200, answer.statusCode());
        return answer.asString();
    }

    private static String first(Pattern pattern, String page) {
        Matcher found = pattern.matcher(page);
        assertTrue(found.find(), page);
        return found.group(1);
    }

    private static String item(String page) {
        return first(ITEM, page);
    }

    private static int answers(Browser who, String item, String answer) {
        return who.post("/recall/answers", Map.of("item", item, "answer", answer))
                .statusCode();
    }

    /** A ticket of that trainee on which identify was refused for the hazards and the likeness, and then closed. */
    private ApiDesk closed(String login) {
        ApiDesk desk = missed(login);
        desk.does(java.util.Arrays.copyOfRange(ApiDesk.IDENTIFIED, 2, ApiDesk.IDENTIFIED.length - 1));
        desk.skips("CAUSES_EARLY");
        desk.does(ApiDesk.IDENTIFIED[ApiDesk.IDENTIFIED.length - 1], ADVANCE);
        desk.skips("CAUSES");
        desk.does(ApiDesk.OBVIOUS);
        int theory = desk.does("{\"kind\":\"theory-stated\",\"text\":\"Dusty\"}");
        desk.does("{\"kind\":\"theory-chosen\",\"theory\":" + theory + ",\"reason\":\"Seen\"}", ADVANCE);
        desk.tests(theory, "SUPPORTS");
        desk.does(ADVANCE);
        int action = desk.plans();
        desk.lets("way-marek", approved(action));
        desk.carriesOut(action);
        desk.verifies();
        desk.documents();
        desk.lets("way-marek", MENTOR_SIGNS);
        desk.does(AttackSite.CLOSE);
        return desk;
    }

    private ApiDesk missed(String login) {
        ApiDesk desk = site.desk(login);
        desk.does(ApiDesk.IDENTIFIED[0], ApiDesk.IDENTIFIED[1]);
        assertEquals(409, desk.sends(login, desk.version, "[" + ADVANCE + "]").statusCode());
        desk.version++;
        return desk;
    }

    /** A practice job, given up at once. */
    private static void practises(Browser who, String family) {
        String job = practice(who, family);
        assertEquals(303, who.post(job + "/give-up", Map.of()).statusCode());
    }

    private static String practice(Browser who, String family) {
        return who.post("/practice", Map.of("family", family))
                .header("Location")
                .replaceFirst(".*/practice", "/practice");
    }

    private Browser tomorrow(String login) {
        clock.putForward(Duration.ofDays(1));
        return page(login);
    }

    @Test
    void nothingIsAsked_ofTheSameDay_ofWhatIsOpen_orOfNobodysJobs() {
        site.hire("recall-abe", Role.TRAINEE);
        Browser abe = page("recall-abe");
        missed("recall-abe");
        practice(abe, "drive");
        practises(abe, "power");
        assertFalse(day(abe).contains("name=\"item\""), "the day after");
        abe = tomorrow("recall-abe");
        String page = day(abe);
        assertTrue(item(page).startsWith("told-apart:practice-"), page);
        assertTrue(page.contains("1 of 1"), "not of the ticket and the job that are open");
        assertTrue(abe.get("/today").asString().contains("Questions for today"), "offered");
        for (String other : List.of("way-tom", "way-ole", "way-marek", "way-sue")) {
            assertFalse(day(page(other)).contains("name=\"item\""), other);
            assertFalse(page(other).get("/today").asString().contains("Questions for today"), other);
        }
    }

    @Test
    void theKey_isTold_onceItIsAnswered_andTheFirstAnswerStands() {
        site.hire("recall-bea", Role.TRAINEE);
        ApiDesk desk = closed("recall-bea");
        Browser bea = tomorrow("recall-bea");
        String page = day(bea);
        String item = item(page);
        assertTrue(item.startsWith("next-lack:" + desk.number), "what was missing guards people and data: " + item);
        assertFalse(page.contains(RIGHT), page);
        assertFalse(page.contains("/tickets/" + desk.number), "nor where it stands");
        assertFalse(page.contains("Rae") || page.contains("Drawing office"), "nobody is named");
        List<String> choices = new ArrayList<>();
        Matcher each = CHOICE.matcher(page);
        while (each.find()) {
            choices.add(each.group(1));
        }
        assertEquals(10, choices.size(), page);

        // nothing said is neither right nor wrong
        Response nothing = bea.post("/recall/answers", Map.of("item", item));
        assertEquals(422, nothing.statusCode());
        assertFalse(nothing.asString().contains(RIGHT), nothing.asString());
        assertEquals(422, answers(bea, item, "no-such"));
        assertFalse(day(bea).contains("So far"));

        // a wrong one, and then with the key in sight a right one
        assertEquals(
                303, bea.post("/recall/answers", answer(item, choices, false)).statusCode());
        page = day(bea);
        assertTrue(page.contains(RIGHT) && page.contains("Not right") && page.contains("So far 0 of 1 right"), page);
        bea.post("/recall/answers", answer(item, choices, true));
        page = day(bea);
        assertTrue(page.contains("Not right") && page.contains("So far 0 of 1 right"), page);

        // erased: it cannot be said a second time on that day
        assertEquals(303, bea.post("/recall/erasures", Map.of()).statusCode());
        assertEquals(
                422, bea.post("/recall/answers", answer(item, choices, true)).statusCode());
        assertFalse(day(bea).contains("So far"));
        bea = tomorrow("recall-bea");
        assertEquals(item, item(day(bea)), "and comes again the next");
        assertEquals(
                303, bea.post("/recall/answers", answer(item, choices, true)).statusCode());
        assertTrue(day(bea).contains("So far 1 of 1 right"), day(bea));

        // opened again, it says nothing any more
        clock.putForward(Duration.ofDays(1));
        desk.lets("way-sue", "{\"kind\":\"reopened\",\"reason\":\"It came back\"}");
        page = day(page("recall-bea"));
        assertFalse(page.contains("name=\"item\""), page);
    }

    /** All but what had been recorded; a wrong one lacks one more. */
    private static Map<String, Object> answer(String item, List<String> choices, boolean right) {
        List<String> missing = new ArrayList<>(choices);
        missing.removeAll(List.of("symptom-observed", "onset-known"));
        return Map.of("item", item, "answer", right ? missing : missing.subList(1, missing.size()));
    }

    @Test
    void anothersQuestion_isNotAnswered_norSeen() {
        site.hire("recall-cal", Role.TRAINEE);
        site.hire("recall-dot", Role.TRAINEE);
        practises(page("recall-cal"), "power");
        practises(page("recall-dot"), "power");
        Browser cal = tomorrow("recall-cal");
        Browser dot = page("recall-dot");
        String item = item(day(cal));
        String choice = first(CHOICE, day(cal));
        assertNotEquals(item, item(day(dot)));
        assertEquals(422, answers(dot, item, choice));
        assertEquals(422, answers(page("way-ole"), item, choice), "nor does who is no trainee");
        assertEquals(422, answers(cal, "told-apart:practice-999999:0", choice), "nor what there is not");
        assertFalse(day(cal).contains(RIGHT));
        assertEquals(303, answers(cal, item, choice));
        assertTrue(day(cal).contains(RIGHT));
        assertFalse(day(dot).contains(RIGHT));
        assertEquals(
                303,
                dot.post("/recall/erasures", Map.of("person", "recall-cal")).statusCode());
        assertTrue(day(cal).contains(RIGHT), "one's own alone is erased");

        assertKeptApart(database, "recall.answer");
    }

    @Test
    void aSkippedDay_countsAsNothing_andTheSameComesAgain() {
        site.hire("recall-eve", Role.TRAINEE);
        practises(page("recall-eve"), "drive");
        Browser eve = tomorrow("recall-eve");
        String item = item(day(eve));
        String choice = first(CHOICE, day(eve));
        assertEquals(303, eve.post("/recall/skips", Map.of()).statusCode());
        assertFalse(eve.get("/today").asString().contains("Questions for today"));
        assertEquals(422, answers(eve, item, choice), "no more on that day");
        String page = day(eve);
        assertFalse(page.contains("So far") || page.contains("name=\"item\""), page);
        eve = tomorrow("recall-eve");
        assertEquals(item, item(day(eve)));
        assertTrue(day(eve).contains("1 of 1"), day(eve));
    }

    /** A debrief that is over would tell by what to tell causes apart, on the very ticket on which that is to be forecast. */
    @Test
    void whatTellsCausesApart_isNotAsked_whileTheirForecastIsDue() {
        site.hire("recall-fay", Role.TRAINEE);
        practises(page("recall-fay"), "desktop");
        ApiDesk desk = site.desk("recall-fay");
        Browser fay = tomorrow("recall-fay");
        assertFalse(day(fay).contains("name=\"item\""), day(fay));
        desk.does(java.util.Arrays.copyOf(ApiDesk.IDENTIFIED, ApiDesk.IDENTIFIED.length - 1));
        desk.skips("CAUSES_EARLY");
        assertTrue(item(day(fay)).startsWith("told-apart"), "else the search is blind");
    }

    @Test
    void whileWorkIsStopped_nothingIsAsked() {
        site.hire("recall-gus", Role.TRAINEE);
        practises(page("recall-gus"), "drive");
        ApiDesk desk = site.desk("recall-gus", "POWER");
        Browser gus = tomorrow("recall-gus");
        String item = item(day(gus));
        String choice = first(CHOICE, day(gus));
        desk.does(ApiDesk.IDENTIFIED[5].replace("\"SMOKE\":false", "\"SMOKE\":true"));
        assertTrue(day(gus).contains("work is stopped"), day(gus));
        assertFalse(gus.get("/today").asString().contains("Questions for today"));
        assertEquals(422, answers(gus, item, choice));
    }
}

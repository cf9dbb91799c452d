package org.benchtrail.ticket;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.Map;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What was typed on a job sheet and not recorded is there again, for whoever typed it, until it is recorded or discarded. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class DraftTest {
    private static final String PASSWORD = "a long enough password";
    private static final String TYPED = "Fan stands still \u2013 \u6e29\u5ea6";

    @Inject
    PeopleActs people;

    private AttackSite site;

    @BeforeEach
    void site() {
        site = new AttackSite(people);
    }

    private static Browser browser(ApiDesk desk, String login) {
        Browser browser = Browser.signedIn(login, PASSWORD);
        browser.get("/tickets/" + desk.number);
        return browser;
    }

    private static int keeps(Browser browser, ApiDesk desk, String form, int version, String... fields) {
        return browser.post("/tickets/" + desk.number + "/draft/keep/" + form, with(version, fields))
                .statusCode();
    }

    private static Map<String, String> with(int version, String... fields) {
        Map<String, String> all = new HashMap<>(Map.of("version", Integer.toString(version)));
        for (int i = 0; i < fields.length; i += 2) {
            all.put(fields[i], fields[i + 1]);
        }
        return all;
    }

    private static String shown(Browser browser, ApiDesk desk) {
        Response page = browser.get("/tickets/" + desk.number);
        assertEquals(200, page.statusCode());
        return page.asString();
    }

    @Test
    void whatIsTyped_isThereInAnotherBrowser_andNobodyElseSeesIt() {
        ApiDesk desk = site.desk("way-ines");
        Browser first = browser(desk, "way-ines");
        assertEquals(204, keeps(first, desk, "identify", 1, "logs.looked", "true", "logs.note", TYPED));
        assertEquals(204, keeps(first, desk, "evidence", 1, "extract.source", "Event log", "extract.text", ""));
        String second = shown(browser(desk, "way-ines"), desk);
        assertTrue(second.contains(TYPED) && second.contains("Event log"), "both forms of one draft");
        assertTrue(second.contains("Draft of "));
        assertFalse(shown(browser(desk, "way-sue"), desk).contains(TYPED));
    }

    @Test
    void savingOneForm_keepsWhatIsTypedInTheOther() {
        ApiDesk desk = site.desk("way-ines");
        Browser ines = browser(desk, "way-ines");
        keeps(ines, desk, "identify", 1, "logs.note", TYPED);
        keeps(ines, desk, "evidence", 1, "finding.text", "Burnt smell at the plug");
        Response saved =
                ines.post("/tickets/" + desk.number + "/evidence", with(1, "finding.text", "Burnt smell at the plug"));
        assertEquals(303, saved.statusCode(), saved.asString());
        String after = shown(ines, desk);
        assertTrue(after.contains(TYPED));
        assertFalse(after.contains(">Burnt smell at the plug</textarea>"), "what is recorded is no draft any more");
        assertEquals(204, keeps(ines, desk, "evidence", 1, "finding.text", "Burnt smell at the plug"));
        assertFalse(
                shown(ines, desk).contains(">Burnt smell at the plug</textarea>"),
                "what the page before sends late is no draft either");
    }

    @Test
    void refusedForm_isThereAfterAReload_andTheAddressOfTheFormLeadsBack() {
        ApiDesk desk = site.desk("way-ines");
        Browser ines = browser(desk, "way-ines");
        Response refused = ines.post(
                "/tickets/" + desk.number + "/evidence",
                with(1, "reading.quantity", "temperature", "reading.value", "so hot", "reading.point", TYPED));
        assertEquals(422, refused.statusCode());
        Response reloaded = ines.get("/tickets/" + desk.number + "/evidence");
        assertEquals(303, reloaded.statusCode());
        assertTrue(reloaded.header("Location").endsWith("/tickets/" + desk.number));
        String again = shown(ines, desk);
        assertTrue(again.contains("so hot") && again.contains(TYPED));
    }

    @Test
    void resultsOfTwoChecks_areTwoDrafts() {
        ApiDesk desk = site.atTest("way-ines");
        int theory = AttackSite.theory(desk);
        int one = desk.does(AttackSite.check(theory, "Look at the fan", "It stands"));
        int two = desk.does(AttackSite.check(theory, "Feel the air", "None"));
        Browser ines = browser(desk, "way-ines");
        keeps(ines, desk, "result", desk.version, "result.check", "" + one, "result.observation", "It turns slowly");
        keeps(ines, desk, "result", desk.version, "result.check", "" + two, "result.observation", "Hardly any air");
        String page = shown(ines, desk);
        assertTrue(page.contains(">It turns slowly</textarea>") && page.contains(">Hardly any air</textarea>"), page);
    }

    @Test
    void draftOfAStepThatWasLeft_isShownInWords_andDiscardedOnPurposeOnly() {
        ApiDesk desk = site.atTheorize("way-ines");
        Browser ines = browser(desk, "way-ines");
        keeps(ines, desk, "theorize", desk.version, "theory.text", TYPED);
        desk.theory("Clogged cooler");
        String page = shown(ines, desk);
        assertTrue(page.contains("Typed at another step") && page.contains(TYPED), page);
        assertEquals(
                303,
                ines.post("/tickets/" + desk.number + "/draft/discard", Map.of())
                        .statusCode());
        assertFalse(shown(ines, desk).contains(TYPED));
    }

    @Test
    void tickThatIsTakenOut_staysOut_whenTheFormIsRefused() {
        ApiDesk desk = site.desk("way-ines");
        Browser ines = browser(desk, "way-ines");
        keeps(ines, desk, "identify", 1, "symptom.words", "Dark", "symptom.intermittent", "true");
        String ticked = "name=\"symptom.intermittent\"\n      value=\"true\"\n      checked";
        assertTrue(shown(ines, desk).contains(ticked), shown(ines, desk));
        Response refused = ines.post(
                "/tickets/" + desk.number + "/identify",
                with(
                        desk.version,
                        "symptom.words",
                        "Dark",
                        "symptom.observable",
                        "No picture",
                        "symptom.intermittent",
                        "",
                        "reading.quantity",
                        "temperature",
                        "reading.value",
                        "so hot"));
        assertEquals(422, refused.statusCode());
        assertFalse(refused.asString().contains(ticked), "what was unticked is ticked again");
        assertFalse(shown(ines, desk).contains(ticked), "and again after a reload");
    }

    @Test
    void draftThatIsTooLong_isRefused_andNobodyWithoutWorkKeepsOne() {
        ApiDesk desk = site.desk("way-ines");
        Browser ines = browser(desk, "way-ines");
        assertEquals(422, keeps(ines, desk, "identify", 1, "logs.note", "x".repeat(300_001)));
        assertEquals(404, keeps(ines, desk, "nothing", 1, "logs.note", "x"));
    }
}

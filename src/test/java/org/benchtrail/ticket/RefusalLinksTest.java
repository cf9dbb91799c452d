package org.benchtrail.ticket;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.pages.Html;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.FormElement;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Whatever the sheet refuses, its words lead to the place where that is put right: every link of every refusal is followed. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class RefusalLinksTest {
    private static final String PASSWORD = "a long enough password";
    private static final String CONTROL = "input:not([type=hidden]), select, textarea, button, a[href]";

    @Inject
    PeopleActs people;

    private AttackSite site;

    @BeforeEach
    void site() {
        site = new AttackSite(people);
    }

    private static Document sheet(Browser browser, ApiDesk desk) {
        Response page = browser.get("/tickets/" + desk.number);
        assertEquals(200, page.statusCode(), page.asString());
        return Html.read(page.asString());
    }

    /** Sends every form of the sheet as it is before anybody has typed; of forms that are alike one. */
    private void assertRefusalsLead(ApiDesk desk, String who) {
        assertRefusalsLead(desk, who, 3);
    }

    private void assertRefusalsLead(ApiDesk desk, String who, int least) {
        Browser browser = Browser.signedIn(who, PASSWORD);
        Document sheet = sheet(browser, desk);
        assertLead(sheet);
        String version = version(sheet);
        Set<String> sent = new HashSet<>();
        int refused = 0;
        for (FormElement form : sheet.select("form[method=post][action^=/tickets/]:not([enctype])")
                .forms()) {
            Map<String, String> fields = fields(form);
            if (!sent.add(form.attr("action")
                    + fields.keySet().stream()
                            .map(n -> n.replaceAll("\\[.*", ""))
                            .toList())) {
                continue;
            }
            fields.put("version", version);
            Response answer = browser.post(form.attr("action"), fields);
            if (answer.statusCode() == 303) {
                version = version(sheet(browser, desk)); // it asked for nothing that is missing
            } else {
                assertLeads(form.attr("action"), answer);
                refused++;
            }
        }
        assertTrue(refused >= least, () -> "of " + sent + " hardly anything was refused");
    }

    private static String version(Document sheet) {
        return sheet.select("input[name=version]").first().val();
    }

    private static Map<String, String> fields(FormElement form) {
        Map<String, String> fields = new HashMap<>();
        form.formData().forEach(field -> fields.merge(field.key(), field.value(), (one, other) -> one));
        Element button = form.selectFirst("button[name]");
        if (button != null) {
            fields.put(button.attr("name"), button.attr("value"));
        }
        fields.remove("csrf-token");
        return fields;
    }

    private static void assertLeads(String action, Response answer) {
        assertTrue(List.of(409, 422).contains(answer.statusCode()), action + " " + answer.statusCode());
        Document page = Html.read(answer.asString());
        assertLead(page);
        assertFalse(
                page.select("#notice a[href^=#], .gate a[href^=#], .problems a[href^=#], em.error, #notice li")
                        .isEmpty(),
                () -> action + " is refused without a way to put it right: " + answer.asString());
    }

    private static void assertLead(Document page) {
        assertTrue(page.select("[data-gone]").isEmpty(), () -> "leads nowhere: " + page.select("[data-gone]"));
        for (Element link : page.select("#notice a[href^=#], .problems a[href^=#], .gate a[href^=#]")) {
            String id = link.attr("href").substring(1);
            Element place = page.getElementById(id);
            assertNotNull(place, () -> "'" + link.text() + "' leads to " + id + ", which is not there");
            assertTrue(
                    place.is(CONTROL)
                            || !place.select(CONTROL).isEmpty()
                            || place.text().contains("is asked for"),
                    () -> "'" + link.text() + "' leads to " + id + ", where nothing can be done: " + place);
        }
    }

    @Test
    void identify() {
        assertRefusalsLead(site.desk("way-ines"), "way-ines");
        ApiDesk whole = site.desk("way-ines");
        whole.identify();
        assertRefusalsLead(whole, "way-ines");
    }

    @Test
    void theorize() {
        assertRefusalsLead(site.atTheorize("way-ines"), "way-ines");
    }

    @Test
    void test() {
        assertRefusalsLead(site.atTest("way-ines"), "way-ines");
        ApiDesk planned = site.atTest("way-ines");
        planned.does(AttackSite.check(AttackSite.theory(planned), "Look at the fins", "Dust between them"));
        assertRefusalsLead(planned, "way-ines");
    }

    @Test
    void plan() {
        assertRefusalsLead(site.atPlan("way-ines"), "way-ines");
        ApiDesk planned = site.atPlan("way-ines");
        planned.plans();
        assertRefusalsLead(planned, "way-ines");
        ApiDesk dear = site.atPlan("way-ines");
        dear.does(AttackSite.action(
                "Fit another cooler",
                "\"irreversible\":true",
                "\"touchesStorage\":true",
                "\"usesPart\":true",
                "\"part\":\"Cooler C-2\""));
        assertRefusalsLead(dear, "way-ines");
        assertRefusalsLead(dear, "way-sue");
    }

    @Test
    void verify() {
        assertRefusalsLead(site.atVerify("way-ines"), "way-ines");
    }

    @Test
    void document() {
        ApiDesk desk = site.atVerify("way-ines");
        desk.verifies();
        assertRefusalsLead(desk, "way-ines");
    }

    @Test
    void closed() {
        ApiDesk desk = site.atVerify("way-ines");
        desk.verifies();
        desk.documents();
        desk.does(AttackSite.CLOSE);
        assertRefusalsLead(desk, "way-ines", 2);
        assertRefusalsLead(desk, "way-sue", 1);
    }

    @Test
    void newTicket() {
        Browser browser = Browser.signedIn("way-ines", PASSWORD);
        browser.get("/new-ticket");
        Response answer = browser.post("/new-ticket", Map.of("title", ""));
        assertEquals(422, answer.statusCode());
        Document page = Html.read(answer.asString());
        assertLead(page);
        assertFalse(page.select("em.error").isEmpty(), page::html);
    }

    /** A row whose change is refused has it told at its own field, where what was typed still stands. */
    @Test
    void placesAndTeams() {
        Browser browser = Browser.signedIn("way-sue", PASSWORD);
        browser.get("/site");
        for (String kind : List.of("place", "team")) {
            String taken = kind + " " + System.nanoTime();
            for (String name : List.of(taken, taken + " b")) {
                assertEquals(
                        303,
                        browser.post("/site/" + kind + "s", Map.of("name", name))
                                .statusCode());
            }
            Document page = Html.read(browser.get("/site").asString());
            FormElement row = page.select("tr:has(th:containsOwn(" + taken + " b)) form")
                    .forms()
                    .get(0);
            Map<String, String> fields = fields(row);
            fields.put("name", taken);
            fields.put("closed", "true");
            assertRowIsRefused(browser.post(row.attr("action"), fields), 422, taken);
            fields.put("name", taken + " c");
            fields.put("version", "0");
            assertRowIsRefused(browser.post(row.attr("action"), fields), 409, taken + " c");
            Response again = browser.post("/site/" + kind + "s", Map.of("name", taken));
            assertLeads("/site/" + kind + "s", again);
            String field = Html.read(again.asString())
                    .selectFirst(".problems a")
                    .attr("href")
                    .substring(1);
            assertEquals("new-" + kind + "-name", field);
        }
    }

    private static void assertRowIsRefused(Response answer, int status, String typed) {
        assertEquals(status, answer.statusCode());
        assertLeads("/site", answer);
        Document page = Html.read(answer.asString());
        Element field =
                page.getElementById(page.selectFirst(".problems a").attr("href").substring(1));
        assertEquals(typed, field.val());
        assertTrue(field.closest("details").hasAttr("open"), "the row is unfolded");
        assertTrue(field.closest("form")
                .selectFirst("[name=closed][type=checkbox]")
                .hasAttr("checked"));
    }
}

package org.benchtrail.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.benchtrail.demo.Scenarios;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The main job in a browser, from report to closure. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class JourneyTest {
    @TestHTTPResource("/")
    URL server;

    @Inject
    Scenarios scenarios;

    @Inject
    PeopleActs accounts;

    @BeforeEach
    void people() throws IOException {
        DemoPeople.ensure(accounts);
        for (String file : List.of("hot-desktop.yaml", "ups-office.yaml", "drive-warning.yaml", "fast-clock.yaml")) {
            scenarios.load(file, Files.readString(Path.of("demo-scenarios", file), StandardCharsets.UTF_8));
        }
    }

    private Person person(String login) {
        return new Person(server.toString()).signIn(login, Scenarios.DEMO_PASSWORD);
    }

    @Test
    void hotDesktop_isTakenFromReportThroughARefutedTheoryToClosure() {
        try (Person ines = person("ines")) {
            ines.look("queue");
            ines.page
                    .locator(
                            "a.t",
                            new com.microsoft.playwright.Page.LocatorOptions().setHasText("Shuts down a few minutes"))
                    .first()
                    .click();
            ines.sees("100");
            ines.sees("outside");
            String sheet = ines.page.url().replaceAll("^https?://[^/]+|[?#].*$", "");
            ines.look("sheet-identify");

            // a step skipped is a step refused, with what is missing and where
            ines.press("Save and go to Theorize");
            ines.sees("Not yet");
            ines.fill("symptom.observable", "Switches itself off 3 to 4 minutes after power-on, any program");
            ines.press("Save and go to Theorize");
            ines.sees("Before the step can be left");
            ines.sees("Look for every hazard of the list");
            ines.look("sheet-refused");

            Steps.identify(ines, true);
            ines.sees("Which one do you test next?");
            ines.look("sheet-theorize");
            ines.press("All in order");
            ines.sees("Most likely: heatsink or filter clogged by dust");

            // another theory than the first asks for a reason, and never blocks
            ines.choose("choice.theory", "cause:heat/blocked-airflow-or-hot-room");
            ines.press("Save and go to Test");
            ines.sees("This is not the best ranked theory: say why it is tested first");
            // one that ranks nearly as well needs none
            ines.choose("choice.theory", "cause:heat/fan-failed");
            ines.press("Save and go to Test");

            // the next best test becomes a check with its expectation, and its reading flows back
            ines.sees("Theory under test");
            ines.sees("What speed does the processor fan show at load?");
            ines.look("sheet-next-test");
            ines.page
                    .locator(
                            ".tests li:has-text('What speed does the processor fan') button:has-text('Make it a check')")
                    .click();
            ines.sees("below (about 9 in 10 if the theory is right); if not: inside; at most ");
            ines.fill("reading.value", "2050 r/min");
            ines.fill("reading.point", "processor fan");
            ines.fill("result.observation", "2050 r/min, steady");
            ines.choose("result.outcome", "REFUTES");
            ines.look("sheet-test");
            ines.press("Record and go on");

            // ruled out: the second round, with the first theory marked
            ines.sees("ruled out");
            ines.sees("fan failed or unplugged ruled out");
            assertEquals("2", ines.page.locator("dt:has-text('Round') + dd").innerText());
            ines.choose("choice.theory", "cause:heat/heat-sink-loose");
            ines.fill("choice.reason", "The clip was touched when the drive was fitted");
            ines.press("Save and go to Test");
            check(ines, "Unplugged and cooled down, press lightly on the heat sink", "It moves, or a clip is open");
            ines.sees("Hot parts");
            ines.sees("Opens when the precautions are recorded");
            assertEquals(0, ines.page.locator("[name='result.observation']").count());
            ines.look("sheet-precautions");
            ines.press("I have taken these precautions");
            ines.fill("result.observation", "Lower left clip open; the sink rocks about 2 mm");
            ines.choose("result.outcome", "SUPPORTS");
            ines.look("sheet-precautions-taken");
            ines.press("Record and go on");

            ines.sees("Plan an action");
            plan(ines);
            ines.look("sheet-plan");
            assertEquals(0, ines.page.locator("input[name^='settle-']").count());
            ines.press("I have taken these precautions");
            ines.look("sheet-plan-taken");
            ines.press("Carried out: go to Verify");

            ines.sees("Value now, same unit");
            ines.look("sheet-verify");
            Steps.verify(ines, true);
            ines.sees("I sign this summary");
            ines.look("sheet-document");
            ines.fill("cause.cause", "Came loose in transport");
            ines.fill("effort.minutes", "45");
            Steps.document(ines);
            ines.sees("closed");
            ines.look("sheet-closed");
            System.out.println("The hot desktop, from its scenario to closure: " + ines.tally() + ".");

            // the known cause that closing proposed is found, by a word typed wrongly as well
            ines.go("/knowledge?q=loose+heatsnk");
            ines.sees("Came loose in transport");
            ines.look("knowledge");
            ines.page.locator("a:has-text('Came loose in transport')").first().click();
            ines.sees("Came loose in transport");
            ines.look("known-cause");
            ines.page.goBack();
            ines.go(sheet);

            acceptedAsACase();

            ines.page.locator(".title a:text-is('Trail')").click();
            ines.sees("The chain holds");
            ines.sees("refused");
            ines.look("trail");
            ines.page.locator("table.trail a").nth(1).click();
            ines.look("entry");
        }
    }

    /** A supervisor accepts what was closed, sees what it would change, and takes it back. */
    private void acceptedAsACase() {
        try (Person omar = person("omar")) {
            omar.go("/learning");
            omar.look("learning-waiting");
            tick(omar, "Shuts down a few minutes after start");
            omar.press("Accept the ticked ones");
            omar.go("/learning/preview");
            omar.sees("heat sink loose or badly seated");
            omar.look("learning-preview-one-case");
            omar.page.locator("input[name='approved']").all().forEach(box -> box.check());
            omar.fill("note", "One case");
            omar.press("Propose a new version of this");
            omar.sees("Nothing is changed yet.");
            omar.look("proposal-own");
            declinedByAnother();
            omar.go("/learning/cases");
            omar.look("learning-cases-one");
            omar.page
                    .locator("tr:has-text('Ines Harrow') input[type=checkbox]")
                    .first()
                    .check();
            omar.fill("reason", "Only to see what it changes");
            omar.press("Withdraw the ticked ones");
            omar.go("/learning/preview");
            omar.seesNot("heat sink loose or badly seated");
        }
    }

    private void declinedByAnother() {
        try (Person wilma = person("wilma")) {
            wilma.go("/proposals");
            wilma.look("proposals-waiting");
            wilma.page.locator("main table a").first().click();
            wilma.sees("Confirm it: make the change");
            wilma.press("Decline it");
            wilma.sees("Say why not");
            wilma.look("proposal-other");
            wilma.fill("reason", "One case is too few");
            wilma.press("Decline it");
            wilma.sees("One case is too few");
            wilma.go("/proposals");
            wilma.look("proposals-decided");
        }
    }

    /** Before an account is closed, what is still with it. */
    @Test
    void accountWithOpenTickets_showsThem() {
        try (Person ines = person("ines");
                Person lena = person("lena")) {
            ines.go("/new-ticket");
            Steps.newTicket(ines, "Quill plotter skips every third line", "OTHER");
            ines.look("identify-asks-likeness");
            lena.go("/people/ines");
            lena.sees("Quill plotter skips every third line");
            lena.look("account-with-open-tickets");
        }
    }

    private static void tick(Person person, String title) {
        person.page
                .locator("tr:has-text('" + title + "') input[type=checkbox]")
                .first()
                .check();
    }

    @Test
    void shopsFigures_areLookedAtAndReadIn() {
        try (Person omar = person("omar");
                Person ines = person("ines")) {
            omar.go("/catalogue");
            omar.sees("Catalogue of causes");
            omar.look("catalogue");
            omar.go("/catalogue/edit");
            omar.look("catalogue-edit");
            omar.go("/catalogue/versions");
            omar.look("catalogue-versions");
            for (String page : List.of("/learning", "/learning/cases", "/learning/preview", "/learning/calibration")) {
                omar.go(page);
                omar.look(page.substring(1).replace('/', '-'));
            }
            omar.go("/limits");
            omar.fill("quantity", "Load of the UPS in the cupboard");
            omar.fill("unit", "squiggle");
            omar.fill("upper", "70");
            omar.fill("id", "site-ups-load");
            omar.fill("source", "policy of the shop");
            omar.press("Add the limit");
            omar.sees("is not a known unit");
            omar.fill("unit", "%");
            omar.press("Add the limit");
            omar.sees("at most 70 %");
            omar.look("limits");

            ines.go("/read-in");
            ines.choose("kind", "ups-mib");
            ines.fill("text", "upsBatteryStatus.0 = 3\nupsOutputPercentLoad.1 = 34\nupsBatteryVoltage.0 = 274");
            ines.press("Preview");
            ines.sees("27.4");
            ines.look("read-in");
            ines.fill("text", "upsBatteryVoltag.0 = 274");
            ines.press("Preview");
            ines.sees("upsBatteryVoltage");
            ines.look("read-in-refused");
        }
    }

    @Test
    void whatWasTyped_survivesAnExpiredSignInAndASecondWindow() {
        try (Person ines = person("ines")) {
            ines.go("/new-ticket");
            Steps.newTicket(ines, "Two windows on one ticket \u00e4\u00f6\u00fc \ud83d\udd0c", "OTHER");
            String path = ines.page.url().replaceAll("^https?://[^/]+|[?#].*$", "");
            com.microsoft.playwright.Page second = ines.page.context().newPage();
            second.navigate(ines.page.url());
            ines.fill("onset.when", "since Monday");
            ines.press("Save");
            second.waitForSelector("#notice:has-text('New on this sheet')");
            second.fill("[name='reproduction.how']", "typed in the second window");
            second.check("[name='reproduction.outcome'][value='YES']");
            second.locator("button:text-is('Save')").click();
            second.waitForLoadState();
            String saved = second.locator("main").innerText();
            assertTrue(saved.contains("typed in the second window") && !saved.contains("Somebody else wrote"), saved);
            second.close();

            ines.go(path);
            ines.fill("onset.when", "kept although signed out");
            ines.page
                    .context()
                    .clearCookies(new com.microsoft.playwright.BrowserContext.ClearCookiesOptions()
                            .setName("benchtrail-session"));
            ines.press("Save");
            ines.sees("nothing you typed is lost");
            ines.look("resend");
            com.microsoft.playwright.Page again = ines.page.context().newPage();
            again.navigate(server + "sign-in");
            again.fill("#login", "ines");
            again.fill("#password", Scenarios.DEMO_PASSWORD);
            again.press("#password", "Enter");
            again.waitForLoadState();
            again.close();
            ines.press("Send again");
            assertEquals("kept although signed out", ines.page.inputValue("[name='onset.when']"));
        }
    }

    @Test
    void someoneElsesTicket_isReadNotWritten() {
        try (Person ruth = person("ruth")) {
            ruth.go("/queue?text=shuts");
            ruth.page.locator("a.t").first().click();
            ruth.seesNot("Save and go to");
            ruth.look("sheet-of-another");
        }
        try (Person omar = person("omar")) {
            omar.go("/queue?step=PLAN");
            omar.page.locator("a.t").first().click();
            omar.sees("This plan");
            omar.look("sheet-approval");
            omar.choose("answer", "approve");
            omar.fill("approval.note", "At 12:30, as announced");
            omar.press("Record");
            omar.sees("Approved by Omar Vance");
        }
        try (Person lena = person("lena")) {
            lena.go("/people");
            lena.look("people");
            lena.go("/me");
            lena.look("me");
            lena.go("/queue?text=nothing-like-this");
            lena.sees("No ticket fits this");
            lena.look("queue-empty");
            lena.go("/tickets/40718-5");
            lena.look("problem");
        }
    }

    private static void check(Person person, String what, String expectation) {
        person.fill("check.what", what);
        person.fill("check.expectation", expectation);
        if (what.startsWith("Unplugged")) {
            person.tick("check.invasive");
            person.choose("check.cautions", "HEAT");
            person.choose("check.cautions", "STATIC");
        }
        person.press("Save the check");
    }

    private static void plan(Person person) {
        person.fill("action.what", "Reseat the heat sink with fresh paste, close all four clips");
        person.fill("action.effect", "Processor stays below 95 \u00b0C under load");
        person.fill("action.impact", "One person for half an hour");
        person.fill("action.wayBack", "Old cooler is kept");
        person.choose("action.touchesStorage", "false");
        person.choose("action.irreversible", "false");
        person.choose("action.usesPart", "false");
        person.choose("action.cautions", "MAINS");
        person.choose("action.cautions", "HEAT");
        person.fill("maker.text", "Mounting sheet of the cooler");
        person.press("Save the plan");
    }
}

package org.benchtrail.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Route;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import javax.imageio.ImageIO;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.demo.Scenarios;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.site.DeviceBook;
import org.benchtrail.site.DeviceText;
import org.benchtrail.site.PlaceActs;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A simple ticket from report to closure: counted, on a phone, without scripts, by the keyboard alone. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class WholeTicketTest {
    private static final String LABEL = "Reception DT-30";
    private static final String PLACE = "Larkfield Surveyors, front desk";
    private static final Actor OMAR = new Actor("omar", "Omar Vance", Set.of(Role.SUPERVISOR));
    private static final Actor INES = new Actor("ines", "Ines Harrow", Set.of(Role.TECHNICIAN));

    @TestHTTPResource("/")
    URL server;

    @Inject
    PeopleActs accounts;

    @Inject
    DeviceBook devices;

    @Inject
    PlaceActs places;

    @Inject
    TicketActs tickets;

    /** The device is on the site's list, and its requester has reported before. */
    @BeforeEach
    void known() {
        DemoPeople.ensure(accounts);
        if (devices.known(LABEL).isPresent()) {
            return;
        }
        places.addPlace(new PlaceActs.PlaceText(PLACE, "", false), OMAR);
        devices.add(new DeviceText(LABEL, Category.DISPLAY, "Desk machine", "", PLACE, "", "", "", null, ""), INES);
        tickets.open(
                new NewTicket(
                        "Flickers at noon",
                        "",
                        Category.DISPLAY,
                        LABEL,
                        PLACE,
                        "Ada Moss",
                        "extension 200",
                        Priority.Impact.ONE_PERSON,
                        Priority.Urgency.CAN_WAIT,
                        true),
                INES);
    }

    private Person ines(int width, boolean scripts) {
        return new Person(server.toString(), width, scripts).signIn("ines", Scenarios.DEMO_PASSWORD);
    }

    @Test
    void simpleTicket_needsAtMostNineFormsFromReportToClosure() {
        try (Person ines = ines(1280, true)) {
            ines.go("/new-ticket?of=Reception+DT-30");
            ines.look("new-ticket");
            int before = ines.sent();
            ines.press("Open the ticket");
            ines.sees("Say in one line what is wrong");
            ines.look("new-ticket-problems");
            assertEquals(1, ines.sent() - before, "the empty form was refused");
            before = ines.sent();
            work(ines);
            int forms = ines.sent() - before;
            System.out.println("A simple ticket took " + forms + " form submissions and " + ines.touched()
                    + " fields from report to closure; with signing in and an empty form " + ines.tally() + ".");
            assertTrue(forms <= 9, forms + " forms");
            // 11 of them are the hazards, each answered by itself
            assertTrue(ines.touched() <= 40, ines.touched() + " fields");
        }
    }

    @Test
    void withoutScripts() {
        try (Person ines = ines(1280, false)) {
            ines.go("/new-ticket?of=Reception+DT-30");
            work(ines);
        }
    }

    /** Beside an open case: every page that comes fits, and the picture is there. */
    @Test
    void onAPhone_withAPicture() throws IOException {
        try (Person ines = ines(360, true)) {
            ines.go("/new-ticket?of=Reception+DT-30");
            report(ines);
            ines.page.route("**/draft/keep/**", WholeTicketTest::slowly);
            ines.fill("symptom.observable", "No picture, power light blinks");
            ines.page.locator("#attach > summary").click();
            ines.page.locator("#attach input[name=file]").setInputFiles(photo());
            ines.fill("shows", "Back of the screen");
            ines.press("Attach");
            ines.sees("Back of the screen");
            assertEquals(
                    1,
                    ines.page
                            .locator("#evidence img[alt*='Back of the screen']")
                            .count());
            assertEquals(
                    "No picture, power light blinks",
                    ines.page.inputValue("[name='symptom.observable']"),
                    "what was typed is still there");
            Steps.identify(ines, true);
            Steps.fromTheories(ines);
        }
    }

    /** As over a poor network: what is typed just before another form is sent is still on its way then. */
    private static void slowly(Route draft) {
        draft.request().frame().page().waitForTimeout(1500);
        draft.resume();
    }

    private static Path photo() throws IOException {
        BufferedImage picture = new BufferedImage(640, 480, BufferedImage.TYPE_INT_RGB);
        Path file = Files.createTempFile("photo", ".jpg");
        ImageIO.write(picture, "jpg", file.toFile());
        return file;
    }

    /** From signing in until a gate is passed, without a mouse. */
    @Test
    void byTheKeyboardAlone() {
        try (Person ines = new Person(server.toString(), 1280, true)) {
            ines.go("/sign-in");
            Keys keys = new Keys(ines.page);
            keys.type("#login", "ines");
            keys.type("#password", Scenarios.DEMO_PASSWORD);
            keys.press("Enter");
            ines.sees("Today");
            keys.to("a[href='/new-ticket']").press("Enter");
            ines.sees("New ticket");
            keys.type("#title", "Screen stays black");
            keys.to("#category").press("D");
            keys.type("#device", LABEL);
            keys.type("#requester", "Ada Moss");
            keys.choose("impact", "ONE_PERSON");
            keys.choose("urgency", "HINDERED");
            keys.to("button:text-is('Open the ticket')").press("Enter");
            ines.sees(PLACE);
            keys.type("[name='symptom.observable']", "No picture, power light blinks");
            ines.page
                    .locator("[name^='hazards.present.'][value='false']")
                    .all()
                    .forEach(hazard -> keys.choose(hazard.getAttribute("name"), "false"));
            keys.choose("data.state", "NO_USER_DATA");
            keys.type("[name='onset.when']", "this morning");
            keys.to("button:text-is('Nothing changed')").press("Enter");
            keys.choose("reproduction.outcome", "YES");
            keys.type("[name='reproduction.how']", "Switched it on, waited");
            keys.to("summary:text-is('None possible')").press("Enter");
            keys.type("[name='noevidence.reason']", "Nothing to measure on a black screen");
            keys.choose("logs.looked", "nothing");
            if (ines.has("likeness.looked")) {
                keys.to("[name='likeness.looked'][type=checkbox]").press("Space");
            }
            keys.to("button:text-is('Save and go to Theorize')").press("Enter");
            ines.sees("Which one do you test next?");
            System.out.println(
                    "By the keyboard from signing in to a passed gate: " + keys.pressed() + " keys but for text.");
        }
    }

    /** From the open page of a new ticket until it is closed. */
    private static void work(Person ines) {
        report(ines);
        ines.fill("symptom.observable", "No picture, power light blinks");
        Steps.identify(ines, false);
        Steps.fromTheories(ines);
    }

    private static void report(Person ines) {
        ines.fill("title", "Screen stays black");
        assertEquals("Ada Moss", ines.page.inputValue("[name=requester]"), "who always reports this device");
        ines.choose("impact", "ONE_PERSON");
        ines.choose("urgency", "HINDERED");
        ines.press("Open the ticket");
        ines.sees(PLACE);
    }
}

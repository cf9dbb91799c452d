package org.benchtrail.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.net.URL;
import java.util.Set;
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
            assertTrue(ines.touched() <= 46, ines.touched() + " fields");
        }
    }

    @Test
    void withoutScripts() {
        try (Person ines = ines(1280, false)) {
            ines.go("/new-ticket?of=Reception+DT-30");
            work(ines);
        }
    }

    /** From the open page of a new ticket until it is closed. */
    private static void work(Person ines) {
        ines.fill("title", "Screen stays black");
        ines.fill("requester", "Ada Moss");
        ines.choose("impact", "ONE_PERSON");
        ines.choose("urgency", "HINDERED");
        ines.press("Open the ticket");
        ines.sees(PLACE);
        ines.fill("symptom.observable", "No picture, power light blinks");
        Steps.identify(ines, false);
        ines.sees("Likely causes");
        ines.chooseAll("All in order", "obvious.looks.", "IN_ORDER");
        ines.choose("choice.theory", "cause:display/cable-or-plug");
        ines.fill("check.what", "Look at both ends of the cable");
        ines.fill("check.expectation", "One end is not seated");
        ines.press("Save and go to Test");
        ines.fill("result.observation", "The end at the screen hangs loose");
        ines.choose("result.outcome", "SUPPORTS");
        ines.press("Record and go on");
        assertEquals("No longer: No picture, power light blinks", ines.page.inputValue("[name='action.effect']"));
        ines.fill("action.wayBack", "Put the old cable back");
        ines.choose("action.touchesStorage", "false");
        ines.choose("action.irreversible", "false");
        ines.choose("action.usesPart", "false");
        ines.choose("maker.applicable", "false");
        ines.fill("maker.text", "A cable is seated, nothing else");
        ines.press("Save the plan");
        ines.chooseEach("settle-", "CARRIED_OUT");
        ines.press("Record and go to Verify");
        Steps.verify(ines, false);
        Steps.document(ines);
        ines.sees("closed");
    }
}

package org.benchtrail.browser;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.net.URL;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.trail.Tampering;
import org.junit.jupiter.api.Test;

/** A ticket whose record was tampered with: what a technician sees of it, and what a supervisor. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class AlarmJourneyTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor WIL = new Actor("alarm-wil", "Wil Example", Set.of(Role.TECHNICIAN));
    private static final Actor SUE = new Actor("alarm-sue", "Sue Example", Set.of(Role.SUPERVISOR));
    private static final Actor ADA = new Actor("alarm-ada", "Ada", Set.of(Role.ADMINISTRATOR));

    @TestHTTPResource("/")
    URL server;

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    private TicketNumber ticket() {
        NewTicket report = new NewTicket(
                "Fan of the plotter server rattles",
                "",
                Category.HEAT,
                "Plotter server",
                "Drawing office",
                "Rae",
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                false);
        TicketNumber number = tickets.open(report, WIL).number();
        for (int version = 1; version < 4; version++) {
            String text = "Noise heard, time " + version;
            tickets.perform(number, version, List.of(sheet -> new FindingRecorded(text, false)), WIL);
        }
        return number;
    }

    @Test
    void brokenRecord_isToldToWhoeverWorksOnIt_andToTheSupervisor() {
        for (Actor person : List.of(WIL, SUE, ADA)) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
        TicketNumber cut = ticket();
        TicketNumber garbled = ticket();
        Tampering.run("delete from trail_entry where ticket = ? and entry = 4", cut.serial());
        Tampering.run("update trail_entry set canonical = 'no entry' where ticket = ? and entry = 3", garbled.serial());
        try (Person wil = new Person(server.toString()).signIn(WIL.account(), PASSWORD)) {
            wil.go("/tickets/" + cut);
            wil.sees("The ticket has 4 entries, but 3 are there.");
            wil.seesNot("Save");
            wil.look("alarm-sheet");
            wil.go("/tickets/" + garbled);
            wil.sees("Entry 3 does not hold: its content was altered, and it cannot be read.");
            wil.look("alarm-sheet-unreadable");
            wil.go("/tickets/" + garbled + "/trail");
            wil.look("alarm-trail");
            wil.go("/tickets/" + ticket() + "/entries/2");
            wil.sees("a file that was loaded");
            wil.look("entry-origin");
        }
        try (Person sue = new Person(server.toString()).signIn(SUE.account(), PASSWORD)) {
            sue.go("/queue");
            sue.look("alarm-queue");
            sue.page.locator("a:has-text('See the alarms')").click();
            sue.sees(cut + " does not hold");
            sue.look("alarms");
            sue.go("/seal");
            sue.sees("The trail of ticket " + cut + " was found broken.");
            sue.look("alarm-seal");
            sue.go("/tickets/" + cut + "/mending");
            sue.sees("entry 4");
            sue.look("mending");
            sue.page.locator("input[value=GO_ON]").check();
            sue.page.locator("input[name=reason]").fill("A disk failed");
            sue.page.locator("button:has-text('Propose it')").click();
            sue.sees("Withdraw the proposal");
        }
        try (Person ada = new Person(server.toString()).signIn(ADA.account(), PASSWORD)) {
            ada.go("/tickets/" + cut + "/mending");
            ada.sees("A disk failed");
            ada.look("mending-proposed");
            ada.page.locator("button:has-text('Agree')").click();
            ada.sees("There is nothing to mend");
            ada.sees("Entry 4 is a hole, mended by incident");
            ada.look("mended");
            ada.go("/tickets/" + cut);
            ada.sees("The trail has a hole.");
            ada.look("sheet-with-a-hole");
        }
    }
}

package org.benchtrail.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

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
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Two people on one job sheet, and one who comes back to it: nothing typed is lost, and nobody has to reload. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class TogetherJourneyTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor WIM = new Actor("both-wim", "Wim Example", Set.of(Role.TECHNICIAN));
    private static final Actor UNA = new Actor("both-una", "Una Example", Set.of(Role.SUPERVISOR));

    @TestHTTPResource("/")
    URL server;

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @BeforeEach
    void people() {
        for (Actor person : List.of(WIM, UNA)) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
    }

    private TicketNumber ticket() {
        NewTicket report = new NewTicket(
                "Lamp of the projector flickers",
                "",
                Category.DISPLAY,
                "Projector P-2",
                "Hall",
                "Rae",
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                false);
        return tickets.open(report, WIM).number();
    }

    private Person at(Actor person, TicketNumber number) {
        Person somebody = new Person(server.toString()).signIn(person.account(), PASSWORD);
        somebody.go("/tickets/" + number);
        return somebody;
    }

    private static String noteOnLogs(Person person) {
        return person.page.inputValue("[name='logs.note']");
    }

    @Test
    void whatTheOtherRecords_appearsWithoutAReload_andWhatIsBeingTypedStays() {
        TicketNumber number = ticket();
        try (Person wim = at(WIM, number);
                Person una = at(UNA, number)) {
            wim.sees("Also here: Una Example");
            una.sees("Also here: Wim Example");
            wim.fill("logs.note", "Nothing since Monday");
            tickets.perform(number, 1, List.of(sheet -> new FindingRecorded("Dust on the lamp", false)), UNA);
            wim.sees("Dust on the lamp");
            assertEquals("Nothing since Monday", noteOnLogs(wim));
            wim.look("together");
            wim.choose("logs.looked", "true");
            wim.page.locator("button[value='stay']:visible").first().click();
            wim.sees("Nothing since Monday");
            wim.seesNot("Somebody else wrote");
            una.sees("Nothing since Monday");
        }
        try (Person wim = at(WIM, number)) {
            wim.seesNot("Also here");
        }
    }

    @Test
    void whatIsTyped_isThereAgainAfterTheBrowserWasClosed_untilItIsDiscarded() {
        TicketNumber number = ticket();
        try (Person wim = at(WIM, number)) {
            wim.fill("logs.note", "Half a sentence");
            wim.page.waitForSelector("output:has-text('Draft kept')");
        }
        try (Person wim = at(WIM, number)) {
            wim.sees("Draft of");
            assertEquals("Half a sentence", noteOnLogs(wim));
            wim.look("draft");
            wim.press("Discard the draft");
            wim.seesNot("Draft of");
            assertEquals("", noteOnLogs(wim));
        }
    }
}

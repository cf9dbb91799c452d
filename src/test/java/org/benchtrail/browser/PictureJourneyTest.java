package org.benchtrail.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.FilePayload;
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
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.attachment.CameraPictures;
import org.junit.jupiter.api.Test;

/** On a phone: a photo of the camera is put beside the ticket, stands upright, is marked, and is seen marked on the record. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class PictureJourneyTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor PIA = new Actor("photo-pia", "Pia Lund", Set.of(Role.TECHNICIAN));

    @TestHTTPResource("/")
    URL server;

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    private TicketNumber ticket() {
        people.ensureAccount(PIA.account(), PIA.name(), PIA.roles(), PASSWORD);
        NewTicket report = new NewTicket(
                "Fan rattles",
                "",
                Category.HEAT,
                "Computer C-11",
                "Hall",
                "Rae",
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                true);
        return tickets.open(report, PIA).number();
    }

    private static Object told(Person person, String script) {
        return person.page.evaluate(script);
    }

    @Test
    void photoOfAPhone_isMadeSmaller_standsUpright_andIsMarked() {
        TicketNumber number = ticket();
        byte[] photo = CameraPictures.held(
                CameraPictures.taken(CameraPictures.picture("jpg", 3000, 1500), "2026:03:29 02:30:00", "+09:00"), 6);
        try (Person pia = new Person(server.toString()).signIn(PIA.account(), PASSWORD)) {
            pia.page.setViewportSize(360, 740);
            pia.go("/tickets/" + number + "#attach");
            pia.page.setInputFiles("input[name=file]", new FilePayload("fan.jpg", "image/jpeg", photo));
            pia.page.waitForCondition(() -> "1500 x 3000".equals(pia.page.inputValue("input[name=scaledFrom]")));
            pia.fill("shows", "The fan behind its grid");
            pia.press("Attach");
            loaded(pia);
            assertEquals(
                    List.of(160, 320),
                    told(pia, "(i => [i.naturalWidth, i.naturalHeight])(document.querySelector('.marked img'))"));

            pia.page.locator("a.marked").click();
            pia.sees("it was 1500 x 3000 points");
            pia.sees("The device says that it is of 28 Mar 2026 17:30");
            draws(pia);
            pia.choose("mark.mark", "CIRCLE");
            pia.fill("mark.text", "Broken blade");
            pia.press("Add the mark");
            pia.sees("circle 'Broken blade'");
            pia.look("picture");

            pia.go("/tickets/" + number + "/record");
            String middle = pia.page.locator(".marked .ink ellipse").first().getAttribute("cx");
            assertEquals(50, Double.parseDouble(middle.replace("%", "")), 1);
            pia.look("record-picture");
        }
    }

    private static void loaded(Person person) {
        person.page.locator(".marked img").scrollIntoViewIfNeeded();
        person.page.waitForCondition(
                () -> Boolean.TRUE.equals(told(person, "document.querySelector('.marked img').naturalWidth > 0")));
    }

    /** From a quarter to three quarters of the width, from above to below its middle. */
    private static void draws(Person person) {
        loaded(person);
        person.page.evaluate("document.getElementById('picture').scrollIntoView()");
        BoundingBox box = person.page.locator("#picture").boundingBox();
        assertTrue(box.width <= 360 && box.height > box.width, "upright on the screen");
        person.page.mouse().move(box.x + box.width / 4, box.y + box.height * 0.1);
        person.page.mouse().down();
        person.page.mouse().move(box.x + box.width * 3 / 4, box.y + box.height * 0.4);
        person.page.mouse().up();
        assertEquals(25, Double.parseDouble(person.page.inputValue("[name='mark.fromX']")), 1);
    }
}

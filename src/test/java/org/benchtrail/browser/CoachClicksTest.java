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
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.Test;

/** The coach stands beside the work: with it nothing takes a click more than without, and the first field is where it was. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class CoachClicksTest {
    private static final String PASSWORD = "a long enough password";

    @TestHTTPResource("/")
    URL server;

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    private TicketNumber opened(Actor by) {
        people.ensureAccount(by.account(), by.name(), by.roles(), PASSWORD);
        NewTicket report = new NewTicket(
                "Coached lamp goes dark",
                "",
                Category.OTHER,
                "Lamp of " + by.account(),
                "Coach room",
                "Rae",
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                false);
        return tickets.open(report, by).number();
    }

    /** Clicks until all of identify is answered and saved. */
    private long clicks(Actor by, int width, int coached) {
        TicketNumber number = opened(by);
        try (Person person = new Person(server.toString()).signIn(by.account(), PASSWORD)) {
            person.page.setViewportSize(width, 800);
            person.go("/tickets/" + number);
            assertEquals(coached, person.page.locator(".coach").count());
            if (coached > 0) {
                assertRoom(person, width);
            }
            assertEquals("BODY", person.page.evaluate("document.activeElement.tagName"), "no focus is taken");
            double first = ((Number) person.page.evaluate("""
                    Math.min(...[...document.querySelectorAll(".step .open form :is(input, textarea, select)")]
                        .filter(f => f.type !== "hidden" && f.checkVisibility()).map(f => f.getBoundingClientRect().top))""")).doubleValue();
            assertTrue(first <= (width == 360 ? 520 : 420), "first field at " + first);
            person.page.evaluate("addEventListener('click', () => sessionStorage.setItem('clicks',"
                    + " 1 + Number(sessionStorage.getItem('clicks') ?? 0)), true)");
            person.fill("symptom.words", "It goes dark");
            person.fill("symptom.observable", "No light after a minute");
            Steps.answers(person, false);
            person.choose("scope.scope", "ONE");
            person.press("Save");
            person.sees("No light after a minute"); // it was taken, not held up
            return Long.parseLong((String) person.page.evaluate("sessionStorage.getItem('clicks')"));
        }
    }

    /** What the sheet is longer with the coach than without, and what guards people and data can be read whole. */
    private static void assertRoom(Person person, int width) {
        int with = ((Number) person.page.evaluate("document.documentElement.scrollHeight")).intValue();
        for (String id : new String[] {"hazards-screened", "data-protected"}) {
            assertTrue(
                    (boolean) person.page.evaluate(
                            "id => { const s = document.querySelector('#' + id + ' .coach > summary');"
                                    + " return s.scrollWidth <= s.clientWidth && s.checkVisibility(); }",
                            id),
                    id + " is cut short");
        }
        int without = ((Number)
                        person.page.evaluate("document.querySelectorAll('.coach').forEach(c => c.hidden = true),"
                                + " document.documentElement.scrollHeight"))
                .intValue();
        person.page.evaluate("document.querySelectorAll('.coach').forEach(c => c.hidden = false)");
        person.look("coached-identify");
        person.page.setViewportSize(width, 800); // looking at it changed that
        String figures = "untouched identify at " + width + " px: " + with + " px, without the coach " + without;
        System.out.println(figures);
        assertTrue(with - without <= (width == 360 ? 250 : 340), figures);
        assertTrue(with <= (width == 360 ? 4700 : 2550), figures);
    }

    @Test
    void noClickMore_withTheCoachThanWithout() {
        for (int width : new int[] {1280, 360}) {
            long without = clicks(new Actor("clicks-olaf" + width, "Olaf Example", Set.of(Role.TECHNICIAN)), width, 0);
            long with = clicks(new Actor("clicks-tess" + width, "Tess Example", Set.of(Role.TRAINEE)), width, 10);
            System.out.println("clicks through identify at " + width + " px: " + without + ", coached " + with);
            assertTrue(without > 10 && with <= without, with + " against " + without);
        }
    }
}

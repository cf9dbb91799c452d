package org.benchtrail.browser;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.microsoft.playwright.Page;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.net.URL;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.ChangeAnswer;
import org.benchtrail.core.method.identify.ChangeKind;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.Test;

/**
 * How far down the work begins, and how long the sheet is, in CSS pixels. The design asks for 1,900 and 3,000 with six of ten
 * answered; the bounds here hold what is reached.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class SheetHeightTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor HAL = new Actor("height-hal", "Hal Example", Set.of(Role.TECHNICIAN));

    /** Six of the ten that identify asks. */
    private static final List<Act> SIX = List.of(
            sheet -> new SymptomRecorded("It dies on me", "Screen goes dark", false),
            sheet -> new DataAnswered(DataState.BACKUP_VERIFIED, "Sunday night"),
            sheet -> new OnsetRecorded(true, "Monday morning"),
            sheet -> new ChangesAsked(
                    Map.of(
                            ChangeKind.HARDWARE, ChangeAnswer.NO,
                            ChangeKind.SOFTWARE, ChangeAnswer.NO,
                            ChangeKind.SETTINGS, ChangeAnswer.UNKNOWN,
                            ChangeKind.PLACE, ChangeAnswer.NO,
                            ChangeKind.INFRASTRUCTURE, ChangeAnswer.NO),
                    ""),
            sheet -> new ScopeRecorded(Scope.ONE, ""),
            sheet -> new ReproductionTried(Reproduction.YES, "Ten minutes of full load"));

    @TestHTTPResource("/")
    URL server;

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Test
    void identify_beginsInTheFirstScreen_andIsNoLongerThanItHasToBe() {
        people.ensureAccount(HAL.account(), HAL.name(), HAL.roles(), PASSWORD);
        NewTicket report = new NewTicket(
                "Drawing computer goes dark",
                "",
                Category.HEAT,
                "Computer C-9",
                "Hall",
                "Rae",
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                false);
        TicketNumber number = tickets.open(report, HAL).number();
        try (Person hal = new Person(server.toString()).signIn(HAL.account(), PASSWORD)) {
            measured(hal, number, "nothing answered", 1280, 420, 2300);
            measured(hal, number, "nothing answered", 360, 520, 4300);
            tickets.perform(number, 1, SIX, HAL);
            measured(hal, number, "six of ten answered", 1280, 420, 1900);
            measured(hal, number, "six of ten answered", 360, 520, 3000);
            hal.look("identify-six");
            assertReachedByKeyboard(hal, number);
        }
    }

    /** From the top of the page to a field of what is still open, by the keyboard alone. */
    private static void assertReachedByKeyboard(Person person, TicketNumber number) {
        Page page = person.page;
        person.go("/tickets/" + number);
        for (int tabs = 1; tabs <= 5; tabs++) {
            page.keyboard().press("Tab");
            if (page.evaluate("document.activeElement.innerText").equals("To the first open question")) {
                page.keyboard().press("Enter");
            }
            if ((boolean) page.evaluate("document.activeElement.matches('.step .open :is(input, textarea, select)')")) {
                System.out.println("first field of what is open: " + tabs + " tabs from the top");
                return;
            }
        }
        fail("no field of the step is reached in five tabs");
    }

    private static void measured(Person person, TicketNumber number, String state, int width, int first, int height) {
        Page page = person.page;
        page.setViewportSize(width, width == 360 ? 740 : 900);
        person.go("/tickets/" + number);
        page.evaluate("scrollTo(0, 0)");
        double top = ((Number) page.evaluate("""
                Math.min(...[...document.querySelectorAll(".step .open form :is(input, textarea, select, summary)")]
                    .filter(f => f.type !== "hidden" && f.checkVisibility()).map(f => f.getBoundingClientRect().top))""")).doubleValue();
        int whole = ((Number) page.evaluate("document.documentElement.scrollHeight")).intValue();
        int controls = ((Number) page.evaluate("""
                [...document.querySelectorAll(".step .open form :is(input, textarea, select)")]
                    .filter(f => f.type !== "hidden" && f.checkVisibility()).length""")).intValue();
        String figures = "%s, %d px wide: first control at %.0f px, page %d px, %d controls"
                .formatted(state, width, top, whole, controls);
        System.out.println(figures);
        assertTrue(top <= first && whole <= height, figures);
        assertTrue(controls <= (state.startsWith("six") ? 40 : 65), figures);
    }
}

package org.benchtrail.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.net.URL;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Finding things, one's own account and the single keys, in a browser, light and dark. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class FindingJourneyTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor VERA = new Actor("seek-vera", "Vera Knoll", Set.of(Role.SUPERVISOR, Role.ADMINISTRATOR));
    private static final Actor JON = new Actor("seek-jon", "Jon Ferry", Set.of(Role.TECHNICIAN));

    @TestHTTPResource("/")
    URL server;

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @BeforeEach
    void ticketsOfTwo() {
        for (Actor person : List.of(VERA, JON)) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
        for (String title : List.of("Laminator jams at the first sheet", "Laminator smells of warm dust")) {
            tickets.open(
                    new NewTicket(
                            title,
                            "",
                            Category.OTHER,
                            "Laminator by the window",
                            "Reading room",
                            "Rae Quill",
                            "room 4",
                            Priority.Impact.SEVERAL,
                            Priority.Urgency.HINDERED,
                            false),
                    JON);
        }
    }

    private static void lookBoth(Person person, String name) {
        person.look(name);
        person.page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
        person.look(name + "-dark");
        person.page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.LIGHT));
    }

    @Test
    void whatIsLookedFor_isFound_keptAndHandedOver() {
        try (Person vera = new Person(server.toString()).signIn(VERA.account(), PASSWORD)) {
            vera.go("/search?q=laminatr%20window");
            vera.sees("Laminator jams");
            lookBoth(vera, "search");
            vera.go("/queue?place=Reading%20room&sort=priority");
            vera.fill("name", "Reading room, urgent first");
            vera.press("Keep it");
            vera.sees("Reading room, urgent first");
            lookBoth(vera, "queue-filtered");
            vera.page.locator("input[name=ticket]").first().check();
            vera.select("to", VERA.account());
            lookBoth(vera, "queue-handing");
            vera.press("Hand over");
            vera.sees("1 of 1 done.");
            lookBoth(vera, "queue-handed-over");
            vera.go("/people/" + JON.account());
            lookBoth(vera, "people-account");
        }
    }

    @Test
    void ownPage_isWhole() {
        try (Person jon = new Person(server.toString()).signIn(JON.account(), PASSWORD)) {
            jon.go("/me");
            jon.fill("first", LocalDate.now(java.time.ZoneOffset.UTC).toString());
            jon.fill("last", LocalDate.now(java.time.ZoneOffset.UTC).plusDays(3).toString());
            jon.select("delegate", VERA.account());
            jon.press("Note it");
            jon.sees("Vera Knoll stands in");
            lookBoth(jon, "me");
        }
    }

    @Test
    void singleKeys_lead_unlessSomethingIsTyped_orTheyAreOff() {
        try (Person jon = new Person(server.toString()).signIn(JON.account(), PASSWORD)) {
            jon.go("/today");
            for (Map.Entry<String, String> key :
                    Map.of("q", "/queue", "s", "/search", "?", "/keys").entrySet()) {
                jon.page.locator("h1").click();
                jon.page.keyboard().press(key.getKey());
                jon.page.waitForURL("**" + key.getValue());
                jon.page.evaluate("document.activeElement.blur()");
            }
            jon.go("/search");
            jon.page.locator("#q").pressSequentially("tsq?");
            assertEquals("tsq?", jon.page.locator("#q").inputValue());
            jon.page.keyboard().press("Escape");
            jon.go("/keys");
            jon.sees("Single keys are on.");
            lookBoth(jon, "keys");
            jon.press("Switch them off");
            jon.sees("Single keys are off.");
            jon.page.locator("h1").click();
            jon.page.keyboard().press("q");
            jon.page.waitForTimeout(300);
            jon.sees("Single keys are off.");
            jon.go("/keys");
            jon.sees("Single keys are off.");
        }
    }
}

package org.benchtrail.browser;

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
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.Test;

/** A mentor's presence, what is offered to forecast, progress and a test of the coach: with scripts and without, wide and narrow. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class PresenceJourneyTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor TIA = new Actor("beside-tia", "Tia Example", Set.of(Role.TRAINEE));
    private static final Actor MONA = new Actor("beside-mona", "Mona Example", Set.of(Role.MENTOR));
    private static final Actor SUE = new Actor("beside-sue", "Sue Example", Set.of(Role.SUPERVISOR));
    private static final Actor ADA = new Actor("beside-ada", "Ada Example", Set.of(Role.ADMINISTRATOR));

    @TestHTTPResource("/")
    URL server;

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    /** The address of a new ticket of the trainee. */
    private String opened() {
        for (Actor one : new Actor[] {TIA, MONA, SUE, ADA}) {
            people.ensureAccount(one.account(), one.name(), one.roles(), PASSWORD);
        }
        people.setMentor(ADA, TIA.account(), MONA.account());
        NewTicket report = new NewTicket(
                "Socket is dead now and then",
                "",
                Category.POWER,
                "Socket of the bench",
                "Bench room",
                "Rae",
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                false);
        return "/tickets/" + tickets.open(report, TIA).number();
    }

    private static void vouches(Person person, String button) {
        person.fill("login", MONA.account());
        person.fill("password", PASSWORD);
        person.press(button);
    }

    /** From the start to what was seen, on the trainee's own device. */
    private void isPresent(Person tia, String ticket, boolean scripts) {
        tia.go(ticket + "/presence/1");
        look(tia, "presence-start", scripts);
        vouches(tia, "I am present");
        tia.go(ticket + "/presence/1");
        tia.sees("Present:");
        look(tia, "presence-here", scripts);
        tia.choose("stayed", "true");
        tia.fill("saw", "Rated leads, one hand");
        vouches(tia, "Record how it went");
    }

    private static void look(Person person, String name, boolean scripts) {
        if (scripts) {
            person.look(name);
        }
    }

    @Test
    void presence_withoutScripts_onAPhone() {
        String ticket = opened();
        try (Person tia = new Person(server.toString(), 360, false).signIn(TIA.account(), PASSWORD)) {
            isPresent(tia, ticket, false);
        }
    }

    @Test
    void presence_waitsOnToday_untilItIsEnded() {
        String ticket = opened();
        try (Person tia = new Person(server.toString()).signIn(TIA.account(), PASSWORD);
                Person mona = new Person(server.toString()).signIn(MONA.account(), PASSWORD)) {
            tia.go(ticket + "/presence/1");
            vouches(tia, "I am present");
            mona.go("/today");
            mona.sees("You were present: say how it went");
            mona.look("today-presence");
            mona.page.getByText("Say how it went").last().click();
            mona.sees("How it went");
            tia.go(ticket + "/presence/1");
            tia.choose("stayed", "true");
            tia.fill("saw", "All well");
            vouches(tia, "Record how it went");
            mona.go("/today");
            mona.seesNot("You were present");
            isPresent(tia, ticket, true);
        }
    }

    @Test
    void progressForecastsAndTests_fitEveryScreen_andNeedNoScript() {
        String ticket = opened();
        for (boolean scripts : new boolean[] {true, false}) {
            try (Person tia = new Person(server.toString(), scripts ? 1280 : 360, scripts)
                            .signIn(TIA.account(), PASSWORD);
                    Person sue = new Person(server.toString(), scripts ? 1280 : 360, scripts)
                            .signIn(SUE.account(), PASSWORD)) {
                tia.go("/progress");
                tia.sees("My progress");
                look(tia, "progress", scripts);
                tia.go(ticket);
                while (tia.text().contains("Skip: urgent")) {
                    tia.seesNot("Say what you expect");
                    tia.press("Skip: urgent");
                }
                tia.page.getByText("Say what you expect").click();
                String first = tia.page
                        .locator("select[name=expected] option:not([value=''])")
                        .first()
                        .getAttribute("value");
                tia.select("expected", first);
                tia.select("chance", "70");
                look(tia, "sheet-expect", scripts);
                tia.press("Commit what you expect");
                tia.go("/forecasts");
                tia.sees("70 %");
                look(tia, "forecasts-chances", scripts);
                sue.go("/coach-tests");
                sue.page.getByText("State a plan").click();
                sue.press("State it");
                sue.sees("8 people have ended 2 jobs");
                look(sue, "coach-tests", scripts);
            }
        }
    }
}

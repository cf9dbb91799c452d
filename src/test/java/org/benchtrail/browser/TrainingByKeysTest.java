package org.benchtrail.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
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
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A forecast, a mentor's presence and a practice job to its debrief on a phone, by keys alone: with scripts and without. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class TrainingByKeysTest {
    private static final String PASSWORD = "a long enough password";
    private static final int PHONE = 360;
    private static final Actor MONA = new Actor("keys-mona", "Mona Example", Set.of(Role.MENTOR));
    private static final Actor ADA = new Actor("keys-ada", "Ada Example", Set.of(Role.ADMINISTRATOR));

    @TestHTTPResource("/")
    URL server;

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    private Person person;
    private Keys keys;
    private boolean scripts;

    private String opened(Actor trainee) {
        for (Actor one : new Actor[] {trainee, MONA, ADA}) {
            people.ensureAccount(one.account(), one.name(), one.roles(), PASSWORD);
        }
        people.setMentor(ADA, trainee.account(), MONA.account());
        NewTicket report = new NewTicket(
                "Desktop gets hot by noon",
                "",
                Category.HEAT,
                "Desktop of " + trainee.account(),
                "Keys room",
                "Rae",
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                false);
        return "/tickets/" + tickets.open(report, trainee).number();
    }

    /** Reaches a button, sees where the focus is, and presses it; waits for the page that follows. */
    private void enter(String button) {
        keys.to(button);
        assertNotEquals(
                "none",
                person.page.evaluate("getComputedStyle(document.activeElement).outlineStyle"),
                button + ": nothing shows where the focus is");
        person.page.waitForNavigation(() -> keys.press("Enter"));
    }

    private void looks(String name) {
        person.looksAsItIs("keys-" + name + (scripts ? "" : "-plain"), scripts);
    }

    /** Folded parts are opened by the same keys. */
    private void unfold(String words) {
        keys.to("summary:has-text(\"" + words + "\")").press("Enter");
    }

    private void choosesEach(String beginning, String value) {
        for (var first : person.page
                .locator("input[name^='" + beginning + "'][value='" + value + "']")
                .all()) {
            keys.choose(first.getAttribute("name"), value);
        }
    }

    private void vouches(String at) {
        keys.type("#" + at + "login", MONA.account());
        keys.type("#" + at + "password", PASSWORD);
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void forecastPresenceAndPractice_byKeysAlone_onAPhone(boolean running) {
        scripts = running;
        Actor tia = new Actor("keys-tia-" + scripts, "Tia Example", Set.of(Role.TRAINEE));
        String ticket = opened(tia);
        try (Person phone = new Person(server.toString(), PHONE, scripts)) {
            person = phone;
            keys = new Keys(phone.page);
            phone.go("/sign-in");
            keys.type("#login", tia.account());
            keys.type("#password", PASSWORD);
            enter("button:has-text('Sign in')");
            forecasts(ticket);
            isAccompanied(ticket);
            practises();
            assertEquals(0, phone.touched(), "no field was filled but by keys");
            System.out.println("by keys, scripts " + scripts + ": " + keys.pressed() + " keys that are no text");
        }
    }

    private void forecasts(String ticket) {
        person.go(ticket);
        keys.type("[name='symptom.words']", "It gets hot");
        keys.type("[name='symptom.observable']", "98 degrees after ten minutes");
        choosesEach("hazards.present.", "false");
        keys.type("[name='onset.when']", "this morning");
        keys.choose("scope.scope", "SEVERAL");
        enter("button:text-is('Save'):visible");
        person.sees("What do you expect to be the cause?");
        person.seesNot("It is due once");
        keys.to("#forecast select").press("ArrowDown");
        keys.to("[name='percent.1']").press("Shift+Tab");
        assertTrue((boolean) person.page.evaluate("document.activeElement.tagName === 'SELECT'"), "back to the cause");
        keys.type("[name='percent.1']", "60");
        looks("forecast");
        enter("#forecast button:has-text('Commit the forecast')");
        person.sees("Then the ranked causes and the next test are shown");
        person.go("/forecasts");
        person.sees("60 %");
    }

    private void isAccompanied(String ticket) {
        person.go(ticket + "/presence/1");
        vouches("");
        looks("presence");
        enter("button:has-text('I am present')");
        person.go(ticket + "/presence/1");
        person.sees("Present:");
        keys.choose("stayed", "true");
        keys.type("[name='saw']", "Rated leads, one hand");
        vouches("end-");
        enter("button:has-text('Record how it went')");
        person.go(ticket + "/presence/1");
        person.sees("Rated leads, one hand");
    }

    private void practises() {
        person.go("/practice");
        looks("practice");
        enter("button[aria-label='Begin: A desktop that gets too hot']");
        unfold("Look");
        enter("button[value='look-dust']");
        person.sees("What was done: 1");
        unfold("Wait, ask the mentor, give up");
        looks("job-open");
        enter("button:has-text('Give up')");
        person.sees("What was wrong");
        person.sees("for a dust mat on fins and filter");
        unfold("The sealed truth, opened");
        person.sees("It is what was sealed before the first act.");
        looks("debrief");
    }
}

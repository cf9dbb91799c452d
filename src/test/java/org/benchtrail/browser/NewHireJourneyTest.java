package org.benchtrail.browser;

import com.microsoft.playwright.Locator;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.net.URL;
import java.time.Duration;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Two days of somebody new: a practice job with a mistake that does harm, its debrief, the questions of the next morning, and a live
 * ticket with forecasts, the mentor beside, a remark, the way back and the signature.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class NewHireJourneyTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor NIA = new Actor("hired-nia", "Nia Example", Set.of(Role.TRAINEE));
    private static final Actor MARA = new Actor("hired-mara", "Mara Example", Set.of(Role.MENTOR));
    private static final Actor ADA = new Actor("hired-ada", "Ada Example", Set.of(Role.ADMINISTRATOR));

    @TestHTTPResource("/")
    URL server;

    @Inject
    PeopleActs people;

    @Inject
    MovedClock clock;

    @BeforeEach
    void people() {
        for (Actor person : new Actor[] {NIA, MARA, ADA}) {
            people.ensureAccount(person.account(), person.name(), person.roles(), PASSWORD);
        }
        people.setMentor(ADA, NIA.account(), MARA.account());
    }

    @AfterEach
    void clockIsPutRight() {
        clock.putRight();
    }

    private Person signedIn(Actor who) {
        return new Person(server.toString()).signIn(who.account(), PASSWORD);
    }

    @Test
    void twoDays_fromAHarmfulMistakeOnPracticeToASignedTicket() {
        try (Person nia = signedIn(NIA)) {
            practisesWithAMistake(nia);
            // of what is new, a day asks one question a job
            givesUp(nia, "desktop");
            givesUp(nia, "drive");
        }
        clock.putForward(Duration.ofDays(1));
        try (Person nia = signedIn(NIA);
                Person mara = signedIn(MARA)) {
            answersThreeQuestions(nia);
            String ticket = identifies(nia);
            isAccompanied(nia, ticket);
            Steps.fromTheoriesToPlan(nia);
            approves(mara, ticket);
            repairs(nia, ticket);
            hasItSentBack(nia, mara, ticket);
            closes(nia, mara, ticket);
        }
    }

    private static void practisesWithAMistake(Person nia) {
        begins(nia, "power");
        nia.fill("symptom.words", "We were not carried");
        nia.fill("symptom.observable", "Screens dark at the outage");
        nia.press("Save and go to Theorize");
        nia.sees("Look for every hazard of the list");
        does(nia, "look-leads");
        does(nia, "open-wiring");
        nia.sees("What was wrong");
        nia.sees("The outlet was opened: only a licensed electrician may.");
        nia.look("hired-debrief");
    }

    private static void begins(Person nia, String family) {
        nia.go("/practice");
        nia.page
                .locator("form:has(input[name=family][value=" + family + "]) button")
                .click();
    }

    private static void givesUp(Person nia, String family) {
        begins(nia, family);
        nia.page.getByText("Wait, ask the mentor, give up").click();
        nia.press("Give up");
        nia.sees("What was wrong");
    }

    private static void does(Person nia, String act) {
        Locator button = nia.page.locator("#bench button[value='" + act + "']");
        nia.page
                .locator("#bench details:has(button[value='" + act + "']) > summary")
                .click();
        button.click();
        nia.page.waitForLoadState();
    }

    private static void answersThreeQuestions(Person nia) {
        nia.go("/today");
        nia.sees("Questions for today");
        nia.go("/recall");
        nia.look("hired-question");
        for (int asked = 1; asked <= 3; asked++) {
            nia.sees(asked + " of ");
            nia.sees("From a job of yours");
            answers(nia);
            nia.sees("Right is:");
        }
    }

    private static void answers(Person nia) {
        Locator places = nia.page.locator("#form select");
        for (int i = 0; i < places.count(); i++) {
            places.nth(i).selectOption(Integer.toString(i + 1));
        }
        Locator choices = nia.page.locator("#form input[name=answer]");
        if (choices.count() > 1) {
            choices.first().check();
        } else if (choices.count() == 1) {
            choices.fill("2");
        }
        nia.press("Answer");
    }

    /** Says first what it is likely to be, before the server shows what it thinks. */
    private static String identifies(Person nia) {
        nia.go("/new-ticket");
        Steps.newTicket(nia, "Screen stays black for the new desk", "DISPLAY");
        String ticket = nia.page.url().replaceAll("[?#].*", "").replaceAll("^https?://[^/]*", "");
        nia.fill("symptom.words", "Screen stays black");
        nia.fill("symptom.observable", "No picture, power light blinks");
        nia.chooseEach("hazards.present.", "false");
        nia.fill("onset.when", "this morning");
        nia.choose("scope.scope", "ONE");
        nia.press("Save");
        nia.look("hired-forecast");
        forecasts(nia, "70");
        nia.sees("As you said before; change what you see differently now.");
        Steps.identify(nia, false);
        if (nia.page.locator("#forecast").count() > 0) {
            forecasts(nia, "80");
        }
        return ticket;
    }

    private static void forecasts(Person nia, String percent) {
        nia.sees("What do you expect to be the cause?");
        Locator cause = nia.page.locator("#forecast select").first();
        cause.selectOption(cause.locator("option:has-text('able')").first().getAttribute("value"));
        nia.page.locator("[name='percent.1']").fill(percent);
        nia.press("Commit the forecast");
    }

    /** The mentor signs in for a minute, at the device of who is trained. */
    private static void isAccompanied(Person nia, String ticket) {
        for (String button : new String[] {"I am present", "Record how it went"}) {
            nia.go(ticket + "/presence/1");
            if (button.startsWith("Record")) {
                nia.choose("stayed", "true");
                nia.fill("saw", "Asked before each act");
            }
            nia.fill("login", MARA.account());
            nia.fill("password", PASSWORD);
            nia.press(button);
        }
        nia.go(ticket);
    }

    private static void approves(Person mara, String ticket) {
        mara.go(ticket);
        mara.choose("answer", "approve");
        mara.press("Record");
    }

    private static void repairs(Person nia, String ticket) {
        nia.go(ticket);
        nia.press("Carried out: go to Verify");
        Steps.verify(nia, false);
    }

    private static void hasItSentBack(Person nia, Person mara, String ticket) {
        Steps.document(nia);
        nia.sees("A mentor who has not worked on it has to read and sign");
        mara.go(ticket);
        mara.select("remark.requirement", "symptoms-gone");
        mara.fill("remark.text", "Say how long you looked at it");
        mara.press("Put the remark");
        mara.fill("sendBack.reason", "Write down how long you watched the screen");
        mara.press("Send it back");
        nia.go(ticket);
        nia.sees("Sent back by a mentor");
        nia.sees("Say how long you looked at it");
        nia.look("hired-sent-back");
    }

    private static void closes(Person nia, Person mara, String ticket) {
        nia.fill("summary.findings", "The cable hung loose at the screen; watched for ten minutes afterwards");
        nia.tick("sign");
        nia.press("Save");
        nia.seesNot("Sent back by a mentor");
        mara.go(ticket);
        mara.press("Sign as mentor");
        nia.go(ticket);
        nia.press("Sign and close the ticket");
        nia.sees("closed");
        nia.go("/forecasts");
        nia.sees("70 %");
    }
}

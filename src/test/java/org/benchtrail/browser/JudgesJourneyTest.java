package org.benchtrail.browser;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.demo.Scenarios;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What passes in a browser between those who work on a ticket and those who judge the work. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class JudgesJourneyTest {
    private static final String TITLE = "Loud and slow, to be judged";

    @TestHTTPResource("/")
    URL server;

    @Inject
    Scenarios scenarios;

    @Inject
    PeopleActs accounts;

    private String sheet = "";

    /** A trainee's ticket that stands at verify, under a title of its own. */
    @BeforeEach
    void ticket() throws IOException {
        DemoPeople.ensure(accounts);
        String text = Files.readString(Path.of("demo-scenarios", "fast-clock.yaml"), StandardCharsets.UTF_8);
        sheet = "/tickets/"
                + scenarios
                        .load(
                                "judged.yaml",
                                text.replace("name: fast-clock", "name: judged-" + System.nanoTime())
                                        .replaceFirst("title: .*", "title: " + TITLE))
                        .orElseThrow()
                        .get(0);
    }

    private Person person(String login) {
        return new Person(server.toString()).signIn(login, Scenarios.DEMO_PASSWORD);
    }

    private void onTheSheet(Person person) {
        person.go(sheet);
    }

    @Test
    void offeredTicket_waitsForWhoeverTakesIt() {
        try (Person tomasz = person("tomasz");
                Person ines = person("ines")) {
            onTheSheet(tomasz);
            tomasz.select("offer.to", "ines");
            tomasz.fill("offer.note", "You know this board");
            tomasz.press("Offer it");
            tomasz.sees("Offered to Ines Harrow, not taken yet");
            tomasz.look("sheet-offer-made");

            ines.go("/today");
            ines.sees("Offered to you");
            ines.sees("You know this board");
            ines.look("today-waiting");
            onTheSheet(ines);
            ines.sees("Offered to you");
            ines.look("sheet-offer");
            ines.press("Decline");
            ines.seesNot("Offered to you");

            onTheSheet(tomasz);
            tomasz.select("offer.to", "ines");
            tomasz.press("Offer it");
            onTheSheet(ines);
            ines.press("Take it");
            ines.sees("Asked whether it is solved");
        }
    }

    @Test
    void lesseningAndSignature_waitForWhoHasNotWorkedOnTheTicket() {
        try (Person tomasz = person("tomasz");
                Person omar = person("omar");
                Person ruth = person("ruth")) {
            lessened(tomasz);
            agreed(omar);
            documented(tomasz);
            sentBack(ruth);

            onTheSheet(tomasz);
            tomasz.sees("Sent back by a mentor");
            tomasz.sees("Say what the room was like");
            tomasz.look("sheet-sent-back");
            tomasz.fill("summary.findings", "98 \u00b0C at 4.5 GHz in a room of 24 \u00b0C");
            tomasz.tick("sign");
            tomasz.press("Save");
            tomasz.seesNot("Sent back by a mentor");

            onTheSheet(ruth);
            ruth.press("Sign as mentor");
            onTheSheet(tomasz);
            tomasz.press("Sign and close the ticket");
            tomasz.sees("closed");
            tomasz.choose("addendum.about", "REMARK");
            tomasz.fill("addendum.text", "The cousin was told why");
            tomasz.press("Add it");
            onTheSheet(ruth);
            ruth.sees("not countersigned yet");
            ruth.press("Countersign");
            ruth.sees("Countersigned by Ruth Calloway");
            ruth.look("sheet-addendum");

            reopened(omar);
        }
    }

    /** Smoke in the middle of the work: what to do now stands first, and a second person clears it. */
    @Test
    void hazard_stopsTheWork_untilASecondPersonHasClearedIt() {
        try (Person tomasz = person("tomasz");
                Person ines = person("ines")) {
            onTheSheet(tomasz);
            for (Hazard hazard : Hazard.values()) {
                tomasz.choose("hazards.present." + hazard, hazard == Hazard.SMOKE ? "true" : "false");
            }
            tomasz.look("sheet-hazard-answered");
            tomasz.press("Save the hazards");
            tomasz.sees("Work is stopped");
            tomasz.sees(Hazard.SMOKE.whatToDo());
            tomasz.seesNot("Clear the hazard");
            tomasz.look("sheet-stop-work");

            onTheSheet(ines);
            ines.look("sheet-stop-work-second");
            ines.fill("clear.how", "Unplugged, aired for half an hour, nothing glows");
            ines.tick("clear.acknowledged");
            ines.press("Clear the hazard");
            ines.seesNot("Work is stopped");
            onTheSheet(tomasz);
            tomasz.sees("Asked whether it is solved");
        }
    }

    /** The reading that was outside is struck out late, and so stays owed. */
    private void lessened(Person tomasz) {
        tomasz.go(sheet + "/entries/8");
        tomasz.sees("98");
        tomasz.fill("reason", "Read with a sensor that is not trusted");
        tomasz.press("Withdraw this entry");
        tomasz.sees("Changes that wait for a supervisor");
        tomasz.sees("As first recorded");
        tomasz.seesNot("Agree to this change");
        tomasz.look("sheet-lessening");
    }

    private void agreed(Person omar) {
        omar.go("/today");
        omar.sees("Corrections to agree to");
        onTheSheet(omar);
        omar.fill("agree.reason", "The sensor was out of order that day");
        omar.press("Agree");
        omar.seesNot("Changes that wait for a supervisor");
    }

    private void documented(Person tomasz) {
        onTheSheet(tomasz);
        tomasz.page.locator("input[name^='recheck-'][value='true']").check();
        tomasz.page.locator("input[name^='recheck-'][name$='.how']").fill("The same job, rendered for an hour");
        tomasz.page.locator("input[name^='again-'][name$='.value']").fill("3.5");
        tomasz.press("All of it works");
        tomasz.choose("requester.state", "AGREES");
        tomasz.fill("prevention.text", "A note on the case");
        tomasz.press("Save and go to Document");
        tomasz.fill("cause.cause", "The clock was raised");
        tomasz.choose("cause.sureness", "BY_REPAIR");
        tomasz.tick("sign");
        tomasz.choose("knowledge.learned", "NOTHING");
        tomasz.fill("knowledge.text", "Common");
        tomasz.fill("effort.minutes", "60");
        tomasz.press("Sign and close the ticket");
        tomasz.sees("A mentor who has not worked on it has to read and sign");
        onTheSheet(tomasz);
        tomasz.fill("ask.note", "My first one with a raised clock");
        tomasz.press("Ask a mentor");
        tomasz.sees("Asked for, not answered yet");
    }

    private void sentBack(Person ruth) {
        ruth.go("/today");
        ruth.sees("To sign as mentor");
        ruth.sees("To look at as mentor");
        onTheSheet(ruth);
        ruth.look("sheet-mentor-asked");
        ruth.fill("remark.text", "Which cooler is fitted?");
        ruth.press("Put the remark");
        ruth.fill("sendBack.reason", "Say what the room was like");
        ruth.press("Send it back");
        ruth.sees("Which cooler is fitted?");
        ruth.look("sheet-mentor-sent-back");
        ruth.go(sheet + "/entries/2");
        ruth.fill("remark.text", "Well observed");
        ruth.press("Put the remark");
        ruth.sees("Well observed");
        ruth.look("sheet-mentor");
    }

    private void reopened(Person omar) {
        onTheSheet(omar);
        omar.fill("reopen.reason", "It was heard again on Monday");
        omar.press("Reopen at identify");
        omar.sees("Opened again: It was heard again on Monday");
        omar.sees("Rounds before this one");
        try (Person tomasz = person("tomasz")) {
            onTheSheet(tomasz);
            tomasz.sees("Recorded before it was opened again");
            tomasz.look("sheet-reopened");
        }
    }
}

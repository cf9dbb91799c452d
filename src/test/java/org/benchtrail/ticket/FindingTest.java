package org.benchtrail.ticket;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.ThreadLocalRandom;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A ticket is found by whatever somebody remembers of it. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class FindingTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor FAY = new Actor("find-fay", "Fay", Set.of(Role.TECHNICIAN));
    private static final Actor ADA = new Actor("find-ada", "Ada", Set.of(Role.ADMINISTRATOR));

    @Inject
    PeopleActs people;

    @Inject
    TicketActs acts;

    /** A word that no other ticket has, nor begins like a word of another test. */
    private final String own = letters();

    private static String letters() {
        StringBuilder word = new StringBuilder("qz");
        for (int i = 0; i < 9; i++) {
            word.append((char) ('a' + ThreadLocalRandom.current().nextInt(26)));
        }
        return word.toString();
    }

    private Browser browser;
    private TicketNumber number;

    @BeforeEach
    void ticket() {
        for (Actor actor : Set.of(FAY, ADA)) {
            people.ensureAccount(actor.account(), actor.name(), actor.roles(), PASSWORD);
        }
        browser = Browser.signedIn(FAY.account(), PASSWORD);
        number = acts.open(
                        new NewTicket(
                                "The " + own + " whistles",
                                "It began on Monday",
                                Category.OTHER,
                                "Fan tray " + own.toUpperCase(Locale.ROOT),
                                "Hall",
                                "Pia " + own + "son",
                                "room 4",
                                Priority.Impact.ONE_PERSON,
                                Priority.Urgency.CAN_WAIT,
                                true),
                        FAY)
                .number();
    }

    private String found(String typed) {
        return browser.get("/search?q=" + typed.replace(" ", "%20")).asString();
    }

    @Test
    void itsNumber_leadsToIt_withTheCheckDigitOrWithout() {
        for (String typed : Set.of(number.toString(), number.toString().replace("-", ""), "" + number.serial())) {
            assertEquals(
                    "/tickets/" + number,
                    browser.get("/search?q=" + typed).header("Location").replaceAll("^http://[^/]+", ""));
        }
    }

    @Test
    void aWrongCheckDigit_isMended() {
        String right = number.toString();
        int digit = right.charAt(right.length() - 1) - '0';
        String wrong = number.serial() + "-" + (digit + 1) % 10;
        String page = found(wrong).replaceAll("\\s+", " ");
        assertTrue(
                page.contains(
                        "There is no ticket " + wrong + ". Did you mean <a class=\"num\" href=\"/tickets/" + right),
                page);
    }

    @Test
    void itsWords_findIt_inAnyOrder_andByTheirBeginnings() {
        String page = found("whist " + own.substring(0, 7));
        assertTrue(page.contains("/tickets/" + number), page);
        assertFalse(page.contains("No ticket has every word."), page);
    }

    @Test
    void aMistypedWord_isPutRight() {
        String mistyped = own.substring(0, 8) + own.substring(9);
        String page = found(mistyped);
        assertTrue(page.contains("Searched for <strong>" + own + "</strong>"), page);
        assertTrue(page.contains("/tickets/" + number), page);
    }

    @Test
    void oneOfItsWords_isEnoughWhereNoTicketHasThemAll() {
        String page = found(own + " zzxqy");
        assertTrue(page.contains("No ticket has every word.") && page.contains("/tickets/" + number), page);
        assertTrue(found("zzxqyk").contains("Nothing fits these words."));
    }

    @Test
    void itsDevice_isListedWithItsTickets() {
        String page = found("fan tray " + own).replaceAll("\\s+", " ");
        assertTrue(page.contains("<h2>Devices</h2>"), page);
        assertTrue(page.contains("/queue?device=Fan+tray+" + own.toUpperCase(Locale.ROOT)), page);
        assertTrue(page.contains("<span class=\"num\">1</span> open,"), page);
    }

    @Test
    void whoReportedIt_isFoundByThoseWhoWorkOnTickets() {
        String name = own + "son";
        assertTrue(found("pia " + name).contains("Reported by somebody of that name"));
        browser = Browser.signedIn(ADA.account(), PASSWORD);
        assertFalse(found("pia " + name).contains("Reported by somebody of that name"));
    }

    @Test
    void whatCannotBeSearchedFor_isToldOnThePage() {
        assertEquals(422, browser.get("/search?q=%07").statusCode());
        assertEquals(422, browser.get("/search?q=" + "w".repeat(401)).statusCode());
        assertEquals(200, browser.get("/search?q=%27%26%7C").statusCode());
    }
}

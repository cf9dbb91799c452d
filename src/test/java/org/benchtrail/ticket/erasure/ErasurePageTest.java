package org.benchtrail.ticket.erasure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.sql.SQLException;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Ways for one person alone to erase who reported a ticket, or to write down who it was: none is open. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class ErasurePageTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor OMAR = new Actor("gone-omar", "Omar", Set.of(Role.SUPERVISOR));
    private static final Actor WILMA = new Actor("gone-wilma", "Wilma", Set.of(Role.SUPERVISOR));
    private static final Actor INES = new Actor("gone-ines", "Ines", Set.of(Role.TECHNICIAN));
    private static final Actor LENA = new Actor("gone-lena", "Lena", Set.of(Role.ADMINISTRATOR));
    private static final String NAME = "Brunhold Aquavit";
    private static final String CONTACT = "bell 99817";

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @BeforeEach
    void persons() {
        for (Actor one : new Actor[] {OMAR, WILMA, INES, LENA}) {
            people.ensureAccount(one.account(), one.name(), one.roles(), PASSWORD);
        }
    }

    private static Browser signedIn(Actor actor) {
        return Browser.signedIn(actor.account(), PASSWORD);
    }

    private String ticket() {
        NewTicket report = new NewTicket(
                "A fan that rattles",
                "It rattles",
                Category.HEAT,
                "Laptop",
                "Desk 4",
                NAME,
                CONTACT,
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                true);
        return tickets.open(report, INES).number().toString();
    }

    private static String kept(String number) {
        return told(
                "select r.name from ticket t join requester r on r.id = t.requester where ticket_number(t.serial) = '"
                        + number + "'");
    }

    private static String told(String sql) {
        try (var connection = TestDatabase.owner();
                var statement = connection.createStatement();
                var rows = statement.executeQuery(sql)) {
            return rows.next() ? String.valueOf(rows.getString(1)) : "";
        } catch (SQLException e) {
            throw new IllegalStateException(sql, e);
        }
    }

    @Test
    void twoSupervisors_eraseThem_andNobodyElse() {
        String number = ticket();
        String another = ticket();
        String page = "/tickets/" + number + "/erasing";
        for (Actor one : new Actor[] {INES, LENA}) {
            Browser browser = signedIn(one);
            assertEquals(403, browser.get(page).statusCode(), one.account());
            assertEquals(403, browser.post(page, Map.of("reason", "asked for")).statusCode(), one.account());
            assertFalse(browser.get("/tickets/" + number).asString().contains(page), one.account());
        }
        Browser omar = signedIn(OMAR);
        assertTrue(omar.get("/tickets/" + number).asString().contains(page));
        String asked = omar.get(page).asString();
        assertTrue(asked.contains(NAME) && asked.contains(CONTACT) && asked.contains(another), asked);

        String proposal = omar.post(page, Map.of("reason", "asked for by letter"))
                .getHeader("Location")
                .replaceFirst("^https?://[^/]+", "");
        assertTrue(omar.get(proposal).asString().contains(NAME), "who confirms it sees whom it is about");
        assertEquals(422, omar.post(proposal + "/confirmation", Map.of()).statusCode(), "not the same person");
        assertEquals(NAME, kept(number));
        assertEquals(
                422, omar.post(page, Map.of("reason", "asked for by letter")).statusCode(), "waits already");

        Browser wilma = signedIn(WILMA);
        assertEquals(303, wilma.post(proposal + "/confirmation", Map.of()).statusCode());
        assertEquals("erased", kept(number));
        assertEquals("erased", kept(another));
        assertEquals(
                "gone-omar, gone-wilma",
                told(
                        "select convert_from(canonical, 'UTF8')::jsonb -> 'content' ->> 'decided_by' from site_record where"
                                + " stream = 'erasures' order by place desc limit 1"));
        assertEquals("", told("select 1 from proposal p where p::text like '%Aquavit%'"));
        String after = wilma.get(page).asString();
        assertTrue(after.contains("Erased on") && !after.contains(NAME), after);
        assertFalse(wilma.get(proposal).asString().contains(NAME));
        assertEquals(
                422, wilma.post(page, Map.of("reason", "once more")).statusCode(), "there is nothing left to erase");
    }

    @Test
    void reasonThatTellsWhoItWas_isRefused_andKeptInTheForm() {
        String number = ticket();
        String page = "/tickets/" + number + "/erasing";
        Browser omar = signedIn(OMAR);
        for (String reason : new String[] {"aquavit wrote to us", "called from 99817", " "}) {
            Response answer = omar.post(page, Map.of("reason", reason));
            assertEquals(422, answer.statusCode(), reason);
            assertTrue(answer.asString().contains("value=\"" + reason.strip()), answer.asString());
        }
        assertEquals(NAME, kept(number));
    }
}

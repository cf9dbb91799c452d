package org.benchtrail.ticket;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.jsoup.Jsoup;
import org.jsoup.select.Elements;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** A server whose clock was put back says so, and stamps nothing before the last entry. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class ClockBehindTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor TOM = new Actor("clock-tom", "Tom", Set.of(Role.TECHNICIAN));

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    TicketQueries queries;

    @Inject
    MovedClock clock;

    @AfterEach
    void putRight() {
        clock.putRight();
    }

    @Test
    void sheetSaysIt_andTheTrailGoesOn() {
        people.ensureAccount(TOM.account(), TOM.name(), TOM.roles(), PASSWORD);
        NewTicket report = new NewTicket(
                "A fan that rattles",
                "It rattles",
                Category.HEAT,
                "Laptop",
                "Desk 4",
                "Ada Example",
                "bell 5",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                false);
        TicketNumber number = tickets.open(report, TOM).number();
        Browser tom = Browser.signedIn(TOM.account(), PASSWORD);
        String page = "/tickets/" + number;
        clock.putForward(Duration.ofSeconds(-50));
        assertFalse(tom.get(page).asString().contains("The clock is behind."));
        clock.putForward(Duration.ofMinutes(-10));
        assertTrue(tom.get(page).asString().contains("The clock is behind."));
        int version = queries.ticket(number, TOM).sheet().entries();
        tickets.perform(number, version, List.of(sheet -> new FindingRecorded("Dust on the lamp", false)), TOM);
        List<Instant> stamps =
                queries.trail(number, TOM).stream().map(e -> e.at()).toList();
        assertEquals(stamps.get(stamps.size() - 2), stamps.get(stamps.size() - 1));
        Elements lines = Jsoup.parse(tom.get(page + "/trail").asString()).select("table.trail tbody tr");
        assertEquals(
                List.of("clock behind"), lines.last().select(".mark").eachText(), "the entry that was made meanwhile");
        assertEquals(List.of(), lines.not(":last-child").select(".mark").eachText());
    }
}

package org.benchtrail.ticket.erasure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.RequesterErasure;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Who reported a ticket is kept while any ticket of theirs is open or has ended not long ago. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class RetentionTest {
    private static final Actor OMAR = new Actor("keep-omar", "Omar", Set.of(Role.SUPERVISOR));
    private static final int ALL = 1_000_000;

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    RequesterErasure erasure;

    @Inject
    Clock clock;

    @BeforeEach
    void persons() {
        people.ensureAccount(OMAR.account(), OMAR.name(), OMAR.roles(), "a long enough password");
    }

    private TicketNumber reported(String by) {
        NewTicket report = new NewTicket(
                "A fan that rattles",
                "It rattles",
                Category.HEAT,
                "Laptop",
                "Desk 4",
                by,
                "bell 4471",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                true);
        return tickets.open(report, OMAR).number();
    }

    private TicketNumber ended(String by) {
        TicketNumber number = reported(by);
        tickets.perform(number, 1, List.of(sheet -> new Cancelled("it went away by itself", null)), OMAR);
        return number;
    }

    /** Names after an erasing that is taken back, because it is of all tickets that other tests have. */
    private List<String> keptAfterErasing(Instant endedBefore, TicketNumber... of) {
        QuarkusTransaction.begin();
        try {
            erasure.eraseUnneeded(endedBefore, ALL, "kept long enough");
            return Stream.of(of).map(number -> erasure.kept(number).name()).toList();
        } finally {
            QuarkusTransaction.rollback();
        }
    }

    @Test
    void erasedOnceEveryTicketHasEnded_andNotBefore() {
        TicketNumber gone = ended("Wendelin Zornack");
        TicketNumber open = reported("Philomena Quast");
        TicketNumber one = ended("Isidor Plumm");
        TicketNumber another = reported("Isidor Plumm");
        Instant now = clock.instant();
        TicketNumber later = ended("Gisbert Ofterding");
        assertEquals(
                List.of("erased", "Philomena Quast", "Isidor Plumm", "Isidor Plumm", "Gisbert Ofterding"),
                keptAfterErasing(now, gone, open, one, another, later));
        tickets.perform(another, 1, List.of(sheet -> new Cancelled("it went away by itself", null)), OMAR);
        assertEquals(
                List.of("erased", "erased"), keptAfterErasing(clock.instant().plusSeconds(1), one, another));
        assertEquals(
                List.of("Wendelin Zornack"), keptAfterErasing(clock.instant().minus(Duration.ofDays(30)), gone));
    }

    @ParameterizedTest
    @ValueSource(strings = {"P29D", "P40000D", "PT0S", "soon", "P3X"})
    void lengthThatIsNone_stopsTheStart_withWhatIsAllowed(String typed) {
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> new RequesterConfig.MonthToCentury().convert(typed));
        assertEquals("Give a length of time in days, from P30D to P36500D.", refused.getMessage());
    }
}

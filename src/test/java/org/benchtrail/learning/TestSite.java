package org.benchtrail.learning;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.benchtrail.core.learning.WorkedTicket;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.TicketActs;

/** An invented site whose tickets go the whole way, from report to closure, through the server's own acts. */
final class TestSite {
    static final String PASSWORD = "a long enough password";

    /** Place of the look at the logs among the facts of a ticket. */
    private static final int LOGS = 8;

    private final TicketActs tickets;
    private final PeopleActs people;

    TestSite(TicketActs tickets, PeopleActs people) {
        this.tickets = tickets;
        this.people = people;
    }

    Actor person(String login, Role role) {
        people.ensureAccount(login, login, Set.of(role), PASSWORD);
        return new Actor(login, login, Set.of(role));
    }

    /** Bearer token of a program of that person's. */
    String token(Actor of) {
        return people.createToken(of, "learning", 1).secret();
    }

    TicketNumber closes(WorkedTicket ticket, Actor by) {
        TicketNumber number = opens(ticket, by);
        does(number, 1, ticket, 0, by);
        return number;
    }

    /** As {@link #closes}, but nobody looks at the logs, which {@code waiver} lets pass. */
    TicketNumber closesWithoutLogs(WorkedTicket ticket, Actor by, Actor waiver) {
        TicketNumber number = opens(ticket, by);
        int seen = does(number, 1, acts(ticket.facts().subList(0, LOGS)), by);
        int waived = does(number, seen, List.of(sheet -> new Waived("logs-reviewed", "It keeps none")), waiver);
        does(number, waived, ticket, LOGS + 1, by);
        return number;
    }

    private static List<Act> acts(List<Function<JobSheet, Fact>> facts) {
        return facts.stream().map(f -> (Act) f::apply).toList();
    }

    /** What is left of the ticket from there on. */
    private void does(TicketNumber number, int version, WorkedTicket ticket, int from, Actor by) {
        int reached = version;
        for (List<Function<JobSheet, Fact>> request :
                ticket.requests(from, ticket.facts().size())) {
            reached = does(number, reached, acts(request), by);
        }
    }

    /** The version of the ticket afterwards. */
    private int does(TicketNumber number, int version, List<Act> acts, Actor by) {
        Outcome done = tickets.perform(number, version, acts, by);
        assertEquals(List.of(), done.missing());
        return done.sheet().entries();
    }

    private TicketNumber opens(WorkedTicket ticket, Actor by) {
        NewTicket report = new NewTicket(
                "Switches off, " + ticket.place(),
                "",
                ticket.category(),
                "Workstation",
                ticket.place(),
                "Rae",
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.HINDERED,
                false);
        return tickets.open(report, by).number();
    }
}

package org.benchtrail.learning;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Set;
import org.benchtrail.core.learning.WorkedTicket;
import org.benchtrail.core.method.Actor;
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
        List<Act> acts = acts(ticket);
        int planned = does(number, 1, acts.subList(0, ticket.beforeResult()), by);
        does(number, planned, acts.subList(ticket.beforeResult(), acts.size()), by);
        return number;
    }

    /** As {@link #closes}, but nobody looks at the logs, which {@code waiver} lets pass. */
    TicketNumber closesWithoutLogs(WorkedTicket ticket, Actor by, Actor waiver) {
        TicketNumber number = opens(ticket, by);
        List<Act> acts = acts(ticket);
        int seen = does(number, 1, acts.subList(0, LOGS), by);
        int waived = does(number, seen, List.of(sheet -> new Waived("logs-reviewed", "It keeps none")), waiver);
        int planned = does(number, waived, acts.subList(LOGS + 1, ticket.beforeResult()), by);
        does(number, planned, acts.subList(ticket.beforeResult(), acts.size()), by);
        return number;
    }

    private static List<Act> acts(WorkedTicket ticket) {
        return ticket.facts().stream().map(f -> (Act) f::apply).toList();
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

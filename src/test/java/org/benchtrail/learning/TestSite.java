package org.benchtrail.learning;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Set;
import org.benchtrail.core.learning.WorkedTicket;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.TicketActs;

/** An invented site whose tickets go the whole way, from report to closure, through the server's own acts. */
final class TestSite {
    static final String PASSWORD = "a long enough password";

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
        TicketNumber number = tickets.open(report, by).number();
        List<Act> acts = ticket.facts().stream().map(f -> (Act) f::apply).toList();
        Outcome done = tickets.perform(number, 1, acts, by);
        assertEquals(List.of(), done.missing());
        return number;
    }
}

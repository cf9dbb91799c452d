package org.benchtrail.training;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Objects;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.PresenceEnded;
import org.benchtrail.core.method.desk.PresenceSigned;
import org.benchtrail.people.Directory;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.Work;

/** Records that a mentor is present for a trainee's dangerous act, and what they say of it afterwards. */
@ApplicationScoped
class PresenceActs {
    private final TicketActs tickets;
    private final Directory people;

    PresenceActs(TicketActs tickets, Directory people) {
        this.tickets = tickets;
        this.people = people;
    }

    /**
     * @param version of the sheet that was seen
     * @param about as in {@link PresenceSigned#about}
     * @param mentor whose own password or token was used for this act
     */
    @Transactional
    Outcome start(TicketNumber number, int version, int about, Actor mentor) {
        return tickets.perform(
                number, version, sheet -> one(new PresenceSigned(about, traineeOf(mentor, sheet))), mentor);
    }

    @Transactional
    Outcome end(TicketNumber number, int version, PresenceEnded ended, Actor mentor) {
        return tickets.perform(number, version, sheet -> one(ended), mentor);
    }

    private static Work one(Fact fact) {
        return new Work(List.of(s -> fact), null);
    }

    /** Who has the ticket, if that is the mentor whom they have now. */
    private String traineeOf(Actor mentor, JobSheet sheet) {
        String assignee = Objects.requireNonNullElse(sheet.course().assignee(), "");
        return people.mentorOf(assignee).equals(mentor.account()) ? assignee : "";
    }
}

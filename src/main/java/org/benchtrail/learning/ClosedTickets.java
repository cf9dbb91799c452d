package org.benchtrail.learning;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.Clock;
import java.time.Instant;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.ticket.TicketChanged;

/** Puts a ticket on the list when it is closed; one that is opened again teaches nothing until it is closed anew. */
@ApplicationScoped
class ClosedTickets {
    private final LearningCases cases;
    private final Clock clock;

    ClosedTickets(LearningCases cases, Clock clock) {
        this.cases = cases;
        this.clock = clock;
    }

    void follow(@Observes TicketChanged change) {
        for (Entry entry : change.entries()) {
            if (entry.fact() instanceof Closed) {
                cases.persist(
                        new LearningCase(change.number().serial(), entry.stamp().at()));
            } else if (entry.fact() instanceof Reopened reopened) {
                cases.latest(change.number())
                        .ifPresent(row ->
                                takeBack(row, change.number(), entry.stamp().by(), reopened));
            }
        }
    }

    private void takeBack(LearningCase row, TicketNumber number, String by, Reopened reopened) {
        String why = shortened("Opened again: " + reopened.reason());
        Instant now = clock.instant();
        if (row.state == CaseState.ACCEPTED) {
            row.withdraw(why, by, now);
            cases.note(new CaseNote(now, by, "withdrawn", number, why));
        } else if (row.state == CaseState.WAITING) {
            row.leaveOut(why);
            cases.note(new CaseNote(now, by, "left out", number, why));
        }
    }

    private static String shortened(String text) {
        return text.length() <= 500 ? text : text.substring(0, text.offsetByCodePoints(0, 450));
    }
}

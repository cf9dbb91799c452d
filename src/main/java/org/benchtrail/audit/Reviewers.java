package org.benchtrail.audit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.List;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Addendum;
import org.benchtrail.ticket.OutsideJudges;
import org.benchtrail.ticket.TicketChanged;

/** What passes between an audit and the tickets: who has reviewed one does no work on it, and an addendum answers what was asked about the requirement that it names. */
@ApplicationScoped
class Reviewers implements OutsideJudges {
    private final LotRows rows;

    Reviewers(LotRows rows) {
        this.rows = rows;
    }

    @Override
    public List<String> judges(TicketNumber number) {
        return rows.judges(number);
    }

    void changed(@Observes TicketChanged changed) {
        for (Entry entry : changed.entries()) {
            if (entry.fact() instanceof Addendum added && added.requirement() != null) {
                rows.answered(
                        changed.number(),
                        entry.stamp().person(),
                        added.requirement(),
                        entry.stamp().entry());
            }
        }
    }
}

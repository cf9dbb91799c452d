package org.benchtrail.ticket.today;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.List;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.ticket.TicketQueries;
import org.jboss.logging.Logger;

/** Makes what waits on tickets from before that was kept, once, when the server starts. */
@ApplicationScoped
class OwedWaits {
    private static final Logger LOG = Logger.getLogger(OwedWaits.class);

    private final WaitBook book;
    private final TicketQueries tickets;

    OwedWaits(WaitBook book, TicketQueries tickets) {
        this.book = book;
        this.tickets = tickets;
    }

    void atStart(@Observes StartupEvent start) {
        int made = 0;
        for (List<Integer> owed = book.owed(); !owed.isEmpty(); owed = book.owed()) {
            for (int serial : owed) {
                QuarkusTransaction.requiringNew().run(() -> make(new TicketNumber(serial)));
            }
            made += owed.size();
        }
        if (made > 0) {
            LOG.infof("What waits was made anew from the trails of %d tickets", made);
        }
    }

    /** The row stays locked meanwhile, so that no act comes between the reading and the writing. */
    private void make(TicketNumber number) {
        tickets.locked(number).ifPresentOrElse(sheet -> book.renew(number, sheet), () -> book.leave(number));
    }
}

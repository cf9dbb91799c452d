package org.benchtrail.ticket;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/** The rows of tickets. */
@Startup
@ApplicationScoped
class Tickets implements PanacheRepositoryBase<Ticket, Integer> {
    private final String nextSerial = SqlText.of(Tickets.class).statement("next serial");
    private final String atOnce = SqlText.of(Tickets.class).statement("see at once");

    int nextSerial() {
        return Sql.of(getEntityManager(), nextSerial).value(Integer.class);
    }

    /** The row, locked until the transaction ends: whoever acts on a ticket acts alone. */
    Ticket locked(TicketNumber number) {
        Ticket ticket = findById(number.serial(), LockModeType.PESSIMISTIC_WRITE);
        if (ticket == null) {
            throw new NotFound("ticket " + number);
        }
        return ticket;
    }

    /** The row, which nobody changes until the transaction ends; empty if there is no such ticket. */
    Optional<Ticket> kept(TicketNumber number) {
        return findByIdOptional(number.serial(), LockModeType.PESSIMISTIC_READ);
    }

    /** Open tickets whose due time was made before that decision of the site, by their number, locked until the transaction ends. */
    List<Ticket> madeBefore(int siteVersion, int after, int most) {
        return find(
                        "standing = ?1 and siteVersion < ?2 and serial > ?3 order by serial",
                        Standing.OPEN,
                        siteVersion,
                        after)
                .range(0, most - 1)
                .withLock(LockModeType.PESSIMISTIC_WRITE)
                .list();
    }

    /**
     * The rows of those tickets that there are. The running transaction sees the database as it is at this moment until it ends, so that
     * what is read afterwards fits the rows without locking them; nothing was asked within it before.
     */
    List<Ticket> seenAtOnce(Collection<TicketNumber> numbers) {
        Sql.of(getEntityManager(), atOnce).run();
        return list("serial in ?1", numbers.stream().map(TicketNumber::serial).toList());
    }

    Ticket present(TicketNumber number) {
        return findByIdOptional(number.serial()).orElseThrow(() -> new NotFound("ticket " + number));
    }
}

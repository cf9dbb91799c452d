package org.benchtrail.ticket;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.NotFound;

/** The rows of tickets. */
@ApplicationScoped
class Tickets implements PanacheRepositoryBase<Ticket, Integer> {

    int nextSerial() {
        Number next = (Number) getEntityManager()
                .createNativeQuery("select nextval('ticket_serial')")
                .getSingleResult();
        return next.intValue();
    }

    /** The row, locked until the transaction ends: whoever acts on a ticket acts alone. */
    Ticket locked(TicketNumber number) {
        Ticket ticket = findById(number.serial(), LockModeType.PESSIMISTIC_WRITE);
        if (ticket == null) {
            throw new NotFound("ticket " + number);
        }
        return ticket;
    }

    Ticket present(TicketNumber number) {
        return findByIdOptional(number.serial()).orElseThrow(() -> new NotFound("ticket " + number));
    }
}

package org.benchtrail.seal;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Instant;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.benchtrail.ticket.SealedUpTo;
import org.benchtrail.ticket.Seals;
import org.jspecify.annotations.Nullable;

/** How far a ticket is sealed, read in one statement. */
@Startup
@ApplicationScoped
class TicketSeals implements Seals {
    private final EntityManager database;
    private final Witnessing witnessing;
    private final String sealed;

    TicketSeals(EntityManager database, Witnessing witnessing) {
        this.database = database;
        this.witnessing = witnessing;
        sealed = SqlText.of(TicketSeals.class).statement("sealed");
    }

    private record Row(
            long place, long asked, long signed, @Nullable Instant at) {}

    @Override
    @Transactional
    public SealedUpTo of(TicketNumber number) {
        return Sql.of(database, sealed)
                .with("stream", "ticket/" + number)
                .with("keys", witnessing.keys())
                .row(Row.class)
                .map(row -> new SealedUpTo((int) row.place(), (int) row.asked(), (int) row.signed(), row.at()))
                .orElse(SealedUpTo.NOTHING);
    }
}

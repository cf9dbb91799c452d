package org.benchtrail.trail;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.List;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/** Where the trail is kept: entries are appended and read, and nothing else can be done to them. */
@Startup
@ApplicationScoped
public class TrailStore {
    private final EntityManager database;
    private final String append;
    private final String read;

    TrailStore(EntityManager database) {
        this.database = database;
        SqlText text = SqlText.of(TrailStore.class);
        append = text.statement("append");
        read = text.statement("read");
    }

    /**
     * Appends one entry within the running transaction, whose caller holds the lock of the ticket's row.
     *
     * @param previous hash of the ticket's last entry
     * @return what was stored
     * @throws IllegalArgumentException if it is not known how the entry came to be made
     */
    public TrailEntry append(TicketNumber ticket, Entry entry, String previous) {
        if (entry.stamp().origin() == null) {
            throw new IllegalArgumentException("a new entry says how it came to be made");
        }
        TrailEntry stored = EntryCodec.encode(ticket.toString(), entry, previous);
        Sql.of(database, append)
                .with("ticket", ticket.serial())
                .with("entry", stored.entry())
                .with("at", stored.at())
                .with("actor", stored.actor())
                .with("kind", stored.kind())
                .with("canonical", stored.canonical())
                .with("hash", stored.hash())
                .run();
        return stored;
    }

    /** All entries of a ticket in their order; empty if there is no such ticket. */
    public List<TrailEntry> read(TicketNumber ticket) {
        return Sql.of(database, read).with("ticket", ticket.serial()).rows(TrailEntry.class);
    }
}

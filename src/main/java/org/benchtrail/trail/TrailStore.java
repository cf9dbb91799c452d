package org.benchtrail.trail;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.TicketNumber;

/** Where the trail is kept: entries are appended and read, and nothing else can be done to them. */
@ApplicationScoped
public class TrailStore {
    private final EntityManager database;

    TrailStore(EntityManager database) {
        this.database = database;
    }

    /**
     * Appends one entry within the running transaction, whose caller holds the lock of the ticket's row.
     *
     * @param previous hash of the ticket's last entry
     * @return what was stored
     */
    public TrailEntry append(TicketNumber ticket, Entry entry, String previous) {
        TrailEntry stored = EntryCodec.encode(ticket.toString(), entry, previous);
        database.createNativeQuery(
                        "insert into trail_entry (ticket, entry, at, actor, kind, canonical, hash) values (?, ?, ?, ?, ?, ?, ?)")
                .setParameter(1, ticket.serial())
                .setParameter(2, stored.entry())
                .setParameter(3, stored.at())
                .setParameter(4, stored.actor())
                .setParameter(5, stored.kind())
                .setParameter(6, stored.canonical())
                .setParameter(7, stored.hash())
                .executeUpdate();
        return stored;
    }

    /** All entries of a ticket in their order; empty if there is no such ticket. */
    public List<TrailEntry> read(TicketNumber ticket) {
        List<?> rows = database.createNativeQuery(
                        "select entry, at, actor, kind, canonical, hash from trail_entry where ticket = ? order by entry")
                .setParameter(1, ticket.serial())
                .getResultList();
        return rows.stream().map(row -> entry((Object[]) row)).toList();
    }

    private static TrailEntry entry(Object[] row) {
        return new TrailEntry(
                (Integer) row[0], (Instant) row[1], (String) row[2], (String) row[3], (byte[]) row[4], (String) row[5]);
    }
}

package org.benchtrail.trail;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jspecify.annotations.Nullable;

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
     * The next entry, as it will be stored.
     *
     * @param previous hash of the ticket's last entry
     * @throws IllegalArgumentException if it is not known how the entry came to be made
     */
    public TrailEntry next(TicketNumber ticket, Entry entry, String previous) {
        if (entry.stamp().origin() == null) {
            throw new IllegalArgumentException("a new entry says how it came to be made");
        }
        return EntryCodec.encode(ticket.toString(), entry, previous);
    }

    /** Appends an entry within the running transaction, whose caller holds the lock of the ticket's row. */
    public void append(TicketNumber ticket, TrailEntry next) {
        Sql.of(database, append)
                .with("ticket", ticket.serial())
                .with("entry", next.entry())
                .with("at", next.at())
                .with("actor", next.actor())
                .with("kind", next.kind())
                .with("canonical", next.canonical())
                .with("hash", next.hash())
                .run();
    }

    /** A row of the statement; of a ticket without a trail there is one, which has no entry. */
    private record Row(
            int ticket,
            int expected,
            String lastHash,
            @Nullable Long sealed,
            @Nullable String sealedHash,
            @Nullable Integer entry,
            @Nullable Instant at,
            @Nullable String actor,
            @Nullable String kind,
            byte @Nullable [] canonical,
            @Nullable String hash) {

        StoredTrail.@Nullable SealedEnd end() {
            return sealed == null || sealedHash == null ? null : new StoredTrail.SealedEnd(sealed, sealedHash);
        }

        Stream<TrailEntry> stored() {
            return entry == null || at == null || actor == null || kind == null || canonical == null || hash == null
                    ? Stream.empty()
                    : Stream.of(new TrailEntry(entry, at, actor, kind, canonical, hash));
        }
    }

    /** @throws NotFound if there is no such ticket */
    public StoredTrail read(TicketNumber ticket) {
        StoredTrail found = read(List.of(ticket)).get(ticket);
        if (found == null) {
            throw new NotFound("ticket " + ticket);
        }
        return found;
    }

    /** The trails of those tickets that there are, by number. */
    public Map<TicketNumber, StoredTrail> read(Collection<TicketNumber> tickets) {
        Map<Integer, List<Row>> rows = Sql.of(database, read)
                .with("tickets", tickets.stream().map(TicketNumber::serial).toList())
                .rows(Row.class)
                .stream()
                .collect(Collectors.groupingBy(Row::ticket));
        Map<TicketNumber, StoredTrail> trails = new HashMap<>();
        rows.forEach((serial, own) -> trails.put(
                new TicketNumber(serial),
                new StoredTrail(
                        own.stream().flatMap(Row::stored).toList(),
                        own.get(0).expected(),
                        own.get(0).lastHash(),
                        own.get(0).end())));
        return trails;
    }
}

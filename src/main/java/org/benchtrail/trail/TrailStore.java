package org.benchtrail.trail;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.benchtrail.core.integrity.Hole;
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
    private final SqlText text = SqlText.of(TrailStore.class);
    private final String append = text.statement("append");
    private final String read = text.statement("read");
    private final String leaves = text.statement("leaves");
    private final String putBack = text.statement("put back");
    private final List<String> requeue = List.of(text.statement("out of the queue"), text.statement("into the queue"));
    private final String hole = text.statement("hole into the queue");
    private final String sealingWaits = text.statement("sealing waits");

    TrailStore(EntityManager database) {
        this.database = database;
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
                .with("words", next.words())
                .run();
    }

    /** A row of the statement: a ticket, or one of its entries. */
    private record Row(
            int ticket,
            @Nullable Integer expected,
            @Nullable String lastHash,
            @Nullable Long sealed,
            @Nullable String sealedHash,
            @Nullable Long broken,
            @Nullable String holes,
            @Nullable String erased,
            @Nullable Integer entry,
            @Nullable Instant at,
            @Nullable String actor,
            @Nullable String kind,
            byte @Nullable [] canonical,
            @Nullable String hash,
            byte @Nullable [] words) {

        StoredTrail.@Nullable SealedEnd end() {
            return sealed == null || sealedHash == null ? null : new StoredTrail.SealedEnd(sealed, sealedHash);
        }

        List<Hole> lost() {
            return holes == null
                    ? List.of()
                    : Arrays.stream(holes.split(","))
                            .map(one -> one.split(" "))
                            .map(part -> new Hole(
                                    Integer.parseInt(part[0]),
                                    Integer.parseInt(part[1]),
                                    part[2],
                                    Long.parseLong(part[3])))
                            .toList();
        }

        /** What the row of a ticket says, with the entries among some rows; empty if it is the row of an entry. */
        Optional<StoredTrail> trail(List<Row> rows) {
            if (expected == null || lastHash == null) {
                return Optional.empty();
            }
            List<Hole> lost = lost();
            return Optional.of(new StoredTrail(
                    rows.stream()
                            .<TrailEntry>mapMulti(Row::stored)
                            .filter(e -> lost.stream().noneMatch(hole -> hole.takes(e.entry())))
                            .sorted(Comparator.comparingInt(TrailEntry::entry))
                            .toList(),
                    expected,
                    lastHash,
                    end(),
                    lost,
                    erased == null
                            ? Set.of()
                            : Arrays.stream(erased.split(","))
                                    .map(Integer::valueOf)
                                    .collect(Collectors.toSet()),
                    broken));
        }

        /** The entry, unless it is the row of a ticket. */
        void stored(Consumer<TrailEntry> trail) {
            if (entry != null && at != null && actor != null && kind != null && canonical != null && hash != null) {
                trail.accept(new TrailEntry(entry, at, actor, kind, canonical, hash, words));
            }
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
        rows.forEach((serial, own) -> own.stream()
                .flatMap(row -> row.trail(own).stream())
                .forEach(trail -> trails.put(new TicketNumber(serial), trail)));
        return trails;
    }

    private record Leaf(long place, String hash) {}

    /**
     * What is to be done about a trail that does not hold.
     *
     * @param found where it had to end when it was found broken; null if that was not recorded
     */
    public BrokenTrail repair(TicketNumber ticket, StoredTrail stored, BrokenTrail.@Nullable End found) {
        return new BrokenTrail(
                ticket,
                stored,
                Sql.of(database, leaves).with("ticket", ticket.serial()).rows(Leaf.class).stream()
                        .collect(Collectors.toMap(leaf -> (int) leaf.place(), Leaf::hash)),
                found);
    }

    /** Lets nothing be sealed until the running transaction ends: what is queued is about to be put in order. */
    public void holdSealing() {
        Sql.of(database, sealingWaits).value(String.class);
    }

    /** Writes what a trail lacks, the last entry first, each of which the database holds against what it knows of it. */
    public void putBack(TicketNumber ticket, List<TrailEntry> lastFirst) {
        for (TrailEntry entry : lastFirst) {
            Sql.of(database, putBack)
                    .with("ticket", ticket.serial())
                    .with("entry", entry.entry())
                    .with("canonical", entry.canonical())
                    .with("words", entry.words())
                    .value(String.class);
        }
        requeue.forEach(statement ->
                Sql.of(database, statement).with("ticket", ticket.serial()).run());
    }

    /** Queues for sealing what of a trail never was: its entries up to a hole, and the places of the hole. */
    public void leave(TicketNumber ticket, Hole lost) {
        Sql.of(database, hole)
                .with("ticket", ticket.serial())
                .with("first", lost.first())
                .with("last", lost.last())
                .with("hash", lost.hash())
                .run();
    }
}

package org.benchtrail.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.IntStream;
import org.benchtrail.core.audit.AuditAct;
import org.benchtrail.core.audit.AuditAct.Item;
import org.benchtrail.core.audit.AuditAct.LotFrozen;
import org.benchtrail.core.audit.Draw;
import org.benchtrail.core.audit.LotSignals;
import org.benchtrail.core.audit.Signal;
import org.benchtrail.core.audit.SignalNumbers;
import org.benchtrail.core.audit.Stratum;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.figures.FigureTables;
import org.benchtrail.knowledge.ClosedTickets;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.site.SiteBook;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.trail.StoredTrail;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.TrailStore;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/**
 * How long the freeze of a month takes among many invented tickets, of which the last 8,640 ended in that month with a whole record
 * each, and the draw from it. Not part of {@code mvn verify}; by hand:
 *
 * <pre>mvn -o test -Dtest=FreezeBenchmark -Dfreeze.rows=1000000</pre>
 *
 * Goal: the freeze within 2 s, the draw within 1 s.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@EnabledIfSystemProperty(named = "freeze.rows", matches = "[0-9]+")
class FreezeBenchmark {
    private static final int ROWS = Integer.getInteger("freeze.rows", 0);
    private static final int MONTH = Integer.getInteger("freeze.month", 8640);
    private static final int FIRST = 5_000_000;
    /** The tests' machine compiles what is run often later than a server does: by the last rounds all of it is. */
    private static final int TIMES = 10;

    private static final Actor WORKER = new Actor("freeze-wim", "Wim Example", Set.of(Role.TECHNICIAN));

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    TrailStore trails;

    @Inject
    AuditedTickets audited;

    @Inject
    LotRows rows;

    @Inject
    SiteBook site;

    @Inject
    EntityManager database;

    @BeforeAll
    static void tables() {
        FigureTables.make();
        TestDatabase.run(
                "insert into many_moves.ticket (serial, title, category, device, place, requester, impact, urgency, priority,"
                        + " step, standing, round, assignee, opened, due, escalated, entries, touched, ended, words, last_hash)"
                        + " select i, 'Invented', 'HEAT', 'device', 'room', 1, 'ONE_PERSON', 'CAN_WAIT', 'THIS_WEEK', 'DOCUMENT', 'CLOSED', 1,"
                        + " 'nobody', at, at, false, 1, at, at, '', ''"
                        + " from (select i, now() - interval '40 days' - i * interval '5 minutes' as at from generate_series(1, "
                        + ROWS + ") i) t");
        TestDatabase.run("insert into many_moves.trail_entry (ticket, entry, at, actor, kind, canonical, hash)"
                + " select serial, 1, ended, 'nobody', 'closed', '', '' from many_moves.ticket");
    }

    @AfterAll
    static void empty() {
        FigureTables.drop();
    }

    /** The same record for each, under its own number and with its own chain. */
    private static void copies(StoredTrail one, TicketNumber number) throws SQLException {
        try (Connection connection = TestDatabase.owner();
                PreparedStatement entry = connection.prepareStatement(
                        "insert into many_moves.trail_entry (ticket, entry, at, actor, kind, canonical, hash, words) values (?, ?, ?, ?, ?, ?, ?, ?)");
                PreparedStatement row = connection.prepareStatement(
                        "insert into many_moves.ticket (serial, title, category, device, place, requester, impact, urgency, priority,"
                                + " step, standing, round, assignee, opened, due, escalated, entries, touched, ended, words, last_hash)"
                                + " values (?, 'Invented', 'HEAT', 'device', 'room', 1, 'ONE_PERSON', 'CAN_WAIT', 'THIS_WEEK', 'DOCUMENT',"
                                + " 'CLOSED', 1, 'nobody', now(), now(), false, ?, now(), now(), '', ?)")) {
            connection.setAutoCommit(false);
            for (int i = 0; i < MONTH; i++) {
                String before = HashChain.START;
                for (TrailEntry of : one.entries()) {
                    byte[] canonical = new String(of.canonical(), StandardCharsets.UTF_8)
                            .replace(number.toString(), new TicketNumber(FIRST + i).toString())
                            .replace(of.previous(), before)
                            .getBytes(StandardCharsets.UTF_8);
                    before = HashChain.hash(canonical);
                    entry.setInt(1, FIRST + i);
                    entry.setInt(2, of.entry());
                    entry.setTimestamp(3, Timestamp.from(of.at()));
                    entry.setString(4, of.actor());
                    entry.setString(5, of.kind());
                    entry.setBytes(6, canonical);
                    entry.setString(7, before);
                    entry.setBytes(8, of.words());
                    entry.addBatch();
                }
                row.setInt(1, FIRST + i);
                row.setInt(2, one.entries().size());
                row.setString(3, before);
                row.addBatch();
                if (i % 200 == 0) {
                    entry.executeBatch();
                    row.executeBatch();
                }
            }
            entry.executeBatch();
            row.executeBatch();
            connection.commit();
        }
    }

    private double fastest = Double.MAX_VALUE;

    private static double since(long start) {
        return (System.nanoTime() - start) / 1e6;
    }

    private void freeze(Instant from, Instant until) {
        QuarkusTransaction.begin();
        try {
            database.createNativeQuery("set local search_path = many_moves, public")
                    .executeUpdate();
            long start = System.nanoTime();
            List<LotRows.Ended> ended = rows.ended(from, until);
            double listed = since(start);
            LotRows.Open open = rows.open(until);
            double counted = since(start);
            LotSignals signals = new LotSignals(finding -> 5, SignalNumbers.USUAL);
            List<Item> items = audited.items(ended, signals);
            double read = since(start);
            List<Signal> found = signals.all(from, until, site.history().workingTime());
            double told = since(start);
            database.createNativeQuery(
                            "insert into audit_lot (id, begins, ends, state) values ('2098-01', now() + interval '90 years',"
                                    + " now() + interval '91 years', 'STATED')")
                    .executeUpdate();
            rows.append(
                    "2098-01",
                    new AuditAct.Entry(1, until, "server", new LotFrozen(items, (int) open.tickets(), open.oldest())));
            rows.add("2098-01", found);
            double kept = since(start);
            database.createNativeQuery("set constraints all immediate").executeUpdate();
            double recorded = since(start);
            assertEquals(MONTH, items.size());
            assertTrue(items.stream().noneMatch(i -> i.stratum() == Stratum.INCIDENT), "every record holds");
            System.out.printf(
                    Locale.ROOT,
                    "freeze of %d of %d tickets: listed %.0f, open counted %.0f, read %.0f, %d signals %.0f, kept %.0f, recorded"
                            + " %.0f ms%n",
                    items.size(),
                    ROWS,
                    listed,
                    counted,
                    read,
                    found.size(),
                    told,
                    kept,
                    recorded);
            fastest = Math.min(fastest, recorded);
        } finally {
            QuarkusTransaction.rollback();
        }
    }

    @Test
    void aMonth_isFrozenAndDrawnQuickly() throws SQLException {
        people.ensureAccount(WORKER.account(), WORKER.name(), WORKER.roles(), "a long enough password");
        TicketNumber number = ClosedTickets.one(tickets, WORKER);
        StoredTrail one = QuarkusTransaction.requiringNew().call(() -> trails.read(number));
        copies(one, number);
        FigureTables.index();
        Instant closed = one.entries().get(one.entries().size() - 1).at();
        for (int i = 0; i < TIMES; i++) {
            freeze(closed.minusSeconds(3600), closed.plusSeconds(1));
        }
        assertTrue(fastest < 2_000, () -> "a month is frozen within 2 s, not " + fastest + " ms");
        for (int size : new int[] {MONTH, 1_000_000}) {
            List<String> lot = IntStream.range(0, size)
                    .mapToObj(i -> new TicketNumber(FIRST + i).toString())
                    .toList();
            for (int i = 0; i < TIMES; i++) {
                long start = System.nanoTime();
                Draw.of(new byte[] {1}, new byte[] {(byte) i}).order(lot);
                double drawn = since(start);
                System.out.printf(Locale.ROOT, "draw from %d tickets: %.0f ms%n", size, drawn);
                assertTrue(size > MONTH || drawn < 1_000, "a month is drawn from within 1 s");
            }
        }
    }
}

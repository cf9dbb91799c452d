package org.benchtrail.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.LongWork;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.TicketQueries;
import org.junit.jupiter.api.Test;

/**
 * How fast sealing is; run by its name, in no other build ({@code -Dseal.leaves=200000}): acts a second with and without it, leaves
 * that are caught up a second, leaves that are looked at a second.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class SealBenchmark {
    private static final Actor SUE = new Actor("pace-sue", "Sue", Set.of(Role.SUPERVISOR));
    private static final int ROUNDS = Integer.getInteger("seal.rounds", 8);
    private static final long ROUND_MS = 4_000;
    private static final int THREADS = 2;

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    Sealing sealing;

    @Inject
    SealJob job;

    @Inject
    SiteVerification verification;

    @Inject
    VerificationRows runs;

    @Inject
    LogLook log;

    @Inject
    TicketQueries queries;

    @Test
    void acts_leaves_andLooks() throws InterruptedException {
        people.ensureAccount(SUE.account(), SUE.name(), SUE.roles(), "a long enough password");
        job.round();
        acts(1_000, false);
        double[] off = new double[ROUNDS];
        double[] on = new double[ROUNDS];
        for (int i = 0; i < ROUNDS; i++) {
            off[i] = acts(ROUND_MS, false);
            on[i] = acts(ROUND_MS, true);
        }
        double share = median(on) / median(off);
        System.out.printf(
                "acts a second: %.0f with sealing, %.0f without, share %.3f%n", median(on), median(off), share);
        assertTrue(share >= 0.95, () -> "acts with sealing, as a share: " + share);
        int leaves = Integer.getInteger("seal.leaves", 200_000);
        queue(leaves);
        long began = System.nanoTime();
        long sealed = sealing.sealAll().orElseThrow();
        double seconds = (System.nanoTime() - began) / 1e9;
        System.out.printf("caught up: %d leaves in %.1f s, %.0f a second%n", sealed, seconds, sealed / seconds);
        assertTrue(sealed / seconds >= 20_000, "leaves a second, caught up");
        job.round();
        assertEquals("", job.stopped());
        assertTrue(verification.begin(SUE));
        began = System.nanoTime();
        verification.work(SUE);
        seconds = (System.nanoTime() - began) / 1e9;
        VerificationRows.Run run =
                QuarkusTransaction.requiringNew().call(() -> runs.newest().orElseThrow());
        System.out.printf("looked at: %d leaves in %.1f s, %.0f a second%n", run.done(), seconds, run.done() / seconds);
        parts(run);
    }

    /** What of the look is the log itself, and what is reading every ticket and replaying it; each once more, by itself. */
    private void parts(VerificationRows.Run run) {
        long began = System.nanoTime();
        log.look(run, found -> {}, new LongWork(line -> {}));
        double seconds = (System.nanoTime() - began) / 1e9;
        System.out.printf("of it the log: %.1f s, %.0f leaves a second%n", seconds, run.done() / seconds);
        assertTrue(run.done() / seconds >= 50_000, "leaves a second, without deciding the tickets' moves again");
        List<TicketNumber> all = QuarkusTransaction.requiringNew().call(() -> runs.tickets(0, 1_000)).stream()
                .map(TicketNumber::new)
                .toList();
        began = System.nanoTime();
        queries.verified(all, SUE);
        seconds = (System.nanoTime() - began) / 1e9;
        System.out.printf("of it tickets: %.0f a second%n", all.size() / seconds);
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    /** Tickets opened a second, by two people at once; without sealing nothing is queued either. */
    private double acts(long ms, boolean sealed) throws InterruptedException {
        TestDatabase.run(
                "alter table trail_entry " + (sealed ? "enable" : "disable") + " trigger trail_entry_is_sealed");
        AtomicInteger done = new AtomicInteger();
        long end = System.nanoTime() + ms * 1_000_000;
        ExecutorService working = Executors.newFixedThreadPool(THREADS + 1);
        for (int i = 0; i < THREADS; i++) {
            working.execute(() -> {
                while (System.nanoTime() < end) {
                    open();
                    done.incrementAndGet();
                }
            });
        }
        if (sealed) {
            working.execute(job::round);
        }
        working.shutdown();
        assertTrue(working.awaitTermination(60, TimeUnit.SECONDS));
        TestDatabase.run("alter table trail_entry enable trigger trail_entry_is_sealed");
        return done.get() * 1000.0 / ms;
    }

    private void open() {
        tickets.open(
                new NewTicket(
                        "A fan that rattles",
                        "It rattles",
                        Category.HEAT,
                        "Laptop",
                        "Desk 4",
                        "Rae",
                        "room 4",
                        Priority.Impact.ONE_PERSON,
                        Priority.Urgency.CAN_WAIT,
                        true),
                SUE);
    }

    /** Records of a thousand streams, each a chain. */
    private static void queue(int leaves) {
        TestDatabase.run(
                "insert into site_record (stream, place, canonical, hash) select 'pace/' || i % 1000, i / 1000 + 1, c,"
                        + " encode(sha256(decode('00', 'hex') || c), 'hex') from (select i, convert_to('{\"n\":' || i || '}', 'UTF8') as c"
                        + " from generate_series(0, " + (leaves - 1) + ") i) n");
        TestDatabase.run(
                "insert into seal_queue (stream, place, previous, hash) select stream, place, lag(hash, 1, repeat('0',"
                        + " 64)) over (partition by stream order by place), hash from site_record where stream like 'pace/%'"
                        + " order by place, stream");
        TestDatabase.run("analyze seal_queue");
        TestDatabase.run("analyze site_record");
    }
}

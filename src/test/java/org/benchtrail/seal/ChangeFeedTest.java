package org.benchtrail.seal;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Whoever keeps up with the feed learns of every act, once, whenever its transaction ended. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class ChangeFeedTest {
    private static final Actor FIA = new Actor("feed-fia", "Fia", Set.of(Role.TECHNICIAN));

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    SealJob job;

    @Inject
    LogRows rows;

    private final ExecutorService beside = Executors.newFixedThreadPool(3);
    private String token = "";

    @BeforeEach
    void person() {
        people.ensureAccount(FIA.account(), FIA.name(), FIA.roles(), "a long enough password");
        token = people.createToken(FIA, "feed", 1).secret();
        job.round();
    }

    @AfterEach
    void end() {
        beside.shutdownNow();
    }

    private TicketNumber opened() {
        return tickets.open(
                        new NewTicket(
                                "Feed",
                                "",
                                Category.OTHER,
                                "W",
                                "P",
                                "R",
                                "c",
                                Priority.Impact.ONE_PERSON,
                                Priority.Urgency.CAN_WAIT,
                                false),
                        FIA)
                .number();
    }

    private void acts(TicketNumber ticket, int version) {
        tickets.perform(ticket, version, List.of(sheet -> new OnsetRecorded(false, "")), FIA);
    }

    private JsonPath feed(String query) {
        return given().header("Authorization", "Bearer " + token)
                .get("/api/changes?" + query)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    /** Goes on from there to the end, a few at a time; answers with the entries of those tickets. */
    private long follow(long from, List<String> tickets, List<String> seen) {
        long next = from;
        while (true) {
            JsonPath part = feed("size=4&after=" + next);
            List<String> lines = part.getList("changes.collect { it.ticket + ' ' + it.entry }", String.class);
            lines.stream().filter(line -> tickets.contains(line.split(" ")[0])).forEach(seen::add);
            if (part.getLong("next") == next) {
                return next;
            }
            next = part.getLong("next");
        }
    }

    /** All that is in the feed is behind it. */
    private long theEnd() {
        return QuarkusTransaction.requiringNew()
                .call(() -> rows.frontier((level, n, hash) -> {}).size());
    }

    @Test
    void actThatIsCommittedLater_isNotSkipped_byWhoHasReadOn() throws Exception {
        TicketNumber slow = opened();
        TicketNumber quick = opened();
        job.round();
        long from = theEnd();
        CountDownLatch done = new CountDownLatch(1);
        CountDownLatch read = new CountDownLatch(1);
        Future<?> transaction =
                beside.submit(() -> QuarkusTransaction.requiringNew().run(() -> {
                    acts(slow, 1);
                    done.countDown();
                    await(read);
                }));
        await(done);
        acts(quick, 1);
        job.round();
        List<String> seen = new ArrayList<>();
        List<String> both = List.of(slow.toString(), quick.toString());
        long next = follow(from, both, seen);
        assertEquals(List.of(quick + " 2"), seen);
        read.countDown();
        transaction.get(20, TimeUnit.SECONDS);
        job.round();
        follow(next, both, seen);
        assertEquals(List.of(quick + " 2", slow + " 2"), seen);
    }

    @Test
    void everyAct_comesOnce_whileManyAct() throws Exception {
        long from = theEnd();
        List<TicketNumber> own = List.of(opened(), opened(), opened());
        List<String> names = own.stream().map(TicketNumber::toString).toList();
        List<Future<?>> acting = new ArrayList<>();
        for (TicketNumber ticket : own) {
            acting.add(beside.submit(() -> {
                for (int version = 1; version <= 12; version++) {
                    acts(ticket, version);
                }
            }));
        }
        List<String> seen = new ArrayList<>();
        long next = from;
        while (acting.stream().anyMatch(a -> !a.isDone())) {
            job.round();
            next = follow(next, names, seen);
        }
        for (Future<?> one : acting) {
            one.get();
        }
        job.round();
        follow(next, names, seen);
        for (String ticket : names) {
            List<String> entries =
                    seen.stream().filter(line -> line.startsWith(ticket)).toList();
            List<String> all = new ArrayList<>();
            for (int entry = 1; entry <= 13; entry++) {
                all.add(ticket + " " + entry);
            }
            assertEquals(all, entries);
        }
    }

    @Test
    void waiting_endsWithWhatHappens_andWithoutItInTime() throws Exception {
        long from = theEnd();
        TicketNumber ticket = opened();
        Future<?> sealing = beside.submit(() -> job.round());
        JsonPath part = feed("wait=10&after=" + from);
        sealing.get();
        assertEquals(ticket.toString(), part.getString("changes[0].ticket"));
        long start = System.nanoTime();
        JsonPath nothing = feed("wait=1&after=" + theEnd());
        assertEquals(List.of(), nothing.getList("changes"));
        assertTrue(System.nanoTime() - start < TimeUnit.SECONDS.toNanos(8));
    }

    @Test
    void numberThatTheLogHasNotReached_isRefused() {
        given().header("Authorization", "Bearer " + token)
                .get("/api/changes?after=999999999999")
                .then()
                .statusCode(422);
    }

    private static void await(CountDownLatch latch) {
        try {
            assertTrue(latch.await(20, TimeUnit.SECONDS));
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}

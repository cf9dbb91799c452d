package org.benchtrail.seal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.net.httpserver.HttpServer;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.UnaryOperator;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.offline.ExportedStamps;
import org.benchtrail.seal.timestamp.TestAuthority;
import org.benchtrail.seal.timestamp.TimeStampAnswer;
import org.benchtrail.seal.timestamp.TimeStampRoots;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An authority is asked once a day, and left alone for a while when it does not answer as it should; nothing waits for it. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class TimeStampingTest {
    private static final Actor TIM = new Actor("seal-tim", "Tim", Set.of(Role.SUPERVISOR));
    private static final String REPLY = "application/timestamp-reply";

    @Inject
    PeopleActs people;

    @Inject
    SealJob job;

    @Inject
    LogRows heads;

    @Inject
    LogFolder exported;

    @Inject
    TimeStampRows rows;

    @Inject
    TimeStampLook look;

    @Inject
    SealConfig config;

    @Inject
    WitnessRows events;

    @Inject
    MovedClock clock;

    @TempDir
    Path folder;

    private final TestAuthority authority = new TestAuthority();
    private final List<String> asked = new ArrayList<>();
    private final ExecutorService threads = Executors.newCachedThreadPool();
    private TimeStamping stamping;
    private HttpServer server;
    private String type = REPLY;
    private Duration slow = Duration.ZERO;
    private UnaryOperator<byte[]> answer = authority::answer;

    @BeforeEach
    void serve() throws IOException {
        forget();
        // one that leaves no authority alone yet
        stamping = new TimeStamping(heads, rows, events, config, clock);
        people.ensureAccount(TIM.account(), TIM.name(), TIM.roles(), "a long enough password");
        server = HttpServer.create(new InetSocketAddress("127.0.0.1", 0), 0);
        server.setExecutor(threads);
        server.createContext("/", exchange -> {
            asked.add(exchange.getRequestHeaders().getFirst("Content-Type"));
            byte[] bytes = answer.apply(exchange.getRequestBody().readAllBytes());
            exchange.getResponseHeaders().set("Content-Type", type);
            exchange.sendResponseHeaders(200, bytes.length);
            try {
                Thread.sleep(slow.toMillis());
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
            }
            exchange.getResponseBody().write(bytes);
            exchange.close();
        });
        server.start();
        grow();
    }

    @AfterEach
    void end() {
        server.stop(0);
        threads.shutdownNow();
        clock.putRight();
        forget();
    }

    private static void forget() {
        TestDatabase.run("alter table time_stamp disable trigger user");
        TestDatabase.run("delete from time_stamp");
        TestDatabase.run("alter table time_stamp enable trigger user");
    }

    /** Each head is larger than the one before, and about a day later than the time-stamps of before. */
    private long grow() {
        people.setZone(TIM, "UTC");
        job.round();
        assertEquals("", job.stopped());
        return QuarkusTransaction.requiringNew()
                .call(heads::newest)
                .orElseThrow()
                .size();
    }

    private TimeStampAuthority at() throws IOException {
        return new TimeStampAuthority(address(), TimeStampRoots.read(authority.roots(folder, true)));
    }

    private URI address() {
        return URI.create("http://127.0.0.1:" + server.getAddress().getPort() + "/");
    }

    private Optional<TimeStampRows.Stamped> newest() {
        return QuarkusTransaction.requiringNew().call(() -> rows.newest(Long.MAX_VALUE));
    }

    private WitnessRows.Event answered() {
        return QuarkusTransaction.requiringNew().call(events::newest).stream()
                .filter(e -> e.witness().equals(TimeStamping.NAME))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void onceADay_theNewestHeadIsStamped_andKeptAsItWasAnswered() throws Exception {
        authority.at(clock.instant().truncatedTo(java.time.temporal.ChronoUnit.SECONDS));
        long size = grow();
        stamping.askIfDue(at());
        assertEquals(List.of("application/timestamp-query"), asked);
        TimeStampRows.Stamped first = newest().orElseThrow();
        assertEquals(size, first.size());
        assertEquals("CN=Test Authority", first.by());
        assertEquals(200, answered().status());
        grow();
        clock.putForward(Duration.ofHours(23));
        stamping.askIfDue(at());
        assertEquals(1, asked.size(), "not a day later yet");
        clock.putForward(Duration.ofHours(2));
        authority.at(clock.instant().truncatedTo(java.time.temporal.ChronoUnit.SECONDS));
        stamping.askIfDue(at());
        assertEquals(2, asked.size());
        clock.putForward(Duration.ofDays(9));
        stamping.askIfDue(at());
        assertEquals(2, asked.size(), "nothing new to be stamped");
        assertEquals(List.of(), look.look());
        exported.write(folder.resolve("log"), false);
        TimeStampRows.Stamped last = newest().orElseThrow();
        assertArrayEquals(
                last.answer(), Files.readAllBytes(folder.resolve("log").resolve(ExportedStamps.name(last.size()))));
    }

    @Test
    void whatIsNoTimeStamp_isNotedAndAskedForAgainLater() throws Exception {
        type = "text/html";
        stamping.askIfDue(at());
        assertEquals(Optional.empty(), newest());
        assertEquals(TimeStampPost.NO_STAMP, answered().status());
        assertTrue(answered().detail().contains("text/html"), answered().detail());
        stamping.askIfDue(at());
        assertEquals(1, asked.size(), "left alone for a minute");
        type = REPLY;
        int[] minutes = {1, 2, 4, 8, 16, 32, 60, 60};
        answer = request -> "garbage".getBytes(StandardCharsets.US_ASCII);
        for (int i = 0; i < minutes.length; i++) {
            clock.putForward(Duration.ofSeconds(minutes[i] * 60L - 5));
            stamping.askIfDue(at());
            assertEquals(i + 1, asked.size(), "pause " + i);
            clock.putForward(Duration.ofSeconds(6));
            stamping.askIfDue(at());
            assertEquals(i + 2, asked.size(), "after pause " + i);
        }
        assertEquals("The answer is no time-stamp.", answered().detail());
        grow();
        clock.putForward(Duration.ofHours(2));
        answer = request -> new TestAuthority().answer(request);
        stamping.askIfDue(at());
        assertEquals(
                "Its certificate does not lead to a root that is trusted.",
                answered().detail());
        // an answer to an earlier request, of the same head
        byte[][] kept = new byte[1][];
        answer = request -> kept[0] = new TestAuthority().answer(request);
        clock.putForward(Duration.ofHours(2));
        stamping.askIfDue(at());
        answer = request -> kept[0];
        clock.putForward(Duration.ofHours(2));
        stamping.askIfDue(at());
        assertEquals(
                "It answers another request: the nonce differs.", answered().detail());
        assertEquals(Optional.empty(), newest());
    }

    @Test
    void aSlowOrEndlessAnswer_isGivenUp() {
        answer = request -> new byte[TimeStampAnswer.LONGEST + 1];
        String longer = assertThrows(IOException.class, () -> new TimeStampPost().send(address(), new byte[1]))
                .getMessage();
        assertTrue(longer.contains("too long"), longer);
        answer = request -> new byte[1];
        // the head of the answer comes at once, its body does not
        slow = Duration.ofSeconds(20);
        TimeStampPost hasty = new TimeStampPost(Duration.ofSeconds(1));
        String late = assertThrows(IOException.class, () -> hasty.send(address(), new byte[1]))
                .getMessage();
        assertEquals("it took longer than 1 s", late);
    }

    @Test
    void afterThreeDays_thereIsSomethingToSeeTo() throws Exception {
        authority.at(clock.instant().truncatedTo(java.time.temporal.ChronoUnit.SECONDS));
        stamping.askIfDue(at());
        clock.putForward(Duration.ofDays(4));
        assertEquals(Duration.ZERO, QuarkusTransaction.requiringNew().call(stamping::without), "the head has one");
        grow();
        assertEquals(
                4, QuarkusTransaction.requiringNew().call(stamping::without).toDays());
    }

    @Test
    void aStoredTimeStamp_staysAsItIs_andIsNamedWhereItDoesNot() throws Exception {
        grow();
        stamping.askIfDue(at());
        long size = newest().orElseThrow().size();
        for (String act : List.of("update time_stamp set by = 'CN=Other'", "delete from time_stamp")) {
            try (Connection server = TestDatabase.server();
                    var statement = server.createStatement()) {
                assertThrows(SQLException.class, () -> statement.execute(act), act);
            }
            assertThrows(IllegalStateException.class, () -> TestDatabase.run(act), act);
        }
        assertEquals(List.of(), look.look());
        for (String change : List.of(
                "by = 'CN=Other'",
                "at = at + interval '1 s'",
                "answer = set_byte(answer, length(answer) - 1, get_byte(answer, length(answer) - 1) # 1)",
                "hash = repeat('0', 64)",
                "size = (select min(size) from checkpoint)")) {
            TestDatabase.run("alter table time_stamp disable trigger user");
            TestDatabase.run("create table stamp_before as select * from time_stamp");
            TestDatabase.run("update time_stamp set " + change);
            assertEquals(1, look.look().size(), change);
            assertTrue(look.look().get(0).place().startsWith("time_stamp "), change);
            TestDatabase.run("delete from time_stamp");
            TestDatabase.run("insert into time_stamp select * from stamp_before");
            TestDatabase.run("drop table stamp_before");
            TestDatabase.run("alter table time_stamp enable trigger user");
        }
        assertEquals(List.of(), look.look());
        assertEquals(size, newest().orElseThrow().size());
    }

    private record Settings(Optional<String> url, Optional<Path> roots) implements SealConfig.Timestamp {}

    private static String refused(String url, Path roots) {
        return assertThrows(
                        IllegalStateException.class,
                        () -> TimeStampAuthority.of(new Settings(Optional.ofNullable(url), Optional.ofNullable(roots))))
                .getMessage();
    }

    @Test
    void settingsThatDoNotGoTogether_areRefusedAtTheStart() throws Exception {
        Path roots = authority.roots(folder, true);
        assertTrue(TimeStampAuthority.of(new Settings(Optional.empty(), Optional.empty()))
                .isEmpty());
        assertFalse(TimeStampAuthority.of(new Settings(Optional.of("https://a.example/tsa"), Optional.of(roots)))
                .isEmpty());
        assertTrue(refused("https://a.example/tsa", null).contains("give both, url and roots, or neither"));
        assertTrue(refused(null, roots).contains("give both, url and roots, or neither"));
        assertTrue(refused("ftp://a.example/tsa", roots).contains("beginning with https:// or http://"));
        assertTrue(refused("a.example", roots).contains("beginning with https:// or http://"));
        assertTrue(refused("https://a.example", folder.resolve("none.pem")).contains("roots cannot be read"));
        assertTrue(refused("https://a.example", Files.writeString(folder.resolve("x"), "x"))
                .contains("no file of certificates in PEM"));
    }
}

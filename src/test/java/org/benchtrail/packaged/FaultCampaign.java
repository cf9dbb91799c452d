package org.benchtrail.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicBoolean;
import org.benchtrail.platform.database.ReplicatedDatabase;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;

/**
 * Everything that may break, again and again, under programs that act on three servers behind the balancer: nothing that was
 * acknowledged is lost, nothing is there twice, and every trail verifies. No part of any build but
 *
 * <pre>mvn -P campaign verify</pre>
 *
 * <p>How often: {@code -Dcampaign.kills}, {@code campaign.failovers}, {@code campaign.frozen} and
 * {@code campaign.full} (seconds), {@code campaign.clock} (acts
 * of each program), {@code campaign.rolls}, {@code campaign.upgrades}; a stage of 0 is left out. {@code -Dcampaign.minutes} ends kills and failovers sooner, with as many as
 * each had by then. {@code -Dcampaign.older=FOLDER} names the {@code quarkus-app} of the release before.
 */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class FaultCampaign {
    private static final int KILLS = Integer.getInteger("campaign.kills", 200);
    private static final int FAILOVERS = Integer.getInteger("campaign.failovers", 20);
    private static final int FROZEN_S = Integer.getInteger("campaign.frozen", 40);
    private static final int CLOCK_ACTS = Integer.getInteger("campaign.clock", 100);
    private static final int FULL_S = Integer.getInteger("campaign.full", 30);
    private static final int ROLLS = Integer.getInteger("campaign.rolls", 1);
    private static final int UPGRADES = Integer.getInteger("campaign.upgrades", 1);
    private static final long MINUTES = Long.getLong("campaign.minutes", 600);
    private static final String OLDER = System.getProperty("campaign.older", "");
    private static final long SEED = Long.getLong("campaign.seed", 40718);

    private static final int SERVERS = 3;
    private static final int PROGRAMS = 3;
    private static final int ACTS = 3;
    private static final int LATEST_MS = 500;

    /** What a server waits for an answer of its database (application.properties), and for a connection after it. */
    private static final long PATIENCE_MS = 30_000 + 5_000 + 5_000;

    private static BalancedServers servers;
    private static Visitor program;

    private final Random random = new Random(SEED);
    private final Map<String, Long> longest = new TreeMap<>();

    @BeforeAll
    static void start() throws Exception {
        servers = BalancedServers.start("campaign", SERVERS);
        program = servers.program();
    }

    @AfterAll
    static void end() throws Exception {
        if (servers != null) {
            assertEquals(
                    List.of(),
                    servers.database()
                            .ask("select title || ': ' || count(*) from ticket where title like '%program%'"
                                    + " group by title having count(*) > 1"),
                    "a ticket that was opened twice");
            servers.close();
        }
    }

    @BeforeEach
    void allRun() throws Exception {
        servers.startWhatHasEnded();
    }

    private interface Blows {
        void strike(Load load) throws Exception;
    }

    /** Strikes under load, tells what came of it, and fails if anything acknowledged is not there, or is there twice. */
    private void stage(String name, Blows blows) throws Exception {
        long begun = System.nanoTime();
        try (Load load = new Load(program, PROGRAMS)) {
            load.start();
            load.more(ACTS);
            blows.strike(load);
            took("after it", load.more(ACTS));
            load.close();
            Load.Found found = load.found(program);
            System.out.printf(
                    "%s: %d acknowledged, %d sent again %s, the same one %d times at most; %d lost, %d twice, %d trails that do not"
                            + " verify; longest, ms: %s; %d s%n",
                    name,
                    found.acknowledged(),
                    load.again(),
                    load.answers(),
                    load.mostRepeats(),
                    found.lost().size(),
                    found.twice().size(),
                    found.broken().size(),
                    longest,
                    (System.nanoTime() - begun) / 1_000_000_000L);
            found.requireWhole();
        }
    }

    private void took(String what, long ms) {
        longest.merge(what, ms, Math::max);
    }

    /** Strikes so often, each time at another moment, or until the time is over. */
    private void repeat(String name, int times, Load load, Blow blow) throws Exception {
        long end = System.nanoTime() + MINUTES * 60_000_000_000L;
        int done = 0;
        for (; done < times && System.nanoTime() < end; done++) {
            Thread.sleep(random.nextInt(LATEST_MS));
            blow.strike(done);
            load.requireGoingOn();
            if ((done + 1) % 20 == 0) {
                System.out.printf("%d of %d %s, %d acknowledged%n", done + 1, times, name, load.size());
            }
        }
        System.out.printf("%d of %d %s%n", done, times, name);
    }

    private interface Blow {
        void strike(int number) throws Exception;
    }

    @Test
    @Order(1)
    void kills() throws Exception {
        assumeTrue(KILLS > 0);
        stage(
                "Kills",
                load -> repeat("kills", KILLS, load, number -> {
                    switch (number % 3) {
                        case 0 -> {
                            int which = number / 3 % SERVERS;
                            servers.server(which).kill();
                            took("a server", load.more(1));
                            servers.startAgain(which);
                        }
                        case 1 -> {
                            servers.database().killPostmaster();
                            took("the postmaster", load.more(1));
                        }
                        default -> {
                            servers.database().killBackend();
                            took("a process of the database", load.more(1));
                        }
                    }
                }));
    }

    @Test
    @Order(2)
    void failovers() throws Exception {
        assumeTrue(FAILOVERS > 0);
        stage(
                "Failovers",
                load -> repeat("failovers", FAILOVERS, load, number -> {
                    servers.database().failOver();
                    took("a failover", load.more(1));
                    servers.database().follow();
                    took("a new second one", load.more(1));
                }));
        String health = servers.server(0).health();
        assertTrue(health.contains("\"acts wait for it\": \"yes\""), health);
    }

    /** Whoever asks meanwhile is told to come back, by a page or in JSON, and does not wait longer than the server does itself. */
    @Test
    @Order(3)
    void primaryFrozen() throws Exception {
        assumeTrue(FROZEN_S > 0);
        Visitor browser = servers.visitor();
        assertEquals(303, browser.signIn("omar", "benchtrail-demo"));
        AtomicBoolean frozen = new AtomicBoolean(true);
        Asking pages = new Asking(browser, "/queue", frozen);
        Asking api = new Asking(program, "/api/tickets", frozen);
        stage("Frozen", load -> {
            servers.database().freeze();
            pages.start();
            api.start();
            Thread.sleep(FROZEN_S * 1000L);
            servers.database().thaw();
            frozen.set(false);
            took("frozen for " + FROZEN_S + " s", load.more(1));
            pages.join();
            api.join();
        });
        System.out.printf("While it was frozen: pages %s, the API %s%n", pages, api);
        pages.requireTold();
        api.requireTold();
    }

    /** Somebody who asks for the same again and again, and what the answers were. */
    private static final class Asking extends Thread {
        private final Visitor visitor;
        private final String path;
        private final AtomicBoolean frozen;
        private final Map<String, Long> longest = new TreeMap<>();
        private final Map<String, Integer> counts = new TreeMap<>();

        private Asking(Visitor visitor, String path, AtomicBoolean frozen) {
            this.visitor = visitor;
            this.path = path;
            this.frozen = frozen;
        }

        @Override
        public void run() {
            while (frozen.get()) {
                long begun = System.nanoTime();
                String said;
                try {
                    HttpResponse<String> answer = visitor.get(path);
                    said = answer.statusCode() < 400 ? "answered" : Visitor.kind(answer);
                    Thread.sleep(200);
                } catch (IOException broken) {
                    said = "no answer";
                } catch (InterruptedException e) {
                    return;
                }
                longest.merge(said, (System.nanoTime() - begun) / 1_000_000, Math::max);
                counts.merge(said, 1, Integer::sum);
            }
        }

        private void requireTold() {
            longest.forEach((said, ms) -> {
                assertTrue(ms < PATIENCE_MS, path + ": " + this);
                assertTrue(
                        said.equals("answered") || !said.matches(".*(without|no answer|balancer).*"), this::toString);
            });
        }

        @Override
        public String toString() {
            return counts + ", longest, ms: " + longest;
        }
    }

    /** One server's time of day is an hour back: it acts all the same, on the tickets of the others too, and no entry is before another. */
    @Test
    @Order(4)
    void clockBack() throws Exception {
        assumeTrue(CLOCK_ACTS > 0);
        Path library = clockBackLibrary();
        stage("A clock an hour back", load -> {
            servers.server(0).stop();
            servers.startAgain(0, PackagedJar.built(), Map.of("LD_PRELOAD", library.toString()));
            Visitor there = new Visitor(servers.server(0).address());
            String opened = Visitor.json(program.at(servers.server(0).address())
                            .post("/api/tickets", Crowd.report("a desk an hour ago")))
                    .path("number")
                    .asText();
            Instant said = Instant.parse(
                    program.read("/api/tickets/" + opened).at("/facts/0/at").asText());
            assertTrue(said.isBefore(Instant.now().minus(Duration.ofMinutes(59))), said::toString);
            assertEquals(303, there.signIn("omar", "benchtrail-demo"));
            assertEquals(200, there.again("/queue"));
            took("one clock back", load.more(CLOCK_ACTS));
            servers.server(0).stop();
            servers.startAgain(0);
        });
    }

    /** Made of src/test/c by the machine's compiler of C; where there is none, the stage is left out. */
    private static Path clockBackLibrary() throws Exception {
        Path library = Path.of("target", "packaged", "clock_back.so").toAbsolutePath();
        boolean made = false;
        try {
            made = new ProcessBuilder(
                                    "cc",
                                    "-shared",
                                    "-fPIC",
                                    "-o",
                                    library.toString(),
                                    "src/test/c/clock_back.c",
                                    "-ldl")
                            .inheritIO()
                            .start()
                            .waitFor()
                    == 0;
        } catch (IOException noCompiler) {
            // said below
        }
        if (!made) {
            System.out.println("The clock is not put back: src/test/c/clock_back.c is not compiled by 'cc' here");
        }
        assumeTrue(made);
        return library;
    }

    /** Each server in turn is told to end, and started again: it says first that it is not ready, and goes on answering. */
    @Test
    @Order(5)
    void rollingRestart() throws Exception {
        assumeTrue(ROLLS > 0);
        stage("Rolling restarts", load -> {
            for (int i = 0; i < ROLLS * SERVERS; i++) {
                int which = i % SERVERS;
                RunningServer server = servers.server(which);
                server.tellToEnd();
                assertTrue(server.answersThoughNotReady(), "not ready first, and still answering");
                server.stop();
                took("a server that is told to end", load.more(1));
                servers.startAgain(which);
            }
            assertTrue(load.mostRepeats() <= 1, () -> "sent again more than once: " + load.answers());
        });
    }

    /** The release before on the newer schema, then this one again, one server after the other. */
    @Test
    @Order(6)
    void upgradeAndBack() throws Exception {
        Path older = Path.of(OLDER, "quarkus-run.jar").toAbsolutePath();
        boolean there = !OLDER.isEmpty() && Files.exists(older);
        if (!there) {
            System.out.println(
                    "Upgrades are left out: -Dcampaign.older=FOLDER names no quarkus-app of an older release");
        }
        assumeTrue(there && UPGRADES > 0);
        stage("Upgrades and back", load -> {
            for (int i = 0; i < UPGRADES * 2 * SERVERS; i++) {
                boolean back = i / SERVERS % 2 == 0;
                int which = i % SERVERS;
                servers.server(which).stop();
                servers.startAgain(which, back ? older : PackagedJar.built(), Map.of());
                took(back ? "to the older release" : "to this release", load.more(1));
                if (back && which == SERVERS - 1) {
                    requireKept(program.at(servers.server(which).address()));
                }
            }
        });
    }

    /** The first database's disk is filled, stays so for a while, and is freed; whoever watches the database starts it where it ended. */
    @Test
    @Order(7)
    void diskFull() throws Exception {
        assumeTrue(FULL_S > 0);
        Optional<SmallDisk> mounted = SmallDisk.mount("campaign-disk");
        if (mounted.isEmpty()) {
            System.out.println("No disk is filled: no file system may be mounted here");
        }
        assumeTrue(mounted.isPresent());
        AtomicBoolean full = new AtomicBoolean(true);
        Visitor browser = servers.visitor();
        assertEquals(303, browser.signIn("omar", "benchtrail-demo"));
        Asking pages = new Asking(browser, "/queue", full);
        try (SmallDisk disk = mounted.get()) {
            ReplicatedDatabase database = servers.database();
            Path before = database.follow(disk.folder());
            database.failOver();
            database.follow();
            try {
                stage("Disk full", load -> {
                    disk.fill();
                    pages.start();
                    Thread.sleep(FULL_S * 1000L);
                    System.out.println("The database on the full disk " + (database.runs() ? "runs" : "has ended")
                            + "; sent again so far: " + load.answers());
                    full.set(false);
                    pages.join();
                    disk.free();
                    if (!database.runs()) {
                        database.startAgain();
                    }
                    took("a disk full for " + FULL_S + " s", load.more(1));
                });
            } finally {
                database.failOver();
                database.follow(before);
            }
        }
        System.out.printf("While it was full: pages %s%n", pages);
        pages.requireTold();
    }

    /** A server of the older release shows each ticket, or says that a later one wrote on it. */
    private static void requireKept(Visitor older) throws Exception {
        Map<String, Integer> told = new TreeMap<>();
        for (JsonNode line : older.read("/api/tickets?size=100").get("tickets")) {
            HttpResponse<String> answer =
                    older.get("/api/tickets/" + line.get("number").asText());
            boolean newer = answer.body().contains("newer-release");
            if (newer) {
                System.out.println("The older release says: " + answer.body());
            }
            told.merge(answer.statusCode() == 200 ? "shown" : newer ? "kept" : answer.body(), 1, Integer::sum);
        }
        System.out.println("Tickets on the older release: " + told);
        assertTrue(Set.of("shown", "kept").containsAll(told.keySet()), told::toString);
    }
}

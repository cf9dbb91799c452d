package org.benchtrail.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.platform.database.ReplicatedDatabase;
import org.junit.jupiter.api.Test;

/**
 * The README's recipe for a shop that may not stand still: two servers behind a balancer, on a database that another one follows. One
 * server is killed, then the first database; nothing that was acknowledged is lost, nothing is there twice, and who is signed in
 * stays so.
 */
class TwoServersIT {
    private static final int ACTS = Integer.getInteger("two.acts", 20);
    private static final long LONGEST_MS = 30_000;

    @Test
    void serverAndDatabaseKilled_nothingAcknowledgedIsLost() throws Exception {
        Optional<Path> haproxy = Balancer.program();
        if (haproxy.isEmpty()) {
            System.out.println("TwoServersIT is left out: this machine has no haproxy");
        }
        assumeTrue(haproxy.isPresent(), "this machine has no haproxy");
        Path folder = PackagedJar.folder("two-first");
        try (ReplicatedDatabase database =
                ReplicatedDatabase.start(PackagedJar.folder("two-primary"), PackagedJar.folder("two-standby"))) {
            Map<String, String> environment = database.environment();
            environment.put("BENCHTRAIL_DATA", folder.toString());
            try (RunningServer first = RunningServer.start(folder, environment, List.of("benchtrail.demo=true"))) {
                environment.keySet().removeIf(name -> name.startsWith("BENCHTRAIL_OWNER"));
                Path other = PackagedJar.folder("two-second");
                environment.put("BENCHTRAIL_DATA", other.toString());
                try (RunningServer second = RunningServer.start(other, environment, List.of());
                        Balancer balancer = Balancer.start(haproxy.get(), folder, first, second)) {
                    work(balancer, first, second, database);
                }
            }
        }
    }

    private static void work(Balancer balancer, RunningServer first, RunningServer second, ReplicatedDatabase database)
            throws Exception {
        assertTrue(second.health().contains("\"acts wait for it\": \"yes\""), second.health());
        Visitor omar = new Visitor(balancer.address());
        assertEquals(200, again(omar, "/sign-in"), "the balancer has found its servers");
        assertEquals(303, omar.signIn("omar", "benchtrail-demo"));
        Visitor ruth = new Visitor(balancer.address());
        assertEquals(303, ruth.signIn("ruth", "benchtrail-demo"));
        Visitor program = Visitor.withToken(balancer.address(), ruth.makeToken("benchtrail-demo"));
        List<SteadyProgram.Acknowledged> acknowledged;
        List<String> tickets;
        try (SteadyProgram steady = new SteadyProgram(program)) {
            steady.start();
            steady.more(ACTS);
            first.kill();
            long serverGone = steady.more(ACTS);
            assertEquals(200, again(omar, "/queue"), "still signed in");
            database.failOver();
            long databaseGone = steady.more(ACTS);
            assertEquals(200, again(omar, "/queue"), "still signed in");
            steady.close();
            acknowledged = steady.acknowledged();
            tickets = steady.tickets();
            System.out.printf(
                    "%d acts acknowledged, %d sent again; longest: %d ms as a server was killed, %d ms as the database was%n",
                    acknowledged.size(), steady.again(), serverGone, databaseGone);
            assertTrue(serverGone < LONGEST_MS && databaseGone < LONGEST_MS);
        }
        assertTrue(second.health().contains("\"acts wait for it\": \"no\""), second.health());
        requireThereOnce(program, acknowledged, tickets);
        assertEquals(List.of("f"), database.ofSecond("select pg_is_in_recovery()"));
    }

    private static void requireThereOnce(
            Visitor program, List<SteadyProgram.Acknowledged> acknowledged, List<String> tickets) throws Exception {
        List<SteadyProgram.Acknowledged> found = new ArrayList<>();
        for (String ticket : tickets) {
            for (JsonNode fact : program.read("/api/tickets/" + ticket).get("facts")) {
                String text = fact.at("/fact/observable").asText();
                if (text.endsWith("of the steady program")) {
                    found.add(new SteadyProgram.Acknowledged(
                            ticket, fact.get("entry").asInt(), text));
                }
            }
            JsonNode verification = program.read("/api/tickets/" + ticket + "/trail/verification");
            assertTrue(verification.get("holds").asBoolean(), ticket);
        }
        assertEquals(acknowledged, found);
    }

    /** Whoever meets the moment of a change comes back. */
    private static int again(Visitor visitor, String path) throws InterruptedException {
        for (int i = 0; i < 50; i++) {
            try {
                int status = visitor.get(path).statusCode();
                if (status < 500) {
                    return status;
                }
            } catch (IOException broken) {
                // asked again
            }
            Thread.sleep(200);
        }
        return 0;
    }
}

package org.benchtrail.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What the server has acknowledged is there after a crash: of the database under it, and of the server itself. */
class KillIT {
    private static final int ENOUGH = 80;
    private static final String LOGIN = "ruth";
    private static final String PASSWORD = "benchtrail-demo";

    @Test
    void databaseKilled_thenServerKilled_everyAcknowledgedActIsThere() throws Exception {
        Path folder = PackagedJar.folder("kill");
        try (RunningServer server = RunningServer.demo(folder)) {
            String token = token(server);
            Crowd crowd = new Crowd(Visitor.withToken(server.address(), token));
            crowd.actUntil(ENOUGH, server::killDatabase);
            tell("the database", crowd);
            assertTrue(server.alive(), "the server itself was not to end");
            assertTrue(server.becomesReady(), "its database is started again");
            requireEverythingThere(server, token, crowd);

            Crowd next = new Crowd(Visitor.withToken(server.address(), token));
            next.actUntil(ENOUGH, server::kill);
            tell("the server", next);
            try (RunningServer again = RunningServer.demo(folder)) {
                requireEverythingThere(again, token, next);
            }
        }
    }

    private static String token(RunningServer server) throws IOException, InterruptedException {
        Visitor browser = new Visitor(server.address());
        assertEquals(303, browser.signIn(LOGIN, PASSWORD));
        return browser.makeToken(PASSWORD);
    }

    private static void tell(String killed, Crowd crowd) {
        System.out.printf(
                "%d of %d acts were acknowledged when %s was killed; %d were not; %d times somebody else was quicker%n",
                crowd.acknowledged().size(), Crowd.ACTS, killed, crowd.lost(), crowd.stale());
    }

    private static void requireEverythingThere(RunningServer server, String token, Crowd crowd)
            throws IOException, InterruptedException {
        int acknowledged = crowd.acknowledged().size();
        assertTrue(acknowledged >= ENOUGH && acknowledged < Crowd.ACTS, "killed in the middle: " + acknowledged);
        Visitor visitor = Visitor.withToken(server.address(), token);
        Map<String, String> found = symptoms(visitor, crowd.tickets());
        for (Crowd.Acknowledged act : crowd.acknowledged()) {
            assertEquals(act.text(), found.get(act.ticket() + "/" + act.entry()), act.toString());
        }
        assertEquals(found.size(), found.values().stream().distinct().count(), "no act is there twice");
        requireEveryTrailHolds(visitor);
        requireTicketsTakeActs(visitor, crowd.tickets());
    }

    /** What the crowd wrote, by {@code ticket/entry}. */
    private static Map<String, String> symptoms(Visitor visitor, List<String> tickets)
            throws IOException, InterruptedException {
        Map<String, String> found = new HashMap<>();
        for (String ticket : tickets) {
            for (JsonNode fact : visitor.read("/api/tickets/" + ticket).get("facts")) {
                if (fact.at("/fact/kind").asText().equals("symptom-recorded")) {
                    found.put(
                            ticket + "/" + fact.get("entry").asInt(),
                            fact.at("/fact/observable").asText());
                }
            }
        }
        return found;
    }

    private static void requireEveryTrailHolds(Visitor visitor) throws IOException, InterruptedException {
        JsonNode queue = visitor.read("/api/tickets?size=100");
        assertTrue(queue.get("tickets").size() >= Crowd.TICKETS, "the queue shows the crowd's tickets");
        for (JsonNode line : queue.get("tickets")) {
            String ticket = line.get("number").asText();
            JsonNode verification = visitor.read("/api/tickets/" + ticket + "/trail/verification");
            assertTrue(
                    verification.get("holds").asBoolean(),
                    ticket + ": " + verification.get("sentence").asText());
            assertEquals(
                    line.get("version").asInt(), verification.get("entries").asInt(), ticket);
        }
    }

    private static void requireTicketsTakeActs(Visitor visitor, List<String> tickets)
            throws IOException, InterruptedException {
        for (String ticket : tickets) {
            JsonNode version = visitor.read("/api/tickets/" + ticket).get("version");
            assertNotNull(version);
            assertEquals(
                    200,
                    visitor.post("/api/tickets/" + ticket + "/acts", version.asInt(), Crowd.symptom("After the crash"))
                            .statusCode());
        }
    }
}

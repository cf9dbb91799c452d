package org.benchtrail.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.net.httpserver.HttpServer;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.integrity.Keys;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.SigningKey;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.core.integrity.WitnessPolicy.Party;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.witness.ServedWitness;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The log asks witnesses: one of our own, and some that answer as a witness does that has seen something else. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class WitnessingTest {
    private static final Actor WIM = new Actor("seal-wim", "Wim", Set.of(Role.TECHNICIAN));

    @Inject
    PeopleActs people;

    @Inject
    SealJob job;

    @Inject
    Witnessing witnessing;

    @Inject
    WitnessRows kept;

    @Inject
    LogKeys keys;

    @Inject
    MovedClock clock;

    @TempDir
    Path folder;

    @BeforeEach
    void grown() {
        people.ensureAccount(WIM.account(), WIM.name(), WIM.roles(), "a long enough password");
        grow();
    }

    @AfterEach
    void clock() {
        clock.putRight();
    }

    private void grow() {
        people.setZone(WIM, "UTC");
        job.round();
        assertEquals("", job.stopped());
        clock.putForward(Duration.ofSeconds(20));
    }

    private String key() {
        return QuarkusTransaction.requiringNew()
                .call(() -> keys.known().good().iterator().next());
    }

    private static SignedNote served() {
        return SignedNote.parse(RestAssured.get("/log/checkpoint").asByteArray());
    }

    private long last(Party witness) {
        return QuarkusTransaction.requiringNew()
                .call(() -> kept.last(witness.key().toString()));
    }

    @Test
    void whatAWitnessSigned_isServedWithTheCheckpoint() throws Exception {
        try (ServedWitness witness = new ServedWitness(folder, key(), clock)) {
            List<Party> asked = List.of(witness.party());
            for (int i = 0; i < 3; i++) {
                witnessing.ask(asked);
                VerifierKey own = witness.party().key();
                assertEquals(List.of(own), served().signers(List.of(own)), "signature " + i);
                grow();
            }
            long before = last(witness.party());
            TestDatabase.run("alter table cosignature disable trigger user");
            TestDatabase.run("delete from cosignature");
            TestDatabase.run("alter table cosignature enable trigger user");
            witnessing.ask(asked);
            assertTrue(last(witness.party()) > before, "went on from where the witness stands");
        }
    }

    private Party answering(HttpServer server, int status, String body) {
        server.createContext("/", exchange -> {
            byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
            exchange.sendResponseHeaders(status, bytes.length);
            exchange.getResponseBody().write(bytes);
            exchange.close();
        });
        server.start();
        VerifierKey key =
                new SigningKey("w" + server.getAddress().getPort(), VerifierKey.WITNESS, Keys.TEST_2).verifier();
        return new Party(key, "http://127.0.0.1:" + server.getAddress().getPort() + "/");
    }

    private static HttpServer server() throws IOException {
        return HttpServer.create(new InetSocketAddress("127.0.0.1", 0), 0);
    }

    @Test
    void aWitnessThatHasSeenMore_stopsTheSigning() throws IOException {
        HttpServer server = server();
        try {
            List<Party> asked = List.of(answering(server, 409, "999999999\n"));
            SealStopped stopped = assertThrows(SealStopped.class, () -> witnessing.ask(asked));
            assertTrue(stopped.sentence().contains("has seen 999999999 leaves"), stopped.sentence());
        } finally {
            server.stop(0);
        }
    }

    @Test
    void aWitnessThatHasSeenAnotherTree_stopsTheSigning() throws IOException {
        HttpServer server = server();
        try {
            List<Party> asked = List.of(answering(server, 422, "not proven\n"));
            SealStopped stopped = assertThrows(SealStopped.class, () -> witnessing.ask(asked));
            assertTrue(stopped.sentence().endsWith("the log was rewritten."), stopped.sentence());
        } finally {
            server.stop(0);
        }
    }

    @Test
    void aSignatureThatDoesNotHold_isNotKept() throws IOException {
        HttpServer server = server();
        try {
            String false1 = new SigningKey("w" + server.getAddress().getPort(), VerifierKey.WITNESS, Keys.TEST_2)
                    .cosign("another text\n", 1)
                    .toString();
            Party witness = answering(server, 200, false1 + "\n");
            witnessing.ask(List.of(witness));
            assertEquals(0, last(witness));
        } finally {
            server.stop(0);
        }
    }

    /** A witness that is away is asked again later, and stands in nobody's way. */
    @Test
    void aWitnessThatIsAway_isNotedAndLeftAlone() throws IOException {
        HttpServer server = server();
        Party witness = answering(server, 200, "");
        server.stop(0);
        witnessing.ask(List.of(witness));
        witnessing.ask(List.of(witness));
        List<WitnessRows.Event> events = QuarkusTransaction.requiringNew().call(kept::newest);
        assertEquals(
                1,
                events.stream()
                        .filter(e -> e.witness().equals(witness.key().name()))
                        .count());
        assertEquals(
                0,
                events.stream()
                        .filter(e -> e.witness().equals(witness.key().name()))
                        .findFirst()
                        .orElseThrow()
                        .status());
        assertEquals("1", count(witness));
        clock.putForward(Duration.ofSeconds(2));
        witnessing.ask(List.of(witness));
        assertEquals("2", count(witness));
    }

    private static String count(Party witness) {
        try (var connection = TestDatabase.owner();
                var statement = connection.prepareStatement("select count(*) from witness_event where witness = ?")) {
            statement.setString(1, witness.key().name());
            try (var rows = statement.executeQuery()) {
                rows.next();
                return rows.getString(1);
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}

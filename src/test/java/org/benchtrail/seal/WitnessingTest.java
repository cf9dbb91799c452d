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
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.Keys;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.SigningKey;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.core.integrity.WitnessPolicy.Party;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.Browser;
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
    WitnessedHeads heads;

    @Inject
    KeptHeadsLook keptHeads;

    @Inject
    LostNote lost;

    @Inject
    Signing signing;

    @Inject
    SealConfig config;

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
            assertEquals(
                    last(witness.party()) + " leaves",
                    heads.looked(witness.party().key().name()).orElseThrow().words());
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

    /** A malformed request is this server's fault: the same head is not shown again, a later one is. */
    @Test
    void whatAWitnessCallsMalformed_isNotShownToItAgain() throws IOException {
        HttpServer server = server();
        try {
            Party witness = answering(server, 400, "The request is malformed.\n");
            witnessing.ask(List.of(witness));
            clock.putForward(Duration.ofSeconds(20));
            witnessing.ask(List.of(witness));
            assertEquals("1", count(witness));
            grow();
            witnessing.ask(List.of(witness));
            assertEquals("2", count(witness), "another head");
        } finally {
            server.stop(0);
        }
    }

    /** What it takes to be signed for is said beside the answer; and it is tried again, since that is a setting. */
    @Test
    void whatAWitnessIsToBeTold_isSaidOnThePage() throws IOException {
        Actor sue = new Actor("seal-wis", "Wis", Set.of(Role.SUPERVISOR));
        people.ensureAccount(sue.account(), sue.name(), sue.roles(), "a long enough password");
        grow();
        Map<Integer, String> advice = Map.of(
                403, "403 no. It does not trust this log&#39;s key: give it the verifier key below.",
                404, "404 no. It does not know this log: let whoever runs it add its origin with the key below.",
                400, "400 no. A fault of this server: this head is not shown to it again.",
                429, "429 no.");
        for (Map.Entry<Integer, String> one : advice.entrySet()) {
            HttpServer server = server();
            try {
                Party witness = answering(server, one.getKey(), "no.\n");
                witnessing.ask(List.of(witness));
                String page = Browser.signedIn(sue.account(), "a long enough password")
                        .get("/seal")
                        .asString();
                String row = page.substring(page.indexOf(">" + witness.key().name() + "<"));
                assertTrue(row.substring(0, row.indexOf("</tr>")).contains(one.getValue()), row);
                clock.putForward(Duration.ofSeconds(2));
                witnessing.ask(List.of(witness));
                assertEquals(one.getKey() == 400 ? "1" : "2", count(witness), one.getValue());
            } finally {
                server.stop(0);
            }
        }
    }

    /** A witness that serves a head of its own, which it and, if it is told so, this log have signed. */
    private Party keeping(HttpServer server, Checkpoint head, SigningKey log) {
        SigningKey own = new SigningKey("w" + server.getAddress().getPort(), VerifierKey.WITNESS, Keys.TEST_2);
        String text = head.text();
        SignedNote note = new SignedNote(text, List.of(log.sign(text), own.cosign(text, 1)));
        byte[] bytes = note.bytes();
        String hash =
                Hash.sha256(head.origin().getBytes(StandardCharsets.UTF_8)).hex();
        server.createContext("/" + hash + "/checkpoint", exchange -> {
            asked++;
            exchange.sendResponseHeaders(200, bytes.length);
            exchange.getResponseBody().write(bytes);
            exchange.close();
        });
        server.start();
        return new Party(
                own.verifier(), "http://127.0.0.1:" + server.getAddress().getPort() + "/");
    }

    private int asked;

    private Checkpoint newest() {
        return Checkpoint.parse(served().text());
    }

    private SigningKey logKey() throws Exception {
        return new SigningKey(
                newest().origin(),
                VerifierKey.LOG,
                KeyFile.read(config.keyFile().orElseThrow()));
    }

    private void refuses(List<Party> asked, String sentence) {
        SealStopped stopped = assertThrows(SealStopped.class, () -> witnessing.look(asked));
        assertTrue(stopped.sentence().contains(sentence), stopped.sentence());
    }

    /** At the start and every hour; what it objects to stands until it objects no more, whatever is asked of it in between. */
    @Test
    void whatAWitnessKeeps_isHeldAgainstTheLog() throws Exception {
        for (Checkpoint kept : List.of(
                new Checkpoint(newest().origin(), newest().size() + 1000, newest().root()),
                new Checkpoint(newest().origin(), newest().size() - 1, newest().root()))) {
            HttpServer server = server();
            try {
                List<Party> asked = List.of(keeping(server, kept, logKey()));
                String sentence = kept.size() > newest().size()
                        ? "By the head that the witness " + asked.get(0).key().name() + " keeps there are "
                                + kept.size() + " leaves; the database has "
                        : "The leaves up to " + kept.size() + " are not those of the head that the witness";
                refuses(asked, sentence);
                refuses(asked, sentence);
                clock.putForward(Duration.ofSeconds(11));
                refuses(asked, sentence);
                witnessing.look(List.of());
                assertTrue(
                        keptHeads.look(asked).stream()
                                .anyMatch(f -> f.sentence().contains(sentence)),
                        "a look at the whole site asks the same");
            } finally {
                server.stop(0);
            }
        }
    }

    @Test
    void aWitnessThatKeepsAHeadOfThisLog_isLookedAtOnceAnHour() throws Exception {
        HttpServer server = server();
        try {
            List<Party> witnesses = List.of(keeping(server, newest(), logKey()));
            witnessing.look(witnesses);
            clock.putForward(Duration.ofMinutes(58));
            witnessing.look(witnesses);
            assertEquals(1, asked);
            clock.putForward(Duration.ofMinutes(61));
            witnessing.look(witnesses);
            assertEquals(2, asked);
            assertTrue(heads.looked(witnesses.get(0).key().name())
                    .orElseThrow()
                    .words()
                    .endsWith(" leaves"));
        } finally {
            server.stop(0);
        }
    }

    /** Whoever stands in between can make no head: nothing is stopped by one that not both have signed. */
    @Test
    void aHeadThatNotBothHaveSigned_countsForNothing() throws Exception {
        HttpServer server = server();
        try {
            Checkpoint larger = new Checkpoint(newest().origin(), 999_999_999, newest().root());
            Party witness = keeping(server, larger, new SigningKey(newest().origin(), VerifierKey.LOG, Keys.TEST_3));
            witnessing.look(List.of(witness));
            String words = heads.looked(witness.key().name()).orElseThrow().words();
            assertEquals("a head of this log's name that no key of this log has signed", words);
        } finally {
            server.stop(0);
        }
    }

    /** What is kept elsewhere of a larger log tells, although the note beside the key is gone, that leaves are missing here. */
    @Test
    void withoutTheNote_whatAWitnessKeepsIsNotGoneBackBehind() throws Exception {
        HttpServer server = server();
        byte[] note = Files.readAllBytes(signing.lastNote());
        try {
            Checkpoint larger = new Checkpoint(newest().origin(), newest().size() + 1000, newest().root());
            List<Party> witnesses = List.of(keeping(server, larger, logKey()));
            Files.delete(signing.lastNote());
            LogIsAhead ahead = assertThrows(LogIsAhead.class, () -> lost.seeTo(witnesses));
            assertTrue(ahead.sentence().contains(" keeps there are " + larger.size() + " leaves"), ahead.sentence());
            assertTrue(Files.notExists(signing.lastNote()), "it goes on from nothing less");
        } finally {
            server.stop(0);
            Files.write(signing.lastNote(), note);
        }
    }

    /** Its objection is its own: it ends when its head and the log's are one again. */
    @Test
    void anObjection_endsWhenTheWitnessSignsAgain() throws Exception {
        HttpServer server = server();
        Party objecting;
        try {
            objecting = answering(server, 422, "not proven\n");
            assertThrows(SealStopped.class, () -> witnessing.ask(List.of(objecting)));
            refuses(List.of(objecting), "the log was rewritten");
        } finally {
            server.stop(0);
        }
        clock.putForward(Duration.ofSeconds(20));
        refuses(List.of(objecting), "the log was rewritten");
        HttpServer again = HttpServer.create(server.getAddress(), 0);
        try {
            keeping(again, newest(), logKey());
            clock.putForward(Duration.ofSeconds(400));
            witnessing.look(List.of(objecting));
        } finally {
            again.stop(0);
        }
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

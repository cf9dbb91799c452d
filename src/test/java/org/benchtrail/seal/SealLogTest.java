package org.benchtrail.seal;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.offline.VerifyCommand;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.erdtman.jcs.JsonCanonicalizer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The log of a running server: followed from outside, and attacked by whoever owns the database. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class SealLogTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor LEA = new Actor("seal-lea", "Lea", Set.of(Role.TECHNICIAN));

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    SealJob job;

    @Inject
    Incidents incidents;

    @Inject
    LogKeys keys;

    @Inject
    LogFolder folder;

    @Inject
    Signing signing;

    @TempDir
    Path own;

    @TestHTTPResource("/log/")
    String prefix;

    private String token = "";
    private String said = "";

    @BeforeEach
    void person() {
        people.ensureAccount(LEA.account(), LEA.name(), LEA.roles(), PASSWORD);
        token = people.createToken(LEA, "reader", 1).secret();
        job.round();
        assertEquals("", job.stopped());
    }

    private OutsideReader reader() {
        return new OutsideReader(prefix, token);
    }

    private String key() {
        return QuarkusTransaction.requiringNew()
                .call(() -> keys.known().good().iterator().next());
    }

    private TicketNumber ticket() {
        NewTicket report = new NewTicket(
                "A fan that rattles",
                "It rattles",
                Category.HEAT,
                "Laptop",
                "Desk 4",
                "Rae",
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                true);
        return tickets.open(report, LEA).number();
    }

    private static List<String> strings(String sql, Object... parameters) {
        try (Connection connection = TestDatabase.owner();
                var statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < parameters.length; i++) {
                statement.setObject(i + 1, parameters[i]);
            }
            List<String> found = new ArrayList<>();
            try (ResultSet rows = statement.executeQuery()) {
                while (rows.next()) {
                    found.add(rows.getString(1));
                }
            }
            return found;
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Each entry of the file with its proof, read by somebody outside; the verifier that is handed out says the same. */
    @Test
    void anOutsider_readsATrailWithItsProofs(@TempDir Path folder) throws IOException {
        TicketNumber number = ticket();
        for (int i = 0; i < 300; i++) {
            people.setZone(LEA, i % 2 == 0 ? "Europe/Lisbon" : "UTC");
        }
        job.round();
        String door = "/tickets/" + number + "/trail.jsonl";
        Response answer = Browser.signedIn(LEA.account(), PASSWORD).get(door);
        assertEquals(200, answer.statusCode());
        byte[] file = answer.asByteArray();
        String text = new String(file, StandardCharsets.UTF_8);
        long entries = strings("select entry::text from trail_entry where ticket = ?", number.serial())
                .size();
        assertEquals(entries, OutsideReader.trail(text, key()));
        Path written = Files.write(folder.resolve("trail.jsonl"), file);
        Path policy = Files.writeString(folder.resolve("policy"), "log " + key() + "\nquorum none\n");
        assertEquals(2, verifies(written, policy), said);
        assertTrue(said.contains("Nobody else has seen this head."), said);
        for (int at = text.length() / 2; at < file.length; at += 17) {
            byte[] turned = file.clone();
            turned[at] ^= 1;
            Files.write(written, turned);
            int exit = verifies(written, policy);
            assertTrue(exit == 1 || exit == 3, "byte " + at + ": " + said);
        }
        assertEquals(303, new Browser().get(door).statusCode(), "nobody reads it who is not signed in");
    }

    private int verifies(Path trail, Path policy) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int exit = VerifyCommand.run(
                List.of(trail.toString(), "--policy", policy.toString()),
                new PrintStream(out, true, StandardCharsets.UTF_8));
        said = out.toString(StandardCharsets.UTF_8);
        return exit;
    }

    @Test
    void anOutsider_followsTheLogFromSizeZeroThrough50Checkpoints() {
        OutsideReader reader = reader();
        int size = reader.follow(key());
        for (int i = 0; i < 50; i++) {
            people.setZone(LEA, i % 2 == 0 ? "Europe/Lisbon" : "UTC");
            job.round();
            int now = reader.follow(key());
            assertTrue(now > size, "one more act, one more leaf");
            size = now;
        }
        assertTrue(reader.places("accounts") > 50);
        assertTrue(reader.places("keys") >= 1);
    }

    @Test
    void whatPeopleDo_isSealedUnderTheHashOfWhatIsStored() {
        TicketNumber number = ticket();
        job.round();
        OutsideReader reader = reader();
        reader.follow(key());
        assertEquals(
                strings("select hash from trail_entry where ticket = ?", number.serial())
                        .get(0),
                reader.sealed("ticket/" + number, 1));
        for (String stream : List.of("accounts", "requesters", "catalogue", "keys")) {
            List<String> hashes = strings("select hash from site_record where stream = ? order by place", stream);
            assertTrue(!hashes.isEmpty(), stream);
            for (int i = 0; i < hashes.size(); i++) {
                assertEquals(hashes.get(i), reader.sealed(stream, i + 1), stream);
            }
        }
        assertEquals(
                number.toString(),
                strings("select ticket_number(?)", number.serial()).get(0));
    }

    /** The database writes the canonical form itself: a library that knows the standard has to come to the same bytes. */
    @Test
    void recordsOfTheSite_areCanonicalAndChained() throws IOException {
        people.createToken(LEA, "a name with \"quotes\", \\ and €, ü", 1);
        for (String stream : strings("select stream from stream_head")) {
            String previous = "0".repeat(64);
            int place = 0;
            for (String hex : strings(
                    "select encode(canonical, 'hex') from site_record where stream = ? order by place", stream)) {
                String json = new String(HexFormat.of().parseHex(hex), StandardCharsets.UTF_8);
                assertEquals(new JsonCanonicalizer(json).getEncodedString(), json);
                assertTrue(json.contains(
                        "\"place\":" + ++place + ",\"previous\":\"" + previous + "\",\"stream\":\"" + stream));
                previous = HexFormat.of()
                        .formatHex(OutsideReader.sha(new byte[] {0}, json.getBytes(StandardCharsets.UTF_8)));
            }
            assertEquals(
                    previous,
                    strings("select hash from stream_head where stream = ?", stream)
                            .get(0));
        }
    }

    @Test
    void noRecord_holdsNamesContactsOrPasswords() {
        ticket();
        String all = String.join("\n", strings("select convert_from(canonical, 'UTF8') from site_record"));
        assertTrue(all.contains("seal-lea"), "the name of the account is a pseudonym that stays");
        for (String value : List.of("room 4", "\"Rae\"", "\"Lea\"", "$2a$")) {
            assertTrue(!all.contains(value), value);
        }
    }

    @Test
    void anActWaitsForNothingThatSealingHolds() throws SQLException {
        try (Connection sealer = TestDatabase.owner();
                Statement statement = sealer.createStatement()) {
            sealer.setAutoCommit(false);
            statement.execute("select pg_try_advisory_xact_lock(7202)");
            statement.execute("lock table seal_leaf, seal_node, checkpoint in exclusive mode");
            statement.execute("update seal_head set size = size");
            statement.execute("delete from seal_queue");
            TicketNumber number = ticket();
            int size = size();
            job.round();
            assertEquals(size, size(), "the other one seals");
            sealer.rollback();
            job.round();
            OutsideReader reader = reader();
            reader.follow(key());
            assertEquals(1, reader.places("ticket/" + number));
        }
    }

    private static int size() {
        return Integer.parseInt(strings("select size from seal_head").get(0));
    }

    @Test
    void beyondWhatIsPublished_nothingIsServed() {
        int size = size();
        String last = "/log/tile/entries/" + String.format("%03d", size / 256) + ".p/";
        people.setZone(LEA, "UTC");
        assertEquals(200, log(last + size % 256).statusCode());
        assertEquals(404, log(last + (size % 256 + 1)).statusCode());
        assertEquals(404, log("/log/tile/0/000.p/0").statusCode());
        assertEquals(404, log("/log/tile/9/000").statusCode());
        assertEquals(404, log("/log/tile/0/x000/000").statusCode());
        assertEquals(
                "text/plain;charset=UTF-8",
                log("/log/checkpoint").contentType().replace(" ", "").replace("utf", "UTF"));
        assertEquals("application/octet-stream", log(last + size % 256).contentType());
    }

    private Response log(String path) {
        return given().header("Authorization", "Bearer " + token).get(path);
    }

    @Test
    void aStranger_readsTheCheckpointAndNoLeaf() {
        assertEquals(200, RestAssured.get("/log/checkpoint").statusCode());
        assertEquals(401, RestAssured.get("/log/tile/entries/000.p/1").statusCode());
        assertEquals(
                401,
                given().header("Authorization", "Bearer wrong")
                        .get("/log/tile/0/000.p/1")
                        .statusCode());
    }

    @Test
    void theFolder_holdsWhatIsServed_andTheVerifierSaysThatItHolds() throws IOException {
        attach("a picture of the fan");
        job.round();
        folder.write(own, false);
        Checkpoint earlier = Checkpoint.parse(Files.readString(own.resolve("checkpoint")));
        people.setZone(LEA, "UTC");
        job.round();
        folder.write(own, false);
        assertArrayEquals(log("/log/checkpoint").asByteArray(), Files.readAllBytes(own.resolve("checkpoint")));
        try (var files = Files.walk(own.resolve("tile"))) {
            List<Path> tiles = files.filter(Files::isRegularFile).toList();
            assertTrue(tiles.size() >= 3);
            for (Path tile : tiles) {
                assertArrayEquals(log("/log/" + own.relativize(tile)).asByteArray(), Files.readAllBytes(tile));
            }
        }
        assertEquals(0, verify(own, earlier));
        assertTrue(said.contains("what the leaves seal was not looked at"), said);
    }

    /** Other tests leave altered tickets behind; what this one recorded holds. */
    @Test
    void anExport_holdsTheRecordsOfEveryLeaf() throws IOException {
        attach("another picture of the fan");
        TicketNumber number = ticket();
        job.round();
        folder.write(own, true);
        verify(own, Checkpoint.parse(Files.readString(own.resolve("checkpoint"))));
        assertTrue(said.contains(" records of "), said);
        assertTrue(!said.contains("ticket/" + number) && !said.contains(": files "), said);
        try (var files = Files.walk(own.resolve("records"))) {
            String entry = strings(
                            "select convert_from(canonical, 'UTF8') from trail_entry where ticket = ?", number.serial())
                    .get(0);
            assertTrue(files.filter(Files::isRegularFile)
                    .anyMatch(file -> lines(file).contains(entry)));
        }
    }

    private static List<String> lines(Path file) {
        try {
            return Files.readAllLines(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private int verify(Path export, Checkpoint earlier) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int exit = VerifyCommand.run(
                List.of(
                        export.toString(),
                        "--earlier",
                        earlier.size() + ":" + earlier.root().base64()),
                new PrintStream(out, true, StandardCharsets.UTF_8));
        said = out.toString(StandardCharsets.UTF_8);
        return exit;
    }

    private void attach(String content) {
        TestDatabase.run(
                "insert into attachment (sha256, content) values (encode(sha256(?), 'hex'), ?) on conflict do nothing",
                content.getBytes(StandardCharsets.UTF_8),
                content.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void ticketNumbers_haveNoGap() {
        int first = ticket().serial();
        assertThrows(
                IllegalStateException.class,
                () -> QuarkusTransaction.requiringNew().run(() -> {
                    ticket();
                    throw new IllegalStateException("taken back");
                }));
        assertEquals(first + 1, ticket().serial());
    }

    /** Somebody takes an act out of the queue, so that it is never sealed: the next one does not fit, and is not passed over. */
    @Test
    void whatWasTakenOutOfTheQueue_isMissed() {
        people.setZone(LEA, "Europe/Lisbon");
        List<String> taken = strings("select hash from seal_queue where stream = 'accounts'");
        assertEquals(1, taken.size());
        TestDatabase.run("create table taken as select * from seal_queue");
        TestDatabase.run("delete from seal_queue");
        try {
            people.setZone(LEA, "UTC");
            job.round();
            assertTrue(
                    incidents().get(0).sentence().startsWith("Place "),
                    incidents().get(0).sentence());
            assertEquals("not-sealed", incidents().get(0).kind());
            assertEquals(
                    1,
                    strings("select stream from seal_stuck where stream = 'accounts'")
                            .size());
        } finally {
            TestDatabase.run(
                    "insert into seal_queue (at, stream, place, previous, hash) select at, stream, place, previous, hash"
                            + " from taken order by id");
            TestDatabase.run(
                    "insert into seal_queue (at, stream, place, previous, hash) select at, stream, place, previous, hash"
                            + " from seal_stuck where stream = 'accounts' order by id");
            TestDatabase.run("delete from seal_stuck where stream = 'accounts'");
            TestDatabase.run("drop table taken");
            job.round();
        }
        OutsideReader reader = reader();
        reader.follow(key());
        assertNotEquals("", reader.sealed("accounts", reader.places("accounts")));
    }

    private List<Incidents.Incident> incidents() {
        return QuarkusTransaction.requiringNew().call(incidents::newest);
    }

    /** The owner of the database rewrites a leaf: nothing more is signed, and it is told. */
    @Test
    void aRewrittenLeaf_isNotSigned() {
        String before = strings("select encode(leaf_hash, 'hex') from seal_leaf where index = ?", size() - 1)
                .get(0);
        int index = size() - 1;
        asOwner("seal_leaf", "update seal_leaf set leaf_hash = sha256('x') where index = " + index);
        try {
            people.setZone(LEA, "UTC");
            job.round();
            assertTrue(job.stopped().endsWith("the log was rewritten."), job.stopped());
            assertTrue(incidents().stream().anyMatch(i -> i.kind().equals("not-signed")));
        } finally {
            asOwner(
                    "seal_leaf",
                    "update seal_leaf set leaf_hash = decode('" + before + "', 'hex') where index = " + index);
        }
        job.round();
        assertEquals("", job.stopped());
    }

    /** An old backup: the database has fewer leaves than the note beside the key speaks of. */
    @Test
    void aDatabaseThatLagsBehindTheKey_isNotSigned() throws IOException {
        String last = Files.readString(signing.lastNote());
        Checkpoint checkpoint = Checkpoint.parse(SignedNote.parse(last).text());
        var signer = QuarkusTransaction.requiringNew().call(() -> keys.signing().get(0));
        String ahead = new Checkpoint(checkpoint.origin(), checkpoint.size() + 1000, checkpoint.root()).text();
        Files.writeString(signing.lastNote(), new SignedNote(ahead, List.of(signer.sign(ahead))).toString());
        try {
            people.setZone(LEA, "UTC");
            job.round();
            assertTrue(job.stopped().contains("An old backup was restored"), job.stopped());
        } finally {
            Files.writeString(signing.lastNote(), last);
        }
        job.round();
        assertEquals("", job.stopped());
    }

    /** Each node has its own note beside its key: the one that lags proves from there and goes on, whoever sealed meanwhile. */
    @Test
    void twoNodesThatSealInTurn_goOn_eachFromWhereItWas() throws IOException {
        String[] notes = {Files.readString(signing.lastNote()), Files.readString(signing.lastNote())};
        long size = Checkpoint.parse(SignedNote.parse(notes[0]).text()).size();
        for (int i = 0; i < 6; i++) {
            Files.writeString(signing.lastNote(), notes[i % 2]);
            ticket();
            job.round();
            assertEquals("", job.stopped());
            notes[i % 2] = Files.readString(signing.lastNote());
            long grown = Checkpoint.parse(SignedNote.parse(notes[i % 2]).text()).size();
            assertTrue(grown > size, grown + " after " + size);
            size = grown;
        }
        // and one that lags far behind
        String ahead = Files.readString(signing.lastNote());
        assertTrue(Checkpoint.parse(SignedNote.parse(notes[0]).text()).size() < size);
        Files.writeString(
                signing.lastNote(),
                strings("select note from checkpoint order by size limit 1").get(0));
        job.round();
        assertEquals("", job.stopped(), "nothing is new, so nothing is signed");
        ticket();
        job.round();
        assertEquals("", job.stopped());
        assertTrue(Checkpoint.parse(SignedNote.parse(Files.readString(signing.lastNote()))
                                .text())
                        .size()
                > Checkpoint.parse(SignedNote.parse(ahead).text()).size());
    }

    private static void asOwner(String table, String sql) {
        TestDatabase.run("alter table " + table + " disable trigger user");
        try {
            TestDatabase.run(sql);
        } finally {
            TestDatabase.run("alter table " + table + " enable trigger user");
        }
    }

    /** A role that is given by SQL leaves a record like one that an administrator gives. */
    @Test
    void aRoleGivenBySql_isRecorded() {
        String records = "select place from site_record where stream = 'accounts'"
                + " and convert_from(canonical, 'UTF8') like '%\"login\":\"seal-lea\"%\"SUPERVISOR\"%'";
        assertEquals(List.of(), strings(records));
        TestDatabase.run("update account set roles = array['TECHNICIAN', 'SUPERVISOR'] where login = 'seal-lea'");
        try {
            assertEquals(1, strings(records).size());
        } finally {
            TestDatabase.run("update account set roles = array['TECHNICIAN'] where login = 'seal-lea'");
        }
    }

    @Test
    void theServersAccount_changesNoLeafAndNoRecord() throws SQLException {
        for (String sql : List.of(
                "update seal_leaf set place = place",
                "delete from seal_leaf",
                "delete from seal_node",
                "update checkpoint set note = ''",
                "update site_record set hash = ''",
                "delete from site_record")) {
            try (Connection server = TestDatabase.server();
                    Statement statement = server.createStatement()) {
                assertThrows(SQLException.class, () -> statement.execute(sql), sql);
            }
        }
    }
}

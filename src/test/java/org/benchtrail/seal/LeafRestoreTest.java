package org.benchtrail.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.WitnessPolicy.Party;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.RecordBroken;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.VerificationRows.Finding;
import org.benchtrail.seal.witness.ServedWitness;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.TicketMending;
import org.benchtrail.trail.Mendings;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;

/** A backup that is a thousand leaves old is restored: it is noticed, nothing is recorded, and the same log goes on. */
// after all others: what it loses stays lost, and others read every record
@Order(Order.DEFAULT + 1)
@QuarkusTest
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
@QuarkusTestResource(TestDatabase.class)
class LeafRestoreTest {
    private static final Actor SUE = new Actor("restore-sue", "Sue", Set.of(Role.SUPERVISOR));
    private static final String PASSWORD = "a long enough password";

    /** Tables to which what is done here adds rows, with their keys; in the order in which they can be deleted. */
    private static final Map<String, String> GROWING = new LinkedHashMap<>();

    static {
        GROWING.put("lost_leaf", "index");
        GROWING.put("seal_leaf", "index");
        GROWING.put("seal_node", "level, n");
        GROWING.put("cosignature", "size, key");
        GROWING.put("checkpoint", "size");
        GROWING.put("seal_queue", "id");
        GROWING.put("disclosure", "stream, place, name");
        GROWING.put("site_record", "stream, place");
        GROWING.put("api_token", "id");
        GROWING.put("account_record", "id");
        GROWING.put("forecast_erasure", "id");
        GROWING.put("ticket_wait", "ctid");
        GROWING.put("mending", "id");
        GROWING.put("trail_entry", "ticket, entry");
        GROWING.put("ticket", "serial");
        GROWING.put("requester", "id");
    }

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    TicketMending mending;

    @Inject
    SealJob job;

    @Inject
    Signing signing;

    @Inject
    LostNote lost;

    @Inject
    LogFolder folder;

    @Inject
    LogKeys keys;

    @Inject
    LogRows rows;

    @Inject
    LeafRestore restore;

    @Inject
    RestoreLeavesCommand command;

    @Inject
    Witnessing witnessing;

    @Inject
    SiteVerification verification;

    @Inject
    VerificationRows runs;

    @Inject
    MovedClock clock;

    @TempDir
    Path own;

    @BeforeEach
    void backedUp() {
        people.ensureAccount(SUE.account(), SUE.name(), SUE.roles(), PASSWORD);
        people.createToken(SUE, "before", 1);
        job.round();
        assertEquals("", job.stopped());
        TestDatabase.run("drop schema if exists saved cascade");
        TestDatabase.run("create schema saved");
        GROWING.keySet()
                .forEach(table ->
                        TestDatabase.run("create table saved." + table + " as select *, ctid as at_row from " + table));
        for (String table : List.of("seal_head", "stream_head", "ticket_counter")) {
            TestDatabase.run("create table saved." + table + " as select * from " + table);
        }
    }

    @AfterEach
    void clear() {
        TestDatabase.run("drop schema if exists saved cascade");
        clock.putRight();
        job.round();
    }

    private TicketNumber ticket() {
        NewTicket report = new NewTicket(
                "A fan that rattles",
                "It rattles",
                Category.HEAT,
                "Laptop",
                "Desk 4",
                "Restored",
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                true);
        return tickets.open(report, SUE).number();
    }

    /** The tables as they were: as if a backup of then had been restored. */
    private static void restoreOldBackup() {
        GROWING.keySet().forEach(table -> TestDatabase.run("alter table " + table + " disable trigger user"));
        GROWING.forEach((table, key) -> TestDatabase.run("delete from " + table + " where (" + key + ") not in (select "
                + key.replace("ctid", "at_row") + " from saved." + table + ")"));
        TestDatabase.run(
                "update seal_head h set size = s.size, frontier = s.frontier, behind = s.behind from saved.seal_head s");
        TestDatabase.run(
                "update stream_head h set place = s.place, hash = s.hash from saved.stream_head s where s.stream ="
                        + " h.stream");
        TestDatabase.run("update ticket_counter c set last = s.last from saved.ticket_counter s");
        TestDatabase.run("update ticket t set entries = s.entries, last_hash = s.last_hash, touched = s.touched"
                + " from saved.ticket s where s.serial = t.serial");
        GROWING.keySet().forEach(table -> TestDatabase.run("alter table " + table + " enable trigger user"));
    }

    private static void aThousandActs() {
        TestDatabase.run(
                "insert into forecast_erasure (ticket, entry, at) select 40718, n, now() from generate_series(1, 1000) n");
    }

    private static Checkpoint checkpoint(Path folder) throws IOException {
        return Checkpoint.parse(SignedNote.parse(Files.readAllBytes(folder.resolve("checkpoint")))
                .text());
    }

    @Test
    @Order(1) // before the others, since what they lose is missing in its exports
    void anOldBackup_isRefusedByTheNoteBesideTheKey_andItsLeavesAreBroughtBack() throws Exception {
        Path before = own.resolve("before");
        folder.write(before, true);
        Checkpoint earlier = checkpoint(before);
        Browser browser = Browser.signedIn(SUE.account(), PASSWORD);
        aThousandActs();
        TicketNumber lost = ticket();
        job.round();
        Path log = own.resolve("log");
        folder.write(log, false);
        long leaves = checkpoint(log).size() - earlier.size();
        assertTrue(leaves > 1000, leaves + " leaves");

        restoreOldBackup();
        job.round();
        assertTrue(job.stopped().contains("An old backup was restored"), job.stopped());
        assertTrue(job.stopped().contains("Nothing is recorded until the leaves are put back"), job.stopped());
        assertThrows(RuntimeException.class, this::ticket);
        assertThrows(RuntimeException.class, () -> people.createToken(SUE, "meanwhile", 1));
        String page = browser.get("/seal").asString();
        assertTrue(page.contains("Nothing is recorded until the leaves are put back"), page);
        Browser another = new Browser();
        another.get("/sign-in");
        Response refused = another.post("/sign-in", Map.of("login", SUE.account(), "password", PASSWORD, "to", "/me"));
        assertEquals(409, refused.statusCode());
        assertTrue(
                refused.asString().contains("Nothing is recorded until the leaves are put back"), refused.asString());
        job.round();
        assertEquals(earlier.size(), size(), "nothing was numbered meanwhile");

        assertThrows(LeafRestore.Refused.class, () -> restore.from(before), "it ends before the last head");
        assertThrows(LeafRestore.Refused.class, () -> restore.from(altered(log)));
        assertEquals(earlier.size(), size());
        assertEquals(
                0,
                CompletableFuture.supplyAsync(() -> command.run("restore-leaves", log.toString()))
                        .join(),
                "by the command, which no request is made for");
        assertEquals(leaves, Long.parseLong(one("select count(*) from lost_leaf")), "none of their records is there");
        assertThrows(LeafRestore.Refused.class, () -> restore.from(log), "once is enough");

        TicketNumber next = ticket();
        assertTrue(next.serial() > lost.serial(), "no number is given twice");
        job.round();
        assertEquals("", job.stopped());
        assertEquals(earlier.origin(), checkpointOf(own.resolve("after")).origin(), "the same log");
        assertEquals(List.of(), ExportLooks.at(own.resolve("after"), earlier), "goes on from before");
        assertEquals(List.of(), ExportLooks.at(own.resolve("after"), checkpoint(log)), "and from what was lost");
        assertEquals(List.of(), ExportLooks.at(before, null), "the export from before holds");
        List<Finding> found = look();
        assertTrue(
                found.stream()
                        .anyMatch(f ->
                                f.place().equals("lost records") && f.sentence().startsWith(leaves + " records")),
                found::toString);
        assertTrue(
                found.stream()
                        .noneMatch(f -> Set.of("leaf", "node", "root", "signature", "stream")
                                .contains(f.what())),
                found::toString);
        String incidents = one(
                "select string_agg(convert_from(canonical, 'UTF8'), ' ') from site_record where stream = 'incidents'");
        assertTrue(incidents.contains(leaves + " leaves from " + earlier.size() + " on were put back"), incidents);
    }

    /** What the leaves sealed is lost: the ticket stands, until two people agree to go on after what is lost of it. */
    @Test
    void ticketsOfWhichEntriesAreLost_goOnAfterTheirHoles() throws Exception {
        Actor ada = new Actor("restore-ada", "Ada", Set.of(Role.ADMINISTRATOR));
        people.ensureAccount(ada.account(), ada.name(), ada.roles(), PASSWORD);
        TicketNumber number = ticket();
        backedUp();
        List<Act> seen = List.of(sheet -> new FindingRecorded("Seen", false));
        tickets.perform(number, 1, seen, SUE);
        tickets.perform(number, 2, seen, SUE);
        job.round();
        Path log = own.resolve("log");
        folder.write(log, false);
        restoreOldBackup();
        job.round();
        restore.from(log);
        RecordBroken broken = assertThrows(RecordBroken.class, () -> tickets.perform(number, 1, seen, SUE));
        assertTrue(
                String.valueOf(broken.getMessage()).contains("Entry 3 was sealed, but only 1 entries are there."),
                broken::getMessage);
        mending.propose(
                number, new TicketMending.Wanted(Mendings.Way.GO_ON, "An old backup was restored"), new byte[0], SUE);
        long id = Long.parseLong(one("select max(id) from mending"));
        assertEquals(Mendings.Outcome.AGREED, mending.agree(number, id, ada));
        assertEquals(
                List.of(4),
                tickets.perform(number, 3, seen, SUE).recorded(),
                "the numbers of what is lost are not given again");
        job.round();
        assertEquals("", job.stopped());
        String said = look().stream()
                .filter(f -> f.place().contains(number.toString()))
                .map(f -> f.what() + " " + f.sentence())
                .collect(Collectors.joining("; "));
        assertTrue(said.startsWith("hole Entries 2 to 3 are a hole") && !said.contains(";"), said);
    }

    private Checkpoint checkpointOf(Path written) throws IOException {
        folder.write(written, false);
        return checkpoint(written);
    }

    /**
     * The note beside the key is gone as well. Nothing is signed until an administrator says that it goes on; the witness has seen
     * more, and refuses it then.
     */
    @Test
    void withoutTheNote_nothingIsSigned_andTheWitnessRefusesIt() throws Exception {
        try (ServedWitness witness = new ServedWitness(own, key(), clock)) {
            aThousandActs();
            job.round();
            String note = Files.readString(signing.lastNote());
            Path log = own.resolve("log");
            folder.write(log, false);
            clock.putForward(java.time.Duration.ofSeconds(20));
            witnessing.ask(List.of(witness.party()));
            restoreOldBackup();
            Files.delete(signing.lastNote());
            people.createToken(SUE, "after the backup", 1);
            job.round();
            assertEquals(LostNote.GONE, job.stopped(), "nobody in the house tells more");
            goOnWithoutNote();
            job.round();
            assertEquals("", job.stopped());
            clock.putForward(java.time.Duration.ofSeconds(20));
            SealStopped stopped = assertThrows(SealStopped.class, () -> witnessing.ask(List.of(witness.party())));
            assertTrue(stopped.sentence().contains("An old backup was restored"), stopped.sentence());
            Files.writeString(signing.lastNote(), note);
            restoreOldBackup();
            restore.from(log);
        }
    }

    private void goOnWithoutNote() {
        Actor lena = new Actor("restore-lena", "Lena", Set.of(Role.ADMINISTRATOR));
        people.ensureAccount(lena.account(), lena.name(), lena.roles(), PASSWORD);
        Browser browser = Browser.signedIn(lena.account(), PASSWORD);
        String page = browser.get("/seal").asString();
        assertTrue(page.contains("Why it goes on without the note"), page);
        assertFalse(
                Browser.signedIn(SUE.account(), PASSWORD)
                        .get("/seal")
                        .asString()
                        .contains("Why it goes on"),
                "an administrator's matter");
        assertEquals(422, browser.post("/seal/note", Map.of("reason", " ")).statusCode());
        assertEquals(
                303,
                browser.post("/seal/note", Map.of("reason", "The disk of the key died"))
                        .statusCode());
        String incidents = browser.get("/seal").asString();
        assertTrue(incidents.contains("leaves: The disk of the key died"), incidents);
    }

    /** What somebody else keeps tells more than anybody says: the note is made anew from it, or the database is behind it. */
    @Test
    void withoutTheNote_itIsMadeAnewFromWhatTheWitnessKeeps() throws Exception {
        try (ServedWitness witness = new ServedWitness(own, key(), clock)) {
            List<Party> asked = List.of(witness.party());
            witnessing.ask(asked);
            String note = Files.readString(signing.lastNote());
            Files.delete(signing.lastNote());
            lost.seeTo(asked);
            Checkpoint made = Checkpoint.parse(
                    SignedNote.parse(Files.readAllBytes(signing.lastNote())).text());
            assertEquals(Checkpoint.parse(SignedNote.parse(note).text()), made);
            job.round();
            assertEquals("", job.stopped());
            String incidents = one("select string_agg(convert_from(canonical, 'UTF8'), ' ') from site_record where"
                    + " stream = 'incidents'");
            assertTrue(
                    incidents.contains("made anew from the head of " + made.size()
                            + " leaves that the witness witness.example/w1 keeps."),
                    incidents);
        }
    }

    private String key() {
        return QuarkusTransaction.requiringNew()
                .call(() -> keys.known().good().iterator().next());
    }

    private long size() {
        return QuarkusTransaction.requiringNew()
                .call(() -> rows.frontier((level, n, hash) -> {}).size());
    }

    /** The folder with one byte of one leaf changed. */
    private Path altered(Path log) throws IOException {
        Path other = own.resolve("altered");
        try (Stream<Path> files = Files.walk(log)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Path copy = other.resolve(log.relativize(file));
                Files.createDirectories(copy.getParent());
                Files.copy(file, copy);
            }
        }
        Path tile = other.resolve("tile/entries/000");
        byte[] bytes = Files.readAllBytes(tile);
        bytes[60] = (byte) (bytes[60] == 'a' ? 'b' : 'a');
        Files.write(tile, bytes);
        return other;
    }

    private List<Finding> look() {
        assertTrue(verification.begin(SUE));
        verification.work(SUE);
        return QuarkusTransaction.requiringNew()
                .call(() -> runs.findings(runs.newest().orElseThrow().id()));
    }

    private static String one(String sql) {
        try (var connection = TestDatabase.owner();
                var statement = connection.createStatement();
                var found = statement.executeQuery(sql)) {
            return found.next() ? found.getString(1) : "";
        } catch (SQLException e) {
            throw new IllegalStateException(sql, e);
        }
    }
}

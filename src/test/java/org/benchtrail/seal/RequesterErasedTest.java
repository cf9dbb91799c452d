package org.benchtrail.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.Everywhere;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.VerificationRows.Finding;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.RequesterErasure;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Somebody who reported a trouble is erased: chain, log and exports hold, the erasure is proven, and the value is nowhere. */
@Order(2) // a look reads the whole log, and it is short yet; LeafRestoreTest looks over what all have written
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class RequesterErasedTest {
    private static final Actor SUE = new Actor("erase-sue", "Sue", Set.of(Role.SUPERVISOR));
    private static final Actor TOM = new Actor("erase-tom", "Tom", Set.of(Role.TECHNICIAN));
    private static final String NAME = "Quillifer Osmotrude";
    private static final String CONTACT = "wing 77, bell Zyx";

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    RequesterErasure erasure;

    @Inject
    SealJob job;

    @Inject
    LogFolder folder;

    @Inject
    SiteVerification verification;

    @Inject
    VerificationRows runs;

    @TempDir
    Path own;

    @BeforeEach
    void persons() {
        people.ensureAccount(SUE.account(), SUE.name(), SUE.roles(), "a long enough password");
        people.ensureAccount(TOM.account(), TOM.name(), TOM.roles(), "a long enough password");
    }

    private TicketNumber ticket(String name, String contact) {
        NewTicket report = new NewTicket(
                "A fan that rattles",
                "It rattles",
                Category.HEAT,
                "Laptop",
                "Desk 4",
                name,
                contact,
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                true);
        return tickets.open(report, SUE).number();
    }

    @Test
    void erased_isNowhere_andEverythingHolds() throws Exception {
        TicketNumber number = ticket(NAME, CONTACT);
        job.round();
        Path export = Files.createDirectories(own.resolve("before"));
        folder.write(export, true);
        Checkpoint earlier = Checkpoint.parse(
                SignedNote.parse(Files.readString(export.resolve("checkpoint"))).text());
        assertFalse(Everywhere.holding(NAME).isEmpty());
        List<Finding> before = look();
        assertTrue(erasure.erase(number, SUE.account(), "asked for by letter").erased());
        assertFalse(erasure.erase(number, SUE.account(), "asked for by letter").erased());
        assertEquals(List.of(), Everywhere.holding(NAME), "the value is nowhere in the database");
        assertEquals(List.of(), Everywhere.holding(CONTACT));
        job.round();
        assertEquals("", job.stopped());
        assertEquals(before, look(), "nothing that holds is told not to");
        assertEquals(List.of(), Everywhere.holding(NAME));

        String erased =
                "select convert_from(r.canonical, 'UTF8') from site_record r join seal_leaf l on l.stream = r.stream"
                        + " and l.place = r.place where r.stream = 'erasures' and convert_from(r.canonical, 'UTF8')::jsonb -> 'content'"
                        + " ->> 'requester' = (select requester::text from ticket where serial = " + number.serial()
                        + ")";
        List<String> proven = all(erased);
        assertEquals(1, proven.size(), "sealed once");
        assertTrue(proven.get(0).contains("\"decided_by\":\"erase-sue\"")
                && proven.get(0).contains("asked for by letter"));
        String first =
                all("select convert_from(canonical, 'UTF8')::jsonb -> 'content' ->> 'name' from site_record where stream ="
                                + " 'requesters' and convert_from(canonical, 'UTF8')::jsonb -> 'content' ->> 'id' = (select"
                                + " requester::text from ticket where serial = " + number.serial() + ") order by place")
                        .get(0);
        assertTrue(proven.get(0).contains(first), "the commitment to the name that was there");

        assertEquals(List.of(), ExportLooks.at(export, null, "ticket/" + number + " "), "the export from before holds");
        folder.write(export, true);
        assertEquals(
                List.of(), ExportLooks.at(export, earlier, "ticket/" + number + " "), "and goes on to the one after");
        try (Stream<Path> files = Files.walk(export)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                assertFalse(Files.readString(file, StandardCharsets.ISO_8859_1).contains(NAME), file.toString());
            }
        }
    }

    @Test
    void erasedWithoutADecision_isNamed() {
        TicketNumber number = ticket("Somebody else", "room 5");
        String id = all("select requester::text from ticket where serial = " + number.serial())
                .get(0);
        TestDatabase.run("update requester set name = 'erased', contact = '', erased = now() where id = " + id);
        job.round();
        assertTrue(look().stream()
                .anyMatch(
                        f -> f.place().equals("requester " + id) && f.sentence().startsWith("It was erased")));
        TestDatabase.run("update requester set erased = null where id = " + id);
    }

    @Test
    void onlyASupervisorDecides_andSaysWhy() {
        TicketNumber number = ticket("Somebody", "room 6");
        assertThrows(Invalid.class, () -> erasure.erase(number, TOM.account(), "because"));
        assertThrows(Invalid.class, () -> erasure.erase(number, SUE.account(), " "));
        assertThrows(Invalid.class, () -> erasure.erase(number, SUE.account(), "somebody asked for it"));
        assertFalse(Everywhere.holding("room 6").isEmpty());
    }

    /** Another one of the same name is not taken for the person, but told of. */
    @Test
    void othersOfTheSameName_stay_andAreTold() {
        TicketNumber number = ticket("Two Alike", "room 7");
        TicketNumber other = ticket("Two Alike", "room 8");
        assertEquals(new RequesterErasure.Erased(true, 1), erasure.erase(number, SUE.account(), "asked"));
        assertFalse(Everywhere.holding("room 8").isEmpty());
        assertEquals(new RequesterErasure.Erased(true, 0), erasure.erase(other, SUE.account(), "asked"));
    }

    private List<Finding> look() {
        assertTrue(verification.begin(SUE));
        verification.work(SUE);
        return QuarkusTransaction.requiringNew()
                .call(() -> runs.findings(runs.newest().orElseThrow().id()));
    }

    private static List<String> all(String sql) {
        try (var connection = TestDatabase.owner();
                var statement = connection.createStatement()) {
            return all(statement, sql);
        } catch (SQLException e) {
            throw new IllegalStateException(sql, e);
        }
    }

    private static List<String> all(Statement statement, String sql) throws SQLException {
        try (var rows = statement.executeQuery(sql)) {
            List<String> found = new ArrayList<>();
            while (rows.next()) {
                found.add(rows.getString(1));
            }
            return found;
        }
    }
}

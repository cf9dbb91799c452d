package org.benchtrail.trail;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.IdentifyFact;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Nobody alters the trail: the server may not, the owner is refused, and whoever takes the guard away is found out. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class TrailGuardTest {
    private static final Actor KEEPER = new Actor("guard", "Guard", Set.of(Role.TECHNICIAN));

    @Inject
    TicketActs acts;

    @Inject
    PeopleActs people;

    private String token;
    private TicketNumber ticket;

    @BeforeEach
    void ticketOfFiveEntries() {
        people.ensureAccount("guard", "Guard", Set.of(Role.TECHNICIAN), "a long enough password");
        token = people.createToken(KEEPER, "guard", 1).secret();
        NewTicket report = new NewTicket(
                "Fan rattles",
                "",
                Category.HEAT,
                "Laptop",
                "Desk 4",
                "Rae",
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                false);
        ticket = acts.open(report, KEEPER).number();
        for (int version = 1; version < 5; version++) {
            IdentifyFact fact = new FindingRecorded("Finding " + version, false);
            acts.perform(ticket, version, List.of(sheet -> fact), KEEPER);
        }
    }

    private JsonPath verification() {
        return RestAssured.given()
                .header("Authorization", "Bearer " + token)
                .get("/api/tickets/" + ticket + "/trail/verification")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    private void assertHolds() {
        JsonPath found = verification();
        assertTrue(found.getBoolean("holds"), found.getString("sentence"));
        assertEquals(5, found.getInt("entries"));
        assertNull(found.get("brokenAt"));
    }

    private void assertBrokenAt(int entry) {
        JsonPath found = verification();
        assertFalse(found.getBoolean("holds"));
        assertEquals(entry, found.getInt("brokenAt"), found.getString("sentence"));
    }

    private static SQLException refusal(Connection as, String sql) throws SQLException {
        try (as;
                var statement = as.createStatement()) {
            return assertThrows(SQLException.class, () -> statement.execute(sql));
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update trail_entry set actor = 'x'",
                "update trail_entry set actor = 'x' where false",
                "delete from trail_entry",
                "truncate trail_entry",
                "truncate ticket cascade",
                "delete from ticket",
                "update attachment set content = ''",
                "update alarm set holds = true",
                "delete from alarm",
                "truncate alarm",
                "delete from attachment",
                "alter table trail_entry disable trigger user",
                "drop table trail_entry",
                "drop function refuse_change cascade",
                "create table mine (a integer)"
            })
    void server_mayNotAlterTheTrail(String sql) throws SQLException {
        assertEquals("42501", refusal(TestDatabase.server(), sql).getSQLState());
        assertHolds();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update trail_entry set actor = 'x'",
                "delete from trail_entry",
                "delete from trail_entry where ticket = (select max(ticket) from trail_entry)",
                "truncate trail_entry",
                "truncate ticket cascade",
                "update attachment set content = 'x'",
                "delete from attachment",
                "truncate attachment",
                "update alarm set holds = true",
                "delete from alarm",
                "truncate alarm"
            })
    void owner_isRefusedByTheTable(String sql) throws SQLException {
        TestDatabase.run("insert into attachment values (encode(sha256('row'), 'hex'), 'row') on conflict do nothing");
        TestDatabase.run(
                "insert into alarm (at, ticket, holds, sentence, detail, seen_by) values (now(), 1, true, 'Row', '', 'x')");
        SQLException refused = refusal(TestDatabase.owner(), sql);
        assertEquals("42501", refused.getSQLState());
        assertTrue(refused.getMessage().contains("append-only"), refused.getMessage());
        assertHolds();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "canonical = set_byte(canonical, 20, (get_byte(canonical, 20) + 1) % 128)",
                "canonical = canonical || ' '::bytea",
                "canonical = ''",
                "hash = lpad(ticket || '0' || entry, 64, '0')",
                "at = at + interval '1 microsecond'",
                "actor = 'somebody'",
                "kind = 'waived'",
                "canonical = convert_to('[' || ticket || ',' || entry || ']', 'UTF8'), hash = encode(sha256('\\x00'::bytea ||"
                        + " convert_to('[' || ticket || ',' || entry || ']', 'UTF8')), 'hex')"
            })
    void alteredEntry_isFound(String set) {
        for (int entry : new int[] {3, 1}) {
            Tampering.run("update trail_entry set " + set + " where ticket = ? and entry = ?", ticket.serial(), entry);
            assertBrokenAt(entry);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 4, 5})
    void removedEntry_isFound(int entry) {
        Tampering.run("delete from trail_entry where ticket = ? and entry = ?", ticket.serial(), entry);
        assertBrokenAt(entry);
    }

    @Test
    void cutTail_isFound() {
        Tampering.run("delete from trail_entry where ticket = ? and entry > 2", ticket.serial());
        assertBrokenAt(3);
        assertEquals(
                "The ticket has 5 entries, but 2 are there.", verification().getString("sentence"));
    }

    @Test
    void emptiedTrail_isFound() {
        Tampering.run("delete from trail_entry where ticket = ?", ticket.serial());
        assertBrokenAt(1);
    }

    @Test
    void removedEntryWithTheRestRenumbered_isFound() {
        Tampering.run("delete from trail_entry where ticket = ? and entry = 2", ticket.serial());
        Tampering.run("update trail_entry set entry = entry - 1 where ticket = ? and entry = 3", ticket.serial());
        assertBrokenAt(2);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "title = 'x'",
                "category = 'OTHER'",
                "device = 'x'",
                "place = 'x'",
                "requester = (select max(id) from requester where id <> requester)",
                "impact = 'WHOLE_SITE'",
                "urgency = 'STOPPED'",
                "priority = 'AT_ONCE'",
                "step = 'DOCUMENT'",
                "standing = 'CLOSED'",
                "round = 2",
                "assignee = null",
                "opened = opened - interval '1 hour'",
                "due = due + interval '1 hour'",
                "hold_for = 'a part'",
                "follow_up = now()",
                "escalated = true",
                "touched = touched + interval '1 microsecond'",
                "ended = now()",
                "words = 'x'"
            })
    void alteredRow_isFound(String set) {
        TestDatabase.run("insert into requester (name, contact) values ('Other', 'x')");
        TestDatabase.run(
                "update ticket t set " + set.replace("<> requester", "<> t.requester") + " where serial = ?",
                ticket.serial());
        JsonPath found = verification();
        assertFalse(found.getBoolean("holds"), set);
        assertEquals("The trail holds, but the ticket's row says something else than it.", found.getString("sentence"));
    }

    @ParameterizedTest
    @ValueSource(ints = {4, 6})
    void alteredCountOfEntries_isFound(int entries) {
        TestDatabase.run("update ticket set entries = ? where serial = ?", entries, ticket.serial());
        assertFalse(verification().getBoolean("holds"));
    }

    @Test
    void alteredHashInTheRow_isFound() {
        TestDatabase.run("update ticket set last_hash = repeat('1', 64) where serial = ?", ticket.serial());
        assertBrokenAt(5);
        assertEquals(
                "The ticket's row names another last entry than the trail has.",
                verification().getString("sentence"));
    }

    /** What would be the next entry, as the server's account could write it: of that number, naming that hash. */
    private String insertion(int entry, String previous) {
        String canonical = "convert_to('{\"previous\":\"' || " + previous + " || '\"}', 'UTF8')";
        return "insert into trail_entry (ticket, entry, at, actor, kind, canonical, hash) select " + ticket.serial()
                + ", "
                + entry + ", now(), 'guard', 'waived', " + canonical + ", encode(sha256('\\x00' || " + canonical
                + "), 'hex')";
    }

    private String hashOf(int entry) {
        return "(select hash from trail_entry where ticket = " + ticket.serial() + " and entry = " + entry + ")";
    }

    @Test
    void server_addsNoEntry_butTheNextOne() throws SQLException {
        for (String sql : List.of(
                insertion(7, hashOf(5)),
                insertion(5, hashOf(5)),
                insertion(4, hashOf(3)),
                insertion(0, hashOf(5)),
                insertion(6, hashOf(4)),
                insertion(6, "repeat('0', 64)"),
                insertion(6, "upper(" + hashOf(5) + ")"))) {
            assertEquals("23000", refusal(TestDatabase.server(), sql).getSQLState(), sql);
        }
        String noJson = insertion(6, hashOf(5)).replace("'{\"previous", "'{previous");
        assertEquals("22P02", refusal(TestDatabase.server(), noJson).getSQLState());
        assertHolds();
    }
}

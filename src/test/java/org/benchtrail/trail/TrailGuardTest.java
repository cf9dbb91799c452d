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

    /** As somebody who owns the table and knows what he does. */
    private static void tamper(String sql, Object... parameters) {
        TestDatabase.run("alter table trail_entry disable trigger user");
        try {
            TestDatabase.run(sql, parameters);
        } finally {
            TestDatabase.run("alter table trail_entry enable trigger user");
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
                "truncate ticket cascade"
            })
    void owner_isRefusedByTheTable(String sql) throws SQLException {
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
            tamper("update trail_entry set " + set + " where ticket = ? and entry = ?", ticket.serial(), entry);
            assertBrokenAt(entry);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 4, 5})
    void removedEntry_isFound(int entry) {
        tamper("delete from trail_entry where ticket = ? and entry = ?", ticket.serial(), entry);
        assertBrokenAt(entry);
    }

    @Test
    void cutTail_isFound() {
        tamper("delete from trail_entry where ticket = ? and entry > 2", ticket.serial());
        assertBrokenAt(3);
        assertEquals(
                "The ticket has 5 entries, but 2 are there.", verification().getString("sentence"));
    }

    @Test
    void emptiedTrail_isFound() {
        tamper("delete from trail_entry where ticket = ?", ticket.serial());
        assertBrokenAt(1);
    }

    @Test
    void removedEntryWithTheRestRenumbered_isFound() {
        tamper("delete from trail_entry where ticket = ? and entry = 2", ticket.serial());
        tamper("update trail_entry set entry = entry - 1 where ticket = ? and entry = 3", ticket.serial());
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
}

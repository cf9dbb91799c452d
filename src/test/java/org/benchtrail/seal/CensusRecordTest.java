package org.benchtrail.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;

/** The day's count: once a day, of what there is, and held against what there is later. */
@Order(2) // a look reads the whole log, and it is short yet
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class CensusRecordTest {
    private static final Actor CORA = new Actor("census-cora", "Cora", Set.of(Role.TECHNICIAN));

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    SealJob job;

    @Inject
    MovedClock clock;

    @AfterEach
    void right() {
        clock.putRight();
    }

    private static final String FILE =
            "insert into attachment (sha256, content) values (encode(sha256('counted'), 'hex'), 'counted') on conflict do nothing";

    private static int days() {
        return Integer.parseInt(TestDatabase.one("select count(*)::text from site_record where stream = 'census'"
                + " and convert_from(canonical, 'UTF8')::json ->> 'what' = 'day'"));
    }

    @Test
    void aNewDay_isCountedOnce_andWhoeverTakesSomethingAwayWithAllThatNamesIt_isFoundByIt() {
        people.ensureAccount(CORA.account(), CORA.name(), CORA.roles(), "a long enough password");
        tickets.open(
                new NewTicket(
                        "A fan that rattles",
                        "It rattles",
                        Category.HEAT,
                        "Laptop",
                        "Desk 4",
                        "Censored Quincy",
                        "room 4",
                        Priority.Impact.ONE_PERSON,
                        Priority.Urgency.CAN_WAIT,
                        true),
                CORA);
        TestDatabase.run(FILE);
        String record =
                TestDatabase.one("select encode(sha256(decode('00', 'hex') || file_canonical('counted')), 'hex')");
        String canonical =
                TestDatabase.one("select encode(canonical, 'hex') from file_record where hash = '" + record + "'");
        job.round();
        int before = days();
        String leaves = TestDatabase.one("select string_agg(kind || ' ' || n, ', ' order by kind)"
                + " from (select split_part(stream, '/', 1) as kind, count(*) as n from seal_leaf group by 1) k");
        clock.putForward(Duration.ofDays(40));
        job.round();
        job.round();
        assertEquals(before + 1, days(), "once a day");
        String newest = "(select convert_from(canonical, 'UTF8')::json -> 'content' as c from site_record"
                + " where stream = 'census' order by place desc limit 1) r";
        String day = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC).toString();
        assertEquals(day, TestDatabase.one("select c ->> 'day' from " + newest));
        assertEquals(
                leaves,
                TestDatabase.one("select string_agg(key || ' ' || value, ', ' order by key) from " + newest
                        + ", json_each_text(c -> 'leaves')"));
        assertEquals(
                TestDatabase.one(
                        "select (select count(*) from requester) || ' ' || (select count(*) from ticket) || ' ' || (select count(*) from attachment)"),
                TestDatabase.one(
                        "select concat_ws(' ', c #>> '{rows,requesters}', c #>> '{rows,tickets}', c #>> '{rows,files}') from "
                                + newest));
        assertEquals(List.of(), SealRounds.look("census of"), "what was counted is there");

        TestDatabase.unguarded("attachment", "delete from attachment where content = 'counted'");
        TestDatabase.unguarded("file_record", "delete from file_record where hash = '" + record + "'");
        try {
            List<String> found = SealRounds.look("census of " + day);
            assertEquals(1, found.size(), found::toString);
            assertTrue(
                    found.get(0)
                            .matches("census: census of " + day
                                    + ": On that day there were \\d+ files, and now there are \\d+\\."),
                    found::toString);
        } finally {
            TestDatabase.unguarded(
                    "file_record",
                    "insert into file_record (hash, canonical) values ('" + record + "', decode('" + canonical
                            + "', 'hex'))");
            TestDatabase.unguarded("attachment", FILE);
        }
    }
}

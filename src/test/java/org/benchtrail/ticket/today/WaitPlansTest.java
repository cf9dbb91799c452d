package org.benchtrail.ticket.today;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.platform.sql.Plan;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What waits for one person is found without reading through what waits for all, among 200,000 waits. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class WaitPlansTest {
    private static final Actor SUE = new Actor("person7", "Sue", Set.of(Role.SUPERVISOR, Role.MENTOR));

    @Inject
    WaitBook waits;

    @Inject
    EntityManager database;

    @BeforeAll
    static void fill() {
        List.of("none", "schema", "table", "waits", "right to read", "statistics")
                .forEach(WaitPlansTest::run);
    }

    @AfterAll
    static void empty() {
        run("none");
    }

    private static void run(String statement) {
        TestDatabase.run(SqlText.of(WaitPlansTest.class).statement(statement));
    }

    @Test
    void waitsOfOnePerson_areFoundWithoutReadingThroughThoseOfAll() {
        assertNotReadThrough(() -> waits.waitingFor(SUE, 50));
        assertNotReadThrough(() -> waits.counted(SUE));
        assertNotReadThrough(() -> waits.askedBy(SUE, 50));
    }

    private void assertNotReadThrough(Supplier<Sql> asked) {
        Plan plan = QuarkusTransaction.requiringNew().call(() -> {
            database.createNativeQuery("set local search_path = manywaits, public")
                    .executeUpdate();
            return Plan.of(asked.get());
        });
        assertEquals(
                List.of(),
                plan.readThrough().stream().filter("ticket_wait"::equals).toList(),
                plan::toString);
    }
}

package org.benchtrail.ticket;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Step;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.platform.sql.Plan;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Lists of tickets where there are many: no table is read from end to end, whatever is asked for. There are 100,000, or as many as
 * {@code -Dplans.rows} says.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class TicketPlansTest {
    private static final int ROWS = Integer.getInteger("plans.rows", 100_000);
    private static final int CLOSED = ROWS / 50 * 49;

    /** Among the open ones. */
    private static final QueueFilter.Cursor LATE = new QueueFilter.Cursor(
            Instant.parse("2020-01-04T00:00:00Z").plus(Duration.ofMinutes(3L * ROWS / 100 * 99)), ROWS / 100 * 99);

    @Inject
    TicketListQueries lists;

    @Inject
    EntityManager database;

    @BeforeAll
    static void fill() {
        Instant start = Instant.now();
        Stream.of("none", "schema", "reading", "table", "texts", "tickets", "right to read", "indexes", "statistics")
                .forEach(TicketPlansTest::run);
        System.out.printf(
                "%d tickets were made in %.1f s%n",
                ROWS, Duration.between(start, Instant.now()).toMillis() / 1000.0);
    }

    @AfterAll
    static void empty() {
        run("none");
    }

    private static void run(String statement) {
        TestDatabase.run(SqlText.of(TicketPlansTest.class)
                .statement(statement)
                .replace("{rows}", Integer.toString(ROWS))
                .replace("{closed}", Integer.toString(CLOSED)));
    }

    private static QueueFilter filter(
            Standing standing,
            @Nullable Step step,
            @Nullable String assignee,
            @Nullable String place,
            @Nullable Boolean held,
            @Nullable Boolean overdue,
            String text,
            QueueFilter.@Nullable Cursor after) {
        return new QueueFilter(standing, step, assignee, place, held, overdue, text, after, 25);
    }

    static List<QueueFilter> filters() {
        return Stream.of(Standing.OPEN, Standing.CLOSED)
                .flatMap(standing -> Stream.of(
                        filter(standing, null, null, null, null, null, "", null),
                        filter(standing, null, null, null, null, null, "", LATE),
                        filter(standing, Step.TEST, null, null, null, null, "", null),
                        filter(standing, null, "person7", null, null, null, "", null),
                        filter(standing, null, "-", null, null, null, "", null),
                        filter(standing, null, null, "Room 7", null, null, "", null),
                        filter(standing, null, null, null, true, null, "", null),
                        filter(standing, null, null, null, false, null, "", null),
                        filter(standing, null, null, null, null, true, "", null),
                        filter(standing, null, null, null, null, false, "", null),
                        filter(standing, Step.PLAN, "person7", "room 7", false, true, "", LATE),
                        filter(standing, null, null, null, null, null, "usual7 seldom17", null),
                        filter(standing, null, null, null, null, null, "seldom170", null),
                        filter(standing, null, null, null, null, null, "common1 usual55", null)))
                .toList();
    }

    @ParameterizedTest
    @MethodSource("filters")
    void queue_readsNoTableThrough(QueueFilter filter) {
        assertNotReadThrough(() -> lists.page(filter));
        assertNotReadThrough(() -> lists.total(filter));
    }

    @Test
    void likeness_readsNoTableThrough() {
        assertNotReadThrough(() -> lists.alike("common1 usual55 seldom170 unheard", 0));
        assertNotReadThrough(() -> lists.alike("common1 common5", ROWS - 1));
    }

    @Test
    void ticketsOfADevice_areFoundWithoutReadingTheTableThrough() {
        assertNotReadThrough(() -> lists.ofDevice("device 7", "room 7", 7));
    }

    @Test
    void namesGivenBefore_areReadWithoutReadingTheTableThrough() {
        assertNotReadThrough(() -> lists.named("places"));
        assertNotReadThrough(() -> lists.named("devices"));
    }

    private void assertNotReadThrough(Supplier<Sql> asked) {
        Plan plan = QuarkusTransaction.requiringNew().call(() -> {
            database.createNativeQuery("set local search_path = many, public").executeUpdate();
            return Plan.of(asked.get());
        });
        assertEquals(List.of(), plan.readThrough(), plan::toString);
    }
}

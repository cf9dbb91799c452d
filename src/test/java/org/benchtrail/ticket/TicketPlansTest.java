package org.benchtrail.ticket;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Step;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.platform.sql.Plan;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Lists of tickets where there are many: no table is read from end to end, whatever is asked for. There are 100,000, or as many as
 * {@code -Dplans.rows} says.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
public class TicketPlansTest {
    private static final int ROWS = Integer.getInteger("plans.rows", 100_000);
    private static final int CLOSED = ROWS / 50 * 49;

    /** Half of the open ones are overdue. */
    static final Instant NOW = Instant.parse("2020-01-04T00:00:00Z").plus(Duration.ofMinutes(3L * ROWS / 100 * 99));

    /** Among the open ones. */
    private static Cursor late(Sorting sorting) {
        return new Cursor(sorting, Priority.THIS_WEEK, NOW, NOW.minus(Duration.ofDays(2)), ROWS / 100 * 99);
    }

    @Inject
    TicketListQueries lists;

    @Inject
    TicketSearch search;

    @Inject
    EntityManager database;

    @BeforeAll
    static void fill() {
        Instant start = Instant.now();
        Stream.of(
                        "none",
                        "schema",
                        "reading",
                        "table",
                        "texts",
                        "tickets",
                        "words",
                        "devices",
                        "requesters",
                        "waits",
                        "right to read",
                        "indexes",
                        "statistics")
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
                .replace("{from}", "1")
                .replace("{rows}", Integer.toString(ROWS))
                .replace("{closed}", Integer.toString(CLOSED)));
    }

    static List<QueueFilter> filters() {
        return Stream.of(Standing.OPEN, Standing.CLOSED)
                .flatMap(standing -> Stream.<UnaryOperator<QueueFilter.Choice>>of(
                                c -> c,
                                c -> c.after(late(Sorting.DEFAULT)),
                                c -> c.step(Step.TEST),
                                c -> c.category(Category.HEAT),
                                c -> c.assignee("person7"),
                                c -> c.assignee("-"),
                                c -> c.place("Room 7"),
                                c -> c.device("device 7"),
                                c -> c.held(true),
                                c -> c.held(false),
                                c -> c.waiting(true),
                                c -> c.due(DueWithin.past(NOW)),
                                c -> c.due(DueWithin.future(NOW)),
                                c -> c.due(DueWithin.week(NOW, ZoneOffset.UTC)),
                                c -> c.step(Step.PLAN)
                                        .assignee("person7")
                                        .place("room 7")
                                        .held(false)
                                        .due(DueWithin.past(NOW))
                                        .after(late(Sorting.DEFAULT)),
                                c -> c.text("usual7 seldom17"),
                                c -> c.text("seldom170"),
                                c -> c.text("common1 usual55"))
                        .map(wish -> wish.apply(QueueFilter.of(standing)).lines(25)))
                .toList();
    }

    static List<QueueFilter> orders() {
        return Stream.of(Standing.OPEN, Standing.CLOSED)
                .flatMap(standing -> Sorting.all().stream()
                        .flatMap(sorting -> Stream.of(
                                        QueueFilter.of(standing),
                                        QueueFilter.of(standing).after(late(sorting)),
                                        QueueFilter.of(standing).assignee("person7"),
                                        QueueFilter.of(standing).text("common1 usual55"))
                                .map(choice -> choice.sorted(sorting).lines(25))))
                .toList();
    }

    @ParameterizedTest
    @MethodSource("orders")
    void queueInEveryOrder_readsNoTableThrough(QueueFilter filter) {
        assertNotReadThrough(() -> lists.page(filter));
    }

    @ParameterizedTest
    @MethodSource("filters")
    void queue_readsNoTableThrough(QueueFilter filter) {
        assertNotReadThrough(() -> lists.page(filter));
        assertNotReadThrough(() -> lists.counted(filter));
        assertNotReadThrough(() -> lists.total(filter));
    }

    @Test
    void words_areLookedUp_andNotLookedFor() {
        for (String words : List.of("'common1':*", "'usual7':* & 'common1':*", "'seldom170':*")) {
            assertNotReadThrough(() -> lists.common(words));
            assertNotReadThrough(() -> lists.fitting(words));
        }
    }

    @Test
    void likeness_readsNoTableThrough() {
        assertNotReadThrough(() -> lists.alike("common1 usual55 seldom170 unheard", 0));
        assertNotReadThrough(() -> lists.alike("common1 common5", ROWS - 1));
    }

    /** None of the newest 2,000 has all of these words; with few of them allowed, the usual ones are only asked for in pairs. */
    @ParameterizedTest
    @CsvSource({
        "seldom1151, 4000",
        "usual51 usual183 usual264, 4000",
        "usual51 usual183 usual264, 100",
        "common2 usual51 usual183 usual264, 100",
        "common2 common6 seldom20575, 100"
    })
    void oldTickets_areFoundBySeldomWordsAndByPairsOfUsualOnes(String words, int few) {
        List<TicketLine> found =
                amongMany(() -> lists.alike(words, 0).with("few", few).rows(TicketLine.class));
        assertEquals(5, found.size(), words);
        found.forEach(line -> assertTrue(line.serial() <= ROWS - 2000, line::number));
    }

    @Test
    void search_readsNoTableThrough() {
        for (String joined : List.of(" & ", " | ")) {
            assertNotReadThrough(() -> search.with(List.of("common1", "usual55", "seldom170"), joined));
            assertNotReadThrough(() -> search.with(List.of("common1", "common5"), joined));
        }
        assertNotReadThrough(() -> search.spelling(List.of("comon1", "seldom170", "unheard")));
        assertNotReadThrough(() -> search.devices("device 77"));
        assertNotReadThrough(() -> search.requesters("name77 fam"));
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
        Plan plan = amongMany(() -> Plan.of(asked.get()));
        assertEquals(List.of(), plan.readThrough(), plan::toString);
    }

    private <T> T amongMany(Supplier<T> asked) {
        return QuarkusTransaction.requiringNew().call(() -> {
            database.createNativeQuery("set local search_path = many, public").executeUpdate();
            return asked.get();
        });
    }
}

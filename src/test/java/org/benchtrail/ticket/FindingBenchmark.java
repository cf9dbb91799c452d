package org.benchtrail.ticket;

import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.function.Consumer;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Step;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/**
 * How fast the queue and the search are over a million invented tickets. Not part of {@code mvn verify}; by hand:
 *
 * <pre>mvn -o test -Dtest=FindingBenchmark -Dplans.rows=1000000 -Dfinding.measure=true</pre>
 *
 * Goal: 95 of 100 of each kind within 50 ms.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@EnabledIfSystemProperty(named = "finding.measure", matches = "true")
class FindingBenchmark {
    private static final long SEED = 20261126;
    private static final int TIMES = 100;
    private static final double GOAL_MS = 50;
    private static final Actor READER = new Actor("reader", "Reader", Set.of(Role.TECHNICIAN));

    @Inject
    TicketListQueries lists;

    @Inject
    TicketSearch search;

    @Inject
    EntityManager database;

    @BeforeAll
    static void fill() {
        TicketPlansTest.fill();
    }

    @AfterAll
    static void empty() {
        TicketPlansTest.empty();
    }

    private void queue(QueueFilter.Choice choice, Sorting sorting) {
        lists.queue(choice.sorted(sorting).lines(25), READER);
    }

    private static Standing standing(Random random) {
        return random.nextInt(4) == 0 ? Standing.CLOSED : Standing.OPEN;
    }

    private static Sorting sorting(Random random) {
        List<Sorting> all = Sorting.all();
        return all.get(random.nextInt(all.size()));
    }

    private Map<String, Consumer<Random>> kinds() {
        Map<String, Consumer<Random>> kinds = new LinkedHashMap<>();
        kinds.put("queue, any order", r -> queue(QueueFilter.of(standing(r)), sorting(r)));
        kinds.put(
                "queue of a person, any order",
                r -> queue(QueueFilter.of(standing(r)).assignee("person" + r.nextInt(40)), sorting(r)));
        kinds.put(
                "queue of a place, any order",
                r -> queue(QueueFilter.of(standing(r)).place("room " + r.nextInt(500)), sorting(r)));
        kinds.put(
                "queue of a device",
                r -> queue(QueueFilter.of(standing(r)).device("device " + r.nextInt(20000)), Sorting.DEFAULT));
        kinds.put(
                "queue by kind and step, any order",
                r -> queue(QueueFilter.of(standing(r)).category(Category.HEAT).step(Step.DOCUMENT), sorting(r)));
        kinds.put(
                "queue on hold, overdue",
                r -> queue(
                        QueueFilter.of(Standing.OPEN).held(true).due(DueWithin.past(TicketPlansTest.NOW)), sorting(r)));
        kinds.put(
                "queue with a common word, any order",
                r -> queue(QueueFilter.of(standing(r)).text("common" + r.nextInt(7)), sorting(r)));
        kinds.put(
                "queue with usual words",
                r -> queue(
                        QueueFilter.of(standing(r)).text("usual" + r.nextInt(300) + " common" + r.nextInt(7)),
                        Sorting.DEFAULT));
        kinds.put(
                "queue with a seldom word",
                r -> queue(QueueFilter.of(standing(r)).text("seldom" + r.nextInt(40000)), Sorting.DEFAULT));
        kinds.put(
                "search, common words",
                r -> search.byWords("common" + r.nextInt(3) + " common" + (3 + r.nextInt(4)), READER));
        kinds.put(
                "search, usual words",
                r -> search.byWords("usual" + r.nextInt(100) + " usual" + (100 + r.nextInt(100)), READER));
        kinds.put("search, seldom word", r -> search.byWords("seldom" + r.nextInt(20000), READER));
        kinds.put("search, mistyped", r -> search.byWords("sedlom" + r.nextInt(20000), READER));
        kinds.put("search, device", r -> search.devices("device " + r.nextInt(20000), READER));
        kinds.put("search, requester", r -> search.byRequester("name" + r.nextInt(9000), READER));
        return kinds;
    }

    @Test
    void findingIsQuick() {
        double worst = 0;
        for (Map.Entry<String, Consumer<Random>> kind : kinds().entrySet()) {
            worst = Math.max(worst, measure(kind.getKey(), kind.getValue()));
        }
        double most = worst;
        assertTrue(most < GOAL_MS, () -> "p95 " + most + " ms");
    }

    private double measure(String what, Consumer<Random> ask) {
        Random random = new Random(SEED);
        double[] ms = new double[TIMES];
        for (int i = -20; i < TIMES; i++) {
            double took = QuarkusTransaction.requiringNew().call(() -> {
                database.createNativeQuery("set local search_path = many, public")
                        .executeUpdate();
                long start = System.nanoTime();
                ask.accept(random);
                return (System.nanoTime() - start) / 1e6;
            });
            if (i >= 0) {
                ms[i] = took;
            }
        }
        Arrays.sort(ms);
        double p95 = ms[(int) Math.ceil(0.95 * TIMES) - 1];
        System.out.printf(
                Locale.ROOT,
                "finding: %-36s p50 %7.1f ms, p95 %7.1f ms, most %7.1f ms%n",
                what,
                ms[TIMES / 2],
                p95,
                ms[TIMES - 1]);
        return p95;
    }
}

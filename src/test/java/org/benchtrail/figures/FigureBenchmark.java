package org.benchtrail.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.platform.sql.SqlText;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/**
 * How fast all figures of a period are over many invented tickets, one every five minutes until now. Not part of
 * {@code mvn verify}; by hand:
 *
 * <pre>mvn -o test -Dtest=FigureBenchmark -Dfigures.rows=1000000</pre>
 *
 * Goal: 95 of 100 within 1 s for 90 days.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@EnabledIfSystemProperty(named = "figures.rows", matches = "[0-9]+")
class FigureBenchmark {
    private static final int ROWS = Integer.getInteger("figures.rows", 0);
    private static final int TIMES = 20;
    private static final double GOAL_MS = 1000;
    private static final Actor READER = new Actor("reader", "Reader", Set.of(Role.SUPERVISOR));

    @Inject
    FigureQueries queries;

    @Inject
    EntityManager database;

    @BeforeAll
    static void fill() {
        SqlText text = SqlText.of(FigureBenchmark.class);
        for (String part : List.of("none", "schema", "tickets", "entries", "indexes", "rights", "seen", "counted")) {
            TestDatabase.run(text.statement(part).replace("{rows}", String.valueOf(ROWS)));
        }
    }

    @AfterAll
    static void empty() {
        TestDatabase.run(SqlText.of(FigureBenchmark.class).statement("none"));
    }

    private FigureQueries.Report report(FiguresAsked asked) {
        return queries.report(asked, READER, ZoneOffset.UTC);
    }

    private double measure(String what, FiguresAsked asked) {
        double[] ms = new double[TIMES];
        int[] counted = {0};
        for (int i = -3; i < TIMES; i++) {
            double took = QuarkusTransaction.requiringNew().call(() -> {
                database.createNativeQuery("set local search_path = many_moves, public")
                        .executeUpdate();
                long start = System.nanoTime();
                counted[0] = report(asked).figures().stream()
                        .mapToInt(f -> f.rows().size())
                        .sum();
                return (System.nanoTime() - start) / 1e6;
            });
            if (i >= 0) {
                ms[i] = took;
            }
        }
        Arrays.sort(ms);
        System.out.printf(
                Locale.ROOT,
                "figures of %d tickets: %-24s p50 %7.1f ms, p95 %7.1f ms, %d rows%n",
                ROWS,
                what,
                ms[TIMES / 2],
                ms[(int) Math.ceil(0.95 * TIMES) - 1],
                counted[0]);
        return ms[(int) Math.ceil(0.95 * TIMES) - 1];
    }

    @Test
    void figuresAreQuick() {
        String today = Instant.now().toString().substring(0, 10);
        String yearAgo = Instant.now().minusSeconds(360L * 86_400).toString().substring(0, 10);
        double usual = measure("90 days", FiguresAsked.of("", "", "", "", ""));
        measure("one place", FiguresAsked.of(yearAgo, today, "", "room 7", ""));
        measure("a year", FiguresAsked.of(yearAgo, today, "", "", "TEST"));
        assertTrue(usual < GOAL_MS, () -> "p95 " + usual + " ms");
    }

    @Test
    void nothingIsReadTwice() {
        FigureQueries.Report report = QuarkusTransaction.requiringNew().call(() -> {
            database.createNativeQuery("set local search_path = many_moves, public")
                    .executeUpdate();
            return report(FiguresAsked.of("", "", "", "", ""));
        });
        Map<String, Figure> figures = new java.util.HashMap<>();
        report.figures().forEach(f -> figures.put(f.id(), f));
        Figure steps = java.util.Objects.requireNonNull(figures.get("steps"));
        int whole = Integer.parseInt(steps.rows().get(6).cells().get(1));
        assertEquals(whole, steps.rows().get(6).tickets().size());
    }
}

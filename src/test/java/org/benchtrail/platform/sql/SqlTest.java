package org.benchtrail.platform.sql;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.benchtrail.platform.TestDatabase;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@Transactional
class SqlTest {
    @Inject
    EntityManager database;

    private final SqlText text = SqlText.of(SqlTest.class);

    enum Choice {
        YES
    }

    record Row(
            Choice choice,
            String word,
            int number,
            long largeNumber,
            double half,
            boolean so,
            Instant at,
            byte[] bytes,
            List<String> list,
            @Nullable Integer missing) {}

    record TooStrict(int missing) {}

    record Elsewhere(String noSuchColumn) {}

    private Sql row() {
        return Sql.of(database, text.statement("one row")).with("word", "it's :here ::text");
    }

    @Test
    void columns_reachTheComponentsOfTheirNames() {
        Row row = row().row(Row.class).orElseThrow();
        assertEquals(Choice.YES, row.choice());
        assertEquals("it's :here ::text", row.word());
        assertEquals(7, row.number());
        assertEquals(8L, row.largeNumber());
        assertEquals(2.5, row.half());
        assertTrue(row.so());
        assertEquals(Instant.parse("2031-03-03T08:00:00.123456Z"), row.at());
        assertArrayEquals(new byte[] {0, -1}, row.bytes());
        assertEquals(List.of("a", "b"), row.list());
        assertNull(row.missing());
    }

    @Test
    void whatDoesNotFit_isRefused() {
        assertThrows(IllegalArgumentException.class, () -> row().rows(TooStrict.class));
        assertThrows(IllegalArgumentException.class, () -> row().rows(Elsewhere.class));
    }

    @Test
    void conditions_narrowAStatement() {
        assertEquals(
                10,
                Sql.of(database, text.statement("numbers", List.of()))
                        .values(Integer.class)
                        .size());
        assertEquals(
                List.of(4, 2),
                Sql.of(database, text.statement("numbers", List.of("even", "below")))
                        .with(Map.of("below", 5))
                        .values(Integer.class));
    }

    @Test
    void whatIsMissing_isToldAtOnce() {
        assertThrows(IllegalStateException.class, () -> SqlText.of(Row.class));
        assertThrows(IllegalStateException.class, () -> text.statement("no such"));
        assertThrows(IllegalStateException.class, () -> text.statement("one row", List.of("even")));
        assertThrows(IllegalStateException.class, () -> text.statement("numbers", List.of("odd")));
    }

    @Test
    void nameGivenTwice_isRefused() {
        assertThrows(IllegalStateException.class, () -> SqlText.of(Twice.class));
    }

    /** Beside it lies a resource that names a statement twice. */
    private static final class Twice {}
}

package org.benchtrail.platform.sql;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.sql.SQLException;
import org.benchtrail.platform.Causes;

/** The database refuses a statement because the account that sends it has no right to it. */
public final class NoRight {
    private NoRight() {}

    public static void assertRefused(Runnable work) {
        RuntimeException refused = assertThrows(RuntimeException.class, work::run);
        assertTrue(
                Causes.of(refused).stream()
                        .anyMatch(one -> one instanceof SQLException sql && "42501".equals(sql.getSQLState())),
                refused::toString);
    }
}

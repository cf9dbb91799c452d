package org.benchtrail.core;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.atomic.LongAdder;

/**
 * Checks against something outside the project: a published standard, a handbook's table, a general-purpose library. Each
 * check names its source; a run ends with how many checks every source carried.
 */
public final class Published {
    private static final Map<String, LongAdder> COUNTS = new ConcurrentSkipListMap<>();

    static {
        Runtime.getRuntime().addShutdownHook(new Thread(Published::print));
    }

    private Published() {}

    /** Asserts that {@code actual} lies within {@code tolerance} of the published value; a tolerance of 0 asks for equality. */
    public static void check(String source, double expected, double actual, double tolerance) {
        if (tolerance == 0) {
            assertEquals(expected, actual, source);
        } else {
            assertEquals(expected, actual, tolerance, source);
        }
        count(source);
    }

    /** Asserts that {@code actual} equals what is published. */
    public static void check(String source, Object expected, Object actual) {
        assertEquals(expected, actual, source);
        count(source);
    }

    private static void count(String source) {
        COUNTS.computeIfAbsent(source, s -> new LongAdder()).increment();
    }

    private static void print() {
        StringBuilder table = new StringBuilder("checks against published sources:\n");
        long sum = 0;
        for (Map.Entry<String, LongAdder> entry : COUNTS.entrySet()) {
            table.append("  ")
                    .append(entry.getKey())
                    .append(": ")
                    .append(entry.getValue())
                    .append('\n');
            sum += entry.getValue().sum();
        }
        System.out.print(table.append("  together: ").append(sum).append('\n'));
    }
}

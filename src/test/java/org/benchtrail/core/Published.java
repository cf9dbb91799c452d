package org.benchtrail.core;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.atomic.LongAdder;

/** Checks against something outside the project, counted by source. */
public final class Published {
    private static final Map<String, LongAdder> COUNTS = new ConcurrentSkipListMap<>();

    private Published() {}

    public static void check(String source, double expected, double actual, double tolerance) {
        COUNTS.computeIfAbsent(source, s -> new LongAdder()).increment();
        assertEquals(expected, actual, tolerance, source);
    }

    public static void check(String source, Object expected, Object actual) {
        COUNTS.computeIfAbsent(source, s -> new LongAdder()).increment();
        assertEquals(expected, actual, source);
    }
}

package org.benchtrail.platform.database;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class RestartsTest {
    private final Restarts restarts = new Restarts(3, Duration.ofMinutes(10));

    private boolean takeAt(double minutes) {
        return restarts.take((long) (minutes * 60e9));
    }

    @Test
    void threeInTenMinutes_andNoFourth() {
        assertTrue(takeAt(0) && takeAt(4) && takeAt(8));
        assertFalse(takeAt(9.99));
    }

    @Test
    void oneMore_onceTheFirstIsTenMinutesOld() {
        assertTrue(takeAt(0) && takeAt(4) && takeAt(8) && takeAt(10));
        assertFalse(takeAt(13.9));
        assertTrue(takeAt(14));
    }

    @Test
    void refused_takesNone() {
        assertTrue(takeAt(-5) && takeAt(-4) && takeAt(-3));
        assertFalse(takeAt(0));
        assertTrue(takeAt(5));
    }
}

package org.benchtrail.platform;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class LongWorkTest {
    @Test
    void tellsHowFarItIs_butNotAtEachStep() {
        List<String> told = new ArrayList<>();
        LongWork each = new LongWork(told::add, Duration.ZERO);
        each.at(256, 1000, "leaves");
        each.at(512, 1000, "leaves");
        assertEquals(List.of("  256 of 1000 leaves", "  512 of 1000 leaves"), told);
        told.clear();
        LongWork seldom = new LongWork(told::add, Duration.ofDays(1));
        seldom.at(256, 1000, "leaves");
        assertEquals(List.of(), told);
    }
}

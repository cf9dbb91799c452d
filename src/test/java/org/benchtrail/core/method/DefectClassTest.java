package org.benchtrail.core.method;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** By the table of classes: a minor one makes no defective ticket; a reviewer raises freely and lowers by one. */
class DefectClassTest {
    @Test
    void minor_makesNoTicketDefective() {
        assertFalse(DefectClass.MINOR.counts());
        assertTrue(DefectClass.MAJOR.counts());
        assertTrue(DefectClass.CRITICAL.counts());
    }

    @Test
    void raisedFreely_loweredByOne() {
        assertEquals(List.of("minor", "major", "critical"), instead(DefectClass.MINOR));
        assertEquals(List.of("minor", "major", "critical"), instead(DefectClass.MAJOR));
        assertEquals(List.of("major", "critical"), instead(DefectClass.CRITICAL));
    }

    private static List<String> instead(DefectClass usual) {
        return Arrays.stream(DefectClass.values())
                .filter(other -> other.insteadOf(usual))
                .map(DefectClass::words)
                .toList();
    }

    @Test
    void eachSaysWhatItMeans() {
        assertEquals("Somebody or somebody's data could have been harmed", DefectClass.CRITICAL.meaning());
    }
}

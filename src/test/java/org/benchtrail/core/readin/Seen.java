package org.benchtrail.core.readin;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.junit.jupiter.api.function.Executable;

/** Short ways to look at what was read in. */
final class Seen {
    private Seen() {}

    /** The reading of a quantity at a point, by their exact words. */
    static ReadingRecorded reading(ReadIn found, String quantity, String point) {
        return found.readings().stream()
                .filter(r -> r.quantity().equals(quantity) && r.point().equals(point))
                .findFirst()
                .orElseThrow(() -> new AssertionError(quantity + " at " + point + " is not in " + found.readings()));
    }

    static double value(ReadIn found, String quantity, String point) {
        return Double.parseDouble(reading(found, quantity, point).value());
    }

    static void assertRefused(String field, String reason, Executable reader) {
        Invalid refusal = assertThrows(Invalid.class, reader);
        assertTrue(
                refusal.problems().stream()
                        .anyMatch(p -> p.field().equals(field) && p.sentence().contains(reason)),
                refusal::getMessage);
    }
}

package org.benchtrail.core.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.Published;
import org.benchtrail.core.method.Requirements;
import org.junit.jupiter.api.Test;

/** What reviews say of one requirement in somebody's work: a share is told from thirty marks on, and counts before. */
class CoachedTest {
    private static Coached of(int judged, int faulty) {
        return new Coached(
                Requirements.of("scope-known").orElseThrow(), judged, Collections.nCopies(faulty, "40718-6"));
    }

    @Test
    void aShare_isToldFromThirty() {
        assertEquals(Optional.empty(), of(29, 9).share());
        String source = "Wilson's score interval of 9 in 30, recomputed with exact fractions";
        Published.check(source, 0.166647, of(30, 9).share().orElseThrow().lower(), 5e-7);
        Published.check(source, 0.478758, of(30, 9).share().orElseThrow().upper(), 5e-7);
        assertTrue(of(31, 9).share().isPresent());
    }

    @Test
    void whereNothingWasReviewed_nothingIsToLearn() {
        assertEquals(List.of(), Coached.of(List.of()));
    }
}

package org.benchtrail.core.training;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.benchtrail.core.method.Requirements;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CoachTrialTest {
    private static final String SCIPY = "size of a test of the coach, recomputed in Python 3";

    /** The table of the design, 25 requirements a job, and the size with those that are judged here. */
    @ParameterizedTest
    @CsvSource({
        "90, 1, 0, 112, 112",
        "85, 1, 0, 158, 158",
        "90, 25, 5, 245, 10",
        "90, 25, 10, 379, 16",
        "85, 25, 5, 347, 14",
        "85, 25, 10, 537, 22",
        "90, 22, 5, 229, 11",
        "85, 22, 5, 324, 15",
    })
    void size_isThatOfTheTable(int expected, int aJob, int correlation, int occasions, int jobs) {
        int needed = CoachTrial.occasions(10, expected, aJob, correlation);
        Published.check(SCIPY, occasions, needed);
        Published.check(SCIPY, jobs, CoachTrial.jobs(needed, aJob));
    }

    /** Eleven jobs an arm are needed at 90 %, 10 points and 5 %. */
    @Test
    void aPlan_isAsLargeAsItsMarginAsks() {
        assertDoesNotThrow(() -> new CoachTrial(10, 90, 5, 11, 1));
        assertDoesNotThrow(() -> new CoachTrial(10, 90, 5, 6, 2));
        assertEquals("people", refused(10, 90, 5, 10, 1));
        assertEquals("people", refused(10, 90, 5, 5, 2));
        assertEquals(11, new CoachTrial(10, 90, 5, 11, 1).jobsNeeded());
    }

    @Test
    void aPlan_keepsToWhatCanBeSaid() {
        assertDoesNotThrow(() -> new CoachTrial(30, 99, 0, 5, 1));
        assertEquals("margin", refused(0, 90, 5, 20, 2));
        assertEquals("margin", refused(31, 90, 5, 20, 2));
        assertEquals("expected", refused(10, 49, 5, 20, 2));
        assertEquals("expected", refused(10, 100, 5, 20, 2));
        assertEquals("correlation", refused(10, 90, 51, 20, 2));
        assertEquals("correlation", refused(10, 90, -1, 20, 2));
        assertEquals("people", refused(30, 90, 0, 4, 12));
        assertEquals("people", refused(10, 90, 5, 201, 2));
        assertEquals("jobsEach", refused(10, 90, 5, 200, 0));
        assertEquals("jobsEach", refused(10, 90, 5, 20, 13));
    }

    private static String refused(int margin, int expected, int correlation, int people, int jobsEach) {
        return assertThrows(Invalid.class, () -> new CoachTrial(margin, expected, correlation, people, jobsEach))
                .problems()
                .get(0)
                .field();
    }

    @Test
    void itsWords_nameItsNumbers_andItsCodesAreRequirements() {
        CoachTrial plan = new CoachTrial(12, 90, 5, 9, 2);
        assertTrue(plan.question().contains("12 points"), plan.question());
        assertTrue(plan.stopRule().contains("9 people have ended 2 jobs"), plan.stopRule());
        assertTrue(plan.analysis().contains("below 12 points"), plan.analysis());
        CoachTrial.JUDGED.forEach(code -> assertTrue(Requirements.of(code).isPresent(), code));
        assertEquals(
                CoachTrial.JUDGED.size(),
                List.copyOf(new java.util.TreeSet<>(CoachTrial.JUDGED)).size());
    }

    /** Where the test did not show it, texts fade two to five occasions later: 0.85^n below 1 - c. */
    @ParameterizedTest
    @CsvSource({"EXAMPLE, 10", "COMPLETION, 15", "PROMPT, 19"})
    void theStricterBound_takesMoreOccasions(CoachLevel level, int occasions) {
        assertTrue(level.isLeftBy(occasions, occasions, CoachLevel.STRICTER));
        assertEquals(false, level.isLeftBy(occasions - 1, occasions - 1, CoachLevel.STRICTER));
    }
}

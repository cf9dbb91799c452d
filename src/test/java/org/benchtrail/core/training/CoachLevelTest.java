package org.benchtrail.core.training;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.Map;
import org.benchtrail.core.Published;
import org.benchtrail.core.statistics.Proportion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CoachLevelTest {
    private static final String SCIPY =
            "one-sided Clopper-Pearson bound, recomputed with scipy.stats.beta (SciPy 1.17.1)";
    private static final String PATHS =
            "chance ever to drop within 30 occasions, all paths, recomputed with SciPy 1.17.1";

    /** The least that drops a level, and one success less. */
    @ParameterizedTest
    @CsvSource({
        "EXAMPLE, 0.80, 8, 8, 0.817765434",
        "EXAMPLE, 0.80, 13, 14, 0.800831239",
        "EXAMPLE, 0.80, 19, 21, 0.807088898",
        "EXAMPLE, 0.80, 24, 27, 0.805159504",
        "COMPLETION, 0.90, 11, 11, 0.811130831",
        "COMPLETION, 0.90, 17, 18, 0.800532407",
        "COMPLETION, 0.90, 23, 25, 0.800864906",
        "COMPLETION, 0.90, 29, 32, 0.803011141",
        "PROMPT, 0.95, 14, 14, 0.807363824",
        "PROMPT, 0.95, 21, 22, 0.801877868",
        "PROMPT, 0.95, 28, 30, 0.804673956",
        "PROMPT, 0.95, 34, 37, 0.80357106",
    })
    void aLevel_goes_atTheFirstBoundAboveFourOfFive(
            CoachLevel level, double confidence, int met, int looked, double bound) {
        Published.check(SCIPY, bound, new Proportion(met, looked).exactLowerBound(confidence), 1e-8);
        assertTrue(level.isLeftBy(met, looked, CoachLevel.MET));
        assertFalse(level.isLeftBy(met - 1, looked - 1, CoachLevel.MET), "one occasion less");
        assertFalse(level.isLeftBy(met - 1, looked, CoachLevel.MET), "one miss more");
    }

    @Test
    void bound_isTheRootOfTheBinomialTail() {
        // n = k: p^k = 1 - c; none met: nothing is shown
        assertEquals(Math.pow(0.2, 1.0 / 8), new Proportion(8, 8).exactLowerBound(0.80), 1e-12);
        assertEquals(0, new Proportion(0, 5).exactLowerBound(0.80));
        assertEquals(
                new Proportion(13, 14).clopperPearson(0.9).lower(),
                new Proportion(13, 14).exactLowerBound(0.95),
                1e-12);
    }

    @Test
    void nothingSeen_leavesNoLevel_andNothingIsBelowSilent() {
        for (CoachLevel level : CoachLevel.values()) {
            assertFalse(level.isLeftBy(0, 0, CoachLevel.MET));
        }
        assertFalse(CoachLevel.SILENT.isLeftBy(1000, 1000, CoachLevel.MET));
        assertEquals(CoachLevel.SILENT, CoachLevel.SILENT.down());
        assertEquals(CoachLevel.EXAMPLE, CoachLevel.EXAMPLE.up());
        assertEquals(CoachLevel.PROMPT, CoachLevel.SILENT.atLeast(CoachLevel.PROMPT));
        assertEquals(CoachLevel.EXAMPLE, CoachLevel.EXAMPLE.atLeast(CoachLevel.PROMPT));
    }

    /** Looked at after every job, so oftener than a single look would be wrong. */
    @ParameterizedTest
    @CsvSource({
        "EXAMPLE, 0.6, 0.0220", "EXAMPLE, 0.7, 0.0932", "EXAMPLE, 0.75, 0.1814", "EXAMPLE, 0.8, 0.3326",
        "EXAMPLE, 0.9, 0.8064", "EXAMPLE, 0.95, 0.9724", "COMPLETION, 0.6, 0.0045", "COMPLETION, 0.7, 0.0307",
        "COMPLETION, 0.75, 0.0739", "COMPLETION, 0.8, 0.1666", "COMPLETION, 0.9, 0.6143", "COMPLETION, 0.95, 0.9002",
        "PROMPT, 0.6, 0.0009", "PROMPT, 0.7, 0.0100", "PROMPT, 0.75, 0.0302", "PROMPT, 0.8, 0.0855",
        "PROMPT, 0.9, 0.4882", "PROMPT, 0.95, 0.8468",
    })
    void chanceEverToDrop_withinThirtyOccasions(CoachLevel level, double rate, double chance) {
        Published.check(PATHS, chance, everDropped(level, rate, 30), 6e-5);
    }

    private static double everDropped(CoachLevel level, double rate, int occasions) {
        Map<Integer, Double> waiting = new HashMap<>(Map.of(0, 1.0));
        double dropped = 0;
        for (int looked = 1; looked <= occasions; looked++) {
            Map<Integer, Double> next = new HashMap<>();
            for (Map.Entry<Integer, Double> at : waiting.entrySet()) {
                for (int met = at.getKey(); met <= at.getKey() + 1; met++) {
                    double chance = at.getValue() * (met > at.getKey() ? rate : 1 - rate);
                    if (level.isLeftBy(met, looked, CoachLevel.MET)) {
                        dropped += chance;
                    } else {
                        next.merge(met, chance, Double::sum);
                    }
                }
            }
            waiting = next;
        }
        return dropped;
    }
}

package org.benchtrail.core.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.junit.jupiter.api.Test;

class KappaTest {
    private static final String TEXTBOOK = "50 grant proposals, a textbook example of Cohen's kappa";
    private static final String COHEN = "Cohen 1968 table 1 (proportions seen in a package's sample)";
    private static final String ERROR = "Fleiss, Cohen and Everitt 1969, recomputed";

    private static void check(String source, long[][] table, double agreed, double chance, double kappa, double error) {
        Kappa found = Kappa.of(table);
        Published.check(source, agreed, found.agreement(), 5e-7);
        Published.check(source, chance, found.byChance(), 5e-7);
        Published.check(source, kappa, found.kappa().orElseThrow(), 5e-7);
        Published.check(ERROR, error, found.error().orElseThrow(), 5e-7);
    }

    @Test
    void publishedTables() {
        check(TEXTBOOK, new long[][] {{20, 5}, {10, 15}}, 0.70, 0.50, 0.40, 0.126996);
        check(COHEN, new long[][] {{88, 14, 18}, {10, 40, 10}, {2, 6, 12}}, 0.70, 0.41, 0.491525, 0.051002);
        check(ERROR, new long[][] {{90, 2}, {3, 5}}, 0.95, 0.8612, 0.639769, 0.148970);
    }

    /** By the table's own numbers: 0.40 and 1.959964 times 0.126996 to either side. */
    @Test
    void interval_staysWithinWhatKappaCanBe() {
        Interval found =
                Kappa.of(new long[][] {{20, 5}, {10, 15}}).interval(0.95).orElseThrow();
        Published.check(ERROR, 0.151092, found.lower(), 5e-7);
        Published.check(ERROR, 0.648908, found.upper(), 5e-7);
        assertEquals(
                1,
                Kappa.of(new long[][] {{9, 1}, {0, 9}})
                        .interval(0.95)
                        .orElseThrow()
                        .upper());
        assertTrue(Kappa.of(new long[][] {{9, 0}, {0, 0}}).interval(0.95).isEmpty());
    }

    /** The older formula takes chance for known: it gives another error for the same table than the one that is shown. */
    @Test
    void olderFormulaOfTheError_isAnother() {
        Kappa found = Kappa.of(new long[][] {{20, 5}, {10, 15}});
        double free = 1 - found.byChance();
        Published.check(
                "Cohen 1960, recomputed",
                0.129615,
                Math.sqrt(found.agreement() * (1 - found.agreement()) / (50 * free * free)),
                5e-7);
        assertTrue(found.error().orElseThrow() < 0.127);
    }

    /** Where nearly all is satisfied, readers who agree on 94 of 100 have a kappa below 0. */
    @Test
    void highAgreement_mayBeNoMoreThanChance() {
        check(ERROR, new long[][] {{94, 3}, {3, 0}}, 0.94, 0.9418, -0.030928, 0.012620);
    }

    @Test
    void allInOneCell_hasNoKappa() {
        Kappa same = Kappa.of(new long[][] {{40, 0}, {0, 0}});
        assertEquals(1, same.agreement());
        assertTrue(same.kappa().isEmpty() && same.error().isEmpty());
        assertEquals(0, Kappa.of(new long[][] {{0, 40}, {0, 0}}).kappa().orElseThrow());
        assertThrows(Invalid.class, () -> Kappa.of(new long[][] {{0, 0}, {0, 0}}));
        assertThrows(Invalid.class, () -> Kappa.of(new long[][] {{1, 0}}));
    }
}

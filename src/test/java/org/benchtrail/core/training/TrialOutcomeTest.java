package org.benchtrail.core.training;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.Published;
import org.benchtrail.core.statistics.Interval;
import org.benchtrail.core.statistics.Proportion;
import org.benchtrail.core.training.TrialOutcome.Shares;
import org.junit.jupiter.api.Test;

class TrialOutcomeTest {
    private static final String PYTHON = "one-sided t bound and beta quantiles, recomputed in Python 3 by quadrature";

    /** With the coach 50 of 100, without as many fewer as the difference says. */
    private static Shares person(int points) {
        return new Shares(new Proportion(50, 100), new Proportion(50 - points, 100));
    }

    private static List<Shares> people(int... points) {
        List<Shares> people = new ArrayList<>();
        for (int one : points) {
            people.add(person(one));
        }
        return people;
    }

    private static CoachTrial plan(int margin, int people) {
        return new CoachTrial(margin, 99, 0, people, 12);
    }

    @Test
    void bound_isThatOfPairedDifferences() {
        TrialOutcome outcome =
                TrialOutcome.of(plan(10, 8), people(5, -2, 10, 0, 3, -5, 7, 2)).orElseThrow();
        Published.check(PYTHON, 0.025, outcome.difference(), 1e-12);
        Published.check(PYTHON, 0.017217101133, outcome.error(), 1e-10);
        Published.check(PYTHON, 0.057619151449, outcome.upper(), 1e-8);
        assertTrue(outcome.notWorse());
    }

    /** No figure before the size is reached, and none of who came later. */
    @Test
    void nothingIsSaid_beforeTheSize_andLaterPeopleChangeNothing() {
        assertEquals(Optional.empty(), TrialOutcome.of(plan(10, 8), people(5, -2, 10, 0, 3, -5, 7)));
        assertEquals(Optional.empty(), TrialOutcome.of(plan(10, 8), List.of()));
        assertEquals(
                TrialOutcome.of(plan(10, 8), people(5, -2, 10, 0, 3, -5, 7, 2)),
                TrialOutcome.of(plan(10, 8), people(5, -2, 10, 0, 3, -5, 7, 2, 40, 40)));
    }

    /** At, under and over the margin; without scatter the bound is the mean. */
    @Test
    void aBound_atTheMargin_isNotBelowIt() {
        assertTrue(notWorse(10, people(9, 9, 9, 9, 9)));
        assertFalse(notWorse(10, people(10, 10, 10, 10, 10)));
        assertFalse(notWorse(10, people(11, 11, 11, 11, 11)));
        assertFalse(notWorse(7, people(7, 7, 7, 7, 7)), "7 of 100 is no less than 7 points");
        assertTrue(notWorse(8, people(7, 7, 7, 7, 7)));
        assertFalse(notWorse(10, people(-30, 30, -30, 30, 0)), "none the worse on average, and nothing is shown");
        assertTrue(notWorse(10, people(-20, -25, -15, -20, -20)), "better without");
    }

    private static boolean notWorse(int margin, List<Shares> people) {
        return TrialOutcome.of(plan(margin, people.size()), people)
                .orElseThrow()
                .notWorse();
    }

    @Test
    void onePerson_hasAnInterval_wideAsTheirFewJobs() {
        Interval alone = TrialOutcome.alone(new Proportion(38, 44), 2.05);
        Published.check(PYTHON, 0.6474876, alone.lower(), 1e-6);
        Published.check(PYTHON, 0.9717300, alone.upper(), 1e-6);
        Interval independent = TrialOutcome.alone(new Proportion(38, 44), 1);
        assertEquals(new Proportion(38, 44).clopperPearson(0.95).lower(), independent.lower(), 1e-12);
        assertEquals(0, TrialOutcome.alone(new Proportion(0, 22), 2).lower());
        assertEquals(1, TrialOutcome.alone(new Proportion(22, 22), 2).upper());
    }
}

package org.benchtrail.core.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.junit.jupiter.api.Test;

class ScoresTest {
    private static final String BRIER = "Brier (1950), one class counted, recomputed";
    private static final String LOG = "logarithmic score (Good 1952), recomputed";
    private static final String LITTLE = "Little (1961), recomputed";

    @Test
    void both_fourForecasts() {
        double[] p = {0.9, 0.7, 0.3, 0.6};
        boolean[] o = {true, true, false, false};
        Published.check(BRIER, 0.1375, Scores.brier(p, o), 1e-12);
        Published.check(LOG, 0.433750, Scores.logarithmic(p, o), 5e-7);
        Published.check(LOG, 0.625769, Scores.logarithmic(p, o) / Math.log(2), 5e-7);
    }

    @Test
    void both_singleForecasts() {
        single(0.8, true, 0.04, 0.223144);
        single(0.8, false, 0.64, 1.609438);
        single(0.5, true, 0.25, 0.693147);
        single(1, true, 0, 0);
        single(0, false, 0, 0);
    }

    private static void single(double p, boolean happened, double brier, double nats) {
        Published.check(BRIER, brier, Scores.brier(new double[] {p}, new boolean[] {happened}), 1e-12);
        Published.check(LOG, nats, Scores.logarithmic(new double[] {p}, new boolean[] {happened}), 5e-7);
    }

    @Test
    void logarithmic_certainAndWrong_isInfiniteNotClamped() {
        double wrong = Scores.logarithmic(new double[] {0.9, 1}, new boolean[] {true, false});
        assertEquals(Double.POSITIVE_INFINITY, wrong);
        assertEquals(Double.POSITIVE_INFINITY, Scores.logarithmic(new double[] {0}, new boolean[] {true}));
        assertEquals(1, Scores.brier(new double[] {1}, new boolean[] {false}));
    }

    @Test
    void both_outsideTheirDomain_areRefused() {
        assertThrows(Invalid.class, () -> Scores.brier(new double[] {1.1}, new boolean[] {true}));
        assertThrows(Invalid.class, () -> Scores.logarithmic(new double[] {Double.NaN}, new boolean[] {true}));
        assertThrows(Invalid.class, () -> Scores.brier(new double[0], new boolean[0]));
        assertThrows(Invalid.class, () -> Scores.brier(new double[] {0.5}, new boolean[0]));
    }

    @Test
    void littlesLaw_eachWay() {
        Published.check(LITTLE, 20.0, LittlesLaw.inside(2.5, 8), 0);
        Published.check(LITTLE, 8.0, LittlesLaw.stay(40, 5), 0);
        Published.check(LITTLE, 40.0, LittlesLaw.arrivalRate(60, 1.5), 0);
        assertThrows(Invalid.class, () -> LittlesLaw.stay(40, 0));
        assertThrows(Invalid.class, () -> LittlesLaw.arrivalRate(40, 0));
        assertThrows(Invalid.class, () -> LittlesLaw.inside(-1, 2));
        assertThrows(Invalid.class, () -> LittlesLaw.inside(Double.NaN, 2));
    }
}

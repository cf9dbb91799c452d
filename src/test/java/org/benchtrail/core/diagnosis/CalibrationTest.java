package org.benchtrail.core.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.benchtrail.core.Published;
import org.junit.jupiter.api.Test;

class CalibrationTest {
    private static Calibration.Forecast stated(double p, boolean hit) {
        return new Calibration.Forecast(List.of(p, 1 - p), hit ? 0 : 1);
    }

    @Test
    void figures_countLeadersByStatedProbability() {
        List<Calibration.Forecast> all = new ArrayList<>();
        for (int k = 0; k < 10; k++) {
            all.add(stated(0.85, k < 6));
        }
        all.add(stated(1, true));
        Calibration.Figures f = Calibration.figures(all);
        assertEquals(11, f.cases());
        assertEquals(10, f.bins().get(8).cases());
        assertEquals(6, f.bins().get(8).hits());
        assertEquals(0.85, f.bins().get(8).meanStated(), 1e-12);
        assertEquals(Calibration.wilson(6, 10), f.bins().get(8).hitRate());
        assertEquals(1, f.bins().get(9).cases());
        assertEquals((8.5 + 1) / 11 - 7 / 11.0, f.overconfidence(), 1e-12);
        assertEquals(new Calibration.ScoreRange(0, 1), f.bins().get(0).hitRate());
    }

    @Test
    void logScore_doesNotLookBelowItsFloor() {
        assertEquals(Math.log(1e4) / Math.log(2), new Calibration.Forecast(List.of(1.0, 0.0), 1).logScore(), 1e-9);
    }

    /**
     * Four forecasts of two causes: .9 right, .8 right, .7 wrong, .6 right. Brier .02, .08, .98, .32: mean .35, deviation
     * .439545, standard error .219773, t(3) 3.182446. Bits .152003, .321928, 1.736966, .736966: mean .736966, deviation
     * .710502, standard error .355251. Lower bounds fall below 0 and stop there.
     */
    @Test
    void scores_haveIntervals() {
        Calibration.Figures f = Calibration.figures(
                List.of(stated(0.9, true), stated(0.8, true), stated(0.7, false), stated(0.6, true)));
        String source =
                "four forecasts worked with Python's statistics module, Student's t of 3 degrees 3.182446 (table)";
        Published.check(source, 0.35, f.brier(), 1e-12);
        Published.check(source, 0.35 + 3.182446 * 0.219773, f.brierRange().high(), 1e-5);
        Published.check(source, 0, f.brierRange().low(), 0);
        Published.check(source, 0.736966, f.logScore(), 1e-6);
        Published.check(source, 0.736966 + 3.182446 * 0.355251, f.logRange().high(), 1e-5);
        assertEquals(0, f.logRange().low());
        assertNull(Calibration.figures(List.of(stated(0.9, true))).brierRange());
    }

    @Test
    void noForecasts_isRefused() {
        assertThrows(IllegalArgumentException.class, () -> Calibration.figures(List.of()));
    }

    /** Two copies of each observation, counted as two: an exponent of one half undoes it, and is found. */
    private static List<Calibration.Replay> doubled(int cases) {
        Random r = new Random(3);
        List<Finding> findings = new ArrayList<>();
        List<Deviation> touched = new ArrayList<>();
        for (int f = 0; f < 6; f++) {
            findings.add(Invented.answer("f" + f, 0.3, 1));
            touched.add(Invented.yes("f" + f, 0.6));
        }
        CauseCategory c = Invented.category(
                240,
                findings,
                List.of(
                        Invented.cause("a", 1, Invented.repair(5, 0.9), touched.toArray(new Deviation[0])),
                        Invented.cause("b", 1, Invented.repair(5, 0.9))));
        Model m = new Model(c, ModelSettings.STANDARD.withUnlisted(0));
        List<Calibration.Replay> all = new ArrayList<>();
        for (int k = 0; k < cases; k++) {
            boolean a = r.nextBoolean();
            Evidence e = Evidence.NONE;
            for (int pair = 0; pair < 3; pair++) {
                String value = r.nextDouble() < (a ? 0.6 : 0.3) ? "yes" : "no";
                e = e.with(Invented.report("f" + 2 * pair, value, 0.98, 2 * pair));
                e = e.with(Invented.report("f" + (2 * pair + 1), value, 0.98, 2 * pair + 1));
            }
            all.add(new Calibration.Replay(m, e, a ? "a" : "b"));
        }
        return all;
    }

    @Test
    void beta_findsTheExponentThatUndoesDoubleCounting() {
        double beta = Calibration.beta(doubled(1500));
        assertTrue(beta > 0.4 && beta < 0.65, "beta " + beta);
    }

    @Test
    void beta_isLeftAtOneForFewCases() {
        assertEquals(1, Calibration.beta(doubled(49)));
    }

    /** Forecasts that the model itself drew hold: stated and hit rates agree within the interval. */
    @Test
    void ownDraws_areCalibrated() {
        CauseCategory c = Invented.random(4, 8, 10, false);
        Model m = new Model(c, ModelSettings.STANDARD);
        Random r = new Random(8);
        List<Calibration.Forecast> all = new ArrayList<>();
        for (int k = 0; k < 4000; k++) {
            int truth = draw(r, m);
            Evidence e = Evidence.NONE;
            for (int f = 0; f < 3; f++) {
                LikelihoodTable t = m.table(f);
                boolean yes = r.nextDouble() < 0.95 * t.row(truth, m.size())[1] + 0.025;
                if (m.finding(f).group() == null) {
                    e = e.with(Invented.report("f" + f, yes ? "yes" : "no", 0.95, f));
                }
            }
            all.add(Calibration.Forecast.of(Ranking.of(m, e), m.id(truth)));
        }
        assertEquals(0, Calibration.figures(all).overconfidence(), 0.025);
    }

    private static int draw(Random r, Model m) {
        double x = r.nextDouble();
        int i = 0;
        while (i < m.size() && (x -= m.prior(i)) >= 0) {
            i++;
        }
        return i;
    }
}

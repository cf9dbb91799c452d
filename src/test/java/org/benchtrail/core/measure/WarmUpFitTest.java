package org.benchtrail.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeout;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.Random;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.benchtrail.core.measure.WarmUpFit.Flag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WarmUpFitTest {
    private static final String MODEL = "first-order lumped model, textbook formula recomputed in SciPy";
    private static final String SCIPY = "SciPy least squares, recomputed";
    private static final String CURVE_FIT = "SciPy 1.17 curve_fit on the same samples";
    private static final String MISRA = "NIST StRD nonlinear regression, Misra1a, certified values (seen)";
    private static final String BOXBOD = "NIST StRD nonlinear regression, BoxBOD, certified values (seen)";
    private static final double[] TIMES = {0, 20, 40, 60, 90, 120, 180};
    private static final Series NOISY = Series.of(TIMES, new double[] {25.0, 48.5, 63.0, 71.5, 78.8, 82.1, 84.2});

    @Test
    void course_textbookValues() {
        FirstOrder course = new FirstOrder(85, 25, 40, 0);
        Published.check(MODEL, 62.927234, course.at(40), 5e-7);
        Published.check(MODEL, 82.012776, course.at(120), 5e-7);
        Published.check(MODEL, 84.595723, course.at(200), 5e-7);
        Published.check(MODEL, 84.595723, course.at(200), 5e-7);
        Published.check(MODEL, 99.396266, course.timeTo(80).orElseThrow(), 5e-7);
        Published.check(
                MODEL, 153.896961, new FirstOrder(95, 30, 60, 0).timeTo(90).orElseThrow(), 5e-7);
        String share = "one time constant covers 63.2 % of a step, five cover 99.3 %, textbook";
        Published.check(share, 63.2, 100 * (course.at(40) - 25) / 60, 0.05);
        Published.check(share, 99.3, 100 * (course.at(200) - 25) / 60, 0.05);
        assertTrue(course.timeTo(25).isEmpty());
        assertTrue(course.timeTo(85).isEmpty());
        assertTrue(course.timeTo(20).isEmpty());
        assertThrows(Invalid.class, () -> new FirstOrder(85, 25, 0, 0));
    }

    @Test
    void of_readingsWithScatter() {
        WarmUpFit fit = WarmUpFit.of(NOISY);
        Published.check(SCIPY, 84.991626, fit.curve().settled(), 5e-7);
        Published.check(SCIPY, 24.962998, fit.curve().initial(), 5e-7);
        Published.check(SCIPY, 39.973938, fit.curve().timeConstant(), 5e-7);
        Published.check(SCIPY, 0.0687133, fit.squares(), 5e-8);
        Published.check(SCIPY, 0.131066, fit.residualDeviation(), 5e-7);
        Published.check(CURVE_FIT, 0.11324473, fit.settledError(), 1e-5);
        Published.check(CURVE_FIT, 0.25351007, fit.timeConstantError(), 1e-5);
        assertEquals(4, fit.degreesOfFreedom());
        assertEquals(Set.of(), fit.flags());
    }

    @Test
    void from_knownStart() {
        WarmUpFit fit = WarmUpFit.from(0, 25.0, NOISY);
        Published.check(SCIPY, 84.997812, fit.curve().settled(), 5e-7);
        Published.check(SCIPY, 40.008882, fit.curve().timeConstant(), 5e-7);
        Published.check(CURVE_FIT, 0.10066038, fit.settledError(), 1e-5);
        Published.check(CURVE_FIT, 0.20282306, fit.timeConstantError(), 1e-5);
        assertEquals(25.0, fit.curve().initial());
        assertEquals(0, fit.initialError());
        assertEquals(5, fit.degreesOfFreedom());
    }

    @Test
    void of_readingsRoundedToHundredths() {
        WarmUpFit fit = WarmUpFit.of(Series.of(TIMES, new double[] {25, 48.61, 62.93, 71.61, 78.68, 82.01, 84.33}));
        // The note of reference values ends in ...643; SciPy at its tightest tolerance gives 84.9966425.
        Published.check(SCIPY, 84.9966425, fit.curve().settled(), 5e-7);
        Published.check(SCIPY, 24.999901, fit.curve().initial(), 5e-7);
        Published.check(SCIPY, 39.992635, fit.curve().timeConstant(), 5e-7);
    }

    /** y = b1(1 − exp(−b2·x)): it settles at b1, starts at 0, and its time constant is 1/b2. */
    @Test
    void from_certifiedDataSets() {
        Series misra = Series.of(
                new double[] {
                    77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0
                },
                new double[] {
                    10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78
                });
        certified(
                MISRA, misra, 2.3894212918e+02, 5.5015643181e-04, 2.7070075241e+00, 7.2668688436e-06, 1.0187876330e-01);
        assertTrue(WarmUpFit.from(0, 0, misra).flags().contains(Flag.SHORT_RECORD));
        Series boxbod = Series.of(new double[] {1, 2, 3, 5, 7, 10}, new double[] {109, 149, 149, 191, 213, 224});
        certified(
                BOXBOD,
                boxbod,
                2.1380940889e+02,
                5.4723748542e-01,
                1.2354515176e+01,
                1.0455993237e-01,
                1.7088072423e+01);
    }

    private static void certified(
            String source, Series series, double b1, double b2, double error1, double error2, double deviation) {
        WarmUpFit fit = WarmUpFit.from(0, 0, series);
        double rate = 1 / fit.curve().timeConstant();
        Published.check(source, b1, fit.curve().settled(), 1e-8 * b1);
        Published.check(source, b2, rate, 1e-8 * b2);
        Published.check(source, error1, fit.settledError(), 1e-7 * error1);
        Published.check(source, error2, fit.timeConstantError() * rate * rate, 1e-7 * error2);
        Published.check(source, deviation, fit.residualDeviation(), 1e-9 * deviation);
    }

    @Test
    void timeTo_thresholdOnTheWay_hasAnInterval() {
        Crossing.At at = assertInstanceOf(Crossing.At.class, WarmUpFit.of(NOISY).timeTo(80, 0.95));
        // The course that the readings were made from reaches 80 at 99.396266.
        assertTrue(at.interval().contains(99.396266), at.toString());
        assertTrue(at.interval().upper() - at.interval().lower() < 4, at.toString());
    }

    @Test
    void timeTo_thresholdOffTheWay_saysWhichSide() {
        WarmUpFit fit = WarmUpFit.of(NOISY);
        assertInstanceOf(Crossing.AlreadyThere.class, fit.timeTo(20, 0.95));
        assertEquals(new Crossing.Never(true), fit.timeTo(95, 0.95));
        assertEquals(new Crossing.Never(false), fit.timeTo(85.05, 0.95));
        Series cooling = Series.of(new double[] {0, 10, 20, 30, 60}, new double[] {90, 65, 50, 41, 30});
        assertInstanceOf(Crossing.AlreadyThere.class, WarmUpFit.of(cooling).timeTo(95, 0.95));
        assertInstanceOf(Crossing.Never.class, WarmUpFit.of(cooling).timeTo(10, 0.95));
        assertInstanceOf(Crossing.At.class, WarmUpFit.of(cooling).timeTo(45, 0.95));
    }

    @Test
    void flags_shortRecord_straightLine_coarseSteps_wander() {
        assertTrue(fitOf(t -> 85 - 60 * Math.exp(-t / 40), 0, 30, 31).flags().contains(Flag.SHORT_RECORD));
        assertFalse(fitOf(t -> 85 - 60 * Math.exp(-t / 40), 0, 100, 31).flags().contains(Flag.SHORT_RECORD));
        WarmUpFit line = fitOf(t -> 20 + 0.5 * t, 0, 100, 21);
        assertTrue(line.flags().contains(Flag.STRAIGHT), line.flags().toString());
        assertTrue(fitOf(t -> t == 0 ? 25 : 85 + t % 3, 0, 100, 11).flags().contains(Flag.COARSE));
        WarmUpFit wander = fitOf(t -> 85 - 60 * Math.exp(-t / 40) + 3 * Math.sin(t / 10), 0, 200, 100);
        assertTrue(wander.flags().contains(Flag.SYSTEMATIC), wander.flags().toString());
    }

    @Test
    void timeTo_straightLine_isReadOffTheLine() {
        Crossing crossing = fitOf(t -> 20 + 0.5 * t, 0, 100, 21).timeTo(100, 0.95);
        assertEquals(160, assertInstanceOf(Crossing.At.class, crossing).time(), 1);
    }

    /** A line with scatter: the answer is flagged, and its interval, if there is one, is wide enough to hold the truth. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void timeTo_scatteredLine_givesNoFalseCertainty(long seed) {
        Random random = new Random(seed);
        WarmUpFit fit = fitOf(t -> 20 + 0.5 * t + random.nextGaussian(), 0, 100, 21);
        assertTrue(
                fit.flags().contains(Flag.STRAIGHT) || fit.flags().contains(Flag.SHORT_RECORD),
                "seed " + seed + ": " + fit.flags());
        Crossing crossing = fit.timeTo(300, 0.999);
        if (crossing instanceof Crossing.At at && at.interval() != null) {
            assertTrue(at.interval().contains(560), "seed " + seed + ": " + at);
        } else if (crossing instanceof Crossing.Never never) {
            assertFalse(never.sure(), "seed " + seed + ": " + fit.settled(0.999));
        }
    }

    /** Scatter without any course, at every size and spacing: an answer or a refusal, never a breakdown. */
    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13})
    void of_nothingButScatter_neverBreaks(long seed) {
        Random random = new Random(seed);
        for (int run = 0; run < 200; run++) {
            WarmUpFit fit =
                    fitOf(t -> random.nextInt(4), 0, Math.exp(random.nextGaussian() * 4), 5 + random.nextInt(20));
            for (double threshold = -5; threshold < 9; threshold += 0.7) {
                fit.timeTo(threshold, 0.95);
            }
            assertTrue(fit.settled(0.95).contains(fit.curve().settled()), "seed " + seed + ", run " + run);
            assertTrue(fit.squares() >= 0, "seed " + seed + ", run " + run);
        }
    }

    @Test
    void of_rowsThatCannotBeFitted_areRefused() {
        assertThrows(Invalid.class, () -> WarmUpFit.of(Series.of(new double[] {0, 1, 2}, new double[] {1, 2, 3})));
        assertThrows(
                Invalid.class, () -> WarmUpFit.of(Series.of(new double[] {0, 1, 2, 3}, new double[] {5, 5, 5, 5})));
        assertThrows(Invalid.class, () -> WarmUpFit.from(1, 25, NOISY));
        assertThrows(Invalid.class, () -> WarmUpFit.from(0, Double.NaN, NOISY));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void of_exactCourse_isFoundWhateverItsScale(long seed) {
        Random random = new Random(seed);
        for (int run = 0; run < 40; run++) {
            double tau = Math.exp(random.nextGaussian() * 3);
            double initial = random.nextGaussian() * 100;
            double settled = initial + (random.nextBoolean() ? 1 : -1) * Math.exp(random.nextGaussian() * 2);
            FirstOrder truth = new FirstOrder(settled, initial, tau, 7);
            double last = tau * (0.7 + 6 * random.nextDouble());
            WarmUpFit fit = fitOf(truth::at, 7, 7 + last, 5 + random.nextInt(600));
            String where = "seed " + seed + ": " + truth + " gave " + fit.curve();
            assertEquals(1, fit.curve().timeConstant() / tau, 1e-4, where);
            assertEquals(settled, fit.curve().settled(), 1e-4 * Math.abs(settled - initial), where);
        }
    }

    /** 95 % intervals hold the truth in about 95 % of repetitions: 1000 of them, four standard deviations allowed. */
    @Test
    void intervals_coverAsOftenAsTheySay() {
        Random random = new Random(20260301);
        int tau = 0;
        int time = 0;
        double truth = new FirstOrder(85, 25, 40, 0).timeTo(80).orElseThrow();
        for (int run = 0; run < 1000; run++) {
            WarmUpFit fit = fitOf(t -> 85 - 60 * Math.exp(-t / 40) + random.nextGaussian() * 0.3, 0, 200, 41);
            tau += fit.timeConstant(0.95).contains(40) ? 1 : 0;
            time += ((Crossing.At) fit.timeTo(80, 0.95)).interval().contains(truth) ? 1 : 0;
        }
        assertEquals(950, tau, 28, "seed 20260301");
        assertEquals(950, time, 28, "seed 20260301");
    }

    /** Here plain Gauss-Newton steps go to and fro, each nearly as long as the one before, and end beside the minimum. */
    @Test
    void of_stepsThatTurnBack_endsAtTheMinimum() {
        double[] values = {27.8, 32.9, 35.8, 36.0, 35.3, 34.8, 31.4, 32.4, 32.9, 33.5, 33.1, 32.1, 33.3, 33.0, 36.6};
        double[] times = {
            0, 188.7, 377.3, 566.0, 754.7, 943.4, 1132.0, 1320.7, 1509.4, 1698.0, 1886.7, 2075.4, 2264.1, 2452.7, 2641.4
        };
        Published.check(
                SCIPY,
                77.4485336,
                WarmUpFit.of(Series.of(times, values)).curve().timeConstant(),
                1e-5);
    }

    /** At no other time constant do the two values that fit best there leave smaller squares, however large the scatter. */
    @ParameterizedTest
    @ValueSource(longs = {21, 22})
    void of_muchScatter_isStillTheMinimum(long seed) {
        Random random = new Random(seed);
        for (int k = 0; k < 50; k++) {
            double tau = 5 + 500 * random.nextDouble();
            double scatter = Math.pow(10, 2 * random.nextDouble() - 1);
            double warming = 60 * random.nextDouble() - 30;
            int rows = 8 + random.nextInt(32);
            Series series = sampled(
                    t -> 60 - warming * Math.exp(-t / tau) + scatter * (2 * random.nextDouble() - 1),
                    0,
                    tau * (0.2 + 8 * random.nextDouble()),
                    rows);
            WarmUpFit fit = WarmUpFit.of(series);
            for (int i = -100; i <= 100; i++) {
                double other = fit.curve().timeConstant() * Math.exp(i * i * i / 1.6e5);
                boolean sought = other > series.time(1) / 10 && other < 1000 * series.span();
                double squares = sought ? leastSquaresAt(other, series) : Double.NaN;
                int place = i;
                assertTrue(
                        Double.isNaN(squares) || squares >= fit.squares() * (1 - 1e-9) - 1e-9,
                        () -> "seed " + seed + ", series of " + rows + ", at " + place + ": " + squares + " < "
                                + fit.squares());
            }
        }
    }

    /** Squares left by the straight line through (1 - e, value), the textbook's regression; not a number where e says nothing. */
    private static double leastSquaresAt(double tau, Series series) {
        int n = series.size();
        double meanX = 0;
        double meanY = 0;
        for (int i = 0; i < n; i++) {
            meanX += -Math.expm1(-series.time(i) / tau) / n;
            meanY += series.value(i) / n;
        }
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (int i = 0; i < n; i++) {
            double x = -Math.expm1(-series.time(i) / tau) - meanX;
            double y = series.value(i) - meanY;
            xx += x * x;
            xy += x * y;
            yy += y * y;
        }
        return yy - xy * xy / xx;
    }

    @Test
    void of_tenThousandRows_isQuick() {
        Random random = new Random(1);
        Series series = sampled(t -> 85 - 60 * Math.exp(-t / 1500) + random.nextGaussian(), 0, 10_000, 10_000);
        WarmUpFit fit = assertTimeout(Duration.ofSeconds(5), () -> WarmUpFit.of(series));
        assertTrue(fit.timeConstant(0.9999).contains(1500));
    }

    private interface Course {
        double at(double time);
    }

    private static WarmUpFit fitOf(Course course, double from, double to, int rows) {
        return WarmUpFit.of(sampled(course, from, to, rows));
    }

    private static Series sampled(Course course, double from, double to, int rows) {
        double[] times = new double[rows];
        double[] values = new double[rows];
        for (int i = 0; i < rows; i++) {
            times[i] = from + (to - from) * i / (rows - 1);
            values[i] = course.at(times[i]);
        }
        return Series.of(times, values);
    }
}

package org.benchtrail.core.bench.cooling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.cooling.WarmUp.Input;
import org.benchtrail.core.bench.cooling.WarmUp.Sample;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WarmUpTest {
    private static final String MODEL = "first-order lumped-capacitance model, textbook, recomputed";
    private static final String LEAST_SQUARES = "SciPy 1.17 curve_fit on the same samples";
    private static final double[] TIMES = {0, 20, 40, 60, 90, 120, 180};
    private static final double[] MEASURED = {25.0, 48.5, 63.0, 71.5, 78.8, 82.1, 84.2};
    private static final double[] ROUNDED = {25, 48.61, 62.93, 71.61, 78.68, 82.01, 84.33};

    @Test
    void model() {
        FirstOrderFit curve = new FirstOrderFit(85, 25, 40, 0, 1, 0, 0);
        Published.check(MODEL, 62.927234, curve.at(40), 5e-7);
        Published.check(MODEL, 82.012776, curve.at(120), 5e-7);
        Published.check(MODEL, 84.595723, curve.at(200), 5e-7);
        Published.check(MODEL, 99.396266, curve.reaches(80), 5e-7);
        Published.check(MODEL, 153.896961, new FirstOrderFit(95, 30, 60, 0, 1, 0, 0).reaches(90), 5e-7);
        Published.check(
                "one time constant covers 63.2 % of a step, five cover 99.3 %, textbook",
                63.2, 100 * (curve.at(40) - 25) / 60, 0.05);
        Published.check(
                "one time constant covers 63.2 % of a step, five cover 99.3 %, textbook",
                99.3, 100 * (curve.at(200) - 25) / 60, 0.05);
    }

    @Test
    void leastSquares_threeParameters() {
        FirstOrderFit fit = FirstOrderFit.of(TIMES, MEASURED);
        Published.check(LEAST_SQUARES, 84.991626, fit.settled(), 1e-6);
        Published.check(LEAST_SQUARES, 24.962998, fit.start(), 1e-6);
        Published.check(LEAST_SQUARES, 39.973938, fit.tau(), 1e-6);
        Published.check(LEAST_SQUARES, 0.0687133, fit.sse(), 5e-8);
        Published.check(LEAST_SQUARES, 0.131066, fit.sigma(), 5e-7);
        Published.check(LEAST_SQUARES, 0.11324473, fit.settledError(), 1e-5);
        Published.check(LEAST_SQUARES, 0.25351007, fit.tauError(), 1e-5);
    }

    @Test
    void leastSquares_startKnown() {
        FirstOrderFit fit = FirstOrderFit.from(25.0, TIMES, MEASURED);
        Published.check(LEAST_SQUARES, 84.997812, fit.settled(), 1e-6);
        Published.check(LEAST_SQUARES, 40.008882, fit.tau(), 1e-6);
        Published.check(LEAST_SQUARES, 0.10066038, fit.settledError(), 1e-5);
        Published.check(LEAST_SQUARES, 0.20282306, fit.tauError(), 1e-5);
    }

    @Test
    void leastSquares_roundedData() {
        FirstOrderFit fit = FirstOrderFit.of(TIMES, ROUNDED);
        Published.check(LEAST_SQUARES, 84.996643, fit.settled(), 1e-6);
        Published.check(LEAST_SQUARES, 24.999901, fit.start(), 1e-6);
        Published.check(LEAST_SQUARES, 39.992635, fit.tau(), 1e-6);
    }

    /** Noise-free series give their parameters back, wherever the clock starts, heating or cooling down. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void exactSeries_giveTheirParametersBack(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int row = 0; row < 50; row++) {
            FirstOrderFit truth = new FirstOrderFit(
                    random.nextDouble(20, 110), random.nextDouble(10, 110), random.nextDouble(5, 2000), 0, 1, 0, 0);
            double offset = random.nextDouble(0, 1e5);
            double[] times = new double[random.nextInt(4, 30)];
            double[] values = new double[times.length];
            double span = truth.tau() * random.nextDouble(1.5, 6);
            for (int i = 0; i < times.length; i++) {
                times[i] = offset + span * i / (times.length - 1);
                values[i] = truth.at(times[i] - times[0]);
            }
            FirstOrderFit fit = FirstOrderFit.of(times, values);
            String where = "seed " + seed + ", row " + row;
            assertEquals(truth.settled(), fit.settled(), 1e-5, where);
            assertEquals(truth.start(), fit.start(), 1e-5, where);
            assertEquals(1, fit.tau() / truth.tau(), 1e-5, where);
        }
    }

    /** No other parameters near the fit do better: the fit is a minimum. */
    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14})
    void fit_isAMinimum(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] noisy = MEASURED.clone();
        for (int i = 0; i < noisy.length; i++) {
            noisy[i] += random.nextDouble(-1, 1);
        }
        FirstOrderFit fit = FirstOrderFit.of(TIMES, noisy);
        for (int i = 0; i < 200; i++) {
            FirstOrderFit other = new FirstOrderFit(
                    fit.settled() + random.nextDouble(-1, 1),
                    fit.start() + random.nextDouble(-1, 1),
                    fit.tau() * random.nextDouble(0.9, 1.1),
                    0,
                    1,
                    0,
                    0);
            assertTrue(sse(other, noisy) >= fit.sse(), "seed " + seed);
        }
    }

    private static double sse(FirstOrderFit curve, double[] values) {
        double sum = 0;
        for (int i = 0; i < TIMES.length; i++) {
            sum += Math.pow(values[i] - curve.at(TIMES[i]), 2);
        }
        return sum;
    }

    private static List<Sample> series(double[] values, int count) {
        List<Sample> samples = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            samples.add(new Sample(TIMES[i], values[i]));
        }
        return samples;
    }

    private static List<Sample> series(int count, double step, DoubleUnaryOperator value) {
        List<Sample> samples = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            samples.add(new Sample(i * step, value.applyAsDouble(i * step)));
        }
        return samples;
    }

    private static Result warmUp(List<Sample> samples, Double trip) {
        return new WarmUp().calculate(new Input(samples, null, trip));
    }

    @Test
    void intervals_useStudentsT() {
        Result result = warmUp(series(MEASURED, 7), null);
        String t = "Student's t, 97.5 % at 4 degrees of freedom is 2.776, handbook table";
        Published.check(t, 2.776 * 0.11324473, FigureOf.value(result, "Settles at, give or take"), 1e-4);
        Published.check(t, 2.776 * 0.25351007, FigureOf.value(result, "Time constant, give or take"), 2e-4);
    }

    @Test
    void trip_verdicts() {
        assertEquals(
                "will reach the trip point",
                warmUp(series(MEASURED, 5), 80.0).judgement().words());
        assertEquals(99.4, FigureOf.value(warmUp(series(ROUNDED, 5), 80.0), "Time to the trip point"), 0.2);
        assertEquals(
                "trip point reached while measuring",
                warmUp(series(MEASURED, 7), 80.0).judgement().words());
        assertEquals(99.4, FigureOf.value(warmUp(series(ROUNDED, 7), 80.0), "Time to the trip point"), 0.1);
        assertEquals(
                Level.UNDECIDED, warmUp(series(MEASURED, 7), 84.9).judgement().level());
        assertEquals(
                Level.UNDECIDED, warmUp(series(MEASURED, 7), 85.1).judgement().level());
        assertEquals(Level.GOOD, warmUp(series(MEASURED, 7), 95.0).judgement().level());
        assertFalse(FigureOf.has(warmUp(series(MEASURED, 7), 95.0), "Time to the trip point"));
        assertEquals(Level.BAD, warmUp(series(MEASURED, 7), 20.0).judgement().level());
    }

    @Test
    void shortSeries_isFlagged() {
        List<Sample> samples = series(8, 8, t -> 85 - 60 * Math.exp(-t / 40));
        Result result = warmUp(samples, null);
        assertEquals("end value extrapolated", result.judgement().words());
        assertEquals(Level.CAREFUL, warmUp(samples, 95.0).judgement().level());
        assertEquals(Level.NONE, warmUp(series(MEASURED, 7), null).judgement().level());
    }

    @Test
    void coolingDown_staysBelowATripPointAbove() {
        List<Sample> samples = series(9, 20, t -> 30 + 50 * Math.exp(-t / 40));
        assertEquals(Level.GOOD, warmUp(samples, 90.0).judgement().level());
        assertEquals(Level.BAD, warmUp(samples, 70.0).judgement().level());
    }

    @Test
    void seriesThatCannotBeJudged_areRefused() {
        FigureOf.names(assertThrows(Invalid.class, () -> warmUp(series(MEASURED, 3), null)), "samples");
        FigureOf.names(assertThrows(Invalid.class, () -> warmUp(series(5, 10, t -> 40), null)), "samples");
        FigureOf.names(assertThrows(Invalid.class, () -> warmUp(series(5, 0, t -> 40), null)), "samples[1].seconds");
        FigureOf.names(assertThrows(Invalid.class, () -> warmUp(series(8, 10, t -> 20 + t / 2), null)), "samples");
        FigureOf.names(
                assertThrows(Invalid.class, () -> warmUp(series(8, 10, t -> 20 + t * t / 100), null)), "samples");
    }

    /** Whatever the scatter, a series is fitted or refused: never an exception of another kind, never a figure that is none. */
    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23, 24, 25, 26})
    void noise_isFittedOrRefused(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int row = 0; row < 100; row++) {
            List<Sample> samples = series(random.nextInt(4, 12), 10, t -> random.nextInt(20, 26));
            try {
                warmUp(samples, 24.5)
                        .figures()
                        .forEach(f -> assertTrue(Double.isFinite(f.value()), "seed " + seed + " " + samples));
            } catch (Invalid refused) {
                assertFalse(refused.problems().isEmpty());
            }
        }
    }
}

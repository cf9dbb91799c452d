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
    private static final String LEAST_SQUARES = "SciPy 1.17 curve_fit on the same samples";
    private static final double[] TIMES = {0, 20, 40, 60, 90, 120, 180};
    private static final double[] MEASURED = {25.0, 48.5, 63.0, 71.5, 78.8, 82.1, 84.2};
    private static final double[] ROUNDED = {25, 48.61, 62.93, 71.61, 78.68, 82.01, 84.33};

    private static void checkFit(Result result, double settled, double start, double tau) {
        Published.check(LEAST_SQUARES, settled, FigureOf.value(result, "Settles at"), 1e-6);
        String starts = FigureOf.has(result, "Starts at") ? "Starts at" : "Starts at, as given";
        Published.check(LEAST_SQUARES, start, FigureOf.value(result, starts), 1e-6);
        Published.check(LEAST_SQUARES, tau, FigureOf.value(result, "Time constant"), 1e-6);
    }

    @Test
    void leastSquares_threeParameters() {
        Result result = warmUp(series(MEASURED, 7), null);
        checkFit(result, 84.991626, 24.962998, 39.973938);
        Published.check(LEAST_SQUARES, 0.131066, FigureOf.value(result, "Scatter of the samples"), 5e-7);
    }

    @Test
    void leastSquares_startKnown() {
        checkFit(WarmUp.calculate(new Input(series(MEASURED, 7), 25.0, null)), 84.997812, 25.0, 40.008882);
    }

    @Test
    void leastSquares_roundedData() {
        checkFit(warmUp(series(ROUNDED, 7), null), 84.996643, 24.999901, 39.992635);
    }

    /** The clock may start anywhere. */
    @Test
    void times_countFromTheFirstSample() {
        List<Sample> late = series(MEASURED, 7).stream()
                .map(s -> new Sample(s.seconds() + 1e6, s.temperature()))
                .toList();
        checkFit(warmUp(late, null), 84.991626, 24.962998, 39.973938);
        assertEquals(99.4, FigureOf.value(warmUp(late, 80.0), "Time to the trip point"), 0.2);
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
        return WarmUp.calculate(new Input(samples, null, trip));
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

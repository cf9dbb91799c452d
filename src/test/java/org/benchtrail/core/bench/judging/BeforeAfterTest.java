package org.benchtrail.core.bench.judging;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.math3.stat.inference.TTest;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BeforeAfterTest {
    private static final String SLEEP =
            "Student 1908, sleep data, as R's t.test (from memory) and SciPy 1.17 ttest_ind print it";
    private static final String SCIPY = "SciPy 1.17, ttest_ind with unequal variances";
    private static final String MATH = "Apache Commons Math 3.6.1";
    private static final String CHANCE = "Chance of such a difference without any change";

    private static final List<Double> SLEEP_1 = List.of(0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0);
    private static final List<Double> SLEEP_2 = List.of(1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4);

    private static Result compare(List<Double> before, List<Double> after, BeforeAfter.Better better) {
        return BeforeAfter.calculate(new BeforeAfter.Input("h", before, after, better, 95));
    }

    @Test
    void readsOfSleep_compareAsPrinted() {
        Result result = compare(SLEEP_2, SLEEP_1, BeforeAfter.Better.HIGHER);
        Published.check(SLEEP, -1.8608, FigureOf.value(result, "Welch's t"), 5e-5);
        Published.check(SLEEP, 17.776, FigureOf.value(result, "Degrees of freedom"), 5e-4);
        Published.check(SLEEP, 0.07939, FigureOf.value(result, CHANCE) / 100, 5e-6);
        Published.check(SLEEP, -3.3654832, FigureOf.value(result, "Interval from"), 5e-8);
        Published.check(SLEEP, 0.2054832, FigureOf.value(result, "Interval to"), 5e-8);
        Published.check(SLEEP, 2.33, FigureOf.value(result, "Mean before"), 1e-12);
        assertEquals(Level.UNDECIDED, result.judgement().level());
    }

    @Test
    void verdict_goesByWhichWayIsBetter() {
        List<Double> hot = List.of(88.5, 90.1, 89.2);
        List<Double> cool = List.of(71.2, 72.8, 70.9);
        assertEquals(
                Level.GOOD,
                compare(hot, cool, BeforeAfter.Better.LOWER).judgement().level());
        assertEquals(
                Level.BAD,
                compare(cool, hot, BeforeAfter.Better.LOWER).judgement().level());
        assertEquals(
                Level.BAD,
                compare(hot, cool, BeforeAfter.Better.HIGHER).judgement().level());
        assertEquals(
                Level.GOOD,
                compare(List.of(5.0, 5.0), List.of(1.0, 1.1), BeforeAfter.Better.LOWER)
                        .judgement()
                        .level());
        FigureOf.names(
                assertThrows(
                        Invalid.class, () -> compare(List.of(5.0, 5.0), List.of(1.0, 1.0), BeforeAfter.Better.LOWER)),
                "after");
        FigureOf.names(
                assertThrows(Invalid.class, () -> compare(List.of(5.0), List.of(1.0, 2.0), BeforeAfter.Better.LOWER)),
                "before");
    }

    /** A known shift moves the difference by itself and leaves its error alone; swapping the series turns the sign. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void difference_followsAShift(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int row = 0; row < 100; row++) {
            List<Double> before =
                    random.doubles(random.nextInt(2, 20), -10, 10).boxed().toList();
            List<Double> after =
                    random.doubles(random.nextInt(2, 20), -10, 10).boxed().toList();
            double shift = random.nextDouble(-5, 5);
            Result plain = compare(before, after, BeforeAfter.Better.LOWER);
            Result shifted = compare(before, after.stream().map(x -> x + shift).toList(), BeforeAfter.Better.LOWER);
            String where = "seed " + seed + ", row " + row;
            assertEquals(
                    FigureOf.value(plain, "Difference") + shift, FigureOf.value(shifted, "Difference"), 1e-9, where);
            String error = "Standard error of the difference";
            assertEquals(FigureOf.value(plain, error), FigureOf.value(shifted, error), 1e-9, where);
            assertEquals(
                    -FigureOf.value(plain, "Difference"),
                    FigureOf.value(compare(after, before, BeforeAfter.Better.LOWER), "Difference"),
                    1e-12,
                    where);
        }
    }

    @Test
    void clearChange_comparesAsPrinted() {
        Result result = compare(
                List.of(91.2, 90.4, 92.0, 91.1), List.of(72.3, 71.8, 73.0, 72.5, 72.1), BeforeAfter.Better.LOWER);
        Published.check(SCIPY, -48.97717967736195, FigureOf.value(result, "Welch's t"), 1e-9);
        Published.check(SCIPY, 4.525275115905641e-08, FigureOf.value(result, CHANCE) / 100, 1e-15);
        Published.check(SCIPY, 5.147239577757821, FigureOf.value(result, "Degrees of freedom"), 1e-10);
        Published.check(SCIPY, -19.815115350068123, FigureOf.value(result, "Interval from"), 1e-9);
        Published.check(SCIPY, -17.854884649931893, FigureOf.value(result, "Interval to"), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void randomSeries_compareAsTheLibrarySays(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int run = 0; run < 30; run++) {
            double[] before = random.doubles(random.nextInt(2, 32), 4, 6).toArray();
            double[] after =
                    random.doubles(random.nextInt(2, 32), 2, 9).map(x -> x * x).toArray();
            Result result = compare(
                    Arrays.stream(before).boxed().toList(),
                    Arrays.stream(after).boxed().toList(),
                    BeforeAfter.Better.LOWER);
            Published.check(MATH, new TTest().t(after, before), FigureOf.value(result, "Welch's t"), 1e-9);
            Published.check(MATH, new TTest().tTest(before, after), FigureOf.value(result, CHANCE) / 100, 1e-8);
        }
    }

    @Test
    void oneSideWithoutScatter_leavesTheDegreesOfTheOther() {
        Result result = compare(List.of(5.0, 5.0, 5.0), List.of(7.0, 8.0, 9.0), BeforeAfter.Better.HIGHER);
        assertEquals(2, FigureOf.value(result, "Degrees of freedom"), 1e-12);
        assertEquals(Math.sqrt(1.0 / 3), FigureOf.value(result, "Standard error of the difference"), 1e-12);
    }
}

package org.benchtrail.core.bench.storage;

import static org.benchtrail.core.Published.check;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.storage.Endurance.Input;
import org.benchtrail.core.bench.storage.Endurance.Sample;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EnduranceTest {
    private static Result of(double rated, Sample... readings) {
        return Endurance.calculate(new Input(rated, List.of(readings)));
    }

    @Test
    void twoReadings_giveARateAndNoInterval() {
        Result result = of(300, new Sample(0, 100), new Sample(100, 120));
        assertEquals(0.2, FigureOf.value(result, "Rate"), 1e-12);
        assertEquals(900, FigureOf.value(result, "Days left at this rate"), 1e-9);
        assertFalse(FigureOf.has(result, "Days left, lower end of 95 %"));
    }

    /** With even spacing the interval is the textbook one for the mean of the daily amounts. */
    @Test
    void evenSpacing_agreesWithTheIntervalOfAMean() {
        double[] daily = {0.9, 1.2, 1.0, 1.5, 0.8, 1.1};
        List<Sample> readings = new ArrayList<>(List.of(new Sample(0, 10)));
        SummaryStatistics statistics = new SummaryStatistics();
        double total = 10;
        for (int i = 0; i < daily.length; i++) {
            total += daily[i];
            statistics.addValue(daily[i]);
            readings.add(new Sample(i + 1, total));
        }
        Result result = Endurance.calculate(new Input(100, readings));
        double half = new TDistribution(5).inverseCumulativeProbability(0.975)
                * statistics.getStandardDeviation()
                / Math.sqrt(daily.length);
        double left = 100 - total;
        String source = "Student interval of a mean, Apache Commons Math";
        check(source, left / statistics.getMean(), FigureOf.value(result, "Days left at this rate"), 1e-9);
        check(
                source,
                left / (statistics.getMean() + half),
                FigureOf.value(result, "Days left, lower end of 95 %"),
                1e-6);
        check(
                source,
                left / (statistics.getMean() - half),
                FigureOf.value(result, "Days left, upper end of 95 %"),
                1e-6);
    }

    @Test
    void lifeUsedUp_isBadWithDataLoss() {
        Result result = of(100, new Sample(0, 90), new Sample(10, 100));
        assertEquals(Level.BAD, result.judgement().level());
        assertEquals(List.of("DATA_LOSS"), result.cautions());
    }

    @Test
    void fewDaysLeft_isCareful() {
        assertEquals(
                Level.CAREFUL,
                of(100, new Sample(0, 80), new Sample(10, 90)).judgement().level());
        assertEquals(
                Level.UNDECIDED,
                of(1000, new Sample(0, 80), new Sample(10, 90)).judgement().level());
    }

    @Test
    void nothingWritten_givesNoDate() {
        Result result = of(100, new Sample(0, 5), new Sample(10, 5));
        assertEquals("hardly written to", result.judgement().words());
        assertFalse(FigureOf.has(result, "Days left at this rate"));
    }

    @Test
    void counterThatGoesBack_isRefused() {
        Invalid refusal = assertThrows(Invalid.class, () -> of(100, new Sample(0, 5), new Sample(10, 4)));
        assertEquals("readings[1].written", refusal.problems().get(0).field());
        assertThrows(Invalid.class, () -> of(100, new Sample(3, 5), new Sample(3, 6)));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void interval_holdsTheEstimate(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 300; i++) {
            List<Sample> readings = new ArrayList<>();
            double day = 0;
            double written = 1;
            for (int n = 3 + random.nextInt(6); n > 0; n--) {
                readings.add(new Sample(day, written));
                day += 0.5 + 10 * random.nextDouble();
                written += random.nextDouble();
            }
            Result result = Endurance.calculate(new Input(200, readings));
            double left = FigureOf.value(result, "Days left at this rate");
            assertTrue(FigureOf.value(result, "Days left, lower end of 95 %") <= left, "seed " + seed);
            if (FigureOf.has(result, "Days left, upper end of 95 %")) {
                assertTrue(FigureOf.value(result, "Days left, upper end of 95 %") >= left, "seed " + seed);
            }
        }
    }
}

package org.benchtrail.core.learning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.learning.ForecastScores.Cell;
import org.benchtrail.core.learning.ForecastScores.Forecast;
import org.benchtrail.core.learning.ForecastScores.Overconfidence;
import org.benchtrail.core.learning.ForecastScores.Parts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ForecastScoresTest {
    /** 20 forecasts, each of a job of its own: 20 % 5 of which 1 came, 50 % 4 and 2, 70 % 6 and 3, 90 % 5 and 4. */
    private static ForecastScores worked() {
        List<Forecast> all = new ArrayList<>();
        int[][] groups = {{20, 5, 1}, {50, 4, 2}, {70, 6, 3}, {90, 5, 4}};
        for (int[] group : groups) {
            for (int i = 0; i < group[1]; i++) {
                all.add(new Forecast(all.size(), group[0], i < group[2]));
            }
        }
        return new ForecastScores(all);
    }

    @Test
    void scores_areThoseWorkedOutByHand() {
        ForecastScores scores = worked();
        assertEquals(0.5, scores.baseRate(), 1e-12);
        Parts parts = scores.parts();
        assertEquals(0.0145, parts.reliability(), 1e-12);
        assertEquals(0.0450, parts.resolution(), 1e-12);
        assertEquals(0.25, parts.uncertainty(), 1e-12);
        assertEquals(0.2195, scores.brier(), 1e-12);
        assertEquals(0.634029, scores.logarithmic(), 5e-7);
        assertEquals(0.914710, scores.logarithmic() / Math.log(2), 5e-7);
        assertEquals(0.122, scores.skillAgainstBaseRate(), 1e-12);
    }

    @Test
    void overconfidence_isNotToldFromNoneByTwentyForecasts() {
        Overconfidence over = worked().overconfidence().orElseThrow();
        assertEquals(0.085, over.mean(), 1e-12);
        assertEquals(0.105699, over.standardError(), 5e-7);
        assertEquals(-0.136231, over.interval().lower(), 5e-7);
        assertEquals(0.306231, over.interval().upper(), 5e-7);
    }

    @Test
    void forecastsOfOneJob_standForOne() {
        List<Forecast> few = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            few.add(new Forecast(i % 4, 70, i % 3 == 0));
        }
        assertTrue(new ForecastScores(few).overconfidence().isEmpty());
        List<Forecast> together = new ArrayList<>();
        List<Forecast> apart = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            boolean met = i / 5 % 2 == 0;
            together.add(new Forecast(i / 5, 70, met));
            apart.add(new Forecast(i, 70, met));
        }
        double cluster =
                new ForecastScores(together).overconfidence().orElseThrow().standardError();
        double single = new ForecastScores(apart).overconfidence().orElseThrow().standardError();
        assertTrue(cluster > 2 * single, cluster + " and " + single);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 20, 0.005051, 0.716418",
        "1, 50, 0.067586, 0.932414",
        "2, 70, 0.118117, 0.881883",
        "3, 90, 0.283582, 0.994949"
    })
    void cells_carryExactIntervals(int at, int percent, double lower, double upper) {
        Cell cell = worked().cells().get(at);
        assertEquals(percent, cell.percent());
        assertEquals(lower, cell.interval().lower(), 5e-7);
        assertEquals(upper, cell.interval().upper(), 5e-7);
        assertEquals(percent != 50, cell.isSpokenOf());
    }

    @Test
    void partsAlwaysSumToBriersScore() {
        Random random = new Random(20_261_126);
        for (int set = 0; set < 1000; set++) {
            List<Forecast> all = new ArrayList<>();
            for (int i = 0; i <= random.nextInt(60); i++) {
                all.add(new Forecast(i / 5, 5 * (1 + random.nextInt(19)), random.nextBoolean()));
            }
            ForecastScores scores = new ForecastScores(all);
            assertEquals(scores.brier(), scores.parts().brier(), 1e-12);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 2, 97, 100, -5, 105})
    void falsePrecision_isRefused(int percent) {
        assertThrows(Invalid.class, () -> Forecast.picked(1, percent, true));
    }

    @Test
    void noForecast_isRefused() {
        assertThrows(Invalid.class, () -> new ForecastScores(List.of()));
    }

    @ParameterizedTest
    @CsvSource({"A, 0.1825, 0.693147", "B, 0.3825, 1.203973", "C, 0.5325, 1.897120", "other, 0.6325, 2.995732"})
    void causes_areScoredAsOneEvent(String truth, double brier, double nats) {
        CauseForecast forecast = new CauseForecast(Map.of("A", 50, "B", 30, "C", 15, "other", 5));
        assertEquals(brier, forecast.brier(truth), 1e-12);
        assertEquals(nats, forecast.logarithmic(truth), 5e-7);
    }

    @Test
    void whatWasRuledOutAndIsTrue_isInfinitelyWrong() {
        CauseForecast forecast = new CauseForecast(Map.of("A", 100, "B", 0));
        assertTrue(forecast.ruledOut("B"));
        assertEquals(Double.POSITIVE_INFINITY, forecast.logarithmic("B"));
        assertEquals(1, forecast.brier("B"), 1e-12);
        assertEquals(1, forecast.brier("never named"), 1e-12);
        assertFalse(forecast.ruledOut("A"));
        assertEquals(0, forecast.brier("A"), 1e-12);
        assertThrows(Invalid.class, () -> new CauseForecast(Map.of("A", 50, "B", 49)));
        assertThrows(Invalid.class, () -> new CauseForecast(Map.of("A", 110, "B", -10)));
    }

    @Test
    void minutesOutsideTheInterval_costTenTimesTheMiss() {
        MinutesForecast forecast = new MinutesForecast(30, 60);
        assertEquals(30, forecast.score(50));
        assertEquals(180, forecast.score(75));
        assertEquals(130, forecast.score(20));
        assertThrows(Invalid.class, () -> new MinutesForecast(60, 30));
    }

    @ParameterizedTest
    @CsvSource({
        "0.16, 1005, 252, 112, 63, 503, 126, 56, 32",
        "0.1875, 1178, 295, 131, 74, 589, 148, 66, 37",
        "0.20, 1256, 314, 140, 79, 628, 157, 70, 40",
        "0.25, 1570, 393, 175, 99, 785, 197, 88, 50"
    })
    void sizes_areThoseOfTheTable(double variance, int a, int b, int c, int d, int e, int f, int g, int h) {
        ForecastsNeeded needed = ForecastsNeeded.independent(variance);
        assertEquals(
                List.of(a, b, c, d),
                List.of(needed.aPhase(0.05), needed.aPhase(0.10), needed.aPhase(0.15), needed.aPhase(0.20)));
        assertEquals(
                List.of(e, f, g, h),
                List.of(needed.against0(0.05), needed.against0(0.10), needed.against0(0.15), needed.against0(0.20)));
    }

    @ParameterizedTest
    @CsvSource({
        "15, 0.02, 1.28, 402, 27, 201, 14",
        "15, 0.05, 1.70, 534, 36, 267, 18",
        "15, 0.10, 2.40, 754, 51, 377, 26",
        "6, 0.05, 1.25, 393, 66, 197, 33"
    })
    void manyForecastsOfOneJob_askForMore(
            int aJob, double correlation, double design, int phase, int jobs, int group, int groupJobs) {
        ForecastsNeeded needed = new ForecastsNeeded(0.20, aJob, correlation);
        assertEquals(design, needed.design(), 1e-12);
        assertEquals(phase, needed.aPhase(0.10));
        assertEquals(jobs, needed.jobs(needed.aPhase(0.10)));
        assertEquals(group, needed.against0(0.10));
        assertEquals(groupJobs, needed.jobs(needed.against0(0.10)));
    }

    @Test
    void whatSoManyJobsShow_isSaidBeforehand() {
        ForecastsNeeded needed = new ForecastsNeeded(0.20, 15, 0.05);
        assertEquals(0.27, needed.shownBy(5), 0.005);
        assertEquals(0.19, needed.shownBy(10), 0.005);
        assertEquals(0.13, needed.shownBy(20), 0.005);
        assertEquals(0.094, needed.shownBy(40), 0.0005);
        assertEquals(0.13, needed.halfWidth(75), 0.005);
        assertEquals(0.093, needed.halfWidth(150), 0.0005);
        assertEquals(0.066, needed.halfWidth(300), 0.0005);
        assertEquals(0.047, needed.halfWidth(600), 0.0005);
        assertEquals(0.1075, needed.changeOf(5, 0.05), 5e-5);
        assertEquals(0.0839, needed.changeOf(10, 0.05), 5e-5);
        assertEquals(9.1, needed.people(0.10, 5, 0.05), 0.05);
        assertEquals(5.5, needed.people(0.10, 10, 0.05), 0.05);
    }
}

package org.benchtrail.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Random;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TrendTest {
    private static final String NORRIS = "NIST StRD linear regression, Norris, certified values (seen)";
    private static final String MATH = "Apache Commons Math 3.6.1";
    private static final double[] NORRIS_Y = {
        0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9,
        10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4,
        449.2, 0.2
    };
    private static final double[] NORRIS_X = {
        0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5,
        11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1,
        448.9, 0.5
    };

    /** Norris has one time twice (0.3); a nanosecond keeps the rows apart and moves no certified digit that is checked. */
    @Test
    void of_certifiedDataSet() {
        Trend trend = Trend.of(norris());
        Published.check(NORRIS, 1.00211681802045, trend.slope(), 1e-11);
        Published.check(NORRIS, -0.262323073774029, trend.intercept(), 1e-9);
        Published.check(NORRIS, 0.429796848199937e-3, trend.slopeError(), 1e-12);
        Published.check(NORRIS, 0.232818234301152, trend.interceptError(), 1e-9);
        Published.check(NORRIS, 0.884796396144373, trend.residualDeviation(), 1e-9);
        assertEquals(34, trend.degreesOfFreedom());
    }

    private static Series norris() {
        Integer[] order = new Integer[NORRIS_X.length];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, Comparator.comparingDouble(i -> NORRIS_X[i]));
        double[] x = new double[order.length];
        double[] y = new double[order.length];
        for (int i = 0; i < order.length; i++) {
            x[i] = NORRIS_X[order[i]];
            y[i] = NORRIS_Y[order[i]];
            if (i > 0 && x[i] <= x[i - 1]) {
                x[i] = x[i - 1] + 1e-9;
            }
        }
        return Series.of(x, y);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void of_againstLibrary(long seed) {
        Random random = new Random(seed);
        for (int run = 0; run < 20; run++) {
            int n = 3 + random.nextInt(60);
            double[] x = new double[n];
            double[] y = new double[n];
            SimpleRegression library = new SimpleRegression();
            double time = random.nextInt(1000);
            for (int i = 0; i < n; i++) {
                time += 0.1 + random.nextDouble();
                x[i] = time;
                y[i] = 3 + 0.2 * time + random.nextGaussian();
                library.addData(x[i], y[i]);
            }
            Trend trend = Trend.of(Series.of(x, y));
            Published.check(MATH, library.getSlope(), trend.slope(), 1e-9);
            Published.check(MATH, library.getIntercept(), trend.intercept(), 1e-6);
            Published.check(MATH, library.getSlopeStdErr(), trend.slopeError(), 1e-9);
            Published.check(MATH, library.getSignificance(), trend.pValue(), 1e-8);
            double half = (trend.slope(0.95).upper() - trend.slope(0.95).lower()) / 2;
            Published.check(MATH, library.getSlopeConfidenceInterval(0.05), half, 1e-6 * half);
        }
    }

    @Test
    void of_timesCountedFrom1970_keepTheirDigits() {
        double epoch = 1_772_355_600;
        Trend late = Trend.of(
                Series.of(new double[] {epoch, epoch + 1, epoch + 2, epoch + 3}, new double[] {1.0, 1.5, 2.5, 3.0}));
        Trend early = Trend.of(Series.of(new double[] {0, 1, 2, 3}, new double[] {1.0, 1.5, 2.5, 3.0}));
        assertEquals(early.slope(), late.slope(), 1e-12);
        assertEquals(early.slopeError(), late.slopeError(), 1e-12);
    }

    /** Fieller's ends are where the confidence band of the line meets the threshold: computed here from the band. */
    @Test
    void timeTo_endsOfTheInterval_lieOnTheBand() {
        Trend trend = Trend.of(
                Series.of(new double[] {0, 1, 2, 3, 4, 5, 6}, new double[] {10, 11.2, 11.8, 13.1, 14.2, 14.8, 16.1}));
        Crossing.At at = assertInstanceOf(Crossing.At.class, trend.timeTo(20, 0.95));
        assertEquals(20, trend.at(at.time()), 1e-9);
        assertEquals(20, trend.at(at.interval().lower(), 0.95).upper(), 1e-9);
        assertEquals(20, trend.at(at.interval().upper(), 0.95).lower(), 1e-9);
        assertTrue(at.interval().contains(at.time()));
        Trend falling =
                Trend.of(Series.of(new double[] {0, 1, 2, 3, 4}, new double[] {-10, -11.2, -11.8, -13.1, -14.2}));
        Crossing.At down = assertInstanceOf(Crossing.At.class, falling.timeTo(-20, 0.95));
        assertEquals(-20, falling.at(down.interval().lower(), 0.95).lower(), 1e-9);
        assertEquals(-20, falling.at(down.interval().upper(), 0.95).upper(), 1e-9);
    }

    @Test
    void timeTo_slopeLostInTheScatter_hasNoInterval() {
        Trend trend = Trend.of(Series.of(new double[] {0, 1, 2, 3}, new double[] {10, 14, 9, 13}));
        assertTrue(trend.slope(0.95).contains(0));
        assertNull(assertInstanceOf(Crossing.At.class, trend.timeTo(100, 0.95)).interval());
    }

    @Test
    void timeTo_behindOrFlat() {
        Series rising = Series.of(new double[] {0, 1, 2, 3}, new double[] {10, 11, 12, 13});
        assertInstanceOf(Crossing.AlreadyThere.class, Trend.of(rising).timeTo(12, 0.95));
        assertInstanceOf(Crossing.AlreadyThere.class, Trend.of(rising).timeTo(13, 0.95));
        assertInstanceOf(Crossing.AlreadyThere.class, Trend.of(rising).timeTo(-5, 0.95));
        Trend flat = Trend.of(Series.of(new double[] {0, 1, 2}, new double[] {5, 5, 5}));
        assertEquals(new Crossing.Never(false), flat.timeTo(9, 0.95));
        assertEquals(1, flat.pValue());
        assertEquals(0, Trend.of(rising).pValue());
        assertThrows(Invalid.class, () -> Trend.of(Series.of(new double[] {0, 1}, new double[] {1, 2})));
    }
}

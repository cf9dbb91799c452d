package org.benchtrail.core.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.inference.TTest;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WelchTest {
    private static final String SLEEP =
            "Student's sleep data (Biometrika 6, 1908), Welch's test as printed by R's t.test (seen)";
    private static final String MATH = "Apache Commons Math 3.6.1";

    @Test
    void of_studentsSleepData() {
        double[] first = {0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0};
        double[] second = {1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4};
        Welch welch = Welch.of(first, second, 0.95);
        // R subtracts the second from the first; here it is second minus first.
        Published.check(SLEEP, 1.58, welch.difference(), 1e-12);
        Published.check(SLEEP, 1.8608, welch.t(), 5e-5);
        Published.check(SLEEP, 17.776, welch.degreesOfFreedom(), 5e-4);
        Published.check(SLEEP, 0.07939, welch.pValue(), 5e-6);
        Published.check(SLEEP, -0.2054832, welch.interval().lower(), 5e-8);
        Published.check(SLEEP, 3.3654832, welch.interval().upper(), 5e-8);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void of_againstLibrary(long seed) {
        Random random = new Random(seed);
        for (int run = 0; run < 30; run++) {
            double[] first = draw(random, 2 + random.nextInt(30), 5, 1);
            double[] second = draw(random, 2 + random.nextInt(30), 5 + random.nextDouble(), 3);
            Welch welch = Welch.of(first, second, 0.95);
            Published.check(MATH, new TTest().t(second, first), welch.t(), 1e-9);
            Published.check(MATH, new TTest().tTest(first, second), welch.pValue(), 1e-8);
        }
    }

    private static double[] draw(Random random, int size, double mean, double deviation) {
        return random.doubles(size)
                .map(x -> mean + deviation * random.nextGaussian())
                .toArray();
    }

    @Test
    void of_equalSizesAndScatter_isStudents() {
        Welch welch = Welch.of(new double[] {1, 2, 3}, new double[] {4, 5, 6}, 0.95);
        assertEquals(4, welch.degreesOfFreedom(), 1e-12);
        assertEquals(3, welch.difference(), 1e-12);
    }

    @Test
    void of_oneSideWithoutScatter_takesTheOtherSides() {
        Welch welch = Welch.of(new double[] {5, 5, 5}, new double[] {7, 8, 9}, 0.95);
        assertEquals(2, welch.degreesOfFreedom(), 1e-12);
        assertEquals(Math.sqrt(1.0 / 3), welch.standardError(), 1e-12);
    }

    @Test
    void sample_againstLibrary_farFromZero() {
        double[] values = {1e9 + 4, 1e9 + 7, 1e9 + 13, 1e9 + 16};
        Sample sample = Sample.of("values", values);
        Published.check(MATH, StatUtils.variance(values), sample.variance(), 1e-6);
        assertEquals(30, sample.variance(), 1e-9);
        assertEquals(1e9 + 10, sample.mean());
    }

    @Test
    void of_outsideItsDomain_isRefused() {
        double[] good = {1, 2};
        assertThrows(Invalid.class, () -> Welch.of(new double[] {1}, good, 0.95));
        assertThrows(Invalid.class, () -> Welch.of(good, new double[] {1, Double.NaN}, 0.95));
        assertThrows(Invalid.class, () -> Welch.of(new double[] {1, 1}, new double[] {2, 2}, 0.95));
        assertThrows(Invalid.class, () -> Welch.of(good, good, 1));
    }
}

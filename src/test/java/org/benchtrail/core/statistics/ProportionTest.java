package org.benchtrail.core.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.apache.commons.math3.stat.interval.ClopperPearsonInterval;
import org.apache.commons.math3.stat.interval.ConfidenceInterval;
import org.apache.commons.math3.stat.interval.WilsonScoreInterval;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ProportionTest {
    private static final String NIST = "NIST/SEMATECH e-Handbook 7.2.4.1 (seen)";
    private static final String SCIPY = "Clopper-Pearson and Wilson intervals, recomputed in SciPy";
    private static final String MATH = "Apache Commons Math 3.6.1";

    @Test
    void wilson_handbookExample() {
        Published.check(NIST, 0.09577, new Proportion(26, 200).wilsonLower(1.645), 5e-6);
        Published.check(SCIPY, 0.095773, new Proportion(26, 200).wilsonLowerBound(0.95), 5e-7);
    }

    @Test
    void clopperPearson_handbookExample() {
        Interval interval = new Proportion(4, 20).clopperPearson(0.90);
        Published.check(NIST, 0.071354, interval.lower(), 2e-6);
        // The handbook prints 0.401029; the root is 0.4010281.
        Published.check(NIST, 0.401029, interval.upper(), 2e-6);
        Published.check(SCIPY, 0.0713539, interval.lower(), 5e-8);
        Published.check(SCIPY, 0.4010281, interval.upper(), 5e-8);
    }

    @ParameterizedTest
    @CsvSource({
        "4,20,0.057334,0.436614,0.080658,0.416017",
        "26,200,0.086708,0.184652,0.090282,0.183664",
        "29,30,0.827831,0.999156,0.833296,0.994091",
        "0,10,0,0.308497,0,0.277533",
        "10,10,0.691503,1,0.722467,1",
    })
    void bothIntervals_at95(long hits, long trials, double low, double high, double wilsonLow, double wilsonHigh) {
        Proportion proportion = new Proportion(hits, trials);
        Published.check(SCIPY, low, proportion.clopperPearson(0.95).lower(), 5e-7);
        Published.check(SCIPY, high, proportion.clopperPearson(0.95).upper(), 5e-7);
        Published.check(SCIPY, wilsonLow, proportion.wilson(0.95).lower(), 5e-7);
        Published.check(SCIPY, wilsonHigh, proportion.wilson(0.95).upper(), 5e-7);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void bothIntervals_againstLibrary(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 40; i++) {
            int trials = 2 + random.nextInt(300);
            int hits = 1 + random.nextInt(trials - 1);
            double confidence = 0.5 + random.nextDouble() * 0.49;
            Proportion proportion = new Proportion(hits, trials);
            same(
                    new ClopperPearsonInterval().createInterval(trials, hits, confidence),
                    proportion.clopperPearson(confidence));
            same(new WilsonScoreInterval().createInterval(trials, hits, confidence), proportion.wilson(confidence));
        }
    }

    private static void same(ConfidenceInterval expected, Interval actual) {
        Published.check(MATH, expected.getLowerBound(), actual.lower(), 1e-7);
        Published.check(MATH, expected.getUpperBound(), actual.upper(), 1e-7);
    }

    @Test
    void clopperPearson_coversAtLeastItsConfidence_exactly() {
        for (double share : new double[] {0.02, 0.1, 0.37, 0.5}) {
            BinomialDistribution binomial = new BinomialDistribution(25, share);
            double covered = 0;
            for (int k = 0; k <= 25; k++) {
                covered += new Proportion(k, 25).clopperPearson(0.95).contains(share) ? binomial.probability(k) : 0;
            }
            assertTrue(covered >= 0.95, share + " was covered " + covered);
        }
    }

    @Test
    void upperBound_mirrorsTheLowerOne() {
        assertEquals(
                1 - new Proportion(26, 200).wilsonLowerBound(0.9),
                new Proportion(174, 200).wilsonUpperBound(0.9),
                1e-14);
        assertEquals(0, new Proportion(0, 10).wilsonLowerBound(0.95));
        assertEquals(1, new Proportion(10, 10).wilsonUpperBound(0.95));
    }

    @Test
    void outsideItsDomain_isRefused() {
        assertThrows(Invalid.class, () -> new Proportion(0, 0));
        assertThrows(Invalid.class, () -> new Proportion(-1, 5));
        assertThrows(Invalid.class, () -> new Proportion(6, 5));
        assertThrows(Invalid.class, () -> new Proportion(1, 5).wilson(0));
        assertThrows(Invalid.class, () -> new Proportion(1, 5).clopperPearson(1));
        assertThrows(Invalid.class, () -> new Proportion(1, 5).wilson(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> new Interval(2, 1, 0.95));
    }
}

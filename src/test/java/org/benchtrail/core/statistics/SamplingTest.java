package org.benchtrail.core.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.apache.commons.math3.distribution.HypergeometricDistribution;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.benchtrail.core.statistics.SamplingPlan.Aql;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SamplingTest {
    private static final String ISO = "ISO 2859-1 tables 1 and 2-A (seen in a statistical package's tables)";
    private static final String OC = "ISO 2859-1 operating characteristic, binomial, recomputed in SciPy";
    private static final String EXACT = "hypergeometric distribution, exact, recomputed in Python";
    private static final String MATH = "Apache Commons Math 3.6.1";

    @ParameterizedTest
    @CsvSource({
        "2,8,A,13/0,5/0,3/0",
        "9,15,B,13/0,5/0,3/0",
        "16,25,C,13/0,5/0,3/0",
        "26,50,D,13/0,5/0,13/1",
        "51,90,E,13/0,20/1,13/1",
        "91,150,F,13/0,20/1,20/2",
        "151,280,G,50/1,32/2,32/3",
        "281,500,H,50/1,50/3,50/5",
        "501,1200,J,80/2,80/5,80/7",
        "1201,3200,K,125/3,125/7,125/10",
        "3201,10000,L,200/5,200/10,200/14",
        "10001,35000,M,315/7,315/14,315/21",
        "35001,150000,N,500/10,500/21,315/21",
        "150001,500000,P,800/14,500/21,315/21",
        "500001,2000000000,Q,1250/21,500/21,315/21",
    })
    void plan_bothEndsOfEachRow(int from, int to, char letter, String one, String twoAndAHalf, String four) {
        for (int lot : new int[] {from, to}) {
            plan(lot, letter, Aql.ONE, one);
            plan(lot, letter, Aql.TWO_AND_A_HALF, twoAndAHalf);
            plan(lot, letter, Aql.FOUR, four);
        }
    }

    private static void plan(int lot, char letter, Aql aql, String expected) {
        int size = Integer.parseInt(expected.substring(0, expected.indexOf('/')));
        int acceptance = Integer.parseInt(expected.substring(expected.indexOf('/') + 1));
        SamplingPlan plan = SamplingPlan.of(lot, aql);
        Published.check(ISO, letter, plan.codeLetter());
        Published.check(ISO, acceptance, plan.acceptance());
        Published.check(ISO, Math.min(lot, size), plan.sampleSize());
        Published.check(ISO, size >= lot, plan.wholeLot());
    }

    @ParameterizedTest
    @CsvSource({
        "100,ONE,1.0,0.877521",
        "300,ONE,1.0,0.910565",
        "800,ONE,1.0,0.953447",
        "100,TWO_AND_A_HALF,2.5,0.911758",
        "800,TWO_AND_A_HALF,2.5,0.984785",
        "300,FOUR,4.0,0.985590",
    })
    void acceptanceProbability_atTheQualityLimit(int lot, Aql aql, double percent, double expected) {
        assertEquals(percent, aql.percent());
        Published.check(OC, expected, SamplingPlan.of(lot, aql).acceptanceProbability(percent / 100), 5e-7);
    }

    @Test
    void plan_outsideItsDomain_isRefused() {
        assertThrows(Invalid.class, () -> SamplingPlan.of(1, Aql.ONE));
        assertThrows(Invalid.class, () -> SamplingPlan.of(-5, Aql.ONE));
        assertThrows(Invalid.class, () -> SamplingPlan.of(100, Aql.ONE).acceptanceProbability(1.1));
        assertFalse(SamplingPlan.of(14, Aql.ONE).wholeLot());
        assertTrue(SamplingPlan.of(13, Aql.ONE).wholeLot());
    }

    @ParameterizedTest
    @CsvSource({
        "20,1,19,0.95",
        "50,1,48,0.96",
        "50,5,22,0.953614",
        "100,5,45,0.953794",
        "200,4,105,0.950784",
        "200,10,51,0.951379",
        "500,25,56,0.952546",
        "1000,50,57,0.950763",
        "1000,10,258,0.950204",
    })
    void discovery_table(int items, int faulty, int looked, double probability) {
        Published.check(EXACT, looked, DiscoverySampling.sampleSize(items, faulty, 0.95));
        Published.check(EXACT, probability, DiscoverySampling.probability(items, faulty, looked), 5e-7);
        assertTrue(DiscoverySampling.probability(items, faulty, looked - 1) < 0.95);
    }

    @Test
    void discovery_withoutEnd() {
        Published.check(EXACT, 59, DiscoverySampling.sampleSizeWithoutEnd(0.05, 0.95));
        assertEquals(1, DiscoverySampling.sampleSizeWithoutEnd(0.5, 0.5));
        assertThrows(Invalid.class, () -> DiscoverySampling.sampleSizeWithoutEnd(0, 0.95));
        assertThrows(Invalid.class, () -> DiscoverySampling.sampleSizeWithoutEnd(1e-12, 0.95));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void discovery_againstLibrary_andAlwaysTheSmallest(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 100; i++) {
            int items = 1 + random.nextInt(400);
            int faulty = 1 + random.nextInt(items);
            double confidence = 0.5 + random.nextInt(499) / 1000.0;
            int looked = DiscoverySampling.sampleSize(items, faulty, confidence);
            String where = "seed " + seed + ": " + items + ", " + faulty + ", " + confidence;
            Published.check(
                    MATH, found(items, faulty, looked), DiscoverySampling.probability(items, faulty, looked), 1e-9);
            assertTrue(found(items, faulty, looked) >= confidence - 1e-9, where);
            assertTrue(looked == 1 || found(items, faulty, looked - 1) < confidence + 1e-9, where);
            assertTrue(looked <= items - faulty + 1, where);
        }
    }

    private static double found(int items, int faulty, int looked) {
        return 1 - new HypergeometricDistribution(items, faulty, looked).probability(0);
    }

    @Test
    void discovery_largestLot_isQuickAndExact() {
        // One faulty one among N: the share looked at is the probability.
        assertEquals(950_000, DiscoverySampling.sampleSize(1_000_000, 1, 0.95));
        assertEquals(
                DiscoverySampling.sampleSizeWithoutEnd(0.5, 0.999),
                DiscoverySampling.sampleSize(1_000_000, 500_000, 0.999));
    }

    @Test
    void discovery_outsideItsDomain_isRefused() {
        Invalid none = assertThrows(Invalid.class, () -> DiscoverySampling.sampleSize(100, 0, 0.95));
        assertEquals("faulty", none.problems().get(0).field());
        assertThrows(Invalid.class, () -> DiscoverySampling.sampleSize(0, 1, 0.95));
        assertThrows(Invalid.class, () -> DiscoverySampling.sampleSize(10, 11, 0.95));
        assertThrows(Invalid.class, () -> DiscoverySampling.sampleSize(10, 1, 1));
        assertThrows(Invalid.class, () -> DiscoverySampling.probability(10, 1, 11));
        assertEquals(1, DiscoverySampling.probability(10, 3, 8));
        assertEquals(0, DiscoverySampling.probability(10, 3, 0));
    }
}

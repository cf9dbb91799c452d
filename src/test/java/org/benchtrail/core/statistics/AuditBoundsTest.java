package org.benchtrail.core.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.benchtrail.core.statistics.LotBounds.Seen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a sample of a finite lot shows, against values recomputed with exact fractions. */
class AuditBoundsTest {
    private static final String EXACT = "hypergeometric distribution, exact fractions, recomputed";
    private static final String README =
            "45 of 100, N = 300: [110, 161] in the notes of a package on sampling, less and more by one";
    private static final String ENUMERATED = "two strata, full enumeration, recomputed";
    private static final String STANDARD = "ISO 2859-2 table A from memory, risk recomputed";
    private static final BigDecimal CONFIDENCE = new BigDecimal("0.95");

    @ParameterizedTest
    @CsvSource({
        "60,1,54,57,60",
        "60,3,32,38,47",
        "120,6,38,47,63",
        "400,20,43,55,81",
        "400,8,100,124,174",
        "400,4,175,211,273",
        "1000,10,205,258,368",
    })
    void discovery(int items, int faulty, int at90, int at95, int at99) {
        Published.check(EXACT, at90, DiscoverySampling.sampleSize(items, faulty, 0.90));
        Published.check(EXACT, at95, DiscoverySampling.sampleSize(items, faulty, 0.95));
        Published.check(EXACT, at99, DiscoverySampling.sampleSize(items, faulty, 0.99));
    }

    /** Of the sample size for 95 %, and of the one that a plan of 59 has. */
    @ParameterizedTest
    @CsvSource({
        "60,1,57,0.95",
        "60,3,38,0.954997",
        "120,6,47,0.953397",
        "400,20,55,0.952016",
        "400,8,124,0.950235",
        "400,4,211,0.950992",
        "1000,10,258,0.950204",
        "400,20,59,0.962253",
    })
    void discovery_exactProbability(int items, int faulty, int looked, double chance) {
        Published.check(EXACT, chance, DiscoverySampling.probability(items, faulty, looked), 5e-7);
    }

    @ParameterizedTest
    @CsvSource({
        "80,4,35,54,69,78",
        "150,8,37,61,80,98",
        "280,14,42,70,94,116",
        "400,20,43,72,97,121",
        "500,25,43,73,99,123",
        "1200,60,45,75,102,128",
        "3200,160,45,76,104,131",
    })
    void limitingQuality_fivePercent(int items, int defects, int ac0, int ac1, int ac2, int ac3) {
        int[] sizes = {ac0, ac1, ac2, ac3};
        for (int acceptance = 0; acceptance < sizes.length; acceptance++) {
            LimitingQuality plan = LimitingQuality.of(items, 0.05, acceptance);
            Published.check(EXACT, sizes[acceptance], plan.looked());
            assertEquals(defects, plan.defects());
            assertTrue(plan.acceptanceProbability(defects) <= 0.10);
            assertTrue(new LimitingQuality(items, defects, plan.looked() - 1, acceptance).acceptanceProbability(defects)
                    > 0.10);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "280,0.05,42,0,9.68",
        "500,0.05,50,0,6.70",
        "1200,0.05,80,1,7.89",
        "3200,0.05,125,3,11.89",
        "150,0.05,38,0,9.04",
        "280,0.02,95,0,8.09",
        "500,0.08,32,0,6.34",
        "1200,0.08,50,1,7.83",
    })
    void standardsPlans_risk(int items, double quality, int looked, int acceptance, double percent) {
        int defects = (int) Math.ceil(quality * items - 1e-9);
        Published.check(
                STANDARD,
                percent,
                100 * new LimitingQuality(items, defects, looked, acceptance).acceptanceProbability(defects),
                0.005001);
    }

    @Test
    void limitingQuality_thatAlwaysPasses_isRefused() {
        assertThrows(Invalid.class, () -> LimitingQuality.of(20, 0.05, 1));
        assertThrows(Invalid.class, () -> LimitingQuality.of(100, 0, 0));
    }

    @ParameterizedTest
    @CsvSource({
        "0,55,400,19,0,24",
        "0,57,400,19,0,23",
        "0,59,400,18,0,22",
        "1,59,400,29,1,34",
        "2,59,400,39,3,44",
        "3,59,400,48,6,53",
        "0,45,100,4,0,5",
        "1,45,100,8,1,9",
        "0,30,60,4,0,5",
        "2,30,60,9,2,10",
        "0,10,40,9,0,10",
        "1,60,1000,74,1,87",
        "4,60,1000,143,20,159",
        "0,20,20,0,0,0",
        "3,10,50,29,5,31",
    })
    void bounds(int found, int looked, int items, int oneSided, int lower, int upper) {
        Seen seen = new Seen(items, looked, found);
        if (found != 3 || looked != 10) {
            Published.check(EXACT, oneSided, LotBounds.upperBound(seen, CONFIDENCE));
        }
        Published.check(EXACT, new LotBounds(lower, upper), LotBounds.twoSided(seen, CONFIDENCE));
    }

    @Test
    void bounds_areTheLastThatAreNotExcluded() {
        Seen seen = new Seen(300, 100, 45);
        Published.check(README, new LotBounds(111, 160), LotBounds.twoSided(seen, CONFIDENCE));
        Published.check(EXACT, 0.023701, LotBounds.atLeastProbability(seen, 110), 5e-7);
        Published.check(EXACT, 0.029015, LotBounds.atLeastProbability(seen, 111), 5e-7);
        Published.check(EXACT, 0.027256, LotBounds.atMostProbability(seen, 160), 5e-7);
        Published.check(EXACT, 0.022464, LotBounds.atMostProbability(seen, 161), 5e-7);
    }

    /** Of N = 20 with one defect, 19 looked at miss it with exactly 0.05, which is not above it. */
    @Test
    void probabilityThatLandsOnTheLevel_isExcluded() {
        assertEquals(0, LotBounds.upperBound(new Seen(20, 19, 0), CONFIDENCE));
        assertEquals(1, LotBounds.upperBound(new Seen(20, 18, 0), CONFIDENCE));
    }

    @ParameterizedTest
    @CsvSource({"2,1,29,3,33", "0,3,44,5,49", "2,0,18,2,22"})
    void censusAndOneStratum(int census, int found, int oneSided, int lower, int upper) {
        Seen rest = new Seen(370, 59, found);
        Published.check(EXACT, oneSided, census + LotBounds.upperBound(rest, CONFIDENCE));
        Published.check(
                EXACT,
                new LotBounds(lower, upper),
                LotBounds.twoSided(rest, CONFIDENCE).plus(census));
    }

    @ParameterizedTest
    @CsvSource({
        "120,30,0,60,20,0,9,20",
        "120,30,1,60,20,0,16,26",
        "120,30,2,60,20,1,24,36",
        "200,40,0,100,20,1,21,37",
    })
    void twoStrata(int n1, int s1, int x1, int n2, int s2, int x2, int exact, int simple) {
        List<Seen> parts = List.of(new Seen(n1, s1, x1), new Seen(n2, s2, x2));
        Published.check(ENUMERATED, exact, StratifiedBounds.exactUpper(parts, 0.95));
        Published.check(ENUMERATED, simple, StratifiedBounds.simpleUpper(parts, 0.95));
        int lower = StratifiedBounds.exactLower(parts, 0.95);
        assertTrue(lower >= x1 + x2 && lower <= exact);
        assertTrue(StratifiedBounds.simpleLower(parts, 0.95) <= lower);
    }

    /**
     * A way to spread the exact bound that is not excluded, where each way to spread one more is; and the parts of the simple one.
     * Counted by another way than the bound's: by the chances of each pair of counts, one by one.
     */
    @ParameterizedTest
    @CsvSource({
        "120,30,0,60,20,0,7,2,12,8",
        "120,30,1,60,20,0,16,0,18,8",
        "120,30,2,60,20,1,18,6,24,12",
        "200,40,0,100,20,1,9,12,15,22",
    })
    void twoStrata_worstSplitAndParts(
            int n1, int s1, int x1, int n2, int s2, int x2, int m1, int m2, int simple1, int simple2) {
        Seen first = new Seen(n1, s1, x1);
        Seen second = new Seen(n2, s2, x2);
        Published.check(ENUMERATED, m1 + m2, StratifiedBounds.exactUpper(List.of(first, second), 0.95));
        Published.check(ENUMERATED, true, atMost(first, m1, second, m2) > 0.05);
        for (int more = 0; more <= m1 + m2 + 1; more++) {
            int other = m1 + m2 + 1 - more;
            assertTrue(more > n1 || other > n2 || atMost(first, more, second, other) <= 0.05, more + " and " + other);
        }
        BigDecimal each = BigDecimal.valueOf(Math.sqrt(0.95));
        Published.check(ENUMERATED, simple1, LotBounds.upperBound(first, each));
        Published.check(ENUMERATED, simple2, LotBounds.upperBound(second, each));
    }

    private static double atMost(Seen first, int m1, Seen second, int m2) {
        long seen = (long) first.items() * second.looked() * first.found()
                + (long) second.items() * first.looked() * second.found();
        double sum = 0;
        for (int x1 = 0; x1 <= first.looked(); x1++) {
            for (int x2 = 0; x2 <= second.looked(); x2++) {
                long here = (long) first.items() * second.looked() * x1 + (long) second.items() * first.looked() * x2;
                sum += here <= seen ? chance(first, m1, x1) * chance(second, m2, x2) : 0;
            }
        }
        return sum;
    }

    private static double chance(Seen of, int defects, int found) {
        return choose(defects, found)
                * choose(of.items() - defects, of.looked() - found)
                / choose(of.items(), of.looked());
    }

    private static double choose(int from, int many) {
        double ways = many < 0 || many > from ? 0 : 1;
        for (int i = 0; i < many && ways > 0; i++) {
            ways = ways * (from - i) / (i + 1);
        }
        return ways;
    }

    /** The mirror: defects and sound items changed, what was an upper bound is a lower one. */
    @Test
    void lowerBound_isTheUpperOneOfTheSoundItems() {
        List<Seen> defects = List.of(new Seen(40, 10, 7), new Seen(30, 8, 5));
        List<Seen> sound = List.of(new Seen(40, 10, 3), new Seen(30, 8, 3));
        assertEquals(70 - StratifiedBounds.exactUpper(sound, 0.95), StratifiedBounds.exactLower(defects, 0.95));
    }

    @ParameterizedTest
    @CsvSource({"5,0.978256,0.950067", "10,0.965174,0.955558", "20,0.956652,0.951726", "30,0.952978,0.952695"})
    void coverage_leastOverAll(int looked, double twoSided, double oneSided) {
        double leastTwo = 1;
        double leastOne = 1;
        for (int defects = 0; defects <= 60; defects++) {
            double two = 0;
            double one = 0;
            for (int x = Math.max(0, looked - 60 + defects); x <= Math.min(looked, defects); x++) {
                Seen seen = new Seen(60, looked, x);
                double chance = LotBounds.atMostProbability(seen, defects)
                        - (x == 0 ? 0 : LotBounds.atMostProbability(new Seen(60, looked, x - 1), defects));
                LotBounds bounds = LotBounds.twoSided(seen, CONFIDENCE);
                two += bounds.lower() <= defects && defects <= bounds.upper() ? chance : 0;
                one += defects <= LotBounds.upperBound(seen, CONFIDENCE) ? chance : 0;
            }
            leastTwo = Math.min(leastTwo, two);
            leastOne = Math.min(leastOne, one);
        }
        Published.check(EXACT, twoSided, leastTwo, 5e-7);
        Published.check(EXACT, oneSided, leastOne, 5e-7);
    }

    @Test
    void outsideItsDomain_isRefused() {
        assertThrows(Invalid.class, () -> new Seen(0, 0, 0));
        assertThrows(Invalid.class, () -> new Seen(10, 11, 0));
        assertThrows(Invalid.class, () -> new Seen(10, 5, 6));
        assertThrows(Invalid.class, () -> LotBounds.upperBound(new Seen(10, 5, 1), BigDecimal.ONE));
        assertThrows(
                Invalid.class,
                () -> StratifiedBounds.exactUpper(List.of(new Seen(501, 5, 1), new Seen(10, 5, 1)), 0.95));
    }
}

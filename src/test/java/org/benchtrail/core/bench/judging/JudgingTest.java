package org.benchtrail.core.bench.judging;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.TDistribution;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Figure;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.measure.Uncertainty;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class JudgingTest {
    private static final String GUM = "JCGM 100 (GUM) 4.3.7, university tutorial on meter specifications";
    private static final String GUM_RECOMPUTED = "JCGM 100 (GUM) 4.3.7 and 5.1.2, recomputed";
    private static final String GUM_H1 = "JCGM 100 (GUM) H.1, end gauge (from memory, recomputed)";
    private static final String JCGM_106 = "JCGM 106:2012, 7 (from memory, recomputed)";
    private static final String BENCH_106 = "JCGM 106:2012, 7, formula recomputed";
    private static final String ILAC = "ILAC-G8:09/2019, 4.2";

    private static Result meter(double reading, double percent, double counts, double resolution) {
        return Meter.calculate(
                new Meter.Input("V", List.of(reading), percent, counts, resolution, null, null, null, null));
    }

    private static void checkMeter(String source, Result result, double limit, double standard) {
        Published.check(source, limit, FigureOf.value(result, "Limit of error"), 1e-9);
        Published.check(source, standard, FigureOf.value(result, "Standard uncertainty from the specification"), 5e-7);
    }

    @Test
    void meter_specification() {
        checkMeter(GUM, meter(32.00, 2.5, 3, 0.01), 0.83, 0.479201);
        checkMeter(GUM, meter(0.09, 2.5, 3, 0.01), 0.03225, 0.018620);
        checkMeter(GUM_RECOMPUTED, meter(11.62, 0.5, 2, 0.01), 0.0781, 0.045091);
        // 1.503 / √3 is 0.8677575; worked by hand with √3 = 1.73205 it comes out as 0.867758
        checkMeter(GUM_RECOMPUTED, meter(120.3, 1.0, 3, 0.1), 1.503, 0.8677575);
        checkMeter(GUM_RECOMPUTED, meter(3.312, 0.5, 2, 0.001), 0.01856, 0.010716);
        Published.check(
                GUM_RECOMPUTED, 0.090182, FigureOf.value(meter(11.62, 0.5, 2, 0.01), "Expanded uncertainty"), 5e-7);
        assertEquals(
                FigureOf.value(meter(11.62, 0.5, 2, 0.01), "Expanded uncertainty"),
                FigureOf.value(meter(-11.62, 0.5, 2, 0.01), "Expanded uncertainty"));
    }

    @Test
    void uncertainties_combine() {
        double[] parts = {Uncertainty.rectangular(0.0781), Uncertainty.rectangular(0.005), 0.012};
        Published.check(GUM_RECOMPUTED, 0.046750, Uncertainty.combine(parts), 5e-7);
        double[] gauge = {25, 9.7, 2.9, 16.6};
        double[] degrees = {18, 25.6, 50, 2};
        Published.check(GUM_H1, 1003.06, Math.pow(Uncertainty.combine(gauge), 2), 5e-3);
        Published.check(GUM_H1, 31.671, Uncertainty.combine(gauge), 5e-4);
        Published.check(GUM_H1, 16.76, Uncertainty.effectiveDegrees(gauge, degrees), 5e-3);
        Published.check(GUM_H1, 2.9208, TDistribution.of(16).inverseCumulativeProbability(0.995), 5e-5);
    }

    /** Two readings 0.024 V apart have s = 0.016971 and a mean known to 0.012. */
    @Test
    void meter_repeated() {
        Result result =
                Meter.calculate(new Meter.Input("V", List.of(11.608, 11.632), 0.5, 2, 0.01, null, null, null, null));
        assertEquals(11.62, FigureOf.value(result, "Reading"), 1e-12);
        assertEquals(0.012, FigureOf.value(result, "Standard uncertainty of the mean"), 1e-12);
        Published.check(GUM_RECOMPUTED, 0.046750, FigureOf.value(result, "Combined standard uncertainty"), 5e-7);
        Result alike =
                Meter.calculate(new Meter.Input("V", List.of(11.62, 11.62), 0.5, 2, 0.01, null, null, null, null));
        Published.check(
                "normal distribution: 95.45 % lie within two standard deviations",
                2.000, FigureOf.value(alike, "Coverage factor"), 5e-4);
    }

    @Test
    void meter_outsideItsSpecification_isRefused() {
        FigureOf.names(
                assertThrows(
                        Invalid.class, () -> new Meter.Input("V", List.of(41.0), 0.5, 2, 0.01, 40.0, null, null, null)),
                "readings");
        FigureOf.names(
                assertThrows(
                        Invalid.class, () -> new Meter.Input("V", List.of(1.0), 0.5, 2, 0.01, null, 5.0, 18.0, 28.0)),
                "temperature");
        FigureOf.names(
                assertThrows(
                        Invalid.class, () -> new Meter.Input("V", List.of(0.0), 0.5, 0, 0.01, null, null, null, null)),
                "counts");
        FigureOf.names(
                assertThrows(
                        Invalid.class, () -> new Meter.Input("V", List.of(1.0), 0, 0, 0.01, null, null, null, null)),
                "percent");
    }

    private static Result against(double value, double u, Double lower, Double upper, double guard) {
        return AgainstLimit.calculate(new AgainstLimit.Input("V", value, u, lower, upper, guard));
    }

    private static double probability(double value, double u, Double lower, Double upper) {
        return FigureOf.value(against(value, u, lower, upper, 2), "Probability that the true value conforms") / 100;
    }

    @Test
    void conformanceProbability() {
        Published.check(JCGM_106, 0.919243, probability(-5.47, 0.05, null, -5.40), 5e-7);
        Published.check(JCGM_106, 0.989010, probability(509.7, 8.6, 490.0, null), 5e-7);
        Published.check(JCGM_106, 0.999, probability(106.587609, 0.02 * 106.587609, 100.0, null), 5e-8);
        Published.check(BENCH_106, 0.866740, probability(12.55, 0.045, 11.40, 12.60), 5e-7);
        Published.check(BENCH_106, 0.328361, probability(11.38, 0.045, 11.40, 12.60), 5e-7);
        Published.check(BENCH_106, 0.500000, probability(12.60, 0.045, 11.40, 12.60), 5e-7);
        Published.check(BENCH_106, 0.977250, probability(11.49, 0.045, 11.40, 12.60), 5e-7);
        Published.check(BENCH_106, 0.769861, probability(12.0, 0.5, 11.40, 12.60), 5e-7);
        Published.check(BENCH_106, 0.908789, probability(4.79, 0.03, 4.75, 5.25), 5e-7);
    }

    @Test
    void oneSidedZ_table() {
        double[][] table = {{0.80, 0.841621}, {0.90, 1.281552}, {0.95, 1.644854}, {0.99, 2.326348}, {0.999, 3.090232}};
        for (double[] row : table) {
            Published.check(
                    "standard normal quantiles, handbook table", row[0], probability(row[1], 1, 0.0, null), 5e-7);
        }
    }

    @Test
    void guardedAcceptance() {
        Result rail = against(12.55, 0.045, 11.40, 12.60, 2);
        Published.check(ILAC, 11.49, FigureOf.value(rail, "Accepted from"), 1e-9);
        Published.check(ILAC, 12.51, FigureOf.value(rail, "Accepted up to"), 1e-9);
        Published.check(
                ILAC, "too close to call, on the inner side", rail.judgement().words());
        Published.check(
                ILAC,
                "too close to call, on the outer side",
                against(11.38, 0.045, 11.40, 12.60, 2).judgement().words());
        Published.check(
                ILAC,
                Level.BAD,
                against(11.30, 0.045, 11.40, 12.60, 2).judgement().level());
        Published.check(
                ILAC,
                "uncertainty too large to decide",
                against(12.0, 0.5, 11.40, 12.60, 2).judgement().words());
        Published.check(ILAC, 0.022750, 1 - probability(11.49, 0.045, 11.40, null), 5e-7);
        assertEquals(
                Level.GOOD, against(11.49, 0.045, 11.40, 12.60, 2).judgement().level());
        assertEquals(
                Level.GOOD, against(12.51, 0.045, 11.40, 12.60, 2).judgement().level());
        assertEquals(Level.BAD, against(14, 0.5, 11.40, 12.60, 2).judgement().level());
    }

    @Test
    void simpleAcceptance_comparesWithTheLimitItself() {
        assertEquals(
                Level.GOOD, against(12.60, 0.045, 11.40, 12.60, 0).judgement().level());
        assertEquals(
                Level.BAD, against(12.6001, 0.045, 11.40, 12.60, 0).judgement().level());
        FigureOf.names(assertThrows(Invalid.class, () -> against(1, 1, null, null, 2)), "lower");
        FigureOf.names(assertThrows(Invalid.class, () -> against(1, 1, 2.0, 2.0, 2)), "upper");
        FigureOf.names(assertThrows(Invalid.class, () -> against(1, 0, 2.0, 3.0, 2)), "uncertainty");
    }

    /** Just on each other the limits leave one value and no width; crossed they leave none. */
    @ParameterizedTest
    @CsvSource({"2, 2.0000001, true", "2, 2, false", "2, 1.9999999, false", "-1, -2, false", "-2, -1, true"})
    void limits_thatCrossOrMeetAreRefused(double lower, double upper, boolean taken) {
        if (taken) {
            against(1, 1, lower, upper, 2);
        } else {
            Invalid refused = assertThrows(Invalid.class, () -> against(1, 1, lower, upper, 2));
            assertEquals(
                    List.of("upper"),
                    refused.problems().stream().map(Invalid.Problem::field).toList());
            assertTrue(refused.getMessage().contains("above the lower one"), refused.getMessage());
        }
    }

    private static Meter.Input window(Double temperature, Double coldest, Double warmest) {
        return new Meter.Input("V", List.of(11.62), 0.5, 2, 0.01, null, temperature, coldest, warmest);
    }

    /** With its ends crossed no temperature lies in the window, so that it would not be the meter's that is wrong. */
    @ParameterizedTest
    @CsvSource({"18, 28, true", "23, 23, true", "23.0001, 23, false", "28, 18, false", "-5, -10, false"})
    void meterWindow_withItsEndsCrossedIsRefused(double coldest, double warmest, boolean taken) {
        if (taken) {
            assertDoesNotThrow(() -> window(null, coldest, warmest));
            return;
        }
        for (Double temperature : Arrays.asList(null, coldest, warmest, (coldest + warmest) / 2)) {
            Invalid refused = assertThrows(Invalid.class, () -> window(temperature, coldest, warmest));
            assertEquals(
                    List.of("warmest"),
                    refused.problems().stream().map(Invalid.Problem::field).toList());
        }
    }

    @ParameterizedTest
    @CsvSource({"17.9, false", "18, true", "28, true", "28.1, false"})
    void meterTemperature_liesInItsWindowEndsIncluded(double temperature, boolean taken) {
        if (taken) {
            assertDoesNotThrow(() -> window(temperature, 18.0, 28.0));
        } else {
            FigureOf.names(assertThrows(Invalid.class, () -> window(temperature, 18.0, 28.0)), "temperature");
        }
    }

    /** The further out, the less likely it conforms; the wider the limits, the more. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void conformance_fallsOutwards(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int row = 0; row < 200; row++) {
            double u = random.nextDouble(0.05, 1);
            double value = 5 + random.nextDouble(0, 2 * u);
            String where = "seed " + seed + ", row " + row;
            double base = probability(value, u, -5.0, 5.0);
            assertTrue(probability(value + 0.1 * u, u, -5.0, 5.0) < base, where);
            assertTrue(probability(value, u, -5.0, 5.0 + 0.1 * u) > base, where);
            assertEquals(base, probability(-value, u, -5.0, 5.0), 1e-12, where);
        }
    }

    @Test
    void reason_promisesNoCertainty() {
        assertChance("more than 99.999", against(12, 0.045, 11.40, 12.60, 2));
        assertChance("less than 0.001", against(14, 0.045, 11.40, 12.60, 2));
        assertChance("more than 99.999", against(12, 1e-9, 11.40, 12.60, 2));
        assertChance("50", against(12.60, 0.045, 11.40, 12.60, 2));
        assertTrue(against(12.55, 0.045, null, 12.60, 2).judgement().reason().contains("an upper limit of 12.6 V"));
        assertTrue(against(12.55, 0.045, 12.6, null, 2).judgement().reason().contains("a lower limit of 12.6 V"));
    }

    /** The sentence, the figure and the working say one chance alike. */
    private static void assertChance(String shown, Result result) {
        Figure figure = result.figures().stream()
                .filter(f -> f.name().startsWith("Probability"))
                .findFirst()
                .orElseThrow();
        assertEquals(shown, figure.text());
        assertTrue(result.judgement().reason().contains("probability of " + shown + " %"), result.judgement()::reason);
        assertTrue(result.working().stream().anyMatch(w -> w.withNumbers().endsWith(" = " + shown + " %")));
    }

    private static Result soak(double every, double doubt, Double clean) {
        return Soak.calculate(new Soak.Input(every, doubt, clean));
    }

    @Test
    void soak() {
        String poisson =
                "Poisson process: ln 20 = 2.995732, Abramowitz and Stegun, Handbook of Mathematical Functions, 1964,"
                        + " table 4.2";
        Published.check(poisson, 2.995732, FigureOf.value(soak(1, 5, null), "Time to run clean"), 5e-7);
        Published.check(
                "ln 100 = 4.605170, Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, table 4.2",
                24 * 4.605170,
                FigureOf.value(soak(24, 1, null), "Time to run clean"),
                24 * 5e-7);
        Published.check(
                "e^-3 = 0.049787, Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, table 4.4",
                4.9787,
                FigureOf.value(soak(10, 5, 30.0), "Chance of so long a quiet if the fault is still there"),
                5e-5);
        assertEquals(Level.GOOD, soak(10, 5, 30.0).judgement().level());
        assertEquals(Level.UNDECIDED, soak(10, 5, 29.9).judgement().level());
        assertEquals(Level.NONE, soak(10, 5, null).judgement().level());
        assertTrue(FigureOf.value(soak(10, 1, null), "Time to run clean")
                > FigureOf.value(soak(10, 5, null), "Time to run clean"));
    }

    private static final BigDecimal NINETY_FIVE = new BigDecimal("0.95");

    @Test
    void subset_discoverySampling() {
        double[][] table = {
            {20, 1, 19, 0.95},
            {50, 1, 48, 0.96},
            {50, 5, 22, 0.953614},
            {100, 5, 45, 0.953794},
            {200, 4, 105, 0.950784},
            {200, 10, 51, 0.951379},
            {500, 25, 56, 0.952546},
            {1000, 50, 57, 0.950763},
            {1000, 10, 258, 0.950204}
        };
        for (double[] row : table) {
            String source = "hypergeometric distribution, exact, recomputed";
            Result result = Subset.calculate(new Subset.Input((int) row[0], (int) row[1], 95));
            Published.check(source, row[2], FigureOf.value(result, "Look at"), 0);
            Published.check(source, 100 * row[3], FigureOf.value(result, "Chance to find it"), 5e-5);
        }
        int endless = new Discovery(100_000, 5000).needed(NINETY_FIVE);
        Published.check("endless lot: ln 0.05 / ln 0.95 = 58.404, so 59", 59, endless, 0);
    }

    @Test
    void subset_edges() {
        assertEquals(1, new Discovery(7, 7).needed(NINETY_FIVE));
        assertEquals(1, new Discovery(1, 1).needed(BigDecimal.ONE));
        assertEquals(16, new Discovery(20, 5).needed(BigDecimal.ONE));
        assertEquals(100_000, new Discovery(100_000, 1).needed(BigDecimal.ONE));
        FigureOf.names(assertThrows(Invalid.class, () -> new Subset.Input(20, 0, 95)), "faulty");
        FigureOf.names(assertThrows(Invalid.class, () -> new Subset.Input(20, 21, 95)), "faulty");
        FigureOf.names(assertThrows(Invalid.class, () -> new Subset.Input(0, 1, 95)), "size");
    }

    /** Against the definition in integers, and n is the smallest. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void subset_isTheSmallest_byTheDefinition(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int row = 0; row < 60; row++) {
            int size = random.nextInt(1, 400);
            int faulty = random.nextInt(1, size + 1);
            Discovery discovery = new Discovery(size, faulty);
            int n = discovery.needed(NINETY_FIVE);
            String where = "seed " + seed + ", row " + row + ": " + discovery;
            assertTrue(missesAtMostATwentieth(discovery, n), where);
            assertTrue(n == 1 || !missesAtMostATwentieth(discovery, n - 1), where);
            double chance = 1
                    - new BigDecimal(choose(size - faulty, n))
                            .divide(new BigDecimal(choose(size, n)), MathContext.DECIMAL64)
                            .doubleValue();
            assertEquals(chance, discovery.chance(n), 1e-10, where);
        }
    }

    private static boolean missesAtMostATwentieth(Discovery d, int n) {
        return choose(d.size() - d.faulty(), n).multiply(BigInteger.valueOf(20)).compareTo(choose(d.size(), n)) <= 0;
    }

    private static BigInteger choose(int n, int k) {
        BigInteger value = k > n ? BigInteger.ZERO : BigInteger.ONE;
        for (int i = 1; i <= k; i++) {
            value = value.multiply(BigInteger.valueOf(n - k + i)).divide(BigInteger.valueOf(i));
        }
        return value;
    }

    @Test
    void subset_answersLargeLotsAtOnce() {
        assertEquals(5, assertTimeoutPreemptively(Duration.ofSeconds(10), () -> look(100_000, 50_000, 95)));
        assertEquals(50_001, assertTimeoutPreemptively(Duration.ofSeconds(10), () -> look(100_000, 50_000, 100)));
        assertEquals(993, assertTimeoutPreemptively(Duration.ofSeconds(10), () -> look(100_000, 300, 95)));
    }

    private static double look(int size, int faulty, double confidence) {
        return FigureOf.value(Subset.calculate(new Subset.Input(size, faulty, confidence)), "Look at");
    }

    @Test
    void uncertainties_ofNothingButKnownParts_haveNoEndOfDegrees() {
        double[] known = {1, 2};
        double[] endless = new double[2];
        Arrays.fill(endless, Double.POSITIVE_INFINITY);
        assertEquals(Double.POSITIVE_INFINITY, Uncertainty.effectiveDegrees(known, endless));
    }
}

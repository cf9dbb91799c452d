package org.benchtrail.core.bench.network;

import static org.benchtrail.core.Published.check;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.network.Loss.Input;
import org.benchtrail.core.bench.network.Loss.Interval;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LossTest {
    private static final String NIST = "NIST/SEMATECH e-Handbook 7.2.4.1, Clopper-Pearson";

    private static Result of(int lost, int probes, double allowed) {
        return Loss.calculate(new Input(lost, probes, allowed, 95));
    }

    @Test
    void nistExample() {
        Interval interval = Loss.exact(4, 20, 0.05);
        check(NIST, 0.071354, interval.low(), 2e-6);
        check(NIST, 0.401029, interval.high(), 2e-6);
    }

    @ParameterizedTest
    @CsvSource({
        "4, 20, 0.057334, 0.436614",
        "26, 200, 0.086708, 0.184652",
        "29, 30, 0.827831, 0.999156",
        "0, 10, 0, 0.308497",
        "10, 10, 0.691503, 1"
    })
    void exactIntervals_at95(int lost, int probes, double low, double high) {
        Result result = of(lost, probes, 0);
        check(NIST, low, FigureOf.value(result, "Loss, lower end") / 100, 6e-7);
        check(NIST, high, FigureOf.value(result, "Loss, upper end") / 100, 6e-7);
    }

    /** The defining property, with another library's binomial: each end leaves 2.5 % of the tail. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void ends_leaveTheTail(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 60; i++) {
            int n = 2 + random.nextInt(500);
            int k = 1 + random.nextInt(n - 1);
            Interval interval = Loss.exact(k, n, 0.025);
            double above = 1 - new BinomialDistribution(null, n, interval.low()).cumulativeProbability(k - 1);
            double below = new BinomialDistribution(null, n, interval.high()).cumulativeProbability(k);
            assertEquals(0.025, above, 1e-6, "seed " + seed + " " + k + "/" + n);
            assertEquals(0.025, below, 1e-6, "seed " + seed + " " + k + "/" + n);
        }
    }

    /** The rule of three: no event in n gives an upper 95 % one-sided bound of about 3 / n. */
    @Test
    void noneLost_followsTheRuleOfThree() {
        for (int n : new int[] {100, 1000, 10_000}) {
            check(
                    "rule of three (Hanley and Lippman-Hand 1983, from memory)",
                    3.0 / n,
                    Loss.exact(0, n, 0.05).high(),
                    0.02 * 3.0 / n);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "4, 200, 0.5, BAD",
        "1, 200, 0.5, UNDECIDED",
        "0, 200, 0.5, UNDECIDED",
        "0, 1000, 0.5, GOOD",
        "1, 10, 0, BAD",
        "0, 10, 0, UNDECIDED"
    })
    void verdict(int lost, int probes, double allowed, Level level) {
        assertEquals(
                level,
                of(lost, probes, allowed).judgement().level(),
                of(lost, probes, allowed).judgement().reason());
    }

    @Test
    void undecided_saysHowManyProbesWouldSettleIt() {
        int n = (int) Math.ceil(FigureOf.value(of(0, 200, 0.5), "Probes without loss that would settle it"));
        assertEquals(Level.GOOD, of(0, n, 0.5).judgement().level());
        assertEquals(Level.UNDECIDED, of(0, n - 1, 0.5).judgement().level());
    }

    private static String shown(Result result, String figure) {
        return result.figures().stream()
                .filter(f -> f.name().equals(figure))
                .findFirst()
                .orElseThrow()
                .text();
    }

    /** 4 of 20 are 20 %, with the ends 5.7334 % and 43.6614 %: just over, just under and, at three digits, on the allowed loss. */
    @ParameterizedTest
    @CsvSource({
        "5.7333, 5.7334, BAD",
        "5.7335, 5.73, UNDECIDED",
        "5.73, 5.733, BAD",
        "5.8, 5.73, UNDECIDED",
        "43.6613, 43.7, UNDECIDED",
        "43.6615, 43.66, GOOD",
        "43.66, 43.7, UNDECIDED",
        "43.7, 43.66, GOOD",
        "44, 43.7, GOOD"
    })
    void endBesideTheAllowedLoss_isWrittenOnItsSideOfIt(double allowed, String written, Level level) {
        Result result = of(4, 20, allowed);
        assertEquals(level, result.judgement().level(), result.judgement().reason());
        String end = allowed < 20 ? "Loss, lower end" : "Loss, upper end";
        assertEquals(written, shown(result, end));
        assertTrue(result.judgement().reason().contains(" " + written + " %"), result.judgement()::reason);
    }

    /** What none lost in 200 leaves open is 1.8275 %. */
    @ParameterizedTest
    @CsvSource({"1.8274, 1.83, UNDECIDED", "1.8276, 1.8275, GOOD", "1.83, 1.828, GOOD", "2, 1.83, GOOD"})
    void endOfNoneLost_isWrittenOnItsSideToo(double allowed, String written, Level level) {
        Result result = of(0, 200, allowed);
        assertEquals(level, result.judgement().level(), result.judgement().reason());
        assertEquals(written, shown(result, "Loss, upper end"));
        assertTrue(result.judgement().reason().contains("and " + written + " %"), result.judgement()::reason);
    }

    /** No more digits than the interval leaves, but as many as tell it from the allowed loss. */
    @ParameterizedTest
    @CsvSource({
        "1, 3, 0.5, 33",
        "7, 370, 0.5, 1.9",
        "7, 370, 1.9, 1.89",
        "7, 370, 1.89, 1.9",
        "7, 370, 1.8919, 1.89",
        "70, 3700, 0.5, 1.89",
        "700, 37000, 0.5, 1.89",
        "1, 2500, 0.5, 0.04",
        "199, 200, 0.5, 99.5",
        "1, 10000000, 1, less than 0.001",
        "0, 200, 0.5, 0",
        "5, 5, 0.5, 100"
    })
    void lossSeen_hasNoMoreDigitsThanAreKnown(int lost, int probes, double allowed, String written) {
        Result result = of(lost, probes, allowed);
        assertEquals(written, shown(result, "Loss seen"));
        String start = lost + " of " + probes + " probes are " + written + " %,";
        assertTrue(result.judgement().reason().startsWith(start), result.judgement()::reason);
    }

    /** However far out the chance is, only an allowed loss of none makes it none. */
    @Test
    void chanceOfAsMany_isNoneOnlyWhereNoneIsAllowed() {
        String chance = "Chance of seeing as many at the allowed loss";
        assertEquals("less than 0.001", shown(of(9000, 10_000, 0.001), chance));
        assertTrue(of(9000, 10_000, 0.001).judgement().reason().endsWith("a chance of less than 0.001 %."));
        assertEquals("0", shown(of(1, 10, 0), chance));
        assertEquals("100", shown(of(0, 10, 0.5), chance));
    }

    @Test
    void moreLostThanSent_isRefused() {
        Invalid refusal = assertThrows(Invalid.class, () -> of(11, 10, 1));
        assertEquals("lost", refusal.problems().get(0).field());
        assertThrows(Invalid.class, () -> of(0, 0, 1));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void oneMoreLost_raisesBothEnds(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 200; i++) {
            int n = 2 + random.nextInt(2000);
            int k = random.nextInt(n);
            Interval here = Loss.exact(k, n, 0.025);
            Interval more = Loss.exact(k + 1, n, 0.025);
            assertTrue(more.low() > here.low() && more.high() > here.high(), "seed " + seed + " " + k + "/" + n);
            assertTrue(here.low() <= (double) k / n && here.high() >= (double) k / n, "seed " + seed);
        }
    }
}

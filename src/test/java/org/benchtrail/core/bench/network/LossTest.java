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

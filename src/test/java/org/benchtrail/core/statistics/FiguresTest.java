package org.benchtrail.core.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.benchtrail.core.statistics.KaplanMeier.Observation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Survival with what is still open, and the funnel, against published and recomputed values. */
class FiguresTest {
    private static final String REMISSION =
            "6-mercaptopurine remissions (Gehan 1965), S published, errors and limits recomputed";
    private static final String BINOMIAL = "binomial tails by Apache Commons Statistics 1.1";
    private static final String FUNNEL = "funnel limits, exact binomial with interpolation, recomputed";

    private static List<Observation> read(String weeks) {
        List<Observation> units = new ArrayList<>();
        for (String week : weeks.split(" ")) {
            boolean running = week.endsWith("+");
            double time = Double.parseDouble(week.replace("+", ""));
            units.add(running ? Observation.running(time) : Observation.failed(time));
        }
        return units;
    }

    /** Summed once, against a library that computes each by itself; sizes and chances at random, and at the ends. */
    @Test
    void sumsOfTheBinomial_areThoseOfALibrary() {
        java.util.Random random = new java.util.Random(40718);
        for (int i = 0; i < 400; i++) {
            int trials = i < 20 ? 1 + i / 4 : 1 + random.nextInt(i < 380 ? 500 : 20_000);
            double chance = i % 5 == 0 ? 1e-6 : i % 5 == 1 ? 1 - 1e-6 : random.nextDouble() * 0.998 + 0.001;
            BinomialDistribution library = BinomialDistribution.of(trials, chance);
            BinomialSums sums = new BinomialSums(trials, chance);
            for (double p : new double[] {0.001, 0.025, 0.5, 0.975, 0.999}) {
                int r = sums.above(p);
                Published.check(BINOMIAL, library.cumulativeProbability(r), sums.upTo(r), 1e-10);
                Published.check(BINOMIAL, library.cumulativeProbability(r - 1), sums.upTo(r - 1), 1e-10);
                assertTrue(sums.upTo(r) > p && sums.upTo(r - 1) <= p, trials + " at " + chance + ", " + p);
            }
            Published.check(BINOMIAL, 0, sums.upTo(-1), 0);
            Published.check(BINOMIAL, 1, sums.upTo(trials), 1e-10);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "6,21,3,0.857143,0.076360,0.6197,0.9516", "7,17,1,0.806723,0.086935,0.5631,0.9228",
        "10,15,1,0.752941,0.096350,0.5032,0.8894", "13,12,1,0.690196,0.106815,0.4316,0.8491",
        "16,11,1,0.627451,0.114054,0.3675,0.8049", "22,7,1,0.537815,0.128234,0.2678,0.7468",
        "23,6,1,0.448179,0.134591,0.1881,0.6801",
    })
    void remissions(double time, int atRisk, int ends, double survival, double error, double lower, double upper) {
        KaplanMeier curve =
                KaplanMeier.of(read("6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+"));
        KaplanMeier.Step step =
                curve.steps().stream().filter(s -> s.time() == time).findFirst().orElseThrow();
        Published.check(REMISSION, List.of(atRisk, ends), List.of(step.atRisk(), step.failures()));
        Published.check(REMISSION, survival, step.survival(), 5e-7);
        Published.check(REMISSION, error, step.standardError(), 5e-7);
        Published.check(REMISSION, lower, step.interval(0.95).lower(), 5e-5);
        Published.check(REMISSION, upper, step.interval(0.95).upper(), 5e-5);
        Published.check(REMISSION, 23, curve.median().orElseThrow(), 0);
    }

    private static final String LOG_RANK =
            "log-rank test of both groups by survdiff of R's survival package (output published with the data, seen)";

    private static final String TREATED = "6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+";
    private static final String PLACEBO = "1 1 2 2 3 4 4 5 5 8 8 8 8 11 11 12 12 15 17 22 23";

    /** Printed there: 9 ends where 19.3 are expected, 21 and 10.7; 5.46, 9.77; chi square 16.8, p = 4.17e-05. */
    @Test
    void remissions_ofBothGroups_againstEachOther() {
        LogRank treated = LogRank.of(read(TREATED), read(PLACEBO));
        Published.check(LOG_RANK, 9, treated.observed(), 0);
        Published.check(LOG_RANK, 19.3, treated.expected(), 0.05);
        Published.check(LOG_RANK, 5.46, square(9 - treated.expected()) / treated.expected(), 0.005);
        Published.check(LOG_RANK, 9.77, square(9 - treated.expected()) / (30 - treated.expected()), 0.005);
        Published.check(LOG_RANK, 16.8, treated.statistic(), 0.05);
        Published.check(LOG_RANK, 4.17e-5, treated.byChance(), 5e-8);
        Published.check("the same recomputed by another program", 6.256961, treated.variance(), 5e-7);
        Published.check("the same recomputed by another program", 16.792941, treated.statistic(), 5e-7);
        LogRank placebo = LogRank.of(read(PLACEBO), read(TREATED));
        Published.check(LOG_RANK, 21, placebo.observed(), 0);
        Published.check(LOG_RANK, 10.7, placebo.expected(), 0.05);
        assertEquals(treated.statistic(), placebo.statistic(), 1e-9);
    }

    private static double square(double value) {
        return value * value;
    }

    @Test
    void groupsThatAreAlike_areNotApart_andNoneMayBeEmpty() {
        LogRank same = LogRank.of(read(PLACEBO), read(PLACEBO));
        assertEquals(0, same.statistic(), 1e-12);
        assertEquals(1, same.byChance());
        assertEquals(1, LogRank.of(read("3+"), read("4+ 5+")).byChance(), "nothing has ended");
        assertThrows(Invalid.class, () -> LogRank.of(read("3"), List.of()));
        assertThrows(Invalid.class, () -> LogRank.of(List.of(), read("3")));
    }

    @Test
    void remissions_withoutAnyOpen() {
        KaplanMeier curve = KaplanMeier.of(read("1 1 2 2 3 4 4 5 5 8 8 8 8 11 11 12 12 15 17 22 23"));
        Published.check(REMISSION, 0.380952, curve.survivalAt(8), 5e-7);
        KaplanMeier.Step eight =
                curve.steps().stream().filter(s -> s.time() == 8).findFirst().orElseThrow();
        Published.check(REMISSION, 0.105971, eight.standardError(), 5e-7);
        Published.check(REMISSION, 8, curve.median().orElseThrow(), 0);
        Published.check(REMISSION, 0, curve.survivalAt(23), 0);
        KaplanMeier.Step last = curve.steps().get(curve.steps().size() - 1);
        Published.check(REMISSION, 0, last.interval(0.95).upper(), 0);
    }

    @ParameterizedTest
    @CsvSource({
        "0.1,50,-0.016119,0.013863,0.179723,0.240128", "0.1,100,0.014179,0.040381,0.157719,0.198357",
        "0.074,500,0.039321,0.050828,0.096778,0.111537", "0.2,25,-0.029412,0.035952,0.349582,0.458447",
    })
    void funnelLimits(double target, int size, double low, double lower, double upper, double high) {
        Published.check(FUNNEL, low, Funnel.limit(target, size, 0.001), 5e-7);
        Published.check(FUNNEL, lower, Funnel.limit(target, size, 0.025), 5e-7);
        Published.check(FUNNEL, upper, Funnel.limit(target, size, 0.975), 5e-7);
        Published.check(FUNNEL, high, Funnel.limit(target, size, 0.999), 5e-7);
    }

    /** P(X >= 12) = 0.003220 and P(X >= 13) = 0.001005 of 50 at 0.1: 13 is not yet out, 14 is. */
    @Test
    void aUnit_isOutByItsExactTail() {
        BinomialSums sums = new BinomialSums(50, 0.1);
        Published.check(FUNNEL, 0.003220, 1 - sums.upTo(11), 5e-7);
        Published.check(FUNNEL, 0.001005, 1 - sums.upTo(12), 5e-7);
        assertFalse(Funnel.isOut(new Proportion(13, 50), 0.1));
        assertTrue(Funnel.isOut(new Proportion(14, 50), 0.1));
        Funnel funnel = Funnel.of(List.of(
                new Proportion(5, 50),
                new Proportion(4, 50),
                new Proportion(6, 50),
                new Proportion(5, 50),
                new Proportion(30, 60)));
        assertTrue(funnel.units().get(4).out());
        assertFalse(funnel.units().get(0).out());
    }
}

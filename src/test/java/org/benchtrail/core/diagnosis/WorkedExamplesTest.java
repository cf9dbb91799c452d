package org.benchtrail.core.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.IntStream;
import org.benchtrail.core.Published;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Small published examples: base rate, order by probability over cost, noisy-OR, scores, decibans. */
class WorkedExamplesTest {
    private static final ModelSettings PLAIN =
            ModelSettings.STANDARD.withoutClamp().withUnlisted(0);

    private static double certain(double prior, double sensitivity, double falsePositive) {
        CauseCategory c = Invented.category(
                240,
                List.of(Invented.answer("t", falsePositive, 1)),
                List.of(
                        Invented.cause("ill", prior, Invented.repair(10, 0.9), Invented.yes("t", sensitivity)),
                        Invented.cause("well", 1 - prior, Invented.repair(10, 0.9))));
        Model m = new Model(c, PLAIN);
        double[] score = m.logPriors();
        new Observed(0, List.of(), LikelihoodTable.channel(1, 1, 2), 1).addTo(score, m.table(0));
        return Ranking.normalised(score)[0];
    }

    /** Base rates: widely reprinted screening examples; the third as printed to eight digits, the fourth as "about 32 %". */
    @ParameterizedTest
    @CsvSource({
        "0.01, 0.80, 0.096, 0.077639752",
        "0.0025, 0.85, 0.20, 0.010539368",
        "0.0238, 0.85, 0.05, 0.29301854",
        "0.005, 0.95, 0.01, 0.32312925"
    })
    void baseRate(double prior, double sensitivity, double falsePositive, double expected) {
        Published.check("screening examples, base rate", expected, certain(prior, sensitivity, falsePositive), 5e-9);
    }

    @Test
    void baseRate_inDecibans() {
        String source = "screening example 1 % / 80 % / 9.6 %, recomputed in decibans";
        Published.check(source, -19.9564, Decibans.ofProbability(0.01), 5e-5);
        Published.check(source, 9.2082, Decibans.ofOdds(0.8 / 0.096), 5e-5);
        Published.check(source, -10.7482, Decibans.ofProbability(certain(0.01, 0.8, 0.096)), 5e-5);
    }

    private static RepairOrder certainRepairs(double... minutes) {
        double[] fix = new double[minutes.length];
        java.util.Arrays.fill(fix, 1);
        return new RepairOrder(minutes, fix, 1e9);
    }

    @Test
    void twoBoxes_probabilityOverCostFirst() {
        String source = "cs.stackexchange 144646, two boxes";
        RepairOrder boxes = certainRepairs(3, 2);
        double[] p = {0.8, 0.2, 0};
        Published.check(source, List.of(0, 1), boxes.plan(p, new boolean[2]).repairs());
        Published.check(source, 3.4, boxes.planMinutes(p, new boolean[2]), 1e-9);
        Published.check(source, 3.4, boxes.prefixMinutes(p, new int[] {0, 1})[2], 1e-9);
        Published.check(source, 4.4, boxes.prefixMinutes(p, new int[] {1, 0})[2], 1e-9);
    }

    @Test
    void fiveRepairs_eachOrderCostsWhatWasWorkedOut() {
        String source = "worked by hand for this project: five repairs";
        RepairOrder five = certainRepairs(25, 5, 10, 60, 4);
        double[] p = {0.45, 0.25, 0.15, 0.10, 0.05, 0};
        Published.check(
                source, List.of(1, 0, 2, 4, 3), five.plan(p, new boolean[5]).repairs());
        Published.check(source, 33.35, five.planMinutes(p, new boolean[5]), 1e-9);
        Published.check(source, 39.95, five.prefixMinutes(p, new int[] {0, 1, 2, 3, 4})[5], 1e-9);
        Published.check(source, 35.50, five.prefixMinutes(p, new int[] {4, 1, 2, 0, 3})[5], 1e-9);
        Published.check(source, 90.85, five.prefixMinutes(p, new int[] {3, 4, 2, 0, 1})[5], 1e-9);
    }

    /** S. Russell, P. Norvig, "Artificial Intelligence": cold, flu and malaria, inhibitions .6, .2, .1. */
    @ParameterizedTest
    @CsvSource({
        "0, 0, 0, 0, .01",
        "0, 0, 1, .9, .901",
        "0, 1, 0, .8, .802",
        "0, 1, 1, .98, .9802",
        "1, 0, 0, .4, .406",
        "1, 0, 1, .94, .9406",
        "1, 1, 0, .88, .8812",
        "1, 1, 1, .988, .98812"
    })
    void noisyOr_fever(int cold, int flu, int malaria, double plain, double leaking) {
        double[] c = {0.4 * cold, 0.8 * flu, 0.9 * malaria};
        Published.check("Russell & Norvig, noisy-OR fever", plain, NoisyOr.probability(0, c), 1e-12);
        Published.check("Russell & Norvig, with leak .01 by hand", leaking, NoisyOr.probability(0.01, c), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({".8, .6, .64, .82, .928", ".2, .4, .46, .28, .568"})
    void noisyOr_leakOfOneTenth(double first, double second, double onlySecond, double onlyFirst, double both) {
        String source = "manual of probability functions, leaky noisy-OR";
        Published.check(source, 0.1, NoisyOr.probability(0.1), 1e-12);
        Published.check(source, onlySecond, NoisyOr.probability(0.1, second), 1e-12);
        Published.check(source, onlyFirst, NoisyOr.probability(0.1, first), 1e-12);
        Published.check(source, both, NoisyOr.probability(0.1, first, second), 1e-12);
        assertEquals(first, NoisyOr.strength(onlyFirst, 0.1), 1e-12);
    }

    /** The multiclass Brier score counts both classes, so it is twice the binary one. */
    @ParameterizedTest
    @CsvSource({".7, .09, .514573", ".3, .49, 1.736966", ".5, .25, 1", "1, 0, 0"})
    void binaryScores(double stated, double brier, double bits) {
        Calibration.Forecast f = new Calibration.Forecast(List.of(stated, 1 - stated), 0);
        Published.check("Brier 1950, binary examples", 2 * brier, f.brier(), 1e-12);
        Published.check("Good 1952, logarithmic score", bits, f.logScore(), 5e-7);
    }

    @ParameterizedTest
    @CsvSource({"0, .26, .510826", "1, .86, 1.203973", "2, 1.26, 2.302585"})
    void threeClassScores(int truth, double brier, double nats) {
        Calibration.Forecast f = new Calibration.Forecast(List.of(0.6, 0.3, 0.1), truth);
        Published.check("three classes, worked by hand", brier, f.brier(), 1e-12);
        Published.check("three classes, worked by hand", nats / Math.log(2), f.logScore(), 1e-6);
    }

    /** Murphy's partition: Brier = reliability - resolution + uncertainty; here .036333 - .048333 + .24. */
    @Test
    void tenForecasts_meanBrier() {
        double[] stated = {.9, .9, .9, .6, .6, .1, .1, .1, .1, .3};
        int[] happened = {1, 1, 0, 1, 0, 0, 0, 0, 1, 0};
        List<Calibration.Forecast> all = IntStream.range(0, 10)
                .mapToObj(k -> new Calibration.Forecast(List.of(1 - stated[k], stated[k]), happened[k]))
                .toList();
        double twice = Calibration.figures(all).brier();
        Published.check("A. H. Murphy 1973, partition of the Brier score", 0.036333 - 0.048333 + 0.24, twice / 2, 1e-6);
    }

    /** E. T. Jaynes, "Probability Theory", section 4: two machines and a rescue hypothesis. */
    @Test
    void widgets_decibans() {
        String source = "Jaynes, Probability Theory, widgets";
        Published.check(source, 3.0103, Decibans.ofOdds((1 / 3.0) / (1 / 6.0)), 5e-5);
        Published.check(source, -0.9691, Decibans.ofOdds((2 / 3.0) / (5 / 6.0)), 5e-5);
        Published.check(source, -10, Decibans.ofProbability(1 / 11.0), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({
        "1, -6.99, 6.99, -52.64",
        "5, 5.016, -5.063, -27.129",
        "10, 2.239, -22.110, -2.353",
        "16, -26.055, -64.231, 26.054",
        "20, -44.965, -95.171, 44.965"
    })
    void widgets_theRescueHypothesisWinsOnlyAfterManySurprises(int m, double bad, double good, double rescue) {
        double[] prior = {(1 - 1e-6) / 11, 10 * (1 - 1e-6) / 11, 1e-6};
        double[] defective = {1 / 3.0, 1 / 6.0, 99 / 100.0};
        double[] expected = {bad, good, rescue};
        double[] score = new double[3];
        for (int i = 0; i < 3; i++) {
            score[i] = Math.log(prior[i]) + m * Math.log(defective[i]);
        }
        for (int i = 0; i < 3; i++) {
            Published.check(
                    "Jaynes, Probability Theory, widgets",
                    expected[i],
                    Decibans.against(score, i),
                    m == 1 ? 0.01 : 1e-3);
        }
    }

    /** R. G. Newcombe, Statistics in Medicine 17, 1998, table I, method 3 (from memory, not checked). */
    @ParameterizedTest
    @CsvSource({"81, 263, .2553, .3662", "15, 148, .0624, .1605", "0, 20, .0000, .1611", "1, 29, .0061, .1718"})
    void wilsonInterval(int hits, int trials, double low, double high) {
        Calibration.ScoreRange i = Calibration.wilson(hits, trials);
        Published.check("Newcombe 1998, score interval", low, i.low(), 5e-5);
        Published.check("Newcombe 1998, score interval", high, i.high(), 5e-5);
        var library =
                new org.apache.commons.math3.stat.interval.WilsonScoreInterval().createInterval(trials, hits, 0.95);
        Published.check("commons-math3 WilsonScoreInterval", library.getLowerBound(), i.low(), 1e-8);
        Published.check("commons-math3 WilsonScoreInterval", library.getUpperBound(), i.high(), 1e-8);
    }

    @Test
    void goldenSection_findsTheVertex() {
        Published.check(
                "vertex of (x - 2/3)^2",
                2 / 3.0,
                Calibration.minimum(x -> (x - 2 / 3.0) * (x - 2 / 3.0), 0.3, 1, 1e-3),
                1e-3);
    }
}

package org.benchtrail.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.StatUtils;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.benchtrail.core.measure.Accuracy.Absolute;
import org.benchtrail.core.measure.Accuracy.Certified;
import org.benchtrail.core.measure.Accuracy.PercentPlusCounts;
import org.benchtrail.core.measure.Accuracy.Unknown;
import org.junit.jupiter.api.Test;

class UncertaintyTest {
    private static final String TUTORIAL = "university tutorial on multimeter specifications, worked examples (seen)";
    private static final String GUM_437 = "JCGM 100:2008 (GUM), 4.3.7, recomputed in SciPy";
    private static final String GUM_512 = "JCGM 100:2008 (GUM), 5.1.2, recomputed in SciPy";
    private static final String GUM_H1 = "JCGM 100:2008 (GUM), H.1, end gauge (numbers from memory)";
    private static final String MATH = "Apache Commons Math 3.6.1";

    @Test
    void percentPlusCounts_publishedExamples() {
        check(TUTORIAL, "32.00 V", 2.5, 3, "0.01 V", 0.83, 0.479201);
        check(TUTORIAL, "0.09 V", 2.5, 3, "0.01 V", 0.03225, 0.018620);
        check(GUM_437, "11.62 V", 0.5, 2, "0.01 V", 0.0781, 0.045091);
        check(GUM_437, "120.3 V", 1.0, 3, "0.1 V", 1.503, 0.867757);
        check(GUM_437, "3.312 V", 0.5, 2, "0.001 V", 0.01856, 0.010716);
    }

    private static void check(
            String source, String reading, double percent, double counts, String step, double a, double u) {
        Quantity quantity = Quantity.parse(reading);
        PercentPlusCounts accuracy = new PercentPlusCounts(percent, counts, Quantity.parse(step));
        Published.check(source, a, accuracy.halfWidth(quantity), 1e-12);
        double got = new Reading(quantity, accuracy)
                .standardUncertainty(quantity.unit())
                .orElseThrow();
        Published.check(source, u, got, 5e-7);
    }

    @Test
    void percentPlusCounts_negativeReading_hasTheSameUncertainty() {
        PercentPlusCounts accuracy = new PercentPlusCounts(0.5, 2, Quantity.parse("0.01 V"));
        assertEquals(
                accuracy.standardUncertainty(Quantity.parse("12 V")),
                accuracy.standardUncertainty(Quantity.parse("-12 V")));
    }

    @Test
    void percentPlusCounts_resolutionInAnotherUnit_isTheSame() {
        Quantity reading = Quantity.parse("11.62 V");
        assertEquals(
                new PercentPlusCounts(0.5, 2, Quantity.parse("0.01 V")).standardUncertainty(reading),
                new PercentPlusCounts(0.5, 2, Quantity.parse("10 mV")).standardUncertainty(reading));
    }

    @Test
    void percentPlusCounts_outsideItsDomain_isRefusedAllAtOnce() {
        Invalid refused =
                assertThrows(Invalid.class, () -> new PercentPlusCounts(-1, Double.NaN, Quantity.parse("0 V")));
        assertEquals(3, refused.problems().size());
        assertThrows(Invalid.class, () -> new PercentPlusCounts(0, 0, Quantity.parse("0.01 V")));
        assertThrows(
                Invalid.class, () -> new PercentPlusCounts(1, 1, Quantity.parse("0.01 V"), Quantity.parse("20 A")));
    }

    @Test
    void reading_beyondTheRangeOfTheAccuracy_isRefused() {
        Accuracy accuracy = new PercentPlusCounts(0.5, 2, Quantity.parse("0.01 V"), Quantity.parse("20 V"));
        assertTrue(new Reading(Quantity.parse("20 V"), accuracy)
                .standardUncertainty(Units.VOLT)
                .isPresent());
        assertThrows(Invalid.class, () -> new Reading(Quantity.parse("20.01 V"), accuracy));
        assertThrows(Invalid.class, () -> new Reading(Quantity.parse("-20.01 V"), accuracy));
        assertThrows(Invalid.class, () -> new Reading(Quantity.parse("1 A"), accuracy));
    }

    @Test
    void absolute_ofTemperature_hasNoOffset() {
        Reading reading = new Reading(Quantity.parse("80 °C"), new Absolute(Quantity.parse("2 °C")));
        assertEquals(
                2 / Math.sqrt(3), reading.standardUncertainty(Units.CELSIUS).orElseThrow(), 1e-15);
        assertEquals(
                3.6 / Math.sqrt(3),
                reading.standardUncertainty(Units.named("°F")).orElseThrow(),
                1e-15);
        assertThrows(Invalid.class, () -> new Absolute(Quantity.parse("-2 °C")));
        assertThrows(IllegalArgumentException.class, () -> reading.standardUncertainty(Units.VOLT));
    }

    @Test
    void certified_isDividedByItsCoverageFactor() {
        Reading reading = new Reading(Quantity.parse("230 V"), new Certified(Quantity.parse("500 mV"), 2));
        assertEquals(0.25, reading.standardUncertainty(Units.VOLT).orElseThrow());
        assertThrows(Invalid.class, () -> new Certified(Quantity.parse("0 V"), 2));
        assertThrows(Invalid.class, () -> new Certified(Quantity.parse("1 V"), 0));
    }

    @Test
    void unknown_hasNone() {
        assertTrue(new Reading(Quantity.parse("12 V"), new Unknown())
                .standardUncertainty(Units.VOLT)
                .isEmpty());
    }

    @Test
    void combine_publishedExamples() {
        double combined = Uncertainty.combine(Uncertainty.rectangular(0.0781), Uncertainty.rectangular(0.005), 0.012);
        Published.check(GUM_512, 0.046750, combined, 5e-7);
        Published.check(GUM_H1, 31.671, Uncertainty.combine(25, 9.7, 2.9, 16.6), 5e-4);
        assertEquals(5, Uncertainty.combine(new double[] {3, -1}, new double[] {1, 4}), 1e-15);
        assertThrows(Invalid.class, () -> Uncertainty.combine(1, -1));
        assertThrows(Invalid.class, () -> Uncertainty.combine(new double[] {1}, new double[] {1, 2}));
    }

    @Test
    void effectiveDegrees_publishedExample() {
        double[] u = {25, 9.7, 2.9, 16.6};
        double degrees = Uncertainty.effectiveDegrees(u, new double[] {18, 25.6, 50, 2});
        Published.check(GUM_H1, 16.76, degrees, 5e-3);
        Published.check(GUM_H1, 2.9208, Uncertainty.coverageFactor(Math.floor(degrees), 0.99), 5e-5);
        double expanded = Uncertainty.coverageFactor(16, 0.99) * Uncertainty.combine(u);
        Published.check(GUM_H1, 93.0, expanded, 0.6);
        assertEquals(
                4,
                Uncertainty.effectiveDegrees(new double[] {1, 0}, new double[] {4, Double.POSITIVE_INFINITY}),
                1e-12);
        assertThrows(Invalid.class, () -> Uncertainty.effectiveDegrees(new double[] {1}, new double[] {0}));
        assertThrows(Invalid.class, () -> Uncertainty.effectiveDegrees(new double[] {0}, new double[] {3}));
    }

    @Test
    void coverageFactor_againstLibrary() {
        for (double degrees : new double[] {1, 2, 4.5, 16, 200}) {
            for (double confidence : new double[] {0.68, 0.95, 0.99}) {
                double expected = new TDistribution(degrees).inverseCumulativeProbability(0.5 + confidence / 2);
                Published.check(MATH, expected, Uncertainty.coverageFactor(degrees, confidence), 1e-6 * expected);
            }
        }
        assertThrows(Invalid.class, () -> Uncertainty.coverageFactor(3, 1));
    }

    @Test
    void ofMean_againstLibrary() {
        double[] readings = {11.41, 11.38, 11.44, 11.39, 11.40};
        Published.check(MATH, Math.sqrt(StatUtils.variance(readings) / 5), Uncertainty.ofMean(readings), 1e-15);
        assertThrows(Invalid.class, () -> Uncertainty.ofMean(11.4));
        assertThrows(Invalid.class, () -> Uncertainty.ofMean(11.4, Double.NaN));
    }
}

package org.benchtrail.core.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.junit.jupiter.api.Test;

class ControlChartsTest {
    private static final String NIST_IMR = "NIST/SEMATECH e-Handbook 6.3.2.2 (limits seen)";
    private static final String NIST_P = "NIST/SEMATECH e-Handbook 6.3.3.2 (formula seen, data from memory)";

    @Test
    void individuals_handbookExample() {
        IndividualsChart chart = IndividualsChart.of(49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1);
        Published.check(NIST_IMR, 50.81, chart.mean(), 1e-12);
        Published.check(NIST_IMR, 1.877778, chart.meanMovingRange(), 5e-7);
        Published.check(NIST_IMR, 55.8041, chart.upper(), 5e-5);
        Published.check(NIST_IMR, 45.8159, chart.lower(), 5e-5);
        Published.check(NIST_IMR, 6.1347, chart.movingRangeUpper(), 5e-5);
        assertEquals(List.of(), chart.outside());
        assertEquals(List.of(), chart.jumps());
    }

    @Test
    void individuals_outlier_isFoundByValueAndByJump() {
        IndividualsChart chart = IndividualsChart.of(10, 11, 10, 11, 10, 11, 10, 11, 10, 40, 10, 11, 10, 11, 10, 11);
        assertEquals(List.of(9), chart.outside());
        assertEquals(List.of(9, 10), chart.jumps());
    }

    @Test
    void individuals_outsideTheirDomain_areRefused() {
        assertThrows(Invalid.class, () -> IndividualsChart.of(1));
        assertThrows(Invalid.class, () -> IndividualsChart.of(1, Double.NaN));
        Invalid refused = assertThrows(Invalid.class, () -> IndividualsChart.of(5, 5, 5));
        assertEquals("values", refused.problems().get(0).field());
    }

    @Test
    void proportions_handbookExample() {
        int[] defective = {
            12, 15, 8, 10, 4, 7, 16, 9, 14, 10, 5, 6, 17, 12, 22, 8, 10, 5, 13, 11, 20, 18, 24, 15, 9, 12, 7, 13, 9, 6
        };
        Published.check(NIST_P, 347, Arrays.stream(defective).sum());
        ProportionChart chart = ProportionChart.of(
                Arrays.stream(defective).mapToObj(d -> new Proportion(d, 50)).toList());
        Published.check(NIST_P, 0.231333, chart.meanShare(), 5e-7);
        Published.check(NIST_P, 0.410239, chart.points().get(0).upper(), 5e-7);
        Published.check(NIST_P, 0.052428, chart.points().get(0).lower(), 5e-7);
        // Samples 15 and 23, counted from 1.
        Published.check(NIST_P, List.of(14, 22), chart.outside());
    }

    @Test
    void proportions_smallSamples_cutTheLimitAtZero() {
        ProportionChart chart = ProportionChart.of(
                List.of(new Proportion(1, 10), new Proportion(0, 10), new Proportion(2, 10), new Proportion(1, 10)));
        Published.check(NIST_P, 0.1, chart.meanShare(), 1e-15);
        Published.check(NIST_P, 0.384605, chart.points().get(0).upper(), 5e-7);
        Published.check(NIST_P, 0.0, chart.points().get(0).lower(), 0);
    }

    @Test
    void proportions_unequalSizes_haveTheirOwnLimits() {
        ProportionChart chart = ProportionChart.of(List.of(new Proportion(50, 100), new Proportion(5, 10)));
        assertEquals(0.65, chart.points().get(0).upper(), 1e-12);
        assertEquals(0.5 + 1.5 / Math.sqrt(10), chart.points().get(1).upper(), 1e-12);
        assertFalse(chart.points().get(1).isOutside());
        assertThrows(Invalid.class, () -> ProportionChart.of(List.of(new Proportion(1, 2))));
    }
}

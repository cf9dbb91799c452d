package org.benchtrail.core.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.apache.commons.math3.stat.StatUtils;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.junit.jupiter.api.Test;

class SampleTest {
    private static final String HEAT_FLOW =
            "NIST/SEMATECH e-Handbook 1.3.5.2, heat flow meter data (ZARR13.DAT) (from memory, not checked)";
    private static final String T_TABLE = "Student's t, two-sided 95 %, 9 degrees of freedom: 2.262157 (common table)";

    @Test
    void meanInterval_heatFlowMeter() {
        Interval interval = new Sample(195, 9.261460, 0.022789).meanInterval(0.95);
        Published.check(HEAT_FLOW, 9.258242, interval.lower(), 1e-6);
        Published.check(HEAT_FLOW, 9.264679, interval.upper(), 1e-6);
    }

    /** 1 to 10: mean 5.5, deviation 3.02765, standard error .957427. */
    @Test
    void meanInterval_tenNumbers() {
        Interval interval = Sample.of("x", 1, 2, 3, 4, 5, 6, 7, 8, 9, 10).meanInterval(0.95);
        Published.check(T_TABLE, 5.5 - 2.262157 * 0.957427, interval.lower(), 2e-6);
        Published.check(T_TABLE, 5.5 + 2.262157 * 0.957427, interval.upper(), 2e-6);
    }

    @Test
    void meanInterval_confidenceOutsideItsDomain_isRefused() {
        Sample sample = Sample.of("x", 1, 2);
        assertThrows(Invalid.class, () -> sample.meanInterval(1));
    }

    @Test
    void variance_farFromZero_keepsItsDigits() {
        double[] values = {1e9 + 4, 1e9 + 7, 1e9 + 13, 1e9 + 16};
        Sample sample = Sample.of("values", values);
        Published.check("Apache Commons Math 3.6.1", StatUtils.variance(values), sample.variance(), 1e-6);
        assertEquals(30, sample.variance(), 1e-9);
        assertEquals(1e9 + 10, sample.mean());
    }
}

package org.benchtrail.core.statistics;

import static org.benchtrail.core.statistics.KaplanMeier.Observation.failed;
import static org.benchtrail.core.statistics.KaplanMeier.Observation.running;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.benchtrail.core.statistics.KaplanMeier.Observation;
import org.junit.jupiter.api.Test;

class KaplanMeierTest {
    private static final String NIST = "NIST/SEMATECH e-Handbook 8.2.1.5, worked example (seen)";
    private static final String DEFINITION = "Kaplan and Meier (1958), by hand";

    @Test
    void of_handbookExample() {
        List<Observation> units = new ArrayList<>();
        for (double time : new double[] {10, 32, 56, 98, 122, 181}) {
            units.add(failed(time));
        }
        for (double time : new double[] {50, 100, 125, 150}) {
            units.add(running(time));
        }
        units.addAll(Collections.nCopies(10, running(200)));
        Collections.shuffle(units, new Random(7));
        KaplanMeier estimate = KaplanMeier.of(units);
        int[] atRisk = {20, 19, 17, 16, 14, 11};
        double[] survival = {0.95, 0.90, 0.847059, 0.794118, 0.737395, 0.670359};
        double[] error = {0.048734, 0.067082, 0.081388, 0.091921, 0.101357, 0.112141};
        assertEquals(6, estimate.steps().size());
        for (int i = 0; i < 6; i++) {
            Published.check(NIST, atRisk[i], estimate.steps().get(i).atRisk());
            Published.check(NIST, survival[i], estimate.steps().get(i).survival(), 5e-7);
            Published.check(NIST, error[i], estimate.steps().get(i).standardError(), 5e-7);
        }
        assertTrue(estimate.median().isEmpty());
        assertEquals(1, estimate.survivalAt(9.9));
        assertEquals(0.95, estimate.survivalAt(10), 1e-12);
        assertEquals(0.670359, estimate.survivalAt(1000), 5e-7);
    }

    @Test
    void of_ties_failuresCountBeforeThoseThatLeave() {
        KaplanMeier estimate =
                KaplanMeier.of(List.of(failed(3), running(5), running(7), failed(7), failed(7), failed(12)));
        Published.check(DEFINITION, 0.833333, estimate.survivalAt(3), 5e-7);
        Published.check(DEFINITION, 0.416667, estimate.survivalAt(7), 5e-7);
        Published.check(DEFINITION, 0.0, estimate.survivalAt(12), 0);
        Published.check(DEFINITION, 7.0, estimate.median().orElseThrow(), 0);
        assertEquals(0, estimate.steps().get(2).standardError());
    }

    @Test
    void of_nothingFailed_allSurvive() {
        KaplanMeier estimate = KaplanMeier.of(List.of(running(5), running(9)));
        assertEquals(List.of(), estimate.steps());
        assertEquals(1, estimate.survivalAt(9));
        assertTrue(estimate.median().isEmpty());
    }

    @Test
    void of_outsideItsDomain_isRefused() {
        assertThrows(Invalid.class, () -> KaplanMeier.of(List.of()));
        assertThrows(Invalid.class, () -> failed(-1));
        assertThrows(Invalid.class, () -> running(Double.NaN));
        assertThrows(Invalid.class, () -> running(Double.POSITIVE_INFINITY));
    }
}

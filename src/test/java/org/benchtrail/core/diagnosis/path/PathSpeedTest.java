package org.benchtrail.core.diagnosis.path;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import org.benchtrail.core.diagnosis.BenchSituation;
import org.benchtrail.core.diagnosis.NextTest;
import org.benchtrail.core.diagnosis.PlanSettings;
import org.benchtrail.core.diagnosis.Ranking;
import org.junit.jupiter.api.Test;

/**
 * The next best test among 770, for 300 causes in 60 places; the goal is a millisecond when warm. The least disturbed tenth of
 * the runs is asserted, since caches are shared with whatever else runs; median and p99 are printed.
 */
class PathSpeedTest {
    private static final int ROUNDS = 300;

    /** Rounds until what is compiled beside them has been, on a busy machine too. */
    private static final int BEFORE = 5 * ROUNDS;

    /** In microseconds: twice the goal, since the same code took 0.7 ms at one hour and 1.0 ms at another, busier one. */
    private static final int MOST = 2000;

    /** Processor time of this thread: waiting for a busy machine is not counted. */
    private static final ThreadMXBean CLOCK = ManagementFactory.getThreadMXBean();

    @Test
    void rankingAndNextTest_withPaths_stayWithinTwiceAMillisecond() {
        LargePaths large = new LargePaths(16);
        assertEquals(270, large.tests());
        Localisation[] at = new Localisation[16];
        for (int k = 0; k < at.length; k++) {
            at[k] = large.locate(k);
        }
        NextTest next = new NextTest(at[0].model(), PlanSettings.STANDARD);
        double[] advise = microseconds(k -> next.advise(at[k % 16].ranking(), BenchSituation.PLAIN));
        double[] rank = microseconds(
                k -> Ranking.of(at[k % 16].model(), at[k % 16].ranking().evidence()));
        double[] whole = microseconds(large::locate);
        System.out.printf(
                "300 causes + 60 residuals x 500 findings + 270 tests of the structure, processor time: next test"
                        + " median %.0f us, p99 %.0f us; ranking median %.0f us; all of it median %.0f us%n",
                advise[ROUNDS / 2], advise[ROUNDS * 99 / 100], rank[ROUNDS / 2], whole[ROUNDS / 2]);
        assertTrue(rank[ROUNDS / 10] < MOST, "ranking, microseconds: " + rank[ROUNDS / 10]);
        assertTrue(advise[ROUNDS / 10] < MOST, "next test, microseconds: " + advise[ROUNDS / 10]);
    }

    private static double[] microseconds(java.util.function.IntConsumer work) {
        for (int k = 0; k < BEFORE; k++) {
            work.accept(k);
        }
        double[] times = new double[ROUNDS];
        for (int k = 0; k < ROUNDS; k++) {
            long start = CLOCK.getCurrentThreadCpuTime();
            work.accept(k);
            times[k] = (CLOCK.getCurrentThreadCpuTime() - start) / 1000.0;
        }
        Arrays.sort(times);
        return times;
    }
}

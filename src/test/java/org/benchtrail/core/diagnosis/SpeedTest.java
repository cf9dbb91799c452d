package org.benchtrail.core.diagnosis;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import java.util.function.IntConsumer;
import org.junit.jupiter.api.Test;

/**
 * Ranking and next best act for 300 causes and 500 findings; the goal is a millisecond each when warm. The least
 * disturbed tenth of the runs is asserted, since caches are shared with whatever else runs; median and p99 are printed.
 */
class SpeedTest {
    private static final int CAUSES = 300;
    private static final int FINDINGS = 500;
    private static final int ROUNDS = 300;

    /** In microseconds: twice the goal, since the same code took 0.9 ms on one day and 1.2 ms on another machine. */
    private static final int MOST = 2000;

    /** Processor time of this thread: waiting for a busy machine is not counted. */
    private static final ThreadMXBean CLOCK = ManagementFactory.getThreadMXBean();

    private static double[] microseconds(IntConsumer work) {
        for (int k = 0; k < ROUNDS; k++) {
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

    @Test
    void rankingAndNextTest_stayWithinTwiceAMillisecond() {
        CauseCategory c = Invented.random(1, CAUSES, FINDINGS, false);
        Model model = new Model(c, ModelSettings.STANDARD);
        Evidence[] evidence = new Evidence[ROUNDS];
        Ranking[] rankings = new Ranking[ROUNDS];
        for (int k = 0; k < ROUNDS; k++) {
            evidence[k] = Invented.evidence(k, c, 12);
            rankings[k] = Ranking.of(model, evidence[k]);
        }
        NextTest next = new NextTest(model, PlanSettings.STANDARD);
        double[] rank = microseconds(k -> Ranking.of(model, evidence[k]));
        double[] advise = microseconds(k -> next.advise(rankings[k], BenchSituation.PLAIN));
        print("ranking", rank);
        print("next test", advise);
        assertTrue(rank[ROUNDS / 10] < MOST, "ranking, microseconds: " + rank[ROUNDS / 10]);
        assertTrue(advise[ROUNDS / 10] < MOST, "next test, microseconds: " + advise[ROUNDS / 10]);
    }

    private static void print(String what, double[] t) {
        System.out.printf(
                "%d causes x %d findings, %s, processor time: median %.0f us, p99 %.0f us%n",
                CAUSES, FINDINGS, what, t[ROUNDS / 2], t[ROUNDS * 99 / 100]);
    }
}

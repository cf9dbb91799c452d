package org.benchtrail.core.learning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.TDistribution;
import org.benchtrail.BesideOthers;
import org.benchtrail.core.learning.ForecastScores.Forecast;
import org.benchtrail.core.learning.ForecastScores.Overconfidence;
import org.junit.jupiter.api.Test;

/**
 * Studies made up by the dice: somebody always states 77 %, and it comes in 67 of 100 before and in 77 after. How often the two
 * phases are told apart is what the sums of {@link ForecastsNeeded} promise. Compared as two samples of jobs (t, with as many degrees
 * of freedom as there are jobs less two; textbook). Of so many studies a share of 0.8 is known to a standard error of 0.0045;
 * {@code -Dpractice.studies=20000} is the long form, to 0.003.
 */
@BesideOthers
class ForecastStudiesTest {
    private static final int STUDIES = Integer.getInteger("practice.studies", 8_000);
    private static final int A_JOB = 15;
    private static final double CORRELATION = 0.05;
    private static final double BEFORE = 0.67;
    private static final double AFTER = 0.77;
    private static final int STATED = 77;

    /**
     * One phase. With the root of the correlation an event follows its job's one draw, so that two of a job have that correlation.
     *
     * @param apart whether the score is told that every forecast were a job of its own
     */
    private static Overconfidence phase(int jobs, int aJob, boolean apart, double hit, SplittableRandom random) {
        double follows = aJob == 1 ? 0 : Math.sqrt(CORRELATION);
        List<Forecast> all = new ArrayList<>(jobs * aJob);
        for (int job = 0; job < jobs; job++) {
            boolean common = random.nextDouble() < hit;
            for (int i = 0; i < aJob; i++) {
                boolean met = random.nextDouble() < follows ? common : random.nextDouble() < hit;
                all.add(new Forecast(apart ? all.size() : job, STATED, met));
            }
        }
        return new ForecastScores(all).overconfidence().orElseThrow();
    }

    /** The share of studies in which the phases differ at 5 %, two-sided. */
    private static double seen(int jobs, int aJob, boolean apart, double before) {
        SplittableRandom random = new SplittableRandom(20_261_128);
        int samples = apart ? jobs * aJob : jobs;
        double reach = TDistribution.of(2.0 * samples - 2).inverseSurvivalProbability(0.025);
        int seen = 0;
        for (int study = 0; study < STUDIES; study++) {
            Overconfidence first = phase(jobs, aJob, apart, before, random);
            Overconfidence second = phase(jobs, aJob, apart, AFTER, random);
            double error = Math.hypot(first.standardError(), second.standardError());
            seen += Math.abs(first.mean() - second.mean()) > reach * error ? 1 : 0;
        }
        double share = seen / (double) STUDIES;
        System.out.printf(
                "%d jobs of %d against as many, %.2f to %.2f%s: seen in %.4f%n",
                jobs, aJob, before, AFTER, apart ? ", jobs ignored" : "", share);
        return share;
    }

    /** Ten points at a variance of 0.2: 314 forecasts a phase; 534 of them, 36 jobs, where those of a job go together. */
    @Test
    void sizesOfTheTable_showTheShiftInFourOfFive() {
        assertEquals(314, ForecastsNeeded.independent(0.20).aPhase(0.10));
        ForecastsNeeded together = new ForecastsNeeded(0.20, A_JOB, CORRELATION);
        assertEquals(36, together.jobs(together.aPhase(0.10)));
        assertEquals(0.80, seen(314, 1, false, BEFORE), 0.015);
        assertEquals(0.80, seen(36, A_JOB, false, BEFORE), 0.02);
    }

    /** As many forecasts as if they were independent, but of 21 jobs: little more than every second study shows it. */
    @Test
    void forecastsOfFewerJobs_showIt_inEverySecond() {
        assertEquals(0.55, seen(21, A_JOB, false, BEFORE), 0.02);
    }

    /** Where nothing has changed, jobs that are ignored make one study of seven cry wolf, instead of one of twenty. */
    @Test
    void whoIgnoresTheJobs_criesWolf() {
        assertEquals(0.137, seen(36, A_JOB, true, AFTER), 0.01);
        double honest = seen(36, A_JOB, false, AFTER);
        assertTrue(honest > 0.04 && honest < 0.07, "by jobs: " + honest);
    }
}

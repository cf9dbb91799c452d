package org.benchtrail.core.learning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToDoubleBiFunction;
import org.benchtrail.core.learning.ForecastScores.Forecast;
import org.benchtrail.core.learning.ForecastScores.Overconfidence;
import org.junit.jupiter.api.Test;

/**
 * People made up by the dice: one who means what he states, one who is too sure, one who guesses and one who learns.
 * {@code -Dpractice.players=20000} measures finely; each build plays a few hundred.
 */
class ForecastPlayersTest {
    private static final int PLAYERS = Integer.getInteger("practice.players", 400);
    private static final int A_JOB = 15;
    private static final double CORRELATION = 0.05;
    /** Three standard errors of a share near one half. */
    private static final double REACH = 1.5 / Math.sqrt(PLAYERS);

    /**
     * Forecasts of one person; those of one job go together: with that chance an event follows the job's one draw.
     *
     * @param hit how often what is stated at that per cent in that job comes
     */
    private static List<Forecast> play(
            int jobs,
            int percent,
            double correlation,
            ToDoubleBiFunction<Integer, Integer> hit,
            SplittableRandom random) {
        List<Forecast> all = new ArrayList<>();
        double follows = Math.sqrt(correlation);
        for (int job = 0; job < jobs; job++) {
            double p = hit.applyAsDouble(job, percent);
            boolean common = random.nextDouble() < p;
            for (int i = 0; i < A_JOB; i++) {
                boolean met = random.nextDouble() < follows ? common : random.nextDouble() < p;
                all.add(new Forecast(job, percent, met));
            }
        }
        return all;
    }

    /** The share of players of whom is said with 95 % that they are too sure, or not sure enough. */
    private static double detected(int jobs, int percent, ToDoubleBiFunction<Integer, Integer> hit) {
        SplittableRandom random = new SplittableRandom(20_261_126);
        int seen = 0;
        for (int player = 0; player < PLAYERS; player++) {
            Overconfidence over = new ForecastScores(play(jobs, percent, CORRELATION, hit, random))
                    .overconfidence()
                    .orElseThrow();
            seen += over.interval().contains(0) ? 0 : 1;
        }
        return seen / (double) PLAYERS;
    }

    @Test
    void whoMeansWhatTheyState_isLeftAlone() {
        double seen = detected(20, 75, (job, percent) -> percent / 100.0);
        System.out.println("called wrongly sure though they are not: " + seen);
        assertEquals(0.05, seen, 0.02 + REACH);
    }

    @Test
    void whoIsTooSure_isDetected() {
        double few = detected(10, 90, (job, percent) -> 0.70);
        double many = detected(20, 90, (job, percent) -> 0.70);
        System.out.println("too sure by 20 points, seen after 10 and 20 jobs: " + few + ", " + many);
        assertTrue(few > 0.8 && many > 0.95, few + ", " + many);
    }

    /** Guesses come true as often whatever was stated: no skill. */
    @Test
    void whoGuesses_hasNoSkill() {
        SplittableRandom random = new SplittableRandom(1);
        double skill = 0;
        for (int player = 0; player < PLAYERS; player++) {
            List<Forecast> all = new ArrayList<>();
            for (int i = 0; i < 150; i++) {
                all.add(new Forecast(i / A_JOB, 5 * (1 + random.nextInt(19)), random.nextBoolean()));
            }
            skill += new ForecastScores(all).skillAgainstBaseRate();
        }
        assertTrue(skill / PLAYERS < -0.2, "skill " + skill / PLAYERS);
    }

    @Test
    void whoLearns_scoresBetterInTheSecondHalf() {
        SplittableRandom random = new SplittableRandom(2);
        int better = 0;
        for (int player = 0; player < PLAYERS; player++) {
            ToDoubleBiFunction<Integer, Integer> learning = (job, percent) -> job < 20 ? 0.65 : 0.90;
            List<Forecast> all = play(40, 90, CORRELATION, learning, random);
            double before = new ForecastScores(all.subList(0, 20 * A_JOB)).brier();
            better += new ForecastScores(all.subList(20 * A_JOB, all.size())).brier() < before ? 1 : 0;
        }
        assertTrue(better >= 0.99 * PLAYERS, better + " of " + PLAYERS);
    }
}

package org.benchtrail.core.diagnosis.path;

import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Advice;
import org.benchtrail.core.diagnosis.PlanSettings;
import org.benchtrail.core.diagnosis.Ranking;

/** Which of several tests that are as good as each other in minutes tells most about where the fault is. */
final class Placing {
    /** From this belief in one segment on, where the fault is is not in question. */
    private static final double PLACED = 0.7;

    private Placing() {}

    /** As long as the fault is not placed, of tests that are as good the one that places it best is recommended. */
    static Advice advice(Advice advice, Optional<Action> placing, Map<String, Double> masses) {
        boolean placed = masses.values().stream().anyMatch(x -> x >= PLACED);
        boolean test =
                advice.recommended().filter(a -> a.type() == Action.Type.TEST).isPresent();
        return placed || !test || placing.isEmpty() ? advice : advice.recommending(placing.get());
    }

    static Optional<Action> test(PlacedModel m, Ranking ranking, Advice advice, PlanSettings plan) {
        Optional<Action> best = advice.bestTest();
        if (best.isEmpty()) {
            return best;
        }
        double most = best.get().expectedMinutes() + advice.threshold();
        double[] p = ranking.partProbabilities();
        Action chosen = best.get();
        double least = Double.POSITIVE_INFINITY;
        for (Action a : advice.actions()) {
            if (a.type() == Action.Type.TEST && a.expectedMinutes() <= most) {
                double doubt = m.doubtAfter(a.id(), p, plan.plannedReliability());
                if (doubt < least - 1e-9) {
                    least = doubt;
                    chosen = a;
                }
            }
        }
        return Optional.of(chosen);
    }
}

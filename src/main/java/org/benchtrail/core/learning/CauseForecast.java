package org.benchtrail.core.learning;

import java.util.Map;
import org.benchtrail.core.Invalid;

/**
 * What somebody thought of the causes before any of them was shown: whole per cents that sum to 100, something else included.
 */
public record CauseForecast(Map<String, Integer> percents) {
    private static final int ALL = 100;

    public CauseForecast {
        percents = Map.copyOf(percents);
        new Invalid.Collector()
                .require(percents.values().stream().allMatch(p -> p >= 0), "percents", "Give per cents from 0 on.")
                .require(
                        percents.values().stream().mapToInt(p -> p).sum() == ALL,
                        "percents",
                        "The per cents have to sum to 100.")
                .throwIfAny();
    }

    private double stated(String cause) {
        return percents.getOrDefault(cause, 0) / (double) ALL;
    }

    /** Half of the sum of (stated - came) squared over all causes, so that it runs from 0 to 1 as with one event. */
    public double brier(String truth) {
        double sum = percents.containsKey(truth) ? 0 : 1;
        for (String cause : percents.keySet()) {
            double miss = stated(cause) - (cause.equals(truth) ? 1 : 0);
            sum += miss * miss;
        }
        return sum / 2;
    }

    /** Nats; positive infinity if the truth had been ruled out: nothing is clamped. */
    public double logarithmic(String truth) {
        return -Math.log(stated(truth)) + 0.0;
    }

    public boolean ruledOut(String truth) {
        return stated(truth) == 0;
    }
}

package org.benchtrail.core.diagnosis;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/** Weighted counts of what was observed in cases, by cause, finding and value. */
final class Tally {
    private final Map<String, Map<String, Map<String, Double>>> counts = new HashMap<>();

    /** @param usable which observations to count; those made after the cause was settled never are */
    static Tally of(List<ClosedCase> cases, double[] weights, Predicate<ClosedCase.CaseFinding> usable) {
        Tally tally = new Tally();
        for (int k = 0; k < weights.length; k++) {
            for (ClosedCase.CaseFinding o : cases.get(k).observations()) {
                if (o.beforeSettled() && usable.test(o)) {
                    tally.add(cases.get(k).cause(), o, weights[k]);
                }
            }
        }
        return tally;
    }

    private void add(String cause, ClosedCase.CaseFinding o, double weight) {
        counts.computeIfAbsent(cause, c -> new HashMap<>())
                .computeIfAbsent(o.finding(), f -> new HashMap<>())
                .merge(o.value(), weight, Double::sum);
    }

    /** Counts by value, in the order of the finding's values; those of retired values are left out. */
    double[] of(String cause, Finding f) {
        Map<String, Double> byValue = counts.getOrDefault(cause, Map.of()).getOrDefault(f.id(), Map.of());
        return f.values().stream()
                .mapToDouble(v -> byValue.getOrDefault(v, 0.0))
                .toArray();
    }
}

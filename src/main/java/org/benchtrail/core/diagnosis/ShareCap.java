package org.benchtrail.core.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Keeps one person's cases from outweighing everybody else's.
 *
 * <p>Guarantee: with counts e after the cap, {@code max e <= share (prior + sum e)}. The cap is M, the only solution of
 * {@code M = share (prior + sum min(R, M))}: the right side is concave and positive at 0.
 */
public final class ShareCap {
    private static final double SETTLED = 1e-12;
    private static final int MOST_ROUNDS = 1000;

    private ShareCap() {}

    /**
     * The cap M; infinite for share 1.
     *
     * @param raw decayed counts, zero or more
     * @param prior pseudo-count that nobody owns, above 0
     * @param share in (0, 1]
     */
    public static double level(double[] raw, double prior, double share) {
        double[] r = raw.clone();
        Arrays.sort(r);
        double below = 0;
        for (int k = 0; k < r.length; k++) {
            double level = share * (prior + below) / (1 - share * (r.length - k));
            if (level > 0 && level <= r[k]) {
                return level;
            }
            below += r[k];
        }
        return share == 1 ? Double.POSITIVE_INFINITY : share * (prior + below);
    }

    /** Counts after the cap, same shape as raw. */
    public static double[] effective(double[] raw, double prior, double share) {
        double level = share == 1 ? Double.POSITIVE_INFINITY : level(raw, prior, share);
        return Arrays.stream(raw).map(x -> Math.min(x, level)).toArray();
    }

    /** Who may own at most which share; cases without an owner are not capped. */
    record Cap(Function<ClosedCase, @Nullable String> owner, double share) {}

    /** Weights of cases after every rule holds at once. Capping by one rule lowers the sum, so rules are repeated. */
    static double[] weights(List<ClosedCase> cases, double[] raw, double prior, List<Cap> rules) {
        double[] weights = raw.clone();
        double change = Double.POSITIVE_INFINITY;
        for (int round = 0; round < MOST_ROUNDS && change > SETTLED; round++) {
            change = 0;
            for (Cap rule : rules) {
                change = Math.max(change, apply(rule, cases, weights, prior));
            }
        }
        return weights;
    }

    private static double apply(Cap rule, List<ClosedCase> cases, double[] weights, double prior) {
        if (rule.share() == 1) {
            return 0;
        }
        Map<String, Double> sums = new TreeMap<>();
        double unowned = 0;
        for (int k = 0; k < weights.length; k++) {
            String owner = rule.owner().apply(cases.get(k));
            if (owner == null) {
                unowned += weights[k];
            } else {
                sums.merge(owner, weights[k], Double::sum);
            }
        }
        double level = level(unboxed(new ArrayList<>(sums.values())), prior + unowned, rule.share());
        double change = 0;
        for (int k = 0; k < weights.length; k++) {
            String owner = rule.owner().apply(cases.get(k));
            double sum = owner == null ? 0 : sums.getOrDefault(owner, 0.0);
            if (sum > level) {
                change = Math.max(change, sum - level);
                weights[k] *= level / sum;
            }
        }
        return change;
    }

    private static double[] unboxed(List<Double> x) {
        return x.stream().mapToDouble(v -> v).toArray();
    }
}

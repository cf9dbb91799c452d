package org.benchtrail.core.statistics;

import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.Invalid;

/**
 * Control chart of shares (p-chart): the mean share and, per sample, p ± 3·√(p(1 − p)/n) cut to [0, 1].
 *
 * <p>Source: NIST/SEMATECH e-Handbook 6.3.3.2.
 *
 * @param meanShare of all samples together
 * @param points one per sample, in order
 */
public record ProportionChart(double meanShare, List<Point> points) {

    /** One sample: its share and its own control limits, which depend on its size. */
    public record Point(Proportion sample, double lower, double upper) {
        public boolean isOutside() {
            return sample.share() < lower || sample.share() > upper;
        }
    }

    public ProportionChart {
        points = List.copyOf(points);
    }

    /**
     * Sets the limits from all samples together.
     *
     * @throws Invalid if there are fewer than two samples
     */
    public static ProportionChart of(List<Proportion> samples) {
        if (samples.size() < 2) {
            throw new Invalid("samples", "Give at least two samples: limits are set by comparing them.");
        }
        long hits = samples.stream().mapToLong(Proportion::hits).sum();
        long trials = samples.stream().mapToLong(Proportion::trials).sum();
        double mean = (double) hits / trials;
        return new ProportionChart(
                mean, samples.stream().map(s -> point(s, mean)).toList());
    }

    private static Point point(Proportion sample, double mean) {
        double reach = 3 * Math.sqrt(mean * (1 - mean) / sample.trials());
        return new Point(sample, Math.max(0, mean - reach), Math.min(1, mean + reach));
    }

    /** Indices of the samples beyond their limits. */
    public List<Integer> outside() {
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            if (points.get(i).isOutside()) {
                found.add(i);
            }
        }
        return found;
    }
}

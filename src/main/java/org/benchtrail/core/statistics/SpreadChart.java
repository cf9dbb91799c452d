package org.benchtrail.core.statistics;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Control chart of shares whose groups differ by more than chance of themselves, so that a plain one would alarm all the time: the
 * plain limits, as wide as neighbours differ.
 *
 * <p>p ± 3·s·σz with s = √(p(1 − p)/n) and σz = mean |zᵢ − zᵢ₋₁| / 1.128, cut to [0, 1]. Source: Laney, Quality Engineering 14
 * (2002), from memory.
 *
 * @param plain the chart without that
 * @param dispersion of its samples
 * @param sigmaZ how much wider the limits are
 * @param limits one pair per sample
 */
public record SpreadChart(ProportionChart plain, Dispersion dispersion, double sigmaZ, List<Limits> limits) {
    private static final double D2 = 1.128;

    /** Of one sample. */
    public record Limits(double lower, double upper) {}

    public SpreadChart {
        limits = List.copyOf(limits);
    }

    /** @throws org.benchtrail.core.Invalid if there are fewer than two samples */
    public static SpreadChart of(List<Proportion> samples) {
        ProportionChart plain = ProportionChart.of(samples);
        double mean = plain.meanShare();
        double[] z =
                samples.stream().mapToDouble(s -> Dispersion.distance(s, mean)).toArray();
        double sigmaZ = meanMovingRange(z) / D2;
        return new SpreadChart(
                plain,
                Dispersion.of(z),
                sigmaZ,
                samples.stream().map(s -> limits(s, mean, sigmaZ)).toList());
    }

    static double meanMovingRange(double... values) {
        return IntStream.range(1, values.length)
                .mapToDouble(i -> Math.abs(values[i] - values[i - 1]))
                .average()
                .orElse(0);
    }

    private static Limits limits(Proportion sample, double mean, double sigmaZ) {
        return limits(sample.trials(), mean, sigmaZ);
    }

    /**
     * Of a sample of that size.
     *
     * @param wider than by chance alone
     */
    public static Limits limits(long trials, double mean, double wider) {
        double reach = 3 * Math.sqrt(mean * (1 - mean) / trials) * wider;
        return new Limits(Math.max(0, mean - reach), Math.min(1, mean + reach));
    }

    /** Indices of the samples beyond these limits. */
    public List<Integer> outside() {
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < limits.size(); i++) {
            double share = plain.points().get(i).sample().share();
            if (share < limits.get(i).lower() || share > limits.get(i).upper()) {
                found.add(i);
            }
        }
        return found;
    }
}

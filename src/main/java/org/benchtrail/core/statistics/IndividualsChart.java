package org.benchtrail.core.statistics;

import java.util.List;
import java.util.stream.IntStream;
import org.benchtrail.core.Invalid;

/**
 * Control chart of single values (I-MR): limits from the mean moving range.
 *
 * <p>Source: NIST/SEMATECH e-Handbook 6.3.2.2: mean ± 3·MR/d2 with d2 = 1.128, moving ranges up to D4·MR with D4 = 3.267, as
 * tabulated there (exact: 2/√π and 3.266532).
 *
 * @param mean of the values
 * @param meanMovingRange mean of |xᵢ − xᵢ₋₁|, more than 0
 * @param lower control limit of the values
 * @param upper control limit of the values
 * @param movingRangeUpper control limit of the moving ranges; the lower one is 0
 * @param outside indices of values beyond the limits
 * @param jumps indices i whose moving range |xᵢ − xᵢ₋₁| is beyond its limit
 */
public record IndividualsChart(
        double mean,
        double meanMovingRange,
        double lower,
        double upper,
        double movingRangeUpper,
        List<Integer> outside,
        List<Integer> jumps) {
    private static final double D2 = 1.128;
    private static final double D4 = 3.267;

    public IndividualsChart {
        outside = List.copyOf(outside);
        jumps = List.copyOf(jumps);
    }

    /**
     * Sets the limits from the values themselves.
     *
     * @param values in time order, at least two, finite, not all the same
     * @throws Invalid if they are not; constant values have no variation to set limits by
     */
    public static IndividualsChart of(double... values) {
        double mean = Sample.of("values", values).mean();
        double movingRange = IntStream.range(1, values.length)
                .mapToDouble(i -> step(values, i))
                .average()
                .orElseThrow();
        if (movingRange == 0) {
            throw new Invalid(
                    "values", "The values show no variation, so no limits can be set: give more digits or values.");
        }
        double reach = 3 * movingRange / D2;
        return new IndividualsChart(
                mean,
                movingRange,
                mean - reach,
                mean + reach,
                D4 * movingRange,
                where(0, values.length, i -> Math.abs(values[i] - mean) > reach),
                where(1, values.length, i -> step(values, i) > D4 * movingRange));
    }

    private static double step(double[] values, int i) {
        return Math.abs(values[i] - values[i - 1]);
    }

    private static List<Integer> where(int from, int to, java.util.function.IntPredicate holds) {
        return IntStream.range(from, to).filter(holds).boxed().toList();
    }
}

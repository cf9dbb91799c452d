package org.benchtrail.core.figures;

import java.util.List;
import java.util.stream.DoubleStream;
import org.benchtrail.core.statistics.IndividualsChart;
import org.benchtrail.core.statistics.Runs;
import org.jspecify.annotations.Nullable;

/**
 * One time after the other, held against what is usual. Times are skewed, so the chart is made of their logarithms and read in hours:
 * the centre is the geometric mean.
 *
 * @param limits null where there are too few points, or all are alike
 * @param outside indices of the points beyond the limits
 * @param runs indices of the points that are at least the eighth in a row on one side of the centre
 */
public record ClosingTimes(List<Double> hours, @Nullable Limits limits, List<Integer> outside, List<Integer> runs) {
    /** Limits are shown from so many points on, as provisional ones; common practice. */
    public static final int PROVISIONAL = 12;

    /** So many points make limits that stand; common practice. */
    public static final int ENOUGH = 20;

    /** What took less counts as a minute: there is no logarithm of nothing. */
    private static final double LEAST_HOURS = 1 / 60.0;

    /** In hours. */
    public record Limits(double lower, double centre, double upper) {}

    public ClosingTimes {
        hours = List.copyOf(hours);
        outside = List.copyOf(outside);
        runs = List.copyOf(runs);
    }

    /** @param hours in the order of time */
    public static ClosingTimes of(List<Double> hours) {
        double[] logs = hours.stream()
                .mapToDouble(h -> Math.log(Math.max(LEAST_HOURS, h)))
                .toArray();
        if (logs.length < PROVISIONAL || DoubleStream.of(logs).distinct().count() == 1) {
            return new ClosingTimes(hours, null, List.of(), List.of());
        }
        IndividualsChart chart = IndividualsChart.of(logs);
        return new ClosingTimes(
                hours,
                new Limits(Math.exp(chart.lower()), Math.exp(chart.mean()), Math.exp(chart.upper())),
                chart.outside(),
                Runs.oneSided(chart.mean(), logs));
    }

    public boolean isProvisional() {
        return hours.size() < ENOUGH;
    }
}

package org.benchtrail.core.figures;

import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.benchtrail.core.statistics.IndividualsChart;

/**
 * What times usually are. Times are skewed, so it is made of their natural logarithms and read in hours: the centre is the geometric
 * mean.
 *
 * @param centre mean of the logarithms of hours
 * @param spread standard deviation of the logarithms, by their moving ranges; more than 0
 */
public record Level(double centre, double spread) {
    /** Limits are shown from so many points on, as provisional ones; common practice. */
    public static final int PROVISIONAL = 12;

    /** So many points make limits that stand; common practice. */
    public static final int ENOUGH = 20;

    private static final int REACH = 3;

    /** What took less counts as a minute: there is no logarithm of nothing. */
    private static final double LEAST_HOURS = 1 / 60.0;

    /** @param hours in the order of time; empty where there are too few of them, or all are alike */
    static Optional<Level> of(List<Double> hours) {
        double[] logs = hours.stream().mapToDouble(Level::log).toArray();
        if (logs.length < PROVISIONAL || DoubleStream.of(logs).distinct().count() == 1) {
            return Optional.empty();
        }
        IndividualsChart chart = IndividualsChart.of(logs);
        return Optional.of(new Level(chart.mean(), (chart.upper() - chart.mean()) / REACH));
    }

    private static double log(double hours) {
        return Math.log(Math.max(LEAST_HOURS, hours));
    }

    /** How far that time is from the centre, in standard deviations. */
    double distance(double hours) {
        return (log(hours) - centre) / spread;
    }

    /** In hours. */
    public double lower() {
        return Math.exp(centre - REACH * spread);
    }

    /** In hours. */
    public double middle() {
        return Math.exp(centre);
    }

    /** In hours. */
    public double upper() {
        return Math.exp(centre + REACH * spread);
    }
}

package org.benchtrail.core.measure;

import org.apache.commons.statistics.distribution.TDistribution;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.statistics.Interval;
import org.jspecify.annotations.Nullable;

/**
 * Straight line through a series by ordinary least squares.
 *
 * <p>Source: NIST/SEMATECH e-Handbook 4.4; the interval of the time to a threshold by Fieller's theorem (J. Roy. Statist. Soc. B
 * 16, 1954). Residuals are taken as independent and of equal scatter. Units: slope in the value's unit per second.
 *
 * @param slope per second
 * @param intercept value of the line at time 0
 * @param slopeError standard error
 * @param interceptError standard error
 * @param residualDeviation standard deviation of a value about the line
 * @param rows n
 * @param meanTime mean of the times
 * @param meanValue mean of the values
 * @param timeSquares sum of the squared distances of the times from their mean
 * @param lastTime time of the last row
 */
public record Trend(
        double slope,
        double intercept,
        double slopeError,
        double interceptError,
        double residualDeviation,
        int rows,
        double meanTime,
        double meanValue,
        double timeSquares,
        double lastTime) {

    /**
     * Fits the line.
     *
     * @throws Invalid if there are fewer than three rows
     */
    public static Trend of(Series series) {
        int n = series.size();
        if (n < 3) {
            throw new Invalid("rows", "Give at least three rows for a trend; got " + n + ".");
        }
        // Summed from the first row, so that times counted from 1970 keep their digits.
        double times = 0;
        double values = 0;
        for (int i = 0; i < n; i++) {
            times += series.time(i) - series.time(0);
            values += series.value(i) - series.value(0);
        }
        return about(series, series.time(0) + times / n, series.value(0) + values / n);
    }

    private static Trend about(Series series, double meanTime, double meanValue) {
        int n = series.size();
        double sxx = 0;
        double sxy = 0;
        for (int i = 0; i < n; i++) {
            double x = series.time(i) - meanTime;
            sxx += x * x;
            sxy += x * (series.value(i) - meanValue);
        }
        double slope = sxy / sxx;
        double squares = 0;
        for (int i = 0; i < n; i++) {
            double residual = series.value(i) - meanValue - slope * (series.time(i) - meanTime);
            squares += residual * residual;
        }
        double s = Math.sqrt(squares / (n - 2));
        return new Trend(
                slope,
                meanValue - slope * meanTime,
                s / Math.sqrt(sxx),
                s * Math.sqrt(1.0 / n + meanTime * meanTime / sxx),
                s,
                n,
                meanTime,
                meanValue,
                sxx,
                series.time(n - 1));
    }

    public int degreesOfFreedom() {
        return rows - 2;
    }

    public double at(double time) {
        return meanValue + slope * (time - meanTime);
    }

    public Interval slope(double confidence) {
        double reach = slopeError * Uncertainty.coverageFactor(degreesOfFreedom(), confidence);
        return new Interval(slope - reach, slope + reach, confidence);
    }

    /** Interval of the line itself at a time, not of a single value there. */
    public Interval at(double time, double confidence) {
        double x = time - meanTime;
        double reach = residualDeviation
                * Math.sqrt(1.0 / rows + x * x / timeSquares)
                * Uncertainty.coverageFactor(degreesOfFreedom(), confidence);
        return new Interval(at(time) - reach, at(time) + reach, confidence);
    }

    /** Two-sided: how often scatter alone would give a slope as steep, were there none. 1 for a flat line. */
    public double pValue() {
        if (slope == 0) {
            return 1;
        }
        double t = Math.abs(slope) / slopeError;
        return Double.isInfinite(t)
                ? 0
                : 2 * TDistribution.of(degreesOfFreedom()).survivalProbability(t);
    }

    /**
     * When the line reaches a threshold after the last row.
     *
     * <p>{@link Crossing.AlreadyThere} if it crosses at or before the last row: it is passed, or the trend leads away from it.
     * The interval is missing if the slope cannot be told from zero at this confidence: it would have no end.
     */
    public Crossing timeTo(double threshold, double confidence) {
        if (slope == 0) {
            return new Crossing.Never(false);
        }
        double time = meanTime + (threshold - meanValue) / slope;
        return time <= lastTime
                ? new Crossing.AlreadyThere()
                : new Crossing.At(time, fieller(threshold - meanValue, confidence));
    }

    private @Nullable Interval fieller(double way, double confidence) {
        double t = Uncertainty.coverageFactor(degreesOfFreedom(), confidence);
        double ofSlope = t * t * slopeError * slopeError;
        double ofMean = t * t * residualDeviation * residualDeviation / rows;
        double steepness = slope * slope - ofSlope;
        if (!(steepness > 0)) {
            return null;
        }
        double root = Math.sqrt(ofSlope * way * way + steepness * ofMean);
        double one = meanTime + (slope * way - root) / steepness;
        double other = meanTime + (slope * way + root) / steepness;
        return new Interval(one, other, confidence);
    }
}

package org.benchtrail.core.statistics;

import org.apache.commons.statistics.distribution.TDistribution;
import org.benchtrail.core.Invalid;

/** Size, mean and standard deviation (n − 1) of repeated readings, in two passes so that large offsets keep the scatter. */
public record Sample(int size, double mean, double deviation) {

    /**
     * Summarises readings.
     *
     * @param readings at least two, finite
     * @throws Invalid under the given field
     */
    public static Sample of(String field, double... readings) {
        if (readings.length < 2) {
            throw new Invalid(
                    field,
                    "Give at least two readings; their scatter cannot be told from "
                            + (readings.length == 0 ? "none." : "one."));
        }
        double sum = 0;
        for (double reading : readings) {
            if (!Double.isFinite(reading)) {
                throw new Invalid(field, "Every reading has to be a finite number.");
            }
            sum += reading;
        }
        double mean = sum / readings.length;
        double squares = 0;
        double drift = 0;
        for (double reading : readings) {
            squares += (reading - mean) * (reading - mean);
            drift += reading - mean;
        }
        // The corrected two-pass formula: drift is zero but for rounding of the mean.
        double variance = (squares - drift * drift / readings.length) / (readings.length - 1);
        return new Sample(readings.length, mean, Math.sqrt(Math.max(0, variance)));
    }

    /**
     * Two-sided interval of the mean.
     *
     * <p>Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.2 (Student's t). Assumes independent readings, roughly
     * normal or many.
     */
    public Interval meanInterval(double confidence) {
        double tail = (1 - Domain.confidence(confidence)) / 2;
        double reach = TDistribution.of(size - 1.0).inverseSurvivalProbability(tail) * deviation / Math.sqrt(size);
        return new Interval(mean - reach, mean + reach, confidence);
    }

    public double variance() {
        return deviation * deviation;
    }
}

package org.benchtrail.core.statistics;

/**
 * An interval with the confidence it was made for.
 *
 * @param lower at most {@code upper}; may be negative infinity
 * @param upper may be positive infinity
 * @param confidence in (0, 1)
 */
public record Interval(double lower, double upper, double confidence) {
    public Interval {
        if (!(lower <= upper)) {
            throw new IllegalArgumentException("lower " + lower + " must be <= upper " + upper);
        }
        Domain.confidence(confidence);
    }

    public boolean contains(double value) {
        return lower <= value && value <= upper;
    }
}

package org.benchtrail.core.diagnosis;

/**
 * Where a report comes from, with the reliability it is given unless the entry says otherwise: the probability that the
 * report passes the true value on, the rest being a blind guess among the finding's values. Common practice, no source.
 */
public enum Source {
    /** An instrument whose calibration is in date. */
    CALIBRATED(0.98),
    /** The technician saw it. */
    SEEN(0.95),
    /** An instrument whose calibration is out of date. */
    OUT_OF_DATE(0.85),
    /** The requester says so. */
    REPORTED(0.80),
    /** It comes and goes, or is hearsay. */
    INTERMITTENT(0.60),
    /** It follows from something else that was recorded; nobody looked at it itself. */
    PRESUMED(0.60);

    private final double reliability;

    Source(double reliability) {
        this.reliability = reliability;
    }

    /** Dimensionless, in [0, {@link Report#MOST_RELIABLE}]. */
    public double reliability() {
        return reliability;
    }
}

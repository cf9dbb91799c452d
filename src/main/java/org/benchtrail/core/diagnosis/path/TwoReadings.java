package org.benchtrail.core.diagnosis.path;

/** Two readings of one quantity at two points of one path, where no limit says which is good. */
public final class TwoReadings {
    private static final double APART = 3;
    private static final double SHARE = 0.05;

    private TwoReadings() {}

    /**
     * Whether something between the two points changes the quantity: the first point is then good and the second bad; otherwise
     * the two say nothing.
     *
     * @param first nearer the source, same unit as the second
     * @param firstUncertainty expanded or standard, but both alike; zero or more
     */
    public static boolean differ(double first, double firstUncertainty, double second, double secondUncertainty) {
        double noise = APART * Math.hypot(firstUncertainty, secondUncertainty);
        return Math.abs(first - second) > Math.max(noise, SHARE * Math.max(Math.abs(first), Math.abs(second)));
    }
}

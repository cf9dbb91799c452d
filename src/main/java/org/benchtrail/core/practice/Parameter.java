package org.benchtrail.core.practice;

/** One number that a simulated device is made with. */
public interface Parameter {
    /**
     * What it may be.
     *
     * @param base what it is in a sound device
     * @param low below this it is not drawn
     * @param high above this it is not drawn
     */
    record Range(double base, double low, double high) {}

    String name();

    Range range();

    default double base() {
        return range().base();
    }

    default double low() {
        return range().low();
    }

    default double high() {
        return range().high();
    }
}

package org.benchtrail.core.practice;

/** One number that a simulated device is made with. */
public interface Parameter {
    /**
     * What it may be.
     *
     * @param unit as it is written behind the number; empty for a share or a ratio
     * @param base what it is in a sound device
     * @param low below this it is not drawn
     * @param high above this it is not drawn
     */
    record Range(String unit, double base, double low, double high) {}

    String name();

    Range range();

    default String unit() {
        return range().unit();
    }

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

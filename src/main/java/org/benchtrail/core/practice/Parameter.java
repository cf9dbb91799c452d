package org.benchtrail.core.practice;

/** One number that a simulated device is made with: what it is in a sound one, and between what it may be drawn. */
public interface Parameter {
    String name();

    double base();

    double low();

    double high();
}

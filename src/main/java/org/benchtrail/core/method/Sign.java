package org.benchtrail.core.method;

import org.jspecify.annotations.Nullable;

/**
 * What a recorded fact says that the cause catalogue may take for an answer to a finding.
 *
 * @param name as the catalogue's feeds name it, such as {@code changed/HARDWARE/YES}
 * @param measured the number that it is; null for one that is there or not
 */
public record Sign(String name, @Nullable Measured measured) {

    /**
     * A number.
     *
     * @param low its own lower limit, inclusive, same unit; null if it brings none
     * @param high its own upper limit, inclusive, same unit; null if it brings none
     * @param nominal the case that it belongs to, where a limit depends on one, such as {@code solid-state}; empty if none is known
     */
    public record Measured(
            double value,
            String unit,
            @Nullable Double low,
            @Nullable Double high,
            String nominal) {}

    /** One that is there. */
    public static Sign of(String name) {
        return new Sign(name, null);
    }

    /** A number that brings no limit of its own. */
    public static Sign of(String name, double value, String unit) {
        return new Sign(name, new Measured(value, unit, null, null, ""));
    }
}

package org.benchtrail.core.measure;

import java.util.OptionalDouble;
import org.benchtrail.core.Invalid;

/**
 * What an instrument showed, and how well it shows it. Point, instrument, person and time are facts of the ticket.
 *
 * <p>The accuracy has to apply to the quantity: same kind, within the range it is given for.
 */
public record Reading(Quantity quantity, Accuracy accuracy) {

    /** @throws Invalid if the accuracy does not apply to this quantity */
    public Reading {
        accuracy.standardUncertainty(quantity);
    }

    /** A reading of an instrument nothing is known about. */
    public static Reading plain(Quantity quantity) {
        return new Reading(quantity, new Accuracy.Unknown());
    }

    /** Standard uncertainty as a difference in the given unit; empty if the accuracy is unknown. */
    public OptionalDouble standardUncertainty(Unit unit) {
        if (unit.dimension() != quantity.unit().dimension()) {
            throw new IllegalArgumentException(
                    unit + " does not measure a " + quantity.unit().dimension().words());
        }
        OptionalDouble base = accuracy.standardUncertainty(quantity);
        return base.isEmpty() ? base : OptionalDouble.of(base.getAsDouble() / unit.scale());
    }

    double uncertaintyInBase() {
        return accuracy.standardUncertainty(quantity).orElse(Double.NaN);
    }
}

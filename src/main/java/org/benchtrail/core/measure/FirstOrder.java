package org.benchtrail.core.measure;

import java.util.OptionalDouble;
import org.benchtrail.core.Invalid;

/**
 * Course of a body that warms or cools towards a steady value: T(t) = T∞ − (T∞ − T₀)·exp(−(t − start)/τ).
 *
 * <p>Source: lumped-capacitance model, any textbook of heat transfer. Units: times in seconds, the others in one unit.
 *
 * @param settled T∞, where it settles
 * @param initial T₀, at the start
 * @param timeConstant τ, more than 0: after it, 63.2 % of the way is done
 * @param start time at which it is at T₀
 */
public record FirstOrder(double settled, double initial, double timeConstant, double start) {
    public FirstOrder {
        if (!(timeConstant > 0)) {
            throw new Invalid("timeConstant", "Give the time constant as more than 0.");
        }
    }

    public double at(double time) {
        return settled - (settled - initial) * Math.exp(-(time - start) / timeConstant);
    }

    /** Share of the way from T₀ to T∞ at which the threshold lies; outside [0, 1] if not on the way. */
    double progress(double threshold) {
        return (threshold - initial) / (settled - initial);
    }

    /** When the threshold is reached; empty unless it lies strictly between T₀ and T∞. */
    public OptionalDouble timeTo(double threshold) {
        double progress = progress(threshold);
        return progress > 0 && progress < 1
                ? OptionalDouble.of(start - timeConstant * Math.log1p(-progress))
                : OptionalDouble.empty();
    }
}

package org.benchtrail.core.practice;

import java.util.EnumMap;
import java.util.Map;

/** All numbers of one device. Those that are not named stand at their base; a fault or a repair is other numbers. */
public final class Parameters<P extends Enum<P> & Parameter> {
    private final Map<P, Double> named;

    private Parameters(Map<P, Double> named) {
        this.named = named;
    }

    public static <P extends Enum<P> & Parameter> Parameters<P> sound() {
        return new Parameters<P>(Map.<P, Double>of());
    }

    public double get(P parameter) {
        Double value = named.get(parameter);
        return value == null ? parameter.base() : value;
    }

    public Parameters<P> with(P parameter, double value) {
        return with(Map.of(parameter, value));
    }

    public Parameters<P> with(Map<P, Double> changes) {
        if (changes.isEmpty()) {
            return this;
        }
        Map<P, Double> all = new EnumMap<>(changes);
        named.forEach(all::putIfAbsent);
        return new Parameters<>(all);
    }

    /** As new: each of these at its base again. */
    @SafeVarargs
    public final Parameters<P> restored(P... parameters) {
        Parameters<P> restored = this;
        for (P parameter : parameters) {
            restored = restored.with(parameter, parameter.base());
        }
        return restored;
    }
}

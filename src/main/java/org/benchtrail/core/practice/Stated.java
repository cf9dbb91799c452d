package org.benchtrail.core.practice;

import java.util.EnumMap;
import java.util.Map;

/**
 * What the author of a job says of its device's parts. What nobody says anything of is drawn as ever.
 *
 * @param device of the device, whatever its fault; a fault that sets the same part goes before it
 * @param fault how the fault itself is
 * @param draws how often a device is drawn until it shows its symptom
 */
public record Stated(Map<Parameter, Span> device, Map<Parameter, Span> fault, int draws) {
    public static final Stated NOTHING = new Stated(Map.of(), Map.of(), 100);

    public Stated {
        device = Map.copyOf(device);
        fault = Map.copyOf(fault);
    }

    /** A number that is fixed, if both are the same, or drawn evenly from between. */
    public record Span(double low, double high) {}

    public Stated drawnOnce() {
        return new Stated(device, fault, 1);
    }

    <P extends Enum<P> & Parameter> Parameters<P> ofDevice(
            Parameters<P> parts, Class<P> type, Chance chance, int draw) {
        return parts.with(drawn(device, type, chance, draw));
    }

    <P extends Enum<P> & Parameter> Parameters<P> ofFault(Parameters<P> parts, Class<P> type, Chance chance, int draw) {
        return parts.with(drawn(fault, type, chance, draw));
    }

    private static <P extends Enum<P> & Parameter> Map<P, Double> drawn(
            Map<Parameter, Span> stated, Class<P> type, Chance chance, int draw) {
        Map<P, Double> drawn = new EnumMap<>(type);
        stated.forEach((part, span) -> drawn.put(
                type.cast(part), chance.between("stated|" + part.name() + "|" + draw, span.low(), span.high())));
        return drawn;
    }
}

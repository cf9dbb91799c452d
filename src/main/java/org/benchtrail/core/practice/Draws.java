package org.benchtrail.core.practice;

import java.util.Optional;
import java.util.Set;
import java.util.function.IntFunction;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;

/** Devices out of a seed. What a seed draws first and what does not show the job's symptom is drawn again. */
public final class Draws {
    private Draws() {}

    /** The first draw, counted from 1, that shows the symptom; empty if none of a hundred does, which is a fault of the family. */
    public static <T> Optional<T> first(Stated stated, IntFunction<T> drawn, Predicate<T> shows) {
        return IntStream.rangeClosed(1, stated.draws())
                .mapToObj(drawn)
                .filter(shows)
                .findFirst();
    }

    /**
     * Parts out of chance, with what is stated of them and with the fault.
     *
     * @param spread as {@link #varied} has it
     */
    public static <P extends Enum<P> & Parameter> Parameters<P> made(
            Chance chance,
            int draw,
            Set<P> parts,
            ToDoubleFunction<P> spread,
            Stated stated,
            UnaryOperator<Parameters<P>> fault) {
        Class<P> type = parts.iterator().next().getDeclaringClass();
        Parameters<P> sound = stated.ofDevice(varied(chance, draw, parts, spread), type, chance, draw);
        return stated.ofFault(fault.apply(sound), type, chance, draw);
    }

    /**
     * Parts that lie a little beside their base: no two devices are alike, and none has a fault by that alone.
     *
     * @param spread the share of its base by which a part may lie beside it
     */
    public static <P extends Enum<P> & Parameter> Parameters<P> varied(
            Chance chance, int draw, Set<P> parts, ToDoubleFunction<P> spread) {
        Parameters<P> varied = Parameters.sound();
        for (P part : parts) {
            double share = spread.applyAsDouble(part);
            double value = part.base() * chance.between("part|" + part.name() + "|" + draw, 1 - share, 1 + share);
            varied = varied.with(part, Math.min(part.high(), Math.max(part.low(), value)));
        }
        return varied;
    }
}

package org.benchtrail.core.bench.cooling;

import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Side;
import org.benchtrail.core.bench.Trade;
import org.jspecify.annotations.Nullable;

/**
 * What a clock and a core voltage do to the heat, against the rated ones: P2 = P1 (f2 / f1) (V2 / V1)^2, the dynamic part of
 * the power of CMOS logic; leakage is left out. With the temperature now and the air's, the one to expect back at the default
 * follows, because the rise over the air goes with the power.
 *
 * <p>Source: dynamic power alpha C V^2 f, textbooks on CMOS design (attribution from memory).
 */
public final class ClockHeat {
    private static final double AS_RATED = 1.02;

    /** Over the rated clock; boost clocks of thrifty chips come near to it, a slip of the decimal point goes beyond. */
    private static final double FASTEST = 5;

    /** Over the rated core voltage; no core stands twice its own. */
    private static final double HIGHEST = 2;

    /** Degrees Celsius; silicon stops working before it. */
    private static final double HOTTEST = 150;

    public record Input(
            @Ask(label = "Rated power", unit = "W", hint = "At the rated clock and voltage")
            double ratedWatts,

            @Ask(label = "Rated clock", unit = "GHz") double ratedClock,
            @Ask(label = "Clock now", unit = "GHz") double clock,
            @Ask(label = "Rated core voltage", unit = "V") double ratedVolts,

            @Ask(label = "Core voltage now", unit = "V", hint = "Firmware set-up or monitor")
            double volts,

            @Ask(label = "Temperature now, settled", unit = "°C", hint = "Empty to leave temperatures out") @Nullable
            Double chip,

            @Ask(label = "Air temperature", unit = "°C") @Nullable
            Double ambient) {
        public Input {
            InputCheck check = new InputCheck();
            check.within("ratedWatts", ratedWatts, 0.01, 100_000, "W");
            check.within("ratedClock", ratedClock, 0.0001, 1000, "GHz");
            check.within("clock", clock, 0.0001, 1000, "GHz");
            check.within("ratedVolts", ratedVolts, 0.01, 100, "V");
            check.within("volts", volts, 0.01, 100, "V");
            check.optional("chip", chip, -60, 300, "°C");
            check.optional("ambient", ambient, -60, 100, "°C");
            check.ask(
                    "clock",
                    clock,
                    clock > FASTEST * ratedClock && ratedClock > 0,
                    f -> Numeral.of(f) + " GHz are more than five times the rated " + Numeral.of(ratedClock)
                            + " GHz: did the decimal point slip, or is one of them in MHz? Type each with its unit");
            check.ask(
                    "volts",
                    volts,
                    volts > HIGHEST * ratedVolts && ratedVolts > 0,
                    v -> Numeral.of(v) + " V are more than twice the rated " + Numeral.of(ratedVolts)
                            + " V, which no core stands: was another rail read? Give the core voltage");
            check.rule((chip == null) == (ambient == null), "ambient", "give both temperatures or neither");
            check.rule(
                    !(chip != null && ambient != null && chip <= ambient),
                    "chip",
                    "check both sensors: a chip that draws power is warmer than the air that cools it");
            if (chip != null) {
                check.ask(
                        "chip",
                        chip,
                        chip > HOTTEST,
                        t -> "no chip works at " + Numeral.of(t) + " °C: were " + Numeral.of(t)
                                + " K or °F meant? Type the number with its unit");
            }
            check.done();
        }
    }

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "clock-heat",
            2,
            Trade.COOLING,
            "Clock and heat",
            "What do this clock and voltage do to the heat, and what temperature is expected back at the default?",
            new Input(65, 3.5, 4.2, 1.10, 1.25, 88.0, 24.0),
            ClockHeat::calculate);

    private ClockHeat() {}

    public static Result calculate(Input input) {
        ResultDraft draft = new ResultDraft();
        double ratio = draft.figure(
                "Power against rated",
                "(f2 / f1) × (V2 / V1)^2",
                Numeral.over(input.clock(), input.ratedClock()) + " × ("
                        + Numeral.over(input.volts(), input.ratedVolts()) + ")^2",
                input.clock() / input.ratedClock() * Math.pow(input.volts() / input.ratedVolts(), 2),
                "1",
                4);
        double watts = draft.figure(
                "Power now",
                "P1 × ratio",
                Numeral.of(input.ratedWatts()) + " × " + Numeral.of(ratio),
                input.ratedWatts() * ratio,
                "W",
                4);
        Double chip = input.chip();
        Double ambient = input.ambient();
        if (chip != null && ambient != null) {
            temperature(draft, chip, ambient, ratio);
        }
        draft.assume("Dynamic power only: leakage, which grows with voltage and temperature, comes on top.")
                .assume("The heat path stays as it is. Raising clock or voltage can void the maker's warranty.")
                .caution("HEAT");
        String reason =
                "It turns about " + Numeral.of(watts, 3) + " W into heat instead of " + Numeral.of(input.ratedWatts())
                        + " W, " + Numeral.beside(ratio, 3, 1, AS_RATED) + " times the rated power.";
        return Side.above(ratio, AS_RATED)
                ? draft.judged(Level.CAREFUL, "hotter than rated", reason)
                : draft.judged(Level.GOOD, "no hotter than rated", reason);
    }

    private static void temperature(ResultDraft draft, double chip, double ambient, double ratio) {
        double expected = draft.figure(
                "Temperature to expect at the default",
                "T_ambient + (T - T_ambient) / ratio",
                Numeral.of(ambient) + " + (" + Numeral.of(chip) + " - " + Numeral.term(ambient) + ") / "
                        + Numeral.of(ratio),
                ambient + (chip - ambient) / ratio,
                "°C",
                3);
        draft.figure(
                "Change in temperature",
                "T_default - T",
                Numeral.of(expected) + " - " + Numeral.term(chip),
                expected - chip,
                "°C",
                3);
    }
}

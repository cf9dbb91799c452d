package org.benchtrail.core.bench.power;

import java.util.List;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.Result.Point;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Side;
import org.benchtrail.core.bench.Trade;
import org.benchtrail.core.measure.Provenance;
import org.jspecify.annotations.Nullable;

/**
 * Runtime of a lead-acid UPS at a steady load, in minutes: the shorter of what the stored energy allows and what Peukert's
 * law allows, with ageing, inverter loss and unusable charge taken off.
 *
 * <p>By energy t = 60 N V C h eta u / P. By Peukert t = 60 u H (C h / (I H))^k with I = P / (eta N V), the current out of each
 * of N equal blocks, in series, in parallel or mixed. Below the rated current Peukert's law promises more than the energy
 * holds; the shorter of the two is taken.
 */
public final class UpsRuntime {
    private static final double COMFORTABLE = 2;

    /** Minutes; a discharge over more than the usual 20 hours is less than what a UPS draws for itself. Common practice. */
    private static final double SLOWEST = 1200;
    /** Minutes; nothing shuts down in less, and a battery that holds for less holds for none. Our choice. */
    private static final double A_MOMENT = 0.1;

    public record Input(
            @Ask(label = "Battery blocks", hint = "How many equal blocks are inside")
            int blocks,

            @Ask(label = "Voltage of one block", unit = "V", hint = "Printed on the block, usually 12")
            double blockVolts,

            @Ask(label = "Capacity of one block", unit = "Ah", hint = "Printed on the block, at the rated hours")
            double ampHours,

            @Ask(label = "Rated hours of that capacity", unit = "h", hint = "Data sheet; 20 for most small blocks")
            double ratedHours,

            @Ask(
                    label = "Peukert exponent",
                    hint = "About 1.05 to 1.15 for sealed mat types; empty if a second data-sheet point is given")
            @Nullable
            Double exponent,

            @Ask(
                    label = "Second data-sheet point: current",
                    unit = "A",
                    hint = "A constant-current discharge far from the rated one")
            @Nullable
            Double secondAmps,

            @Ask(label = "Second data-sheet point: time", unit = "h") @Nullable
            Double secondHours,

            @Ask(label = "Capacity left by ageing", unit = "%", hint = "100 when new; from the last battery test")
            double health,

            @Ask(label = "Inverter efficiency", unit = "%", hint = "Data sheet, on battery; 85 to 92 is usual")
            double efficiency,

            @Ask(label = "Usable share of the charge", unit = "%", hint = "100 down to the UPS's own cut-off")
            double usable,

            @Ask(label = "Load", unit = "W", hint = "Measured, not the sum of nameplates")
            double watts,

            @Ask(
                    label = "Time needed for an orderly shutdown",
                    unit = "min",
                    hint = "Empty if only the runtime is asked for")
            @Nullable
            Double shutdownMinutes) {
        public Input {
            InputCheck check = new InputCheck();
            check.within("blocks", blocks, 1, 1000, "");
            check.within("blockVolts", blockVolts, 1, 1000, "V");
            check.within("ampHours", ampHours, 0.01, 100_000, "Ah");
            check.within("ratedHours", ratedHours, 0.1, 240, "h");
            check.optional("exponent", exponent, 1, 2, "");
            check.optional("secondAmps", secondAmps, 0.001, 100_000, "A");
            check.optional("secondHours", secondHours, 0.001, 1000, "h");
            check.within("health", health, 1, 120, "%");
            check.within("efficiency", efficiency, 1, 100, "%");
            check.within("usable", usable, 1, 100, "%");
            check.within("watts", watts, 0.1, 1e7, "W");
            check.optional("shutdownMinutes", shutdownMinutes, A_MOMENT, 100_000, "min");
            boolean point = secondAmps != null && secondHours != null;
            boolean noPoint = secondAmps == null && secondHours == null;
            check.rule(
                    exponent == null ? point : noPoint,
                    "exponent",
                    "give either the exponent, or both current and time of a second data-sheet point");
            if (check.isClean() && secondAmps != null && secondHours != null) {
                checkPoint(check, ampHours / ratedHours, ratedHours, secondAmps, secondHours);
            }
            check.done();
        }

        private static void checkPoint(
                InputCheck check, double amps, double hours, double secondAmps, double secondHours) {
            double exponent = Peukert.exponent(amps, hours, secondAmps, secondHours);
            check.rule(
                    exponent >= 1 && exponent <= 2,
                    "secondAmps",
                    "give a point that belongs to this block: with the rated one it should give an exponent from 1"
                            + " to 2");
        }
    }

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "ups-runtime",
            3,
            Trade.POWER,
            "UPS runtime",
            "How long does the UPS hold at this load, and is that long enough for an orderly shutdown?",
            new Input(2, 12, 9, 20, 1.15, null, null, 85, 90, 100, 180, 5.0),
            UpsRuntime::calculate);

    private UpsRuntime() {}

    public static Result calculate(Input input) {
        ResultDraft draft = new ResultDraft();
        double exponent = exponent(draft, input);
        double runtime = runtime(draft, input, exponent);
        draft.curve(curve(input, exponent));
        Double needed = input.shutdownMinutes();
        if (needed != null) {
            draft.curve(line(input, needed));
        }
        draft.assume("Lead-acid blocks of one age and type, fully charged, at the temperature of their data sheet.")
                .assume("The load stays as it is; the health figure is believed. A timed test with the real load is"
                        + " the proof.")
                .caution("BATTERY")
                .caution("MAINS");
        return judged(draft, runtime, input);
    }

    /** Runtime in minutes without the working. */
    static double minutes(Input input, double exponent, double watts) {
        return Math.min(byEnergy(input, watts), byPeukert(input, exponent, watts));
    }

    private static double byEnergy(Input in, double watts) {
        return 60 * in.blocks() * in.blockVolts() * aged(in) * part(in.efficiency()) * part(in.usable()) / watts;
    }

    private static double byPeukert(Input in, double exponent, double watts) {
        return 60 * part(in.usable()) * Peukert.hours(aged(in), in.ratedHours(), current(in, watts), exponent);
    }

    private static double current(Input in, double watts) {
        return watts / (part(in.efficiency()) * in.blocks() * in.blockVolts());
    }

    private static double aged(Input in) {
        return in.ampHours() * part(in.health());
    }

    private static double part(double percent) {
        return percent / 100;
    }

    private static double exponent(ResultDraft draft, Input in) {
        Double given = in.exponent();
        Double amps = in.secondAmps();
        Double hours = in.secondHours();
        if (given != null || amps == null || hours == null) {
            return given == null ? 1 : given;
        }
        double rated = in.ampHours() / in.ratedHours();
        return draft.figure(
                "Peukert exponent",
                "k = ln(t1 / t2) / ln(I2 / I1), with I1 = C / H and t1 = H",
                "ln(" + Numeral.over(in.ratedHours(), hours) + ") / ln(" + Numeral.over(amps, rated) + ")",
                Peukert.exponent(rated, in.ratedHours(), amps, hours),
                "1",
                4);
    }

    private static double runtime(ResultDraft draft, Input in, double exponent) {
        double aged = draft.step(
                "Capacity left",
                "C × h",
                Numeral.of(in.ampHours()) + " × " + Numeral.of(part(in.health())),
                aged(in),
                "Ah",
                9);
        double energy = draft.figure(
                "Runtime by energy",
                "60 × N × V × C h × eta × u / P",
                energyPut(in, aged),
                byEnergy(in, in.watts()),
                "min",
                4);
        double amps = draft.figure(
                "Current out of each block",
                "I = P / (eta × N × V)",
                Numeral.of(in.watts()) + " / (" + Numeral.of(part(in.efficiency())) + " × " + in.blocks() + " × "
                        + Numeral.of(in.blockVolts()) + ")",
                current(in, in.watts()),
                "A",
                4);
        double peukert = draft.figure(
                "Runtime by Peukert's law",
                "60 × u × H × (C h / (I × H))^k",
                peukertPut(in, aged, amps, exponent),
                byPeukert(in, exponent, in.watts()),
                "min",
                4);
        return draft.figure(
                "Runtime",
                "min(by energy, by Peukert)",
                "min(" + Numeral.of(energy) + ", " + Numeral.of(peukert) + ")",
                Math.min(energy, peukert),
                "min",
                digits(Math.min(energy, peukert), in.shutdownMinutes()));
    }

    private static int digits(double runtime, @Nullable Double needed) {
        return needed == null ? 3 : Numeral.digitsBeside(runtime, 3, needed, COMFORTABLE * needed);
    }

    private static String energyPut(Input in, double aged) {
        return "60 × " + in.blocks() + " × " + Numeral.of(in.blockVolts()) + " × " + Numeral.of(aged) + " × "
                + Numeral.of(part(in.efficiency())) + " × " + Numeral.over(part(in.usable()), in.watts());
    }

    private static String peukertPut(Input in, double aged, double amps, double exponent) {
        return "60 × " + Numeral.of(part(in.usable())) + " × " + Numeral.of(in.ratedHours()) + " × (" + Numeral.of(aged)
                + " / (" + Numeral.of(amps) + " × " + Numeral.of(in.ratedHours()) + "))^" + Numeral.of(exponent);
    }

    private static Curve curve(Input input, double exponent) {
        List<Point> points = ResultDraft.sample(
                0.25 * input.watts(), 2 * input.watts(), 36, watts -> minutes(input, exponent, watts));
        return new Curve("Runtime over load", "load", "W", "runtime", "min", points);
    }

    private static Curve line(Input input, double needed) {
        List<Point> points = List.of(new Point(0.25 * input.watts(), needed), new Point(2 * input.watts(), needed));
        return new Curve("Needed for an orderly shutdown", "load", "W", "runtime", "min", points);
    }

    /** A time as it is said; at most so long where the unit's own draw, which is left out, weighs as much as the load. */
    private static String held(double runtime, @Nullable Double needed, boolean tiny) {
        boolean seconds = runtime < A_MOMENT || (needed != null && runtime < 2 && needed >= 2);
        if (needed == null || seconds || tiny) {
            String about = Numeral.about(60 * runtime);
            return (tiny && !about.startsWith("more") ? "at most " : "") + about;
        }
        return "about " + Numeral.beside(runtime, 3, needed, COMFORTABLE * needed) + " min";
    }

    private static Result judged(ResultDraft draft, double runtime, Input input) {
        Double needed = input.shutdownMinutes();
        boolean tiny = Side.above(runtime, SLOWEST);
        String holds = "It holds for " + held(runtime, needed, tiny);
        if (tiny) {
            draft.assume(
                    "So small a load discharges the battery over more than 20 h: what the UPS itself draws is not in"
                            + " the sum and may well be more than the load. Only a timed test says how long it holds.");
        }
        if (needed == null) {
            return draft.judged(Level.NONE, "runtime at this load", holds + ".");
        }
        String reason = holds + "; an orderly shutdown needs " + Numeral.of(needed) + " min.";
        if (Side.below(runtime, needed)) {
            return draft.judged(Level.BAD, "too short for an orderly shutdown", reason);
        }
        draft.assume("Twice the time needed is taken as enough in hand: " + Provenance.COMMON_PRACTICE.words() + ".");
        return Side.below(Math.min(runtime, SLOWEST), COMFORTABLE * needed)
                ? draft.judged(Level.CAREFUL, "long enough, with little in hand", reason)
                : draft.judged(Level.GOOD, "long enough for an orderly shutdown", reason);
    }
}

package org.benchtrail.core.bench.power;

import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Side;
import org.benchtrail.core.bench.Trade;
import org.benchtrail.core.measure.Provenance;
import org.jspecify.annotations.Nullable;

/**
 * A UPS's load in watts and in volt-amperes against both ratings.
 *
 * <p>S = V I, PF = P / S, load % = 100 max(P / P_rated, S / S_rated) (definitions of IEEE Std 1459). Real power cannot exceed
 * apparent power: a reading of P up to 2 % above S is taken as meter tolerance, more is refused. Up to 80 % is judged good,
 * up to 100 % with care (common practice).
 */
public final class UpsLoad {
    private static final double METER_TOLERANCE = 1.02;
    private static final double COMFORTABLE = 80;

    public record Input(
            @Ask(label = "UPS rating", unit = "W", hint = "Nameplate")
            double ratedWatts,

            @Ask(label = "UPS rating, apparent", unit = "VA", hint = "Nameplate; often printed larger than the watts")
            double ratedVa,

            @Ask(label = "Load", unit = "W", hint = "Plug-in power meter, or the UPS's display")
            double watts,

            @Ask(label = "Load, apparent", unit = "VA", hint = "Leave empty if volts and amperes are given") @Nullable
            Double va,

            @Ask(label = "Voltage", unit = "V") @Nullable Double volts,

            @Ask(label = "Current", unit = "A", hint = "True rms") @Nullable
            Double amps) {
        public Input {
            InputCheck check = new InputCheck();
            check.within("ratedWatts", ratedWatts, 1, 1e7, "W");
            check.within("ratedVa", ratedVa, 1, 1e7, "VA");
            check.rule(!(ratedWatts > ratedVa), "ratedVa", "give a VA rating at least as high as the rating in watts");
            check.within("watts", watts, 0.01, 1e7, "W");
            check.optional("va", va, 0.01, 1e7, "VA");
            check.optional("volts", volts, 1, 1000, "V");
            check.optional("amps", amps, 0.0001, 10_000, "A");
            boolean both = volts != null && amps != null;
            boolean neither = volts == null && amps == null;
            check.rule(va == null ? both : neither, "va", "give either the volt-amperes, or both volts and amperes");
            if (check.isClean()) {
                double apparent = apparent(va, volts, amps);
                check.rule(
                        watts <= METER_TOLERANCE * apparent,
                        "watts",
                        "measure again: " + Numeral.of(watts) + " W cannot be more than the " + Numeral.of(apparent)
                                + " VA");
            }
            check.done();
        }

        private static double apparent(@Nullable Double va, @Nullable Double volts, @Nullable Double amps) {
            return va != null ? va : volts != null && amps != null ? volts * amps : Double.NaN;
        }
    }

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "ups-load",
            2,
            Trade.POWER,
            "UPS load",
            "How much of the UPS does the load take, in watts and in volt-amperes, and which of the two binds?",
            new Input(900, 1000, 540, null, 230.0, 2.61),
            UpsLoad::calculate);

    private UpsLoad() {}

    public static Result calculate(Input input) {
        ResultDraft draft = new ResultDraft();
        double apparent = apparent(draft, input);
        draft.figure(
                "Power factor",
                "P / S, at most 1",
                "min(1, " + Numeral.over(input.watts(), apparent) + ")",
                Math.min(1, input.watts() / apparent),
                "1",
                6);
        double byWatts = share(draft, "Load by watts", "100 × P / P_rated", input.watts(), input.ratedWatts());
        double byVa = share(draft, "Load by volt-amperes", "100 × S / S_rated", apparent, input.ratedVa());
        double load = Math.max(byWatts, byVa);
        draft.figure(
                "Load",
                "max(by watts, by VA)",
                "max(" + Numeral.of(byWatts) + ", " + Numeral.of(byVa) + ")",
                load,
                "%",
                digits(load));
        headroom(draft, "Headroom in watts", input.ratedWatts(), input.watts(), "W");
        headroom(draft, "Headroom in volt-amperes", input.ratedVa(), apparent, "VA");
        draft.assume("The load was measured while the machines worked as hard as they do in use.")
                .assume("Up to 80 % is taken as comfortable: " + Provenance.COMMON_PRACTICE.words() + ".")
                .caution("MAINS");
        if (input.watts() > apparent) {
            draft.assume(
                    "Watts read slightly above volt-amperes: taken as meter tolerance, the power factor is about 1.");
        }
        return judged(draft, load, byWatts, byVa);
    }

    private static double apparent(ResultDraft draft, Input input) {
        Double volts = input.volts();
        Double amps = input.amps();
        if (volts != null && amps != null) {
            String put = Numeral.of(volts) + " × " + Numeral.of(amps);
            return draft.figure("Apparent power", "S = V × I", put, volts * amps, "VA", 4);
        }
        double va = Input.apparent(input.va(), volts, amps);
        return draft.figure("Apparent power", "S, as given", Numeral.of(va), va, "VA", 4);
    }

    private static double share(ResultDraft draft, String name, String formula, double load, double rated) {
        double exact = 100 * load / rated;
        return draft.figure(name, formula, "100 × " + Numeral.over(load, rated), exact, "%", digits(exact));
    }

    private static int digits(double percent) {
        return Numeral.digitsBeside(percent, 4, COMFORTABLE, 100);
    }

    private static String shown(double percent) {
        return Numeral.percent(percent, COMFORTABLE);
    }

    private static void headroom(ResultDraft draft, String name, double rated, double load, String unit) {
        draft.figure(
                name, "rating - load", Numeral.of(rated) + " - " + Numeral.of(load), Side.rest(rated, load), unit, 4);
    }

    private static Result judged(ResultDraft draft, double load, double byWatts, double byVa) {
        String binds = byWatts > byVa ? "watts bind" : byVa > byWatts ? "volt-amperes bind" : "both ratings bind alike";
        String reason = "The load is " + shown(load) + " of the rating; " + binds + " (" + shown(byWatts)
                + " by watts, " + shown(byVa) + " by volt-amperes).";
        if (Side.above(load, 100)) {
            return draft.judged(Level.BAD, "overloaded", reason);
        }
        return Side.above(load, COMFORTABLE)
                ? draft.judged(Level.CAREFUL, "carries it with little to spare", reason)
                : draft.judged(Level.GOOD, "carries it", reason);
    }
}

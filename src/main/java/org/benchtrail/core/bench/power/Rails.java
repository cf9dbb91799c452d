package org.benchtrail.core.bench.power;

import java.util.List;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Choice;
import org.benchtrail.core.bench.Citation;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.Result.Rule;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Severity;
import org.benchtrail.core.bench.Side;
import org.benchtrail.core.bench.Trade;
import org.jspecify.annotations.Nullable;

/**
 * The supply's DC rails, in volts, against the regulation limits of the published design guide, idle and under load.
 *
 * <p>Deviation in percent is 100 (V - V_nom) / |V_nom|; the sag is the fall in magnitude from idle to load. Limits are
 * inclusive and compared unrounded. Source of the limits: {@link RailLimits}.
 */
public final class Rails {
    public enum Edition implements Choice {
        ATX12V_2_0("ATX12V 2.0"),
        ATX_2_1("ATX 2.1"),
        ATX_3("ATX 3.x");

        private final String words;

        Edition(String words) {
            this.words = words;
        }

        @Override
        public String words() {
            return words;
        }
    }

    public enum Rail implements Choice {
        PLUS_12("+12 V"),
        PLUS_12_GRAPHICS("+12 V at the graphics connector"),
        PLUS_5("+5 V"),
        PLUS_3_3("+3.3 V"),
        MINUS_12("-12 V"),
        STANDBY_5("+5 V standby");

        private final String words;

        Rail(String words) {
            this.words = words;
        }

        @Override
        public String words() {
            return words;
        }
    }

    /** One rail; at least one of idle and load must be there. */
    public record Reading(
            @Ask(label = "Rail") Rail rail,

            @Ask(
                    label = "At idle",
                    unit = "V",
                    hint = "Meter on DC, black lead on a ground contact; -12 V reads below zero")
            @Nullable
            Double idle,

            @Ask(
                    label = "Under load",
                    unit = "V",
                    hint = "With the machine working hard, at the load end of the connector")
            @Nullable
            Double load,

            @Ask(label = "Load is the supply's peak load", hint = "Wider +12 V limits, edition 2.0 only")
            boolean peak,

            @Ask(
                    label = "Expanded uncertainty of the meter",
                    unit = "V",
                    hint = "U at k = 2, from the calculation of the meter; empty to compare without")
            @Nullable
            Double uncertainty) {}

    public record Input(
            @Ask(label = "Edition of the design guide", hint = "On the supply's label or in its data sheet")
            Edition edition,

            @Ask(label = "Rails", hint = "Each rail once") List<Reading> readings) {
        public Input {
            InputCheck check = new InputCheck();
            check.present("edition", edition);
            Edition chosen = edition;
            readings = check.list(
                    "readings", readings, 1, Rail.values().length, (path, r) -> check(check, path, r, chosen));
            check.rule(
                    readings.stream().map(Reading::rail).distinct().count() == readings.size(),
                    "readings",
                    "give each rail once");
            check.done();
        }

        private static void check(InputCheck check, String path, Reading reading, @Nullable Edition edition) {
            check.rule(
                    reading.idle() != null || reading.load() != null,
                    path + ".idle",
                    "give the voltage at idle, under load, or both");
            check.optional(path + ".uncertainty", reading.uncertainty(), 0, 5, "V");
            if (check.present(path + ".rail", reading.rail())) {
                volts(check, path + ".idle", reading.rail(), reading.idle());
                volts(check, path + ".load", reading.rail(), reading.load());
                checkPeak(check, path + ".peak", reading, edition);
            }
        }

        private static void volts(InputCheck check, String field, Rail rail, @Nullable Double volts) {
            if (volts == null) {
                return;
            }
            boolean negative = rail == Rail.MINUS_12;
            boolean holds = Math.abs(volts) <= 60 && (negative ? volts <= 0 : volts >= 0);
            check.rule(
                    holds,
                    field,
                    negative
                            ? "give 0 to -60 V; a reading above zero on this rail means that the leads are swapped"
                            : "give 0 to 60 V; a reading below zero on this rail means that the leads are swapped");
        }

        private static void checkPeak(InputCheck check, String field, Reading reading, @Nullable Edition edition) {
            boolean twelve = reading.rail() == Rail.PLUS_12 || reading.rail() == Rail.PLUS_12_GRAPHICS;
            check.rule(
                    !reading.peak() || (twelve && edition == Edition.ATX12V_2_0 && reading.load() != null),
                    field,
                    "leave this unset: wider limits at peak load exist for a loaded +12 V rail in edition 2.0 only");
        }
    }

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "rails",
            2,
            Trade.POWER,
            "DC rails",
            "Are the supply's DC rails within the published design guide, idle and under load?",
            new Input(
                    Edition.ATX12V_2_0,
                    List.of(
                            new Reading(Rail.PLUS_12, 12.08, 11.62, false, 0.09),
                            new Reading(Rail.PLUS_5, 5.05, 4.98, false, 0.04),
                            new Reading(Rail.PLUS_3_3, 3.33, 3.30, false, 0.02))),
            Rails::calculate);

    private Rails() {}

    public static Result calculate(Input input) {
        ResultDraft draft = new ResultDraft();
        for (Reading reading : input.readings()) {
            judge(draft, input.edition(), reading);
        }
        unproven(draft, input);
        draft.assume("Measured at the load end of the output connectors with a meter within its specification.")
                .assume("A meter shows the mean: ripple and short dips need an oscilloscope.")
                .assume("A reading without a stated uncertainty is compared with the limit as it stands.")
                .caution("MAINS")
                .caution("CAPACITOR");
        Rule deciding = Severity.deciding(draft.rules());
        return draft.judged(deciding.outcome(), words(deciding.outcome()), reason(draft, deciding));
    }

    private static String reason(ResultDraft draft, Rule deciding) {
        return deciding.outcome() == Level.GOOD
                ? "All " + draft.rules().size() + " readings lie within their limits; " + deciding.sentence()
                : Severity.reason(draft.rules());
    }

    private static String words(Level level) {
        return switch (level) {
            case BAD -> "outside the guide";
            case UNDECIDED -> "too close to call";
            case CAREFUL -> "within the guide at idle only";
            case GOOD, NONE -> "within the guide";
        };
    }

    private static void judge(ResultDraft draft, Edition edition, Reading reading) {
        String name = reading.rail().words();
        Double idle = reading.idle();
        Double load = reading.load();
        double uncertainty = reading.uncertainty() == null ? 0 : reading.uncertainty();
        if (idle != null) {
            judge(draft, name + " at idle", idle, uncertainty, RailLimits.of(edition, reading.rail(), false));
        }
        if (load != null) {
            judge(
                    draft,
                    name + " under load",
                    load,
                    uncertainty,
                    RailLimits.of(edition, reading.rail(), reading.peak()));
        }
        if (idle != null && load != null) {
            sag(draft, name, idle, load);
        }
    }

    private static void judge(ResultDraft draft, String name, double volts, double uncertainty, RailLimits limits) {
        double nominal = limits.nominal();
        draft.figure(
                name + ", deviation",
                "100 × (V - V_nom) / |V_nom|",
                "100 × (" + Numeral.of(volts) + " - " + Numeral.term(nominal) + ") / " + Numeral.of(Math.abs(nominal)),
                100 * (volts - nominal) / Math.abs(nominal),
                "%",
                4);
        Level level = level(volts, uncertainty, limits);
        draft.rule(name, level, sentence(name, volts, uncertainty, limits, level), limits.source());
    }

    /** Inclusive limits; an expanded uncertainty above zero opens a band around each limit in which nothing is decided. */
    static Level level(double volts, double uncertainty, RailLimits limits) {
        if (!Side.below(volts, limits.low() + uncertainty) && !Side.above(volts, limits.high() - uncertainty)) {
            return Level.GOOD;
        }
        boolean clearlyOutside =
                Side.below(volts, limits.low() - uncertainty) || Side.above(volts, limits.high() + uncertainty);
        return clearlyOutside ? Level.BAD : Level.UNDECIDED;
    }

    private static String sentence(String name, double volts, double uncertainty, RailLimits limits, Level level) {
        String range = Numeral.of(limits.weak()) + " V to " + Numeral.of(limits.strong()) + " V";
        String read = name + " reads " + Numeral.of(volts) + " V";
        return switch (level) {
            case GOOD -> read + ", within " + range + ".";
            case BAD -> read + ", outside " + range + ".";
            default ->
                read + ", nearer to a limit of " + range + " than the uncertainty of " + Numeral.of(uncertainty)
                        + " V.";
        };
    }

    private static void sag(ResultDraft draft, String name, double idle, double load) {
        draft.figure(
                name + ", sag from idle to load",
                "|V_idle| - |V_load|",
                Numeral.of(Math.abs(idle)) + " - " + Numeral.of(Math.abs(load)),
                Math.abs(idle) - Math.abs(load),
                "V",
                3);
    }

    private static void unproven(ResultDraft draft, Input input) {
        if (input.readings().stream().allMatch(r -> r.load() == null)) {
            draft.rule(
                    "Load",
                    Level.CAREFUL,
                    "No rail was measured under load, and a tired supply often shows itself only there.",
                    Citation.COMMON_PRACTICE);
        }
    }
}

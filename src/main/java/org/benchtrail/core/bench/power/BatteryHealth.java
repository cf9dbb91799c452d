package org.benchtrail.core.bench.power;

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
 * Full-charge capacity against design capacity, in percent, and cycles against rated cycles.
 *
 * <p>A standby lead-acid battery below 80 % of its rated capacity is due for replacement (practice of IEEE Std 450 and 1188,
 * from memory). For a portable battery 80 % and 60 % are common practice. A swollen battery is out of use whatever it holds.
 */
public final class BatteryHealth {
    /** Of the design capacity: a battery that takes less is far likelier one whose capacities are in two units. */
    private static final double LEAST_SHARE = 0.01;

    public enum Kind implements Choice {
        PORTABLE("portable device's battery", 80, 60, Citation.COMMON_PRACTICE),
        STANDBY_LEAD_ACID(
                "standby battery, lead-acid",
                90,
                80,
                Citation.fromMemory(
                        "IEEE Std 450 and 1188, Recommended Practice for Maintenance, Testing, and Replacement of lead-acid batteries"));

        private final String words;

        private final double good;
        private final double poor;
        private final Citation source;

        Kind(String words, double good, double poor, Citation source) {
            this.words = words;
            this.good = good;
            this.poor = poor;
            this.source = source;
        }

        @Override
        public String words() {
            return words;
        }
    }

    public record Input(
            @Ask(label = "Kind of battery") Kind kind,

            @Ask(
                    label = "Full-charge capacity",
                    unit = "Wh",
                    hint = "Battery report or capacity test; mAh or Ah do as well if both are the same")
            double fullCharge,

            @Ask(label = "Design capacity", unit = "Wh", hint = "Same report, same unit")
            double design,

            @Ask(label = "Cycles so far", hint = "Empty if the battery does not count them") @Nullable
            Double cycles,

            @Ask(label = "Rated cycles", hint = "Maker's data sheet") @Nullable
            Double ratedCycles,

            @Ask(label = "Case swollen, lid or touchpad lifted")
            boolean swollen) {
        public Input {
            InputCheck check = new InputCheck();
            check.present("kind", kind);
            check.zeroOr("fullCharge", fullCharge, 0.001, 1e9, "Wh");
            check.within("design", design, 0.001, 1e9, "Wh");
            if (cycles != null) {
                check.zeroOr("cycles", cycles, 1, 100_000, "");
            }
            check.optional("ratedCycles", ratedCycles, 1, 100_000, "");
            check.rule(
                    !(fullCharge > 1.2 * design),
                    "fullCharge",
                    "give both capacities in the same unit: full charge is more than 120 % of the design capacity");
            check.rule(
                    fullCharge == 0 || !Side.below(fullCharge, LEAST_SHARE * design),
                    "fullCharge",
                    "give both capacities in the same unit: full charge is less than 1 % of the design capacity; 0 if it"
                            + " takes no charge");
            check.done();
        }
    }

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "battery-health",
            2,
            Trade.POWER,
            "Battery health",
            "How much of its design capacity does the battery still take, and how far is it through its cycles?",
            new Input(Kind.PORTABLE, 38.2, 56.0, 412.0, 500.0, false),
            BatteryHealth::calculate);

    private BatteryHealth() {}

    public static Result calculate(Input input) {
        ResultDraft draft = new ResultDraft();
        swelling(draft, input.swollen());
        capacity(draft, input);
        cycles(draft, input.cycles(), input.ratedCycles());
        draft.assume("The battery's own counter is believed; after a full charge and discharge it is worth more.")
                .caution("BATTERY");
        Rule deciding = Severity.deciding(draft.rules());
        return draft.judged(deciding.outcome(), words(deciding), deciding.sentence());
    }

    private static String words(Rule deciding) {
        if (deciding.name().equals("Swelling")) {
            return "take it out of use";
        }
        return switch (deciding.outcome()) {
            case BAD -> "due for replacement";
            case CAREFUL -> "worn";
            default -> "holds its charge";
        };
    }

    private static void swelling(ResultDraft draft, boolean swollen) {
        if (swollen) {
            String sentence =
                    "The case is swollen: do not charge, press, puncture or ship it; follow the maker's and the site's"
                            + " rules for damaged batteries.";
            draft.rule("Swelling", Level.BAD, sentence, Citation.COMMON_PRACTICE)
                    .caution("SWELLING");
        }
    }

    private static void capacity(ResultDraft draft, Input input) {
        Kind kind = input.kind();
        int digits = Numeral.digitsBeside(100 * input.fullCharge() / input.design(), 3, kind.good, kind.poor);
        double health = draft.figure(
                "Health",
                "100 × C_full / C_design",
                "100 × " + Numeral.of(input.fullCharge()) + " / " + Numeral.of(input.design()),
                100 * input.fullCharge() / input.design(),
                "%",
                digits);
        Level level = !Side.below(health, kind.good)
                ? Level.GOOD
                : !Side.below(health, kind.poor) ? Level.CAREFUL : Level.BAD;
        String sentence = "It takes " + Numeral.percent(health, kind.good, kind.poor)
                + " of its design capacity (replacement is usual below " + Numeral.of(kind.poor) + " %).";
        draft.rule("Capacity", level, sentence, kind.source);
    }

    private static void cycles(ResultDraft draft, @Nullable Double cycles, @Nullable Double rated) {
        if (cycles == null || rated == null) {
            return;
        }
        double share = draft.figure(
                "Share of the rated cycles",
                "100 × n / n_rated",
                "100 × " + Numeral.of(cycles) + " / " + Numeral.of(rated),
                100 * cycles / rated,
                "%",
                Numeral.digitsBeside(100 * cycles / rated, 3, 100));
        String sentence = Numeral.of(cycles) + " cycles are " + Numeral.percent(share) + " of the rated "
                + Numeral.of(rated) + ".";
        draft.rule(
                "Cycles",
                Side.above(share, 100) ? Level.CAREFUL : Level.GOOD,
                sentence,
                Citation.given("maker's data sheet"));
    }
}

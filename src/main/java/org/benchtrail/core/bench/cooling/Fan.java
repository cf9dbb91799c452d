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
import org.benchtrail.core.measure.Provenance;
import org.jspecify.annotations.Nullable;

/**
 * A fan's speed against what it should turn at its duty: stalled, slow, at duty, fast.
 *
 * <p>Speed is taken to follow the duty in proportion. By the fan laws (textbooks on fans and ventilation) air flow goes with
 * the speed, pressure with its square, shaft power with its cube. Below half of the expected speed it is judged bad (common
 * practice); above half again its rated speed the pulses are taken to be counted wrongly; the tolerance is the maker's.
 */
public final class Fan {
    private static final double HALF = 0.5;
    /** Percent of its rated speed above which no fan turns: pulses are counted as turns. */
    private static final double PULSES = 150;

    /** Times the rated speed; even four pulses counted as turns make less. */
    private static final double UNHEARD_OF = 5;

    public record Input(
            @Ask(label = "Rated speed at full duty", unit = "1/min", hint = "Data sheet or label")
            double ratedSpeed,

            @Ask(label = "Speed now", unit = "1/min", hint = "Monitor or tachometer; two pulses a turn are usual")
            double speed,

            @Ask(label = "Duty", unit = "%", hint = "What the controller asks for; empty for full") @Nullable
            Double duty,

            @Ask(label = "Tolerance of the speed", unit = "%", hint = "Maker's data sheet; 10 is usual")
            double tolerance) {
        public Input {
            InputCheck check = new InputCheck();
            check.within("ratedSpeed", ratedSpeed, 1, 1e6, "1/min");
            check.within("speed", speed, 0, 1e6, "1/min");
            if (duty != null) {
                check.zeroOr("duty", duty, 0.1, 100, "%");
            }
            check.within("tolerance", tolerance, 0, 50, "%");
            check.ask(
                    "speed",
                    speed,
                    ratedSpeed >= 1 && speed > UNHEARD_OF * ratedSpeed,
                    n -> Numeral.of(n) + " a minute is " + Numeral.percent(100 * speed / ratedSpeed)
                            + " of the rated speed: which of the two is it? Type both in turns a minute");
            check.done();
        }

        double share() {
            return duty == null ? 100 : duty;
        }
    }

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "fan",
            2,
            Trade.COOLING,
            "Fan speed",
            "Does the fan turn as fast as its duty asks for?",
            new Input(1850, 937, 82.0, 10),
            Fan::calculate);

    private Fan() {}

    public static Result calculate(Input input) {
        ResultDraft draft = new ResultDraft();
        double rated = input.ratedSpeed();
        double expected = draft.figure(
                "Speed to expect",
                "n_rated × duty / 100",
                Numeral.of(rated) + " × " + Numeral.over(input.share(), 100),
                rated * input.share() / 100,
                "1/min",
                4);
        double flow = draft.figure(
                "Air flow against rated",
                "100 × n / n_rated",
                "100 × " + Numeral.over(input.speed(), rated),
                100 * input.speed() / rated,
                "%",
                3);
        draft.figure("Pressure against rated", "100 × (n / n_rated)^2", law(input, 2), flow * flow / 100, "%", 3);
        draft.figure(
                "Shaft power against rated",
                "100 × (n / n_rated)^3",
                law(input, 3),
                flow * flow * flow / 10_000,
                "%",
                3);
        draft.assume("The speed follows the duty in proportion; some fans stop on purpose at low duty.")
                .assume("Below half of the expected speed is judged bad: " + Provenance.COMMON_PRACTICE.words() + ".")
                .caution("MOVING_PARTS");
        return judged(draft, input, expected);
    }

    private static String law(Input input, int power) {
        return "100 × (" + Numeral.over(input.speed(), input.ratedSpeed()) + ")^" + power;
    }

    private static Result judged(ResultDraft draft, Input input, double expected) {
        String reads =
                "It turns " + Numeral.of(input.speed()) + " a minute; its duty asks for " + Numeral.of(expected, 4);
        double ofRated = 100 * input.speed() / input.ratedSpeed();
        if (Side.above(ofRated, PULSES)) {
            return draft.judged(
                    Level.UNDECIDED,
                    "faster than a fan can be: check the pulses per turn",
                    reads + ". That is " + Numeral.percent(ofRated, PULSES)
                            + " of its rated speed: two pulses a turn may be counted as two turns.");
        }
        if (expected == 0) {
            return input.speed() == 0
                    ? draft.judged(
                            Level.CAREFUL, "stopped, as its duty asks", reads + ". Raise the duty to see it start.")
                    : draft.judged(Level.CAREFUL, "turns at no duty", reads + ": many fans keep a lowest speed.");
        }
        if (input.speed() == 0) {
            return draft.judged(Level.BAD, "stalled", reads + ".");
        }
        return turning(draft, input, expected, reads);
    }

    /** A fan that turns at a duty that asks for it. */
    private static Result turning(ResultDraft draft, Input input, double expected, String reads) {
        double least = 100 - input.tolerance();
        double most = 100 + input.tolerance();
        int digits = Numeral.digitsBeside(100 * input.speed() / expected, 3, 100 * HALF, least, most);
        double ratio = draft.figure(
                "Against what is expected",
                "100 × n / n_expected",
                "100 × " + Numeral.over(input.speed(), expected),
                100 * input.speed() / expected,
                "%",
                digits);
        String reason = reads + ": " + Numeral.percent(ratio, 100 * HALF, least, most) + " of it, with a tolerance of "
                + (input.tolerance() < 0.001 && input.tolerance() > 0
                        ? "less than 0.001"
                        : Numeral.of(input.tolerance()))
                + " %.";
        if (Side.below(ratio, 100 * HALF)) {
            return draft.judged(Level.BAD, "much too slow", reason);
        }
        if (Side.below(ratio, least)) {
            return draft.judged(Level.CAREFUL, "slow", reason);
        }
        return Side.above(ratio, most)
                ? draft.judged(Level.CAREFUL, "faster than its duty asks", reason)
                : draft.judged(Level.GOOD, "at duty", reason);
    }
}

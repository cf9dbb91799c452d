package org.benchtrail.core.bench.judging;

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
import org.jspecify.annotations.Nullable;

/**
 * How long an intermittent fault must stay away before it is believed gone: t = T ln(1 / alpha), the time in which a fault
 * that still comes about every T would have stayed away by luck with probability alpha.
 *
 * <p>Times in h. Source: the Poisson process, P(none in t) = e^(-t / T).
 */
public final class Soak {
    public record Input(
            @Ask(
                    label = "The fault came about every",
                    unit = "h",
                    hint = "Observed time divided by the number of times it came")
            double every,

            @Ask(
                    label = "Chance allowed of quiet by luck",
                    unit = "%",
                    hint = "5 is usual: the chance that a fault which is still there stays quiet so long")
            double doubt,

            @Ask(label = "Run clean so far", unit = "h", hint = "Empty before the run") @Nullable
            Double clean) {
        public Input {
            InputCheck check = new InputCheck();
            check.within("every", every, 0.01, 1e6, "h");
            check.within("doubt", doubt, 0.0001, 50, "%");
            if (clean != null) {
                check.zeroOr("clean", clean, 0.001, 1e6, "h");
            }
            check.done();
        }
    }

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "soak",
            2,
            Trade.JUDGING,
            "Soak time",
            "How long must it run clean before an intermittent fault is believed gone?",
            new Input(26.5, 5, 41.0),
            Soak::calculate);

    private Soak() {}

    public static Result calculate(Input input) {
        ResultDraft draft = new ResultDraft();
        double alpha = input.doubt() / 100;
        double needed = draft.figure(
                "Time to run clean",
                "t = T × ln(1 / alpha)",
                Numeral.of(input.every()) + " × ln(1 / " + Numeral.of(alpha) + ")",
                -input.every() * Math.log(alpha),
                "h",
                4);
        draft.curve(doubt(input, needed)).curve(allowed(input, needed));
        draft.assume("The fault comes at random at a steady rate and under the same use as before.")
                .assume("T itself is known well; from fewer than about five occurrences it is only a guess, so run"
                        + " longer.");
        Double clean = input.clean();
        String needs = "It must run clean for "
                + (clean == null ? Numeral.of(needed, 4) : Numeral.beside(needed, 4, clean)) + " h";
        return clean == null
                ? draft.judged(Level.NONE, "soak time", needs + ".")
                : judged(draft, input, clean, needed, needs);
    }

    private static Result judged(ResultDraft draft, Input input, double clean, double needed, String needs) {
        double left = draft.chance(
                "Chance of so long a quiet if the fault is still there",
                "100 × e^(-t / T)",
                "100 × e^(-" + Numeral.of(clean) + " / " + Numeral.of(input.every()) + ")",
                Math.exp(-clean / input.every()),
                Numeral.digitsBeside(100 * Math.exp(-clean / input.every()), 3, input.doubt()));
        String reason = needs + " and has run for " + Numeral.of(clean)
                + " h: if the fault were still there, it would have stayed quiet so long with a chance of "
                + Numeral.percent(left, input.doubt()) + ".";
        return !Side.below(clean, needed)
                ? draft.judged(Level.GOOD, "ran long enough", reason)
                : draft.judged(Level.UNDECIDED, "not long enough yet", reason);
    }

    private static Curve doubt(Input input, double needed) {
        List<Point> points = ResultDraft.sample(0, 2 * needed, 41, hours -> 100 * Math.exp(-hours / input.every()));
        return new Curve("Chance of quiet if the fault is still there", "clean run", "h", "chance", "%", points);
    }

    private static Curve allowed(Input input, double needed) {
        List<Point> points = List.of(new Point(0, input.doubt()), new Point(2 * needed, input.doubt()));
        return new Curve("Chance allowed", "clean run", "h", "chance", "%", points);
    }
}

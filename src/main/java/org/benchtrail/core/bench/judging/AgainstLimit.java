package org.benchtrail.core.bench.judging;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Side;
import org.benchtrail.core.bench.Trade;
import org.jspecify.annotations.Nullable;

/**
 * Is a value within a limit, given its uncertainty?
 *
 * <p>Conformance probability p = Φ((T_U - y) / u) - Φ((T_L - y) / u), a missing limit dropping its term (JCGM 106:2012, 7).
 * Guarded acceptance: within, if inside the limits by w = k u; outside, if outside them by more than w; else too close to call
 * (ILAC-G8:09/2019, 4.2). If the guard bands meet, the uncertainty is too large to decide. Limits conform.
 */
public final class AgainstLimit {
    public record Input(
            @Ask(label = "Unit", hint = "Of the value and its limits")
            String unit,

            @Ask(label = "Value", hint = "In that unit") double value,

            @Ask(label = "Standard uncertainty", hint = "u, half of U at k = 2, in the same unit")
            double uncertainty,

            @Ask(label = "Lower limit", hint = "In the same unit; empty if there is none") @Nullable
            Double lower,

            @Ask(label = "Upper limit", hint = "In the same unit; empty if there is none") @Nullable
            Double upper,

            @Ask(label = "Guard factor", hint = "2 is usual; 0 compares without a guard band")
            double guard) {
        public Input {
            InputCheck check = new InputCheck();
            check.unit("unit", unit, "give the unit of the value, or 1 for a pure number");
            check.within("value", value, -1e9, 1e9, "");
            check.within("uncertainty", uncertainty, 1e-9, 1e9, "");
            check.optional("lower", lower, -1e9, 1e9, "");
            check.optional("upper", upper, -1e9, 1e9, "");
            check.within("guard", guard, 0, 10, "");
            check.rule(lower != null || upper != null, "lower", "give a lower limit, an upper limit, or both");
            check.rule(
                    !(lower != null && upper != null && lower >= upper),
                    "upper",
                    "give an upper limit above the lower one");
            check.done();
        }

        double lowerOrNone() {
            return lower == null ? Double.NEGATIVE_INFINITY : lower;
        }

        double upperOrNone() {
            return upper == null ? Double.POSITIVE_INFINITY : upper;
        }
    }

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "against-limit",
            3,
            Trade.JUDGING,
            "Value against limit",
            "Is this value within this limit, given its uncertainty?",
            new Input("V", 11.62, 0.045, 11.40, 12.60, 2),
            AgainstLimit::calculate);

    private AgainstLimit() {}

    public static Result calculate(Input input) {
        ResultDraft draft = new ResultDraft();
        double guard = draft.figure(
                "Guard band",
                "w = k × u",
                Numeral.of(input.guard()) + " × " + Numeral.of(input.uncertainty()),
                input.guard() * input.uncertainty(),
                input.unit(),
                4);
        accepted(draft, input, guard);
        double probability = draft.chance(
                "Probability that the true value conforms",
                "100 × (Φ((T_U - y) / u) - Φ((T_L - y) / u))",
                "100 × (" + put(input) + ")",
                probability(input, input.value()),
                3);
        draft.curve(curve(input));
        draft.assume("The uncertainty is normal and complete; nothing was known of the value before it was measured.")
                .assume(
                        "Far from a limit the probability rests on the tail of that distribution: there its digits say little.")
                .assume("Φ is the standard normal distribution function, from a table or a calculator.");
        return judged(draft, input, guard, probability);
    }

    /** From where to where a value would be accepted, and how far this one is from either limit. */
    private static void accepted(ResultDraft draft, Input input, double guard) {
        Double lower = input.lower();
        Double upper = input.upper();
        boolean room = hasRoom(input, guard);
        if (!room) {
            draft.assume("No value could be accepted: the guard bands at both ends meet.");
        }
        if (lower != null && room) {
            draft.figure(
                    "Accepted from",
                    "T_L + w",
                    Numeral.of(lower) + " + " + Numeral.of(guard),
                    lower + guard,
                    input.unit(),
                    6);
        }
        if (lower != null) {
            score(draft, "Distance to the lower limit", lower, input);
        }
        if (upper != null && room) {
            draft.figure(
                    "Accepted up to",
                    "T_U - w",
                    Numeral.of(upper) + " - " + Numeral.of(guard),
                    upper - guard,
                    input.unit(),
                    6);
        }
        if (upper != null) {
            score(draft, "Distance to the upper limit", upper, input);
        }
    }

    /** Whether any value lies inside both limits by the guard band. */
    private static boolean hasRoom(Input in, double guard) {
        return Side.below(2 * guard, in.upperOrNone() - in.lowerOrNone());
    }

    private static void score(ResultDraft draft, String name, double limit, Input input) {
        String put = "(" + Numeral.of(limit) + " - " + Numeral.term(input.value()) + ") / "
                + Numeral.of(input.uncertainty());
        draft.figure(
                name + " in standard uncertainties",
                "z = (T - y) / u",
                put,
                (limit - input.value()) / input.uncertainty(),
                "1",
                4);
    }

    private static String put(Input input) {
        Double lower = input.lower();
        Double upper = input.upper();
        String above = upper == null ? "1" : "Φ(" + Numeral.of((upper - input.value()) / input.uncertainty()) + ")";
        return lower == null
                ? above
                : above + " - Φ(" + Numeral.of((lower - input.value()) / input.uncertainty()) + ")";
    }

    /** Probability between the limits of a normal distribution around {@code value}, accurate in both tails. */
    private static double probability(Input input, double value) {
        NormalDistribution around = NormalDistribution.of(value, input.uncertainty());
        if (input.lower() == null) {
            return around.cumulativeProbability(input.upperOrNone());
        }
        return input.upper() == null
                ? around.survivalProbability(input.lowerOrNone())
                : around.probability(input.lowerOrNone(), input.upperOrNone());
    }

    private static Curve curve(Input input) {
        double margin = 4 * input.uncertainty();
        List<Double> edges = new ArrayList<>(List.of(input.value()));
        if (input.lower() != null) {
            edges.add(input.lower());
        }
        if (input.upper() != null) {
            edges.add(input.upper());
        }
        double low = edges.stream().mapToDouble(e -> e).min().orElseThrow() - margin;
        double high = edges.stream().mapToDouble(e -> e).max().orElseThrow() + margin;
        return new Curve(
                "Probability of conforming over the value",
                "value",
                input.unit(),
                "probability",
                "1",
                ResultDraft.sample(low, high, 81, value -> probability(input, value)));
    }

    private static Result judged(ResultDraft draft, Input in, double guard, double probability) {
        double value = in.value();
        double low = in.lowerOrNone();
        double high = in.upperOrNone();
        String reason = reason(in, guard, probability);
        if (Side.below(value, low - guard) || Side.above(value, high + guard)) {
            return draft.judged(Level.BAD, "outside", reason);
        }
        if (!hasRoom(in, guard)) {
            return draft.judged(Level.UNDECIDED, "uncertainty too large to decide", reason);
        }
        if (!Side.below(value, low + guard) && !Side.above(value, high - guard)) {
            return draft.judged(Level.GOOD, "within", reason);
        }
        return value >= low && value <= high
                ? draft.judged(Level.UNDECIDED, "too close to call, on the inner side", reason)
                : draft.judged(Level.UNDECIDED, "too close to call, on the outer side", reason);
    }

    private static String reason(Input in, double guard, double probability) {
        String unit = " " + in.unit();
        return Numeral.of(in.value()) + unit + " against " + limits(in) + unit + ", guard band " + guardText(in, guard)
                + unit + ": it conforms with a probability of " + Numeral.percent(probability) + ".";
    }

    /** With the digits by which it is told from the distances to the limits. */
    private static String guardText(Input in, double guard) {
        double low = in.lowerOrNone();
        double high = in.upperOrNone();
        return Numeral.beside(guard, 3, distance(in.value(), low), distance(in.value(), high), distance(low, high) / 2);
    }

    /** Of two decimals as they were typed, without the trace that binary numbers leave. */
    private static double distance(double a, double b) {
        return Double.isInfinite(a) || Double.isInfinite(b)
                ? Double.POSITIVE_INFINITY
                : BigDecimal.valueOf(a).subtract(BigDecimal.valueOf(b)).abs().doubleValue();
    }

    private static String limits(Input in) {
        Double lower = in.lower();
        Double upper = in.upper();
        if (lower != null && upper != null) {
            return "limits of " + Numeral.of(lower) + " to " + Numeral.of(upper);
        }
        return lower != null
                ? "a lower limit of " + Numeral.of(lower)
                : "an upper limit of " + Numeral.of(in.upperOrNone());
    }
}

package org.benchtrail.core.bench.judging;

import java.util.List;
import org.apache.commons.statistics.distribution.TDistribution;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Side;
import org.benchtrail.core.bench.Trade;

/**
 * Did the fix change it? Difference of the means after and before, with an interval from Welch's t for unequal variances.
 *
 * <p>t = (mean_a - mean_b) / √(s_a^2 / n_a + s_b^2 / n_b), degrees of freedom by Welch and Satterthwaite, two-sided. Source: B.
 * L. Welch, Biometrika 34 (1947).
 */
public final class BeforeAfter {
    /** Standard deviation at or below which readings show no scatter at all. */
    private static final double LEAST_SCATTER = 1e-9;

    /** Which way is better. */
    public enum Better {
        LOWER,
        HIGHER
    }

    public record Input(
            @Ask(label = "Unit", hint = "Of all readings, or 1 for a pure number")
            String unit,

            @Ask(label = "Readings before", hint = "At least two, taken alike")
            List<Double> before,

            @Ask(label = "Readings after", hint = "At least two, taken as those before")
            List<Double> after,

            @Ask(label = "Better is") Better better,

            @Ask(label = "Confidence", unit = "%", hint = "95 is usual")
            double confidence) {
        public Input {
            InputCheck check = new InputCheck();
            check.unit("unit", unit, "give the unit of the readings, or 1 for a pure number");
            before = check.list("before", before, 2, 10_000, (path, x) -> check.within(path, x, -1e9, 1e9, ""));
            after = check.list("after", after, 2, 10_000, (path, x) -> check.within(path, x, -1e9, 1e9, ""));
            check.present("better", better);
            check.within("confidence", confidence, 50, 99.99, "%");
            if (check.isClean()) {
                check.rule(
                        scatter(before) > LEAST_SCATTER || scatter(after) > LEAST_SCATTER,
                        "after",
                        "measure with a finer resolution: without any scatter the difference cannot be judged");
            }
            check.done();
        }

        private static double scatter(List<Double> readings) {
            return ByHand.of(readings).sample().deviation();
        }
    }

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "before-after",
            2,
            Trade.JUDGING,
            "Before and after",
            "Did the fix change it?",
            new Input(
                    "°C",
                    List.of(88.5, 90.1, 89.2, 91.0, 89.7),
                    List.of(71.2, 72.8, 70.9, 73.1, 72.0),
                    Better.LOWER,
                    95),
            BeforeAfter::calculate);

    private BeforeAfter() {}

    /** One side's share in the comparison: its count, mean and squared standard error. */
    private record Side(int n, double mean, double squaredError) {
        static Side of(ResultDraft draft, String name, List<Double> values, String unit) {
            int n = values.size();
            ByHand hand = ByHand.of(values);
            double mean = draft.figure(
                    "Mean " + name, "sum / n", hand.mean(), hand.sample().mean(), unit, 5);
            double variance = hand.sample().variance();
            draft.figure(
                    "Standard deviation " + name,
                    "√(sum of (x - mean)^2 / (n - 1))",
                    "√(" + hand.variance() + ")",
                    Math.sqrt(variance),
                    unit,
                    4);
            String squared = unit.equals("1") ? unit : unit + "^2";
            draft.step(
                    "Squared standard error " + name,
                    "v = s^2 / n",
                    Numeral.of(Math.sqrt(variance)) + "^2 / " + n,
                    variance / n,
                    squared,
                    9);
            return new Side(n, mean, variance / n);
        }
    }

    public static Result calculate(Input input) {
        ResultDraft draft = new ResultDraft();
        String unit = input.unit();
        Side before = Side.of(draft, "before", input.before(), unit);
        Side after = Side.of(draft, "after", input.after(), unit);
        double difference = draft.figure(
                "Difference",
                "mean after - mean before",
                Numeral.of(after.mean()) + " - " + Numeral.term(before.mean()),
                after.mean() - before.mean(),
                unit,
                4);
        double error = draft.figure(
                "Standard error of the difference",
                "√(v_b + v_a)",
                "√(" + Numeral.of(before.squaredError()) + " + " + Numeral.of(after.squaredError()) + ")",
                Math.sqrt(before.squaredError() + after.squaredError()),
                unit,
                4);
        TDistribution t = TDistribution.of(degrees(draft, before, after));
        double half = half(draft, t, error, input);
        bound(draft, "Interval from", "-", difference, half, difference - half, unit);
        bound(draft, "Interval to", "+", difference, half, difference + half, unit);
        chance(draft, t, difference, error);
        draft.assume(
                "The readings are independent and roughly normal; nothing but the fix changed between the two series.");
        return judged(draft, input, difference, half);
    }

    private static void bound(
            ResultDraft draft, String name, String sign, double difference, double half, double value, String unit) {
        String put = Numeral.of(difference) + " " + sign + " " + Numeral.of(half);
        draft.figure(name, "difference " + sign + " half width", put, value, unit, 4);
    }

    private static void chance(ResultDraft draft, TDistribution t, double difference, double error) {
        double score = draft.figure(
                "Welch's t",
                "difference / standard error",
                Numeral.of(difference) + " / " + Numeral.of(error),
                difference / error,
                "1",
                5);
        draft.chance(
                "Chance of such a difference without any change",
                "100 × 2 × P(t > |t|)",
                "100 × 2 × P(t > " + Numeral.of(Math.abs(score)) + ")",
                2 * t.survivalProbability(Math.abs(score)),
                4);
    }

    private static double degrees(ResultDraft draft, Side before, Side after) {
        double b = before.squaredError();
        double a = after.squaredError();
        double degrees = (b + a) * (b + a) / (b * b / (before.n() - 1) + a * a / (after.n() - 1));
        String put = "(" + Numeral.of(b) + " + " + Numeral.of(a) + ")^2 / (" + Numeral.of(b) + "^2 / "
                + (before.n() - 1) + " + " + Numeral.of(a) + "^2 / " + (after.n() - 1) + ")";
        return draft.figure(
                "Degrees of freedom", "(v_b + v_a)^2 / (v_b^2 / (n_b - 1) + v_a^2 / (n_a - 1))", put, degrees, "1", 5);
    }

    private static double half(ResultDraft draft, TDistribution t, double error, Input input) {
        double factor = t.inverseCumulativeProbability(0.5 + input.confidence() / 200);
        draft.step(
                "Student's t, two-sided",
                "t(confidence, degrees of freedom)",
                "t(" + Numeral.of(input.confidence()) + " %, " + Numeral.of(t.getDegreesOfFreedom(), 5) + ")",
                factor,
                "1",
                9);
        return draft.figure(
                "Half width of the interval",
                "t × standard error",
                Numeral.of(factor) + " × " + Numeral.of(error),
                factor * error,
                input.unit(),
                4);
    }

    private static Result judged(ResultDraft draft, Input input, double difference, double half) {
        String unit = " " + input.unit();
        String reason = "The mean changed by " + Numeral.within(difference, half) + unit + " ("
                + Numeral.within(difference - half, half, 0) + " to " + Numeral.within(difference + half, half, 0)
                + unit + " at "
                + Numeral.of(input.confidence()) + " %).";
        if (Math.abs(difference) <= half) {
            return draft.judged(Level.UNDECIDED, "no change shown", reason);
        }
        boolean better = input.better() == Better.LOWER ? difference < 0 : difference > 0;
        return better
                ? draft.judged(Level.GOOD, "changed for the better", reason)
                : draft.judged(Level.BAD, "changed for the worse", reason);
    }
}

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
import org.benchtrail.core.bench.Trade;
import org.benchtrail.core.measure.Uncertainty;
import org.jspecify.annotations.Nullable;

/**
 * Uncertainty of a meter's reading from its accuracy specification: a = |reading| percent / 100 + counts × resolution, u = a /
 * √3 (GUM 4.3.7), U = 2 u.
 *
 * <p>With two or more readings of the same thing their mean is taken, and half a count (rectangular) and the standard error
 * of the mean are combined with it (GUM 5.1.2); the coverage factor is then the t value at 95.45 % for the effective degrees
 * of freedom (GUM G.4, truncated to a whole number). A reading outside the range or the temperature window of the
 * specification is refused.
 */
public final class Meter {
    private static final double TWO_SIGMA = 0.9545;
    private static final double MOST_DEGREES = 1e6;

    public record Input(
            @Ask(label = "Unit", hint = "Of the reading: V, A, Ω, °C, dBm")
            String unit,

            @Ask(label = "Readings", hint = "One, or several of the same thing, in that unit")
            List<Double> readings,

            @Ask(label = "Specification: percent of reading", unit = "%")
            double percent,

            @Ask(label = "Specification: counts", hint = "The digits after the plus sign")
            double counts,

            @Ask(label = "Resolution", hint = "Value of one count on this range, in the same unit")
            double resolution,

            @Ask(label = "End of the range", hint = "In the same unit; empty if not known") @Nullable
            Double range,

            @Ask(label = "Temperature of the meter", unit = "°C", hint = "Empty if within its window") @Nullable
            Double temperature,

            @Ask(label = "Specification holds from", unit = "°C", hint = "18 is usual") @Nullable
            Double coldest,

            @Ask(label = "Specification holds up to", unit = "°C", hint = "28 is usual") @Nullable
            Double warmest) {
        public Input {
            InputCheck check = new InputCheck();
            check.unit("unit", unit, "give the unit of the reading");
            readings = check.list("readings", readings, 1, 1000, (path, r) -> check.within(path, r, -1e9, 1e9, ""));
            check.within("percent", percent, 0, 100, "%");
            check.within("counts", counts, 0, 10_000, "");
            check.within("resolution", resolution, 1e-12, 1e6, "");
            check.rule(
                    !(percent == 0 && counts == 0),
                    "percent",
                    "give the meter's specification: it cannot be without any error");
            check.rule(
                    counts != 0 || readings.isEmpty() || readings.stream().anyMatch(r -> r != 0),
                    "counts",
                    "give at least one count: a reading of zero is not without uncertainty");
            check.optional("temperature", temperature, -60, 150, "°C");
            check.optional("coldest", coldest, -60, 150, "°C");
            check.optional("warmest", warmest, -60, 150, "°C");
            if (check.optional("range", range, 1e-12, 1e9, "") && range != null) {
                double end = range;
                check.rule(
                        readings.stream().allMatch(r -> Math.abs(r) <= end),
                        "readings",
                        "measure on a higher range: the specification does not hold beyond " + Numeral.of(end) + " "
                                + unit);
            }
            boolean crossed = coldest != null && warmest != null && coldest > warmest;
            check.rule(!crossed, "warmest", "give an upper end that is no lower than the lower one");
            check.rule(
                    crossed
                            || !(temperature != null
                                    && ((coldest != null && temperature < coldest)
                                            || (warmest != null && temperature > warmest))),
                    "temperature",
                    "let the meter come to a temperature at which its specification holds");
            check.done();
        }
    }

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "meter",
            1,
            Trade.JUDGING,
            "Meter uncertainty",
            "What is this meter's uncertainty at this reading?",
            new Input("V", List.of(11.62), 0.5, 2, 0.01, 40.0, 23.0, 18.0, 28.0),
            Meter::calculate);

    private Meter() {}

    public static Result calculate(Input input) {
        ResultDraft draft = new ResultDraft();
        String unit = input.unit();
        double reading = reading(draft, input);
        double limit = draft.figure(
                "Limit of error",
                "a = |reading| × percent / 100 + counts × resolution",
                Numeral.of(Math.abs(reading)) + " × " + Numeral.of(input.percent()) + " / 100 + "
                        + Numeral.of(input.counts()) + " × " + Numeral.of(input.resolution()),
                Math.abs(reading) * input.percent() / 100 + input.counts() * input.resolution(),
                unit,
                4);
        double specified = draft.figure(
                "Standard uncertainty from the specification",
                "u = a / √3",
                Numeral.of(limit) + " / √3",
                Uncertainty.rectangular(limit),
                unit,
                4);
        boolean repeated = input.readings().size() > 1;
        double expanded = repeated ? repeated(draft, input, specified) : twice(draft, specified, unit);
        if (reading != 0) {
            draft.figure(
                    "Expanded uncertainty, relative",
                    "100 × U / |reading|",
                    "100 × " + Numeral.of(expanded) + " / " + Numeral.of(Math.abs(reading)),
                    100 * expanded / Math.abs(reading),
                    "%",
                    2);
        }
        draft.assume("The meter is within its calibration interval and the specification's conditions; all values"
                        + " within it are equally likely.")
                .assume("Contacts, leads and loading of the circuit are not counted.");
        String reason = "The reading is " + Numeral.within(reading, expanded) + " " + unit + ", give or take "
                + Numeral.of(expanded, 2) + " " + unit + " at about 95 %.";
        return draft.judged(Level.NONE, "uncertainty of the reading", reason);
    }

    private static double reading(ResultDraft draft, Input input) {
        List<Double> readings = input.readings();
        if (readings.size() == 1) {
            return draft.figure("Reading", "as given", Numeral.of(readings.get(0)), readings.get(0), input.unit(), 9);
        }
        ByHand hand = ByHand.of(readings);
        return draft.figure("Reading", "mean", hand.mean(), hand.sample().mean(), input.unit(), 9);
    }

    private static double twice(ResultDraft draft, double standard, String unit) {
        return draft.figure("Expanded uncertainty", "U = 2 × u", "2 × " + Numeral.of(standard), 2 * standard, unit, 4);
    }

    private static double repeated(ResultDraft draft, Input input, double specified) {
        String unit = input.unit();
        int n = input.readings().size();
        double counted = lastDigit(draft, input);
        double mean = ofTheMean(draft, input);
        double[] parts = {specified, counted, mean};
        double combined = draft.figure(
                "Combined standard uncertainty",
                "u_c = √(u1^2 + u2^2 + u3^2)",
                "√(" + Numeral.of(specified) + "^2 + " + Numeral.of(counted) + "^2 + " + Numeral.of(mean) + "^2)",
                Uncertainty.combine(parts),
                unit,
                4);
        double factor = factor(draft, Uncertainty.effectiveDegrees(parts, new double[] {
            Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, n - 1.0
        }));
        return draft.figure(
                "Expanded uncertainty",
                "U = k × u_c",
                Numeral.of(factor) + " × " + Numeral.of(combined),
                factor * combined,
                unit,
                4);
    }

    private static double lastDigit(ResultDraft draft, Input input) {
        double half = input.resolution() / 2;
        return draft.figure(
                "Standard uncertainty of the last digit",
                "u = resolution / 2 / √3",
                Numeral.of(half) + " / √3",
                Uncertainty.rectangular(half),
                input.unit(),
                4);
    }

    private static double ofTheMean(ResultDraft draft, Input input) {
        int n = input.readings().size();
        ByHand hand = ByHand.of(input.readings());
        double spread = draft.figure(
                "Standard deviation of the readings",
                "s = √(sum of (reading - mean)^2 / (n - 1))",
                "√(" + hand.variance() + ")",
                hand.sample().deviation(),
                input.unit(),
                4);
        return draft.figure(
                "Standard uncertainty of the mean",
                "u = s / √n",
                Numeral.of(spread) + " / √" + n,
                spread / Math.sqrt(n),
                input.unit(),
                4);
    }

    /** Never below one degree of freedom; beyond a million the t value is that of the normal distribution. */
    private static double factor(ResultDraft draft, double effective) {
        double degrees = Math.floor(Math.max(1, Math.min(MOST_DEGREES, effective)));
        double k = TDistribution.of(degrees).inverseCumulativeProbability((1 + TWO_SIGMA) / 2);
        return draft.figure(
                "Coverage factor",
                "t at 95.45 %, degrees of freedom by Welch and Satterthwaite",
                "t(" + Numeral.of(degrees) + ")",
                k,
                "1",
                4);
    }
}

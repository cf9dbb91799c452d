package org.benchtrail.core.bench.cooling;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.Result.Point;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Trade;
import org.benchtrail.core.measure.FirstOrder;
import org.benchtrail.core.measure.Series;
import org.benchtrail.core.measure.Uncertainty;
import org.benchtrail.core.measure.WarmUpFit;
import org.jspecify.annotations.Nullable;

/**
 * Where a series of temperatures settles, how fast, and when it reaches the trip point: a least-squares fit of T(t) = T_inf -
 * (T_inf - T0) e^(-t / tau), intervals at 95 % from the t distribution, and t* = tau ln((T_inf - T0) / (T_inf - T_trip)).
 *
 * <p>Times in s since the first sample, temperatures in degC. A series shorter than two time constants is flagged: its end
 * value is extrapolated.
 */
public final class WarmUp {
    private static final double CONFIDENCE = 0.95;
    /** A longer time constant cannot be told from a straight line. */
    private static final double LONGEST_IN_SPANS = 20;
    /** A shorter one is that of a jump: the search for it ends at a tenth of the smallest step. */
    private static final double SHORTEST_IN_STEPS = 0.101;

    public record Sample(
            @Ask(label = "Time", unit = "s") double seconds,
            @Ask(label = "Temperature", unit = "°C") double temperature) {}

    public record Input(
            @Ask(
                    label = "Samples",
                    hint = "At least four (five are better), in order of time, from the moment the load starts")
            List<Sample> samples,

            @Ask(
                    label = "Temperature at the first sample, if known better",
                    unit = "°C",
                    hint = "Empty to fit it from the samples")
            @Nullable
            Double start,

            @Ask(label = "Trip point", unit = "°C", hint = "Where it throttles or switches off; empty to leave out")
            @Nullable
            Double trip) {
        public Input {
            InputCheck check = new InputCheck();
            samples = check.list("samples", samples, 4, 10_000, (path, sample) -> check(check, path, sample));
            check.optional("start", start, -60, 300, "°C");
            check.optional("trip", trip, -60, 300, "°C");
            if (check.isClean()) {
                checkSeries(check, samples);
            }
            check.done();
        }

        private static void check(InputCheck check, String path, Sample sample) {
            check.within(path + ".seconds", sample.seconds(), 0, 1e7, "s");
            check.within(path + ".temperature", sample.temperature(), -60, 300, "°C");
        }

        private static void checkSeries(InputCheck check, List<Sample> samples) {
            for (int i = 1; i < samples.size(); i++) {
                check.rule(
                        samples.get(i).seconds() >= samples.get(i - 1).seconds() + 0.001,
                        "samples[" + i + "].seconds",
                        "give a time after that of the sample before");
            }
            check.rule(
                    samples.stream().mapToDouble(Sample::temperature).distinct().count() > 1,
                    "samples",
                    "give temperatures that change: a flat series has no time constant");
        }
    }

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "warm-up",
            2,
            Trade.COOLING,
            "Warm-up",
            "Where does the temperature settle, how fast, and when does it reach the trip point?",
            new Input(
                    List.of(
                            new Sample(0, 25.0),
                            new Sample(20, 48.5),
                            new Sample(40, 63.0),
                            new Sample(60, 71.5),
                            new Sample(90, 78.8)),
                    null,
                    80.0),
            WarmUp::calculate);

    private WarmUp() {}

    public static Result calculate(Input input) {
        WarmUpFit fit = fit(input);
        FirstOrder curve = fit.curve();
        ResultDraft draft = new ResultDraft();
        String formula = "T(t) = T_inf - (T_inf - T0) × e^(-t / tau)";
        String how = "least squares over " + input.samples().size() + " samples";
        draft.say("Curve fitted to the samples", formula, how + ", times counted from the first");
        draft.figure("Settles at", "T_inf", how, curve.settled(), "°C", 4);
        draft.figure(input.start() == null ? "Starts at" : "Starts at, as given", "T0", how, curve.initial(), "°C", 4);
        draft.figure("Time constant", "tau", how, curve.timeConstant(), "s", 4);
        int degrees = fit.degreesOfFreedom();
        double factor = Uncertainty.coverageFactor(degrees, CONFIDENCE);
        draft.step("Student's t, two-sided", "t(95 %, n - p)", "t(95 %, " + degrees + ")", factor, "1", 9);
        double settledHalf = half(draft, "Settles at, give or take", factor, fit.settledError(), "°C");
        half(draft, "Time constant, give or take", factor, fit.timeConstantError(), "s");
        draft.figure(
                "Scatter of the samples",
                "√(SSE / (n - p))",
                "√(" + Numeral.of(fit.squares()) + " / " + degrees + ")",
                fit.residualDeviation(),
                "°C",
                3);
        curves(draft, input, curve);
        boolean tooShort = span(input) < 2 * curve.timeConstant();
        assume(draft, tooShort);
        Double trip = input.trip();
        return trip == null
                ? settles(draft, curve, settledHalf, tooShort)
                : new Trip(input, curve, settledHalf, tooShort, trip).judged(draft);
    }

    /** Times count from the first sample, and so the curve starts at 0. */
    private static WarmUpFit fit(Input input) {
        double[] times = input.samples().stream().mapToDouble(Sample::seconds).toArray();
        double[] since = Arrays.stream(times).map(t -> t - times[0]).toArray();
        Series series = Series.of(
                since, input.samples().stream().mapToDouble(Sample::temperature).toArray());
        Double start = input.start();
        WarmUpFit fit = start == null ? WarmUpFit.of(series) : WarmUpFit.from(0, start, series);
        if (!bends(fit, since)) {
            throw new Invalid(
                    "samples",
                    "measure longer and at more times: the samples do not bend towards an end value, so none can be"
                            + " told");
        }
        return fit;
    }

    /** Neither a straight line, nor over before the second sample, and nothing left open by the samples. */
    private static boolean bends(WarmUpFit fit, double[] since) {
        double tau = fit.curve().timeConstant();
        double step = IntStream.range(1, since.length)
                .mapToDouble(i -> since[i] - since[i - 1])
                .min()
                .orElseThrow();
        return tau < LONGEST_IN_SPANS * since[since.length - 1]
                && tau > SHORTEST_IN_STEPS * step
                && Double.isFinite(fit.settledError())
                && Double.isFinite(fit.timeConstantError());
    }

    private static double span(Input input) {
        List<Sample> samples = input.samples();
        return samples.get(samples.size() - 1).seconds() - samples.get(0).seconds();
    }

    private static double half(ResultDraft draft, String name, double factor, double error, String unit) {
        return draft.figure(
                name,
                "t × standard error of the fit",
                Numeral.of(factor) + " × " + Numeral.of(error),
                factor * error,
                unit,
                2);
    }

    private static void assume(ResultDraft draft, boolean tooShort) {
        draft.assume("Load, fan speed and air temperature stayed the same: one time constant describes the warm-up.")
                .assume("Intervals are at 95 % and assume independent scatter of the samples.")
                .caution("HEAT");
        if (tooShort) {
            draft.assume("The series is shorter than two time constants: where it settles is extrapolated.");
        }
    }

    private static Result settles(ResultDraft draft, FirstOrder curve, double half, boolean tooShort) {
        String reason = "It settles at " + Numeral.within(curve.settled(), half) + " °C, give or take "
                + Numeral.of(half, 2) + " °C, with a time constant of " + Numeral.of(curve.timeConstant(), 3) + " s.";
        return tooShort
                ? draft.judged(Level.CAREFUL, "end value extrapolated", reason)
                : draft.judged(Level.NONE, "end value and time constant", reason);
    }

    private static void curves(ResultDraft draft, Input input, FirstOrder fitted) {
        double first = input.samples().get(0).seconds();
        double end = Math.max(span(input), 5 * fitted.timeConstant());
        List<Point> measured = input.samples().stream()
                .map(s -> new Point(s.seconds() - first, s.temperature()))
                .toList();
        draft.curve(curve("Measured", measured)).curve(curve("Fitted", ResultDraft.sample(0, end, 61, fitted::at)));
        Double trip = input.trip();
        if (trip != null) {
            draft.curve(curve("Trip point", List.of(new Point(0, trip), new Point(end, trip))));
        }
    }

    private static Curve curve(String title, List<Point> points) {
        return new Curve(title, "time since the first sample", "s", "temperature", "°C", points);
    }

    /** The trip point held against the fitted curve. */
    private record Trip(Input input, FirstOrder curve, double half, boolean tooShort, double trip) {
        Result judged(ResultDraft draft) {
            String point = "the trip point of " + Numeral.of(trip) + " °C";
            String settles = "It settles at " + Numeral.within(curve.settled(), half) + " °C, between "
                    + Numeral.within(curve.settled() - half, half, trip) + " and "
                    + Numeral.within(curve.settled() + half, half, trip) + " °C at 95 %; ";
            OptionalDouble reached = curve.timeTo(trip);
            if (curve.settled() > curve.initial() && reached.isPresent()) {
                double seconds = reaches(draft, reached.getAsDouble());
                String after = seconds < 1 ? Numeral.duration(seconds) : Numeral.of(seconds, 3) + " s";
                return crossing(draft, settles + point + " is reached after " + after + ".");
            }
            return reached()
                    ? whileMeasuring(draft, settles + hottest() + " reaches " + point + ".")
                    : below(draft, settles, point);
        }

        private Result crossing(ResultDraft draft, String text) {
            if (reached()) {
                return whileMeasuring(draft, text + " In the series, " + hottest() + " has reached it.");
            }
            return curve.settled() - half >= trip
                    ? draft.judged(Level.BAD, "will reach the trip point", text)
                    : draft.judged(Level.UNDECIDED, "too close to call", text);
        }

        private static Result whileMeasuring(ResultDraft draft, String text) {
            return draft.judged(Level.BAD, "trip point reached while measuring", text);
        }

        private Result below(ResultDraft draft, String settles, String point) {
            String text = settles + point;
            if (curve.settled() + half >= trip) {
                return draft.judged(Level.UNDECIDED, "too close to call", text + " lies within the uncertainty.");
            }
            return tooShort
                    ? draft.judged(
                            Level.CAREFUL,
                            "stays below the trip point if the curve holds",
                            text + " is not reached, but " + Numeral.of(span(input))
                                    + " s of samples are less than two time" + " constants of "
                                    + Numeral.beside(curve.timeConstant(), 3, span(input) / 2) + " s.")
                    : draft.judged(Level.GOOD, "stays below the trip point", text + " is not reached.");
        }

        private boolean reached() {
            return highest() >= trip;
        }

        private double highest() {
            return input.samples().stream()
                    .mapToDouble(Sample::temperature)
                    .max()
                    .orElseThrow();
        }

        private String hottest() {
            return "the hottest sample, " + Numeral.of(highest()) + " °C,";
        }

        private double reaches(ResultDraft draft, double seconds) {
            String settled = Numeral.of(curve.settled());
            String put = Numeral.of(curve.timeConstant()) + " × ln((" + settled + " - " + Numeral.term(curve.initial())
                    + ") / (" + settled + " - " + Numeral.term(trip) + "))";
            return draft.figure(
                    "Time to the trip point", "tau × ln((T_inf - T0) / (T_inf - T_trip))", put, seconds, "s", 4);
        }
    }
}

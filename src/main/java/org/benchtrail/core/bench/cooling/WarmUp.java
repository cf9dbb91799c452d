package org.benchtrail.core.bench.cooling;

import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.TDistribution;
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
import org.jspecify.annotations.Nullable;

/**
 * Where a series of temperatures settles, how fast, and when it reaches the trip point: a least-squares fit of T(t) = T_inf -
 * (T_inf - T0) e^(-t / tau), intervals at 95 % from the t distribution, and t* = tau ln((T_inf - T0) / (T_inf - T_trip)).
 *
 * <p>Times in s since the first sample, temperatures in degC. A series shorter than two time constants is flagged: its end
 * value is extrapolated.
 */
public final class WarmUp implements Calculation<WarmUp.Input> {
    private static final double CONFIDENCE = 0.95;

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

    @Override
    public String id() {
        return "warm-up";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Trade trade() {
        return Trade.COOLING;
    }

    @Override
    public String title() {
        return "Warm-up";
    }

    @Override
    public String question() {
        return "Where does the temperature settle, how fast, and when does it reach the trip point?";
    }

    @Override
    public Class<Input> inputType() {
        return Input.class;
    }

    @Override
    public Input example() {
        return new Input(
                List.of(
                        new Sample(0, 25.0),
                        new Sample(20, 48.5),
                        new Sample(40, 63.0),
                        new Sample(60, 71.5),
                        new Sample(90, 78.8)),
                null,
                80.0);
    }

    @Override
    public Result calculate(Input input) {
        FirstOrderFit fit = fit(input);
        ResultDraft draft = new ResultDraft();
        String formula = "T(t) = T_inf - (T_inf - T0) × e^(-t / tau)";
        String how = "least squares over " + input.samples().size() + " samples";
        draft.say("Curve fitted to the samples", formula, how + ", times counted from the first");
        draft.figure("Settles at", "T_inf", how, fit.settled(), "°C", 4);
        draft.figure(input.start() == null ? "Starts at" : "Starts at, as given", "T0", how, fit.start(), "°C", 4);
        draft.figure("Time constant", "tau", how, fit.tau(), "s", 4);
        double factor = TDistribution.of(fit.degrees()).inverseCumulativeProbability((1 + CONFIDENCE) / 2);
        draft.step("Student's t, two-sided", "t(95 %, n - p)", "t(95 %, " + fit.degrees() + ")", factor, "1", 9);
        double settledHalf = half(draft, "Settles at, give or take", factor, fit.settledError(), "°C");
        half(draft, "Time constant, give or take", factor, fit.tauError(), "s");
        draft.figure(
                "Scatter of the samples",
                "√(SSE / (n - p))",
                "√(" + Numeral.of(fit.sse()) + " / " + fit.degrees() + ")",
                fit.sigma(),
                "°C",
                3);
        curves(draft, input, fit);
        boolean tooShort = span(input) < 2 * fit.tau();
        assume(draft, tooShort);
        Double trip = input.trip();
        return trip == null
                ? settles(draft, fit, settledHalf, tooShort)
                : new Trip(input, fit, settledHalf, tooShort, trip).judged(draft);
    }

    private static FirstOrderFit fit(Input input) {
        double[] times = input.samples().stream().mapToDouble(Sample::seconds).toArray();
        double[] values =
                input.samples().stream().mapToDouble(Sample::temperature).toArray();
        Double start = input.start();
        try {
            return start == null ? FirstOrderFit.of(times, values) : FirstOrderFit.from(start, times, values);
        } catch (IllegalArgumentException e) {
            throw new Invalid("samples", "measure longer and at more times: " + e.getMessage());
        }
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

    private static Result settles(ResultDraft draft, FirstOrderFit fit, double half, boolean tooShort) {
        String reason = "It settles at " + Numeral.of(fit.settled(), 4) + " °C, give or take " + Numeral.of(half, 2)
                + " °C, with a time constant of " + Numeral.of(fit.tau(), 3) + " s.";
        return tooShort
                ? draft.judged(Level.CAREFUL, "end value extrapolated", reason)
                : draft.judged(Level.NONE, "end value and time constant", reason);
    }

    private static void curves(ResultDraft draft, Input input, FirstOrderFit fit) {
        double first = input.samples().get(0).seconds();
        double end = Math.max(span(input), 5 * fit.tau());
        List<Point> measured = input.samples().stream()
                .map(s -> new Point(s.seconds() - first, s.temperature()))
                .toList();
        draft.curve(curve("Measured", measured)).curve(curve("Fitted", ResultDraft.sample(0, end, 61, fit::at)));
        Double trip = input.trip();
        if (trip != null) {
            draft.curve(curve("Trip point", List.of(new Point(0, trip), new Point(end, trip))));
        }
    }

    private static Curve curve(String title, List<Point> points) {
        return new Curve(title, "time since the first sample", "s", "temperature", "°C", points);
    }

    /** The trip point held against the fitted curve. */
    private record Trip(Input input, FirstOrderFit fit, double half, boolean tooShort, double trip) {
        Result judged(ResultDraft draft) {
            String point = "the trip point of " + Numeral.of(trip) + " °C";
            String settles = "It settles at " + Numeral.of(fit.settled(), 4) + " °C, give or take "
                    + Numeral.of(half, 2) + " °C; ";
            if (fit.settled() > trip && fit.start() < trip) {
                return crossing(draft, settles + point + " is reached after " + Numeral.of(reaches(draft), 3) + " s.");
            }
            return reached()
                    ? whileMeasuring(draft, settles + "the samples reach " + point + ".")
                    : below(draft, settles + point);
        }

        private Result crossing(ResultDraft draft, String text) {
            if (reached()) {
                return whileMeasuring(draft, text);
            }
            return fit.settled() - half >= trip
                    ? draft.judged(Level.BAD, "will reach the trip point", text)
                    : draft.judged(Level.UNDECIDED, "too close to call", text);
        }

        private static Result whileMeasuring(ResultDraft draft, String text) {
            return draft.judged(Level.BAD, "trip point reached while measuring", text);
        }

        private Result below(ResultDraft draft, String text) {
            if (fit.settled() + half >= trip) {
                return draft.judged(Level.UNDECIDED, "too close to call", text + " lies within the uncertainty.");
            }
            return tooShort
                    ? draft.judged(
                            Level.CAREFUL,
                            "stays below the trip point if the curve holds",
                            text + " is not reached, but the series is short.")
                    : draft.judged(Level.GOOD, "stays below the trip point", text + " is not reached.");
        }

        private boolean reached() {
            return IntStream.range(0, input.samples().size())
                    .anyMatch(i -> input.samples().get(i).temperature() >= trip);
        }

        private double reaches(ResultDraft draft) {
            String settled = Numeral.of(fit.settled());
            String put = Numeral.of(fit.tau()) + " × ln((" + settled + " - " + Numeral.term(fit.start()) + ") / ("
                    + settled + " - " + Numeral.term(trip) + "))";
            return draft.figure(
                    "Time to the trip point",
                    "tau × ln((T_inf - T0) / (T_inf - T_trip))",
                    put,
                    fit.reaches(trip),
                    "s",
                    4);
        }
    }
}

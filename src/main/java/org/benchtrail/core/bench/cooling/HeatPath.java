package org.benchtrail.core.bench.cooling;

import java.util.List;
import java.util.stream.Collectors;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Citation;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.Result.Point;
import org.benchtrail.core.bench.Result.Rule;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Severity;
import org.benchtrail.core.bench.Side;
import org.benchtrail.core.bench.Trade;
import org.jspecify.annotations.Nullable;

/**
 * Thermal resistance from chip to surroundings, theta = (T - T_ambient) / P in degC/W, against what the parts of the heat path
 * are rated for.
 *
 * <p>Resistances in series add up. Source of the definition: JEDEC JESD51 series. How far a measured resistance may exceed the
 * rated one (15 %, 50 %), or fall short of it (a third), is common practice.
 */
public final class HeatPath {
    private static final double AS_RATED = 1.15;
    private static final double POOR = 1.5;
    /** A path much better than its parts are rated for is not believed. */
    private static final double TOO_GOOD = 1 / POOR;

    /** Degrees Celsius; silicon stops working before it. */
    private static final double HOTTEST = 150;

    public record Input(
            @Ask(label = "Chip temperature, settled", unit = "°C", hint = "Sensor reading under steady load")
            double chip,

            @Ask(label = "Air temperature at the cooler's inlet", unit = "°C")
            double ambient,

            @Ask(label = "Power of the chip", unit = "W", hint = "Package power while the temperature was read")
            double watts,

            @Ask(
                    label = "Rated resistances along the path",
                    unit = "°C/W",
                    hint = "Case, paste, cooler, from their data sheets; none to leave out")
            List<Double> rated,

            @Ask(label = "Highest temperature allowed", unit = "°C", hint = "Chip maker's limit; empty if not known")
            @Nullable
            Double limit) {
        public Input {
            InputCheck check = new InputCheck();
            check.within("chip", chip, -60, 300, "°C");
            check.within("ambient", ambient, -60, 100, "°C");
            check.within("watts", watts, 0.01, 100_000, "W");
            rated = check.list("rated", rated, 0, 10, (path, theta) -> check.within(path, theta, 0.0001, 1000, "°C/W"));
            check.optional("limit", limit, -60, 300, "°C");
            check.rule(
                    !(chip <= ambient),
                    "chip",
                    "check both sensors: a chip that draws power is warmer than the air that cools it");
            check.rule(!(limit != null && limit <= ambient), "limit", "give a limit above the air temperature");
            check.ask(
                    "chip",
                    chip,
                    chip > HOTTEST,
                    t -> "no chip works at " + Numeral.of(t) + " °C: were " + Numeral.of(t)
                            + " K or °F meant? Type the number with its unit");
            check.done();
        }
    }

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "heat-path",
            2,
            Trade.COOLING,
            "Heat path",
            "How well does the cooler carry the heat away, and what does its rating lead one to expect?",
            new Input(80, 25, 95, List.of(0.1, 0.05, 0.25), 95.0),
            HeatPath::calculate);

    private HeatPath() {}

    public static Result calculate(Input input) {
        ResultDraft draft = new ResultDraft();
        double theta = draft.figure(
                "Thermal resistance",
                "(T - T_ambient) / P",
                "(" + Numeral.of(input.chip()) + " - " + Numeral.term(input.ambient()) + ") / "
                        + Numeral.of(input.watts()),
                (input.chip() - input.ambient()) / input.watts(),
                "°C/W",
                4);
        draft.curve(line("At the measured resistance", input, theta));
        limit(draft, input, theta);
        if (!input.rated().isEmpty()) {
            expected(draft, input, theta);
        }
        draft.assume("The temperature had settled and the power was steady.")
                .assume("The sensor and the power figure are those of the chip itself; makers measure them"
                        + " differently.")
                .caution("HEAT");
        return judged(draft, theta);
    }

    private static Result judged(ResultDraft draft, double theta) {
        String reason = "The path has " + Numeral.of(theta, 4)
                + " °C/W; without a rating or a limit there is nothing to hold it against.";
        return Severity.judged(draft, HeatPath::words, "thermal resistance", reason);
    }

    private static String words(Rule deciding) {
        boolean rating = deciding.name().equals("Rating");
        return switch (deciding.outcome()) {
            case BAD -> rating ? "much worse than rated" : "too hot";
            case CAREFUL -> "worse than rated";
            case UNDECIDED -> "better than it can be: check the readings";
            default -> rating ? "as rated" : "below the limit";
        };
    }

    private static void expected(ResultDraft draft, Input input, double theta) {
        String put = input.rated().stream().map(Numeral::of).collect(Collectors.joining(" + "));
        double rated = draft.figure(
                "Rated resistance",
                "sum of the path",
                put,
                input.rated().stream().mapToDouble(r -> r).sum(),
                "°C/W",
                4);
        double expected = draft.figure(
                "Temperature to expect",
                "T_ambient + P × theta_rated",
                Numeral.of(input.ambient()) + " + " + Numeral.of(input.watts()) + " × " + Numeral.of(rated),
                input.ambient() + input.watts() * rated,
                "°C",
                4);
        double excess = draft.figure(
                "Excess over what is expected",
                "T - T_expected",
                Numeral.of(input.chip()) + " - " + Numeral.term(expected),
                input.chip() - expected,
                "°C",
                3);
        int digits = Numeral.digitsBeside(theta / rated, 3, TOO_GOOD, AS_RATED, POOR);
        double ratio = draft.figure(
                "Measured against rated resistance",
                "theta / theta_rated",
                Numeral.of(theta) + " / " + Numeral.of(rated),
                theta / rated,
                "1",
                digits);
        Level level = level(ratio);
        String sentence = "The path has " + Numeral.of(theta, 4) + " °C/W, " + Numeral.of(ratio, digits)
                + " times the rated " + Numeral.of(rated, 4) + " °C/W: " + Numeral.of(Math.abs(excess), 3) + " °C "
                + (excess < 0 ? "below" : "above") + " what is expected."
                + (level == Level.UNDECIDED ? " Check both sensors, and that the power is that of the chip." : "");
        draft.rule("Rating", level, sentence, Citation.COMMON_PRACTICE)
                .curve(line("At the rated resistance", input, rated));
    }

    private static Level level(double ratio) {
        if (Side.below(ratio, TOO_GOOD)) {
            return Level.UNDECIDED;
        }
        return Side.above(ratio, POOR) ? Level.BAD : Side.above(ratio, AS_RATED) ? Level.CAREFUL : Level.GOOD;
    }

    private static void limit(ResultDraft draft, Input input, double theta) {
        Double limit = input.limit();
        if (limit == null) {
            return;
        }
        double power = draft.figure(
                "Power at which the limit is reached",
                "(T_max - T_ambient) / theta",
                "(" + Numeral.of(limit) + " - " + Numeral.term(input.ambient()) + ") / " + Numeral.of(theta),
                (limit - input.ambient()) / theta,
                "W",
                4);
        boolean below = input.chip() < limit;
        String sentence = Numeral.of(input.chip()) + " °C at " + Numeral.of(input.watts()) + " W; the limit of "
                + Numeral.of(limit) + " °C is reached at " + Numeral.of(power, 4) + " W.";
        draft.rule("Limit", below ? Level.GOOD : Level.BAD, sentence, Citation.given("chip maker's limit"))
                .curve(trip(input, limit));
    }

    private static Curve line(String title, Input input, double theta) {
        List<Point> points = ResultDraft.sample(0, 2 * input.watts(), 9, watts -> input.ambient() + theta * watts);
        return new Curve(title, "power", "W", "temperature", "°C", points);
    }

    private static Curve trip(Input input, double limit) {
        List<Point> points = List.of(new Point(0, limit), new Point(2 * input.watts(), limit));
        return new Curve("Limit", "power", "W", "temperature", "°C", points);
    }
}

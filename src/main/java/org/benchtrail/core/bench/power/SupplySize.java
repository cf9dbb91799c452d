package org.benchtrail.core.bench.power;

import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
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
 * Sum of what a machine's parts draw, in watts, against the supply's DC rating, sustained and peak.
 *
 * <p>Rules: sustained draw up to 80 % of the rating is judged good, up to 100 % with care; a peak up to 110 % of the rating is
 * judged with care, because supplies ride through short peaks, and beyond it bad, because their protection may switch them
 * off. The shares are common practice.
 */
public final class SupplySize {
    private static final double COMFORTABLE = 80;
    private static final double RIDDEN_THROUGH = 110;

    /** One kind of part; {@code peakWatts} empty means that its peak is its sustained draw. */
    public record Part(
            @Ask(label = "Part") String name,
            @Ask(label = "How many") int count,

            @Ask(
                    label = "Sustained draw of one",
                    unit = "W",
                    hint = "Data sheet: board power, package power, or volts times amps")
            double watts,

            @Ask(label = "Short peak of one", unit = "W", hint = "Empty if it has none worth naming") @Nullable
            Double peakWatts,

            @Ask(label = "Draws from +12 V") boolean twelveVolt) {
        double peak() {
            return peakWatts == null ? watts : peakWatts;
        }
    }

    public record Input(
            @Ask(label = "Supply's DC rating", unit = "W", hint = "Total on the supply's label")
            double ratedWatts,

            @Ask(label = "Its +12 V rating", unit = "W", hint = "On the label: combined watts, or 12 times the amps")
            @Nullable
            Double twelveVoltWatts,

            @Ask(label = "Parts") List<Part> parts) {
        public Input {
            InputCheck check = new InputCheck();
            check.within("ratedWatts", ratedWatts, 1, 20_000, "W");
            check.optional("twelveVoltWatts", twelveVoltWatts, 1, 20_000, "W");
            check.rule(
                    !(twelveVoltWatts != null && twelveVoltWatts > ratedWatts),
                    "twelveVoltWatts",
                    "give the +12 V rating: it cannot exceed the supply's total");
            parts = check.list("parts", parts, 1, 100, (path, part) -> check(check, path, part));
            check.done();
        }

        private static void check(InputCheck check, String path, Part part) {
            check.text(path + ".name", part.name(), 80);
            check.within(path + ".count", part.count(), 1, 1000, "");
            check.within(path + ".watts", part.watts(), 0, 10_000, "W");
            check.optional(path + ".peakWatts", part.peakWatts(), 0, 20_000, "W");
            check.rule(
                    !(part.peakWatts() != null && part.peakWatts() < part.watts()),
                    path + ".peakWatts",
                    "give a peak at least as high as the sustained draw, or leave it empty");
        }
    }

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "supply-size",
            2,
            Trade.POWER,
            "Supply size",
            "Does the supply carry this machine?",
            new Input(
                    550,
                    480.0,
                    List.of(
                            new Part("Processor", 1, 105, 142.0, true),
                            new Part("Graphics card", 1, 200, 320.0, true),
                            new Part("Board and memory", 1, 45, null, false),
                            new Part("Hard drive", 2, 7, 24.0, true),
                            new Part("Fan", 4, 3, null, true))),
            SupplySize::calculate);

    private SupplySize() {}

    public static Result calculate(Input input) {
        ResultDraft draft = new ResultDraft();
        List<Part> parts = input.parts();
        double sum = total(draft, "Sustained draw", parts, Part::watts);
        double peak = total(draft, "Peak draw", parts, Part::peak);
        double rated = input.ratedWatts();
        sustained(draft, "Share of the rating", sum, rated);
        peak(draft, "Peak", "Peak share of the rating", peak, rated);
        draft.figure("Headroom", "P_rated - P", put(rated, "-", sum), Side.rest(rated, sum), "W", 4);
        Double twelve = input.twelveVoltWatts();
        if (twelve != null) {
            List<Part> fed = parts.stream().filter(Part::twelveVolt).toList();
            sustained(draft, "Share of the +12 V rating", total(draft, "Draw from +12 V", fed, Part::watts), twelve);
            double high = total(draft, "Peak draw from +12 V", fed, Part::peak);
            peak(draft, "Peak on +12 V", "Peak share of the +12 V rating", high, twelve);
        }
        draft.assume("All parts draw their sustained figure at once, and all peaks fall together: the worst case.")
                .assume("The rating holds at the temperature that the supply's maker states; an old supply may give"
                        + " less.");
        Rule deciding = Severity.deciding(draft.rules());
        return draft.judged(deciding.outcome(), words(deciding), deciding.sentence());
    }

    private static String words(Rule deciding) {
        return switch (deciding.outcome()) {
            case BAD -> deciding.name().startsWith("Peak") ? "too small for the peak" : "too small";
            case CAREFUL -> "carries it with little to spare";
            default -> "carries it";
        };
    }

    private static double total(ResultDraft draft, String name, List<Part> parts, ToDoubleFunction<Part> watts) {
        String put = parts.stream()
                .map(p -> p.count() + " × " + Numeral.of(watts.applyAsDouble(p)))
                .collect(Collectors.joining(" + "));
        double sum = parts.stream()
                .mapToDouble(p -> p.count() * watts.applyAsDouble(p))
                .sum();
        return draft.figure(name, "sum of count × watts", put.isEmpty() ? "0" : put, sum, "W", 4);
    }

    private static void sustained(ResultDraft draft, String name, double watts, double rated) {
        double exact = 100 * watts / rated;
        int digits = Numeral.digitsBeside(exact, 3, COMFORTABLE, 100);
        double share = draft.figure(name, "100 × P / P_rated", "100 × " + put(watts, "/", rated), exact, "%", digits);
        Level level = Side.above(share, 100) ? Level.BAD : Side.above(share, COMFORTABLE) ? Level.CAREFUL : Level.GOOD;
        String sentence = name + ": the sustained draw of " + Numeral.of(watts, 4) + " W is "
                + Numeral.percent(share, COMFORTABLE) + " of the " + Numeral.of(rated) + " W rating"
                + (level == Level.GOOD ? "." : ", above " + (level == Level.BAD ? "100" : "80") + " %.");
        draft.rule(name, level, sentence, Citation.COMMON_PRACTICE);
    }

    private static void peak(ResultDraft draft, String rule, String name, double watts, double rated) {
        double exact = 100 * watts / rated;
        int digits = Numeral.digitsBeside(exact, 3, 100, RIDDEN_THROUGH);
        double share =
                draft.figure(name, "100 × P_peak / P_rated", "100 × " + put(watts, "/", rated), exact, "%", digits);
        Level level =
                Side.above(share, RIDDEN_THROUGH) ? Level.BAD : Side.above(share, 100) ? Level.CAREFUL : Level.GOOD;
        String beyond = switch (level) {
            case BAD -> ", above 110 %: its protection may switch it off.";
            case CAREFUL -> ", above 100 %: a short peak that it may ride through.";
            default -> ".";
        };
        String sentence = "With all peaks together it draws " + Numeral.of(watts, 4) + " W, "
                + Numeral.percent(share, RIDDEN_THROUGH) + " of the " + Numeral.of(rated) + " W rating" + beyond;
        draft.rule(rule, level, sentence, Citation.COMMON_PRACTICE);
    }

    private static String put(double left, String sign, double right) {
        return Numeral.of(left) + " " + sign + " " + Numeral.of(right);
    }
}

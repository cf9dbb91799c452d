package org.benchtrail.core.bench.cooling;

import java.util.List;
import java.util.stream.Collectors;
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
 * Heat of the equipment in a room, in W and BTU/h, against its cooling, and the air at the equipment's inlet against a
 * published range.
 *
 * <p>All electric power drawn in the room ends as heat in it. 1 W = 3600 / 1055.05585262 BTU/h (international table BTU, ISO
 * 31-4). Inlet ranges: ASHRAE thermal guidelines for data processing environments, classes A1 to A4 (from memory); the
 * recommended range is 18 to 27 degC for all of them.
 */
public final class RoomHeat {
    static final double BTU_PER_HOUR = 3600 / 1055.05585262;
    private static final double COMFORTABLE = 80;
    private static final double RECOMMENDED_LOW = 18;
    private static final double RECOMMENDED_HIGH = 27;

    public enum InletClass implements Choice {
        A1("A1", 15, 32),
        A2("A2", 10, 35),
        A3("A3", 5, 40),
        A4("A4", 5, 45);

        private final String words;

        private final double low;
        private final double high;

        InletClass(String words, double low, double high) {
            this.words = words;
            this.low = low;
            this.high = high;
        }

        @Override
        public String words() {
            return words;
        }
    }

    public record Source(
            @Ask(label = "What gives off heat") String name,
            @Ask(label = "How many") int count,

            @Ask(label = "Draw of one", unit = "W", hint = "Measured; the nameplate is usually far above")
            double watts) {}

    public record Input(
            @Ask(label = "Sources of heat") List<Source> sources,

            @Ask(label = "Cooling available", unit = "W", hint = "BTU/h divided by 3.412; empty if not known") @Nullable
            Double coolingWatts,

            @Ask(
                    label = "Air at the inlet",
                    unit = "°C",
                    hint = "In front of the equipment, not behind it; empty if not measured")
            @Nullable
            Double inlet,

            @Ask(label = "Class of the equipment", hint = "Maker's data sheet; A2 is usual for servers")
            InletClass inletClass) {
        public Input {
            InputCheck check = new InputCheck();
            sources = check.list("sources", sources, 1, 200, (path, source) -> check(check, path, source));
            check.optional("coolingWatts", coolingWatts, 1, 1e9, "W");
            check.optional("inlet", inlet, -60, 100, "°C");
            check.present("inletClass", inletClass);
            check.done();
        }

        private static void check(InputCheck check, String path, Source source) {
            check.text(path + ".name", source.name(), 80);
            check.within(path + ".count", source.count(), 1, 100_000, "");
            check.within(path + ".watts", source.watts(), 0, 1e6, "W");
        }
    }

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "room-heat",
            2,
            Trade.COOLING,
            "Heat in the room",
            "Does the cooling carry the equipment's heat, and is the air at the inlet within its published range?",
            new Input(
                    List.of(new Source("Server", 4, 280), new Source("Switch", 2, 60), new Source("UPS losses", 1, 90)),
                    1500.0,
                    26.5,
                    InletClass.A2),
            RoomHeat::calculate);

    private RoomHeat() {}

    public static Result calculate(Input input) {
        ResultDraft draft = new ResultDraft();
        double watts = heat(draft, input.sources());
        Double cooling = input.coolingWatts();
        if (cooling != null) {
            cooling(draft, watts, cooling);
        }
        Double inlet = input.inlet();
        if (inlet != null) {
            inlet(draft, inlet, input.inletClass());
        }
        draft.assume("All power drawn in the room becomes heat in it; people, sun and walls are not counted.")
                .assume("The cooling gives its rated power at the room's temperature.")
                .caution("HEAT");
        return judged(draft, watts);
    }

    private static Result judged(ResultDraft draft, double watts) {
        String reason = "The equipment gives off " + Numeral.of(watts, 4)
                + " W; neither cooling nor inlet temperature was given.";
        return Severity.judged(draft, RoomHeat::words, "heat to carry away", reason);
    }

    private static String words(Rule deciding) {
        boolean cooling = deciding.name().equals("Cooling");
        return switch (deciding.outcome()) {
            case BAD -> cooling ? "more heat than cooling" : "inlet outside its range";
            case CAREFUL -> cooling ? "little cooling in hand" : "inlet outside the recommended range";
            default -> cooling ? "the cooling carries it" : "inlet as recommended";
        };
    }

    private static double heat(ResultDraft draft, List<Source> sources) {
        String put = sources.stream()
                .map(s -> s.count() + " × " + Numeral.of(s.watts()))
                .collect(Collectors.joining(" + "));
        double sum = sources.stream().mapToDouble(s -> s.count() * s.watts()).sum();
        draft.figure("Heat", "sum of count × watts", put, sum, "W", 4);
        draft.figure(
                "Heat in BTU/h",
                "P × 3600 / 1055.05585262",
                Numeral.of(sum) + " × 3600 / 1055.05585262",
                sum * BTU_PER_HOUR,
                "BTU/h",
                4);
        return sum;
    }

    private static void cooling(ResultDraft draft, double watts, double cooling) {
        double share = draft.figure(
                "Share of the cooling",
                "100 × P / P_cooling",
                "100 × " + Numeral.of(watts) + " / " + Numeral.of(cooling),
                100 * watts / cooling,
                "%",
                Numeral.digitsBeside(100 * watts / cooling, 3, COMFORTABLE, 100));
        Level level = Side.above(share, 100) ? Level.BAD : Side.above(share, COMFORTABLE) ? Level.CAREFUL : Level.GOOD;
        String sentence = Numeral.of(watts, 4) + " W of heat are " + Numeral.percent(share, COMFORTABLE) + " of the "
                + Numeral.of(cooling) + " W of cooling (comfortable up to 80 %).";
        draft.rule("Cooling", level, sentence, Citation.COMMON_PRACTICE);
    }

    private static void inlet(ResultDraft draft, double inlet, InletClass type) {
        boolean recommended = inlet >= RECOMMENDED_LOW && inlet <= RECOMMENDED_HIGH;
        boolean allowed = inlet >= type.low && inlet <= type.high;
        Level level = recommended ? Level.GOOD : allowed ? Level.CAREFUL : Level.BAD;
        String sentence =
                "The air at the inlet has " + Numeral.of(inlet) + " °C; recommended 18 to 27 °C, allowed for class "
                        + type.name() + " " + Numeral.of(type.low) + " to " + Numeral.of(type.high) + " °C.";
        draft.rule(
                "Inlet",
                level,
                sentence,
                Citation.fromMemory("ASHRAE TC 9.9, Thermal Guidelines for Data Processing Environments"));
    }
}

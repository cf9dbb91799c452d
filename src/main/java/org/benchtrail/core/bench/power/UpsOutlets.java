package org.benchtrail.core.bench.power;

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
import org.benchtrail.core.bench.power.OutletPlan.Place;
import org.benchtrail.core.bench.power.OutletPlan.Placed;

/**
 * Which load goes on which outlet of a UPS, and how the UPS itself is fed.
 *
 * <p>The rules are common practice without a single published source, and each row says so. Loads are given in watts; as
 * volt-amperes are never fewer than watts, the share of the VA rating is a lower bound.
 */
public final class UpsOutlets {
    private static final double COMFORTABLE = 80;

    /** What the UPS is plugged into. */
    public enum Feed implements Choice {
        GROUNDED_WALL_OUTLET(
                "grounded wall outlet", Level.GOOD, "The UPS is plugged straight into a grounded wall outlet."),
        EXTENSION_CORD_OR_STRIP(
                "extension cord or power strip",
                Level.BAD,
                "Plug the UPS straight into a grounded wall outlet, not into an extension cord or a power strip."),
        ANOTHER_UPS(
                "another UPS",
                Level.BAD,
                "Do not feed a UPS from another UPS: plug it straight into a grounded wall outlet."),
        UNGROUNDED_OUTLET(
                "ungrounded outlet",
                Level.BAD,
                "The outlet is not grounded: have a licensed electrician provide a grounded one before the UPS is"
                        + " used.");

        private final String words;

        private final Level level;
        private final String sentence;

        Feed(String words, Level level, String sentence) {
            this.words = words;
            this.level = level;
            this.sentence = sentence;
        }

        @Override
        public String words() {
            return words;
        }
    }

    public record Input(
            @Ask(label = "UPS rating", unit = "W", hint = "Nameplate")
            double ratedWatts,

            @Ask(label = "UPS rating, apparent", unit = "VA", hint = "Nameplate")
            double ratedVa,

            @Ask(label = "Battery-backed outlets", hint = "Marked on the back of the UPS")
            int batteryOutlets,

            @Ask(label = "Surge-only outlets", hint = "Marked on the back of the UPS")
            int surgeOutlets,

            @Ask(label = "The UPS is plugged into") Feed feed,
            @Ask(label = "Loads") List<OutletLoad> loads) {
        public Input {
            InputCheck check = new InputCheck();
            check.within("ratedWatts", ratedWatts, 1, 1e7, "W");
            check.within("ratedVa", ratedVa, 1, 1e7, "VA");
            check.rule(!(ratedWatts > ratedVa), "ratedVa", "give a VA rating at least as high as the rating in watts");
            check.within("batteryOutlets", batteryOutlets, 0, 1000, "");
            check.within("surgeOutlets", surgeOutlets, 0, 1000, "");
            check.present("feed", feed);
            loads = check.list("loads", loads, 1, 200, (path, load) -> check(check, path, load));
            check.rule(
                    loads.stream().map(OutletLoad::name).distinct().count() == loads.size(),
                    "loads",
                    "give each load a name of its own");
            check.done();
        }

        private static void check(InputCheck check, String path, OutletLoad load) {
            if (check.text(path + ".name", load.name(), 80)) {
                check.rule(!load.name().isBlank(), path + ".name", "give the load a name");
            }
            check.present(path + ".kind", load.kind());
            check.within(path + ".watts", load.watts(), 0, 100_000, "W");
        }
    }

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "ups-outlets",
            2,
            Trade.POWER,
            "UPS outlet plan",
            "Which load goes on a battery outlet, which on a surge-only outlet, which elsewhere?",
            new Input(
                    600,
                    1000,
                    3,
                    3,
                    Feed.GROUNDED_WALL_OUTLET,
                    List.of(
                            new OutletLoad("Router", OutletLoad.Kind.ROUTER, 12, true),
                            new OutletLoad("Switch", OutletLoad.Kind.SWITCH, 25, false),
                            new OutletLoad("File server", OutletLoad.Kind.SERVER, 140, true),
                            new OutletLoad("Front desk monitor", OutletLoad.Kind.MONITOR, 30, false),
                            new OutletLoad("Document scanner", OutletLoad.Kind.SCANNER, 20, false),
                            new OutletLoad("Laser printer", OutletLoad.Kind.LASER_PRINTER, 480, false))),
            UpsOutlets::calculate);

    private UpsOutlets() {}

    public static Result calculate(Input input) {
        ResultDraft draft = new ResultDraft();
        draft.rule("Feed", input.feed().level, input.feed().sentence, Citation.COMMON_PRACTICE);
        List<Placed> plan = placed(input);
        plan.forEach(placed -> row(draft, placed));
        String headroom = shares(draft, input, plan);
        outlets(draft, plan, Place.BATTERY, input.batteryOutlets());
        outlets(draft, plan, Place.SURGE_ONLY, input.surgeOutlets());
        draft.assume("Draws are as given; volt-amperes are at least as many as watts, so measure them before the"
                        + " UPS is filled.")
                .assume("The UPS's and each device's maker may say otherwise: their instructions come first.")
                .caution("MAINS")
                .caution("BATTERY")
                .caution("LIFTING");
        Rule deciding = Severity.deciding(draft.rules());
        String reason = deciding.outcome() == Level.GOOD ? every(plan) + headroom : deciding.sentence();
        return draft.judged(deciding.outcome(), words(deciding.outcome()), reason);
    }

    /** Every load once, in the order in which it was dealt out. */
    static List<Placed> placed(Input in) {
        return OutletPlan.of(in.loads(), in.ratedWatts(), in.batteryOutlets(), in.surgeOutlets());
    }

    private static String words(Level level) {
        return switch (level) {
            case BAD -> "do not connect it like this";
            case CAREFUL -> "plan with reservations";
            default -> "keeps the rules";
        };
    }

    private static void row(ResultDraft draft, Placed placed) {
        String name = placed.load().name();
        String sentence = name + ": " + placed.place().words() + "; " + placed.why() + ".";
        draft.rule(name, placed.level(), sentence, Citation.COMMON_PRACTICE);
    }

    private static String shares(ResultDraft draft, Input input, List<Placed> plan) {
        List<Placed> carried =
                plan.stream().filter(p -> p.place() == Place.BATTERY).toList();
        String put = carried.stream().map(p -> Numeral.of(p.load().watts())).collect(Collectors.joining(" + "));
        double sum = carried.stream().mapToDouble(p -> p.load().watts()).sum();
        draft.figure("Load on the battery", "sum of watts", put.isEmpty() ? "0" : put, sum, "W", 4);
        double byWatts = share(draft, "Share of the watt rating", sum, input.ratedWatts());
        share(draft, "Share of the VA rating, at least", sum, input.ratedVa());
        String sentence =
                "The battery side carries " + Numeral.of(sum, 4) + " W, " + Numeral.percent(byWatts, COMFORTABLE)
                        + " of " + Numeral.of(input.ratedWatts()) + " W (comfortable up to 80 %).";
        draft.rule(
                "Headroom",
                Side.above(byWatts, COMFORTABLE) ? Level.CAREFUL : Level.GOOD,
                sentence,
                Citation.COMMON_PRACTICE);
        return sentence;
    }

    private static String every(List<Placed> plan) {
        return "All " + plan.size() + " loads have an outlet by the rules. ";
    }

    private static double share(ResultDraft draft, String name, double sum, double rated) {
        return draft.figure(
                name,
                "100 × P / rating",
                "100 × " + Numeral.of(sum) + " / " + Numeral.of(rated),
                100 * sum / rated,
                "%",
                Numeral.digitsBeside(100 * sum / rated, 3, COMFORTABLE, 100));
    }

    private static void outlets(ResultDraft draft, List<Placed> plan, Place place, int available) {
        long used = plan.stream().filter(p -> p.place() == place).count();
        draft.figure(
                place == Place.BATTERY ? "Battery outlets free" : "Surge-only outlets free",
                "outlets - used",
                available + " - " + used,
                available - used,
                "1",
                4);
    }
}

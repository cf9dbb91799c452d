package org.benchtrail.core.advice;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.cooling.ClockHeat;
import org.benchtrail.core.bench.cooling.HeatPath;
import org.benchtrail.core.bench.cooling.RoomHeat;
import org.benchtrail.core.bench.power.BatteryHealth;
import org.benchtrail.core.bench.power.Mains;
import org.benchtrail.core.bench.power.Rails;
import org.benchtrail.core.bench.power.UpsOutlets;
import org.benchtrail.core.bench.storage.DriveHealth;
import org.benchtrail.core.bench.voice.Voice;
import org.benchtrail.core.method.Sign;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.jspecify.annotations.Nullable;

/**
 * What a result of the bench says that the cause catalogue may take for an answer. Rules decide rather than the verdict where a
 * worse rule could hide another; they and the numbers come from the result worked again by the same version, without which
 * only level and verdict speak. A sign that is absent says nothing: "not too small" is not "large enough".
 */
final class BenchSigns {
    private static final double HUNDRED = 100;

    /** Every sign by its name, with the unit of its number; blank for one that is there or not. */
    static final Map<String, String> UNITS = new HashMap<>();

    private static final Map<String, Function<BenchResultAttached, Stream<String>>> TOLD = new HashMap<>();
    private static final Map<String, BiFunction<Record, Result, List<Sign>>> WORKED = new HashMap<>();

    static {
        verdict("supply-size", "too small", "too-small");
        verdict("supply-size", "carries it", "large-enough");
        verdict("warm-up", "stays below the trip point", "no-trip");
        level("warm-up", Level.BAD, "trip");
        verdict("fan", "stalled", "stopped");
        verdict("fan", "much too slow", "stopped");
        verdict("fan", "slow", "slow");
        verdict("fan", "at duty", "turns");
        verdict("fan", "faster than its duty asks", "turns");
        level("drive-health", Level.BAD, "failing");
        level("drive-health", Level.BAD, "suspect");
        level("drive-health", Level.CAREFUL, "suspect");
        level("drive-health", Level.GOOD, "no-alarm");
        level("module-fit", Level.BAD, "unfit");
        level("module-fit", Level.GOOD, "fits");
        verdict("subnet", "self-assigned", "self-assigned");
        verdict("subnet", "the same address", "same-address");
        verdict("subnet", "not usable for a host", "unusable");
        verdict("subnet", "different networks", "apart");
        level("copper-link", Level.BAD, "out-of-limit");
        level("copper-link", Level.GOOD, "in-limit");
        verdict("path-throughput", "loss binds", "loss-binds");
        level("loss", Level.BAD, "real");
        level("loss", Level.GOOD, "allowed");
        level("jitter", Level.BAD, "too-much");
        level("jitter", Level.GOOD, "allowed");
        level("radio-link", Level.BAD, "too-weak");

        figure("ups-load", "Load", "load", "%");
        figure("endurance", "Share of the rated endurance", "share", "%");
        figure("poe-budget", "Share of the budget", "share", "%");
        worked("rails", (Rails.Input in, Result r) -> rails(in, r), "plus12-load V", "standby-bad");
        worked("mains", (Mains.Input in, Result r) -> mains(in), "volts V");
        worked(
                "ups-outlets",
                (UpsOutlets.Input in, Result r) -> feed(in),
                "fed-through-strip",
                "fed-from-wall",
                "no-earth");
        worked(
                "battery-health",
                (BatteryHealth.Input in, Result r) -> battery(in, r),
                "health %",
                "cycles count",
                "swollen",
                "standby-due");
        worked("heat-path", (HeatPath.Input in, Result r) -> heat(in, r), "path-poor", "path-as-rated", "chip degC");
        worked(
                "clock-heat",
                (ClockHeat.Input in, Result r) -> List.of(
                        Sign.of(named("clock-heat", "clock-share"), HUNDRED * in.clock() / in.ratedClock(), "%")),
                "clock-share %");
        worked("room-heat", (RoomHeat.Input in, Result r) -> room(in, r), "inlet degC", "cooling-short");
        worked("drive-health", (DriveHealth.Input in, Result r) -> drive(r), "bad-sectors", "composite degC");
        worked("drive-fit", (Record in, Result r) -> fit(r), "wrong-kind", "too-few-blocks");
        worked("module-fit", (Record in, Result r) -> mixed(r), "mixed");
        worked("voice", (Voice.Input in, Result r) -> voice(in), "loss %", "jitter ms", "delay ms");
    }

    private BenchSigns() {}

    /** @param again the result worked again by the same version; null if it cannot be */
    static List<Sign> of(BenchResultAttached attached, SheetReader.@Nullable Worked again) {
        String id = attached.calculation();
        List<Sign> signs = new ArrayList<>();
        TOLD.getOrDefault(id, a -> Stream.empty())
                .apply(attached)
                .map(name -> Sign.of(named(id, name)))
                .forEach(signs::add);
        if (again != null && WORKED.containsKey(id)) {
            signs.addAll(WORKED.get(id).apply(again.input(), again.result()));
        }
        return signs;
    }

    private static String named(String calculation, String signal) {
        return "bench/" + calculation + "/" + signal;
    }

    private static void verdict(String calculation, String words, String signal) {
        told(calculation, signal, a -> a.verdict().equals(words));
    }

    private static void level(String calculation, Level level, String signal) {
        told(calculation, signal, a -> a.level() == level);
    }

    private static void told(String calculation, String signal, Predicate<BenchResultAttached> holds) {
        UNITS.put(named(calculation, signal), "");
        TOLD.merge(
                calculation,
                a -> holds.test(a) ? Stream.of(signal) : Stream.empty(),
                (one, other) -> a -> Stream.concat(one.apply(a), other.apply(a)));
    }

    private static void figure(String calculation, String figure, String signal, String unit) {
        worked(
                calculation,
                (Record in, Result r) -> number(r, figure).stream()
                        .map(x -> Sign.of(named(calculation, signal), x, unit))
                        .toList(),
                signal + " " + unit);
    }

    /** @param signals each with the unit of its number behind it, if it is one */
    @SuppressWarnings("unchecked") // the input is read as the calculation's own
    private static <I extends Record> void worked(
            String calculation, BiFunction<I, Result, List<Sign>> signs, String... signals) {
        for (String signal : signals) {
            int blank = signal.indexOf(' ');
            UNITS.put(
                    named(calculation, blank < 0 ? signal : signal.substring(0, blank)),
                    blank < 0 ? "" : signal.substring(blank + 1));
        }
        WORKED.put(calculation, (in, result) -> signs.apply((I) in, result));
    }

    private static Optional<Double> number(Result result, String figure) {
        return result.figures().stream()
                .filter(f -> f.name().equals(figure))
                .map(Result.Figure::value)
                .findFirst();
    }

    private static boolean has(Result result, Predicate<String> rule, Level... levels) {
        return result.rules().stream()
                .anyMatch(r -> rule.test(r.name()) && List.of(levels).contains(r.outcome()));
    }

    private static void flag(List<Sign> into, boolean holds, String calculation, String signal) {
        if (holds) {
            into.add(Sign.of(named(calculation, signal)));
        }
    }

    private static void number(
            List<Sign> into, @Nullable Double value, String calculation, String signal, String unit) {
        if (value != null) {
            into.add(Sign.of(named(calculation, signal), value, unit));
        }
    }

    private static List<Sign> rails(Rails.Input in, Result r) {
        List<Sign> signs = new ArrayList<>();
        in.readings().stream()
                .filter(x -> x.rail() == Rails.Rail.PLUS_12)
                .forEach(x -> number(signs, x.load(), "rails", "plus12-load", "V"));
        flag(signs, has(r, n -> n.startsWith(Rails.Rail.STANDBY_5.words()), Level.BAD), "rails", "standby-bad");
        return signs;
    }

    private static List<Sign> mains(Mains.Input in) {
        Sign.Measured volts = new Sign.Measured(
                in.volts(), "V", in.region().lowest(), in.region().highest(), "");
        return List.of(new Sign(named("mains", "volts"), volts));
    }

    private static List<Sign> feed(UpsOutlets.Input in) {
        String signal = switch (in.feed()) {
            case EXTENSION_CORD_OR_STRIP, ANOTHER_UPS -> "fed-through-strip";
            case GROUNDED_WALL_OUTLET -> "fed-from-wall";
            case UNGROUNDED_OUTLET -> "no-earth";
        };
        return List.of(Sign.of(named("ups-outlets", signal)));
    }

    private static List<Sign> battery(BatteryHealth.Input in, Result r) {
        List<Sign> signs = new ArrayList<>();
        boolean portable = in.kind() == BatteryHealth.Kind.PORTABLE;
        if (portable) {
            number(signs, number(r, "Health").orElse(null), "battery-health", "health", "%");
            number(signs, in.cycles(), "battery-health", "cycles", "count");
        }
        flag(signs, in.swollen(), "battery-health", "swollen");
        flag(signs, !portable && has(r, "Capacity"::equals, Level.BAD), "battery-health", "standby-due");
        return signs;
    }

    private static List<Sign> heat(HeatPath.Input in, Result r) {
        List<Sign> signs = new ArrayList<>();
        flag(signs, has(r, "Rating"::equals, Level.CAREFUL, Level.BAD), "heat-path", "path-poor");
        flag(signs, has(r, "Rating"::equals, Level.GOOD), "heat-path", "path-as-rated");
        signs.add(new Sign(named("heat-path", "chip"), new Sign.Measured(in.chip(), "degC", null, in.limit(), "")));
        return signs;
    }

    private static List<Sign> room(RoomHeat.Input in, Result r) {
        List<Sign> signs = new ArrayList<>();
        number(signs, in.inlet(), "room-heat", "inlet", "degC");
        flag(signs, in.inlet() == null && has(r, "Cooling"::equals, Level.BAD), "room-heat", "cooling-short");
        return signs;
    }

    private static List<Sign> drive(Result r) {
        List<Sign> signs = new ArrayList<>();
        Predicate<String> sectors = name -> name.equals("attribute 5 by its count")
                || name.equals("attribute 197 by its count")
                || name.equals("media errors");
        flag(signs, has(r, sectors, Level.CAREFUL, Level.BAD), "drive-health", "bad-sectors");
        number(r, "Composite temperature")
                .map(x -> new Sign.Measured(x, "degC", null, null, Judging.SOLID_STATE))
                .ifPresent(x -> signs.add(new Sign(named("drive-health", "composite"), x)));
        return signs;
    }

    private static List<Sign> fit(Result r) {
        List<Sign> signs = new ArrayList<>();
        flag(signs, has(r, List.of("interface", "sector format")::contains, Level.BAD), "drive-fit", "wrong-kind");
        flag(signs, has(r, "blocks"::equals, Level.BAD), "drive-fit", "too-few-blocks");
        return signs;
    }

    private static List<Sign> mixed(Result r) {
        List<Sign> signs = new ArrayList<>();
        boolean mixed = has(r, "mixing of buffering"::equals, Level.BAD)
                || has(r, List.of("speed", "error correction")::contains, Level.CAREFUL);
        flag(signs, mixed, "module-fit", "mixed");
        return signs;
    }

    private static List<Sign> voice(Voice.Input in) {
        return List.of(
                Sign.of(named("voice", "loss"), in.loss(), "%"),
                Sign.of(named("voice", "jitter"), in.jitter(), "ms"),
                Sign.of(named("voice", "delay"), in.delay(), "ms"));
    }
}

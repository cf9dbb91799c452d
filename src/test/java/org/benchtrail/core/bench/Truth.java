package org.benchtrail.core.bench;

import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.benchtrail.core.bench.Result.Figure;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.Result.Rule;
import org.benchtrail.core.bench.cooling.Fan;
import org.benchtrail.core.bench.cooling.HeatPath;
import org.benchtrail.core.bench.judging.Soak;
import org.benchtrail.core.bench.network.CopperLink;
import org.benchtrail.core.bench.network.Loss;
import org.benchtrail.core.bench.network.PoeBudget;
import org.benchtrail.core.bench.power.UpsLoad;
import org.benchtrail.core.bench.storage.Array;
import org.benchtrail.core.bench.storage.DriveHealth;
import org.benchtrail.core.bench.storage.Endurance;
import org.benchtrail.core.bench.voice.Jitter;
import org.benchtrail.core.bench.voice.Voice;
import org.benchtrail.core.bench.wireless.RadioLink;

/**
 * What holds between any input that is taken and the verdict on it, whatever else was typed: told from the input itself, by a
 * way of its own that shares no code with the calculation.
 *
 * @param calculation its id
 * @param says the truth in words
 * @param holds whether it holds of an input and its result
 */
record Truth(String calculation, String says, BiPredicate<Object, Result> holds) {
    private static <I> Truth of(String calculation, Class<I> type, String says, BiPredicate<I, Result> holds) {
        return new Truth(calculation, says, (input, result) -> holds.test(type.cast(input), result));
    }

    private static final List<Truth> ALL = List.of(
            of(
                    "array",
                    Array.Input.class,
                    "an array that can still lose one while it rebuilds fears no read error",
                    (in, r) -> !(in.level() == Array.RaidLevel.RAID6
                                    || (in.level() == Array.RaidLevel.RAID1
                                            && in.members().size() > 2))
                            || !says(r, "risky")),
            of(
                    "jitter",
                    Jitter.Input.class,
                    "fewer than 48 packets show no call to be even",
                    (in, r) -> in.packets().size() >= 48 || !isGood(r)),
            of(
                    "voice",
                    Voice.Input.class,
                    "where no buffer is given, one of twice the jitter is counted as delay",
                    (in, r) -> in.buffer() != null
                            || value(r, "Delay from mouth to ear") >= in.delay() + 2 * in.jitter() - 1e-6),
            of(
                    "voice",
                    Voice.Input.class,
                    "a buffer shorter than the jitter is never good",
                    (in, r) -> in.buffer() == null || in.buffer() >= in.jitter() || !isGood(r)),
            nvme("a drive at its critical temperature is failing", (in, r) -> {
                double kelvin = word(in, 2) * 256.0 + word(in, 1);
                Double critical = in.critical();
                return kelvin - 273 < (critical == null ? 85 : critical)
                        || r.judgement().level() == Level.BAD;
            }),
            nvme(
                    "minutes above the warning temperature are never good",
                    (in, r) -> minutes(in, 192) == 0 || !isGood(r)),
            nvme(
                    "minutes at the critical temperature are never good, and no mere matter of cooling",
                    (in, r) -> minutes(in, 196) == 0 || (!isGood(r) && !says(r, "check the cooling"))),
            ata(
                    "transfers repeated on the link are never good",
                    (in, r) -> raw(in, 199).filter(n -> n > 0).isEmpty() || !isGood(r)),
            ata(
                    "time-outs are counted in three words of 16 bits",
                    (in, r) -> r.rules().stream()
                            .filter(rule -> rule.name().startsWith("attribute 188 by"))
                            .allMatch(rule -> first(rule) <= 3 * 65_535)),
            of(
                    "endurance",
                    Endurance.Input.class,
                    "two readings give no interval and so no comfort, unless next to nothing is written",
                    (in, r) -> in.readings().size() > 2 || !isGood(r) || says(r, "hardly written to")),
            of(
                    "poe-budget",
                    PoeBudget.Input.class,
                    "a device of a higher class than its port is never good",
                    (in, r) -> in.ports().stream().allMatch(p -> asked(p.deviceClass()) <= asked(in.highestClass()))
                            || !isGood(r)),
            of(
                    "copper-link",
                    CopperLink.Input.class,
                    "by ISO a loss of up to 4 dB is never above the limit",
                    (in, r) -> !in.category().name().startsWith("ISO")
                            || r.rules().stream()
                                    .filter(rule -> rule.name().startsWith("insertion loss"))
                                    .allMatch(rule -> first(rule) > 4 || rule.outcome() != Level.BAD)),
            of(
                    "heat-path",
                    HeatPath.Input.class,
                    "a path far better than its rating is a reading to check",
                    (in, r) -> in.rated().isEmpty()
                            || (in.chip() - in.ambient()) / in.watts() > 0.6 * sum(in.rated())
                            || !isGood(r)),
            of(
                    "heat-path",
                    HeatPath.Input.class,
                    "no chip that works is hotter than 150 °C",
                    (in, r) -> in.chip() <= 150),
            of(
                    "fan",
                    Fan.Input.class,
                    "a fan half again as fast as its rating is a pulse count",
                    (in, r) -> in.speed() <= 1.500001 * in.ratedSpeed()
                            || r.judgement().level() == Level.UNDECIDED),
            of(
                    "fan",
                    Fan.Input.class,
                    "no fan turns at more than five times its rating",
                    (in, r) -> in.speed() <= 5 * in.ratedSpeed()),
            of("loss", Loss.Input.class, "the probes that would settle it do settle it", (in, r) -> {
                Optional<Figure> probes = figure(r, "Probes without loss that would settle it");
                double tail = (1 - in.confidence() / 100) / 2;
                return probes.isEmpty()
                        || Math.pow(1 - in.allowed() / 100, probes.get().value()) <= tail * (1 + 1e-6);
            }),
            of(
                    "soak",
                    Soak.Input.class,
                    "it ran long enough where so long a quiet is no likelier than the doubt allowed",
                    (in, r) -> in.clean() == null
                            || isGood(r)
                                    == (value(r, "Chance of so long a quiet if the fault is still there")
                                            <= in.doubt() * (1 + 1e-11))),
            of(
                    "ups-load",
                    UpsLoad.Input.class,
                    "no power factor is above one",
                    (in, r) -> value(r, "Power factor") <= 1),
            of("radio-link", RadioLink.Input.class, "no channel lies below 100 MHz", (in, r) -> in.frequency() >= 100),
            of("radio-link", RadioLink.Input.class, "nobody sends more than a kilowatt", (in, r) -> in.power() <= 60));

    private static final Map<String, List<Truth>> BY_CALCULATION =
            ALL.stream().collect(Collectors.groupingBy(Truth::calculation));

    /** What holds of one calculation. */
    static List<Truth> of(String calculation) {
        return BY_CALCULATION.getOrDefault(calculation, List.of());
    }

    private static Truth nvme(String says, BiPredicate<DriveHealth.Input, Result> holds) {
        return drive(says, form -> form == DriveHealth.Form.NVME_PAGE, holds);
    }

    private static Truth ata(String says, BiPredicate<DriveHealth.Input, Result> holds) {
        return drive(says, form -> form == DriveHealth.Form.ATA_ROWS, holds);
    }

    private static Truth drive(
            String says, Predicate<DriveHealth.Form> form, BiPredicate<DriveHealth.Input, Result> holds) {
        return of("drive-health", DriveHealth.Input.class, says, (in, r) -> !form.test(in.form()) || holds.test(in, r));
    }

    private static boolean isGood(Result result) {
        return result.judgement().level() == Level.GOOD;
    }

    private static boolean says(Result result, String words) {
        return result.judgement().words().contains(words);
    }

    private static Optional<Figure> figure(Result result, String name) {
        return result.figures().stream().filter(f -> f.name().equals(name)).findFirst();
    }

    private static double value(Result result, String name) {
        return FigureOf.value(result, name);
    }

    private static double sum(List<Double> numbers) {
        return numbers.stream().mapToDouble(n -> n).sum();
    }

    /** Class 0 may take as much as class 3. */
    private static int asked(int powerClass) {
        return powerClass == 0 ? 3 : powerClass;
    }

    private static final Pattern NUMBER = Pattern.compile("[0-9]+(?:\\.[0-9]+)?(?:e-?[0-9]+)?");

    /** The first number that a rule's sentence says. */
    private static double first(Rule rule) {
        Matcher number = NUMBER.matcher(rule.sentence());
        return number.find() ? Double.parseDouble(number.group()) : Double.NaN;
    }

    private static int word(DriveHealth.Input in, int at) {
        return HexFormat.of().parseHex(in.table().replaceAll("\\s", ""))[at] & 0xFF;
    }

    /** Four bytes, the least first. */
    private static long minutes(DriveHealth.Input in, int at) {
        long minutes = 0;
        for (int i = 3; i >= 0; i--) {
            minutes = 256 * minutes + word(in, at + i);
        }
        return minutes;
    }

    /** The last number of the row that begins with this id. */
    private static Optional<Long> raw(DriveHealth.Input in, int id) {
        return in.table()
                .lines()
                .map(line -> line.trim().split("\\s+"))
                .filter(row -> row.length == 5 && row[0].equals(String.valueOf(id)))
                .map(row -> Long.valueOf(row[4]))
                .findFirst();
    }
}

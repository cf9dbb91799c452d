package org.benchtrail.core.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.benchtrail.core.bench.Bench;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.cooling.HeatPath;
import org.benchtrail.core.bench.network.Subnet;
import org.benchtrail.core.bench.power.BatteryHealth;
import org.benchtrail.core.bench.power.Mains;
import org.benchtrail.core.bench.power.Rails;
import org.benchtrail.core.bench.power.UpsLoad;
import org.benchtrail.core.method.Sign;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.junit.jupiter.api.Test;

/** What a result of the bench says that a catalogue may take for an answer. */
class BenchSignsTest {
    private static <I extends Record> List<Sign> signs(Calculation<I> calculation, I input) {
        Result result = calculation.calculate(input);
        BenchResultAttached attached = new BenchResultAttached(
                calculation.id(),
                calculation.version(),
                calculation.title(),
                "{}",
                result.judgement().level(),
                result.judgement().words(),
                result.judgement().reason(),
                List.of());
        return BenchSigns.of(attached, new SheetReader.Worked(input, result));
    }

    private static <I extends Record> List<String> names(Calculation<I> calculation, I input) {
        return signs(calculation, input).stream()
                .map(s -> s.name()
                                .substring("bench/".length() + calculation.id().length() + 1)
                        + (s.measured() == null ? "" : " " + s.measured().value()))
                .toList();
    }

    private static <I extends Record> List<String> example(Calculation<I> calculation) {
        return names(calculation, calculation.example());
    }

    @SuppressWarnings({"unchecked", "unused"}) // each is asked for with its own input, which only names the type
    private static <I extends Record> Calculation<I> calculation(String id, I input) {
        return (Calculation<I>) Bench.find(id).orElseThrow();
    }

    @Test
    void ofAllCalculations_thoseThatObserveSaySomething() {
        Set<String> all = Bench.all().stream().map(Calculation::id).collect(Collectors.toSet());
        Set<String> feeding = BenchSigns.UNITS.keySet().stream()
                .map(sign -> sign.split("/")[1])
                .collect(Collectors.toCollection(TreeSet::new));
        assertTrue(all.containsAll(feeding), feeding.toString());
        Set<String> silent = new TreeSet<>(all);
        silent.removeAll(feeding);
        assertEquals(
                Set.of(
                        "ups-runtime",
                        "array",
                        "backup-time",
                        "transfer",
                        "meter",
                        "against-limit",
                        "before-after",
                        "soak",
                        "subset"),
                silent,
                "say in BenchSigns what it tells of a finding, or name it here");
    }

    @Test
    void everyExample_givesOnlySignsThatAreKnown() {
        int given = 0;
        for (Calculation<?> calculation : Bench.all()) {
            for (String name : example(calculation)) {
                String sign = "bench/" + calculation.id() + "/" + name.split(" ")[0];
                assertEquals(name.contains(" "), !Signs.unit(sign).orElseThrow().isEmpty(), sign);
                given++;
            }
        }
        assertTrue(given >= 20, "only " + given);
    }

    @Test
    void numbersComeFromWhatWasGiven() {
        Mains.Input mains = new Mains.Input(Mains.Region.EUROPE_230_V, 201, null, null);
        Sign volts = signs(calculation("mains", mains), mains).get(0);
        assertEquals(new Sign.Measured(201, "V", 207.0, 253.0, ""), volts.measured());
        BatteryHealth.Input worn = new BatteryHealth.Input(BatteryHealth.Kind.PORTABLE, 20, 50, 700.0, 500.0, true);
        assertEquals(
                List.of("health 40.0", "cycles 700.0", "swollen"), names(calculation("battery-health", worn), worn));
        BatteryHealth.Input standby =
                new BatteryHealth.Input(BatteryHealth.Kind.STANDBY_LEAD_ACID, 20, 50, null, null, false);
        assertEquals(List.of("standby-due"), names(calculation("battery-health", standby), standby));
        HeatPath.Input poor = new HeatPath.Input(95, 25, 60, List.of(.3), null);
        assertEquals(List.of("path-poor", "chip 95.0"), names(calculation("heat-path", poor), poor));
    }

    /** Two rails, the worse one on standby: neither hides the other. */
    @Test
    void rules_speakBesideTheVerdict() {
        Rails.Input in = new Rails.Input(
                Rails.Edition.values()[0],
                List.of(
                        new Rails.Reading(Rails.Rail.PLUS_12, 12.1, 11.2, false, null),
                        new Rails.Reading(Rails.Rail.STANDBY_5, 4.2, null, false, null)));
        assertEquals(List.of("plus12-load 11.2", "standby-bad"), names(calculation("rails", in), in));
    }

    /** Without the input only level and verdict speak. */
    @Test
    void resultOfAnotherVersion_speaksByItsVerdictOnly() {
        BenchResultAttached fits = new BenchResultAttached(
                "module-fit",
                1,
                "Memory module fit",
                "{}",
                Result.Level.BAD,
                "does not fit",
                "DDR4 in DDR5",
                List.of());
        assertEquals(List.of(Sign.of("bench/module-fit/unfit")), BenchSigns.of(fits, null));
        BenchResultAttached load = new BenchResultAttached(
                "ups-load", 1, "UPS load", "{}", Result.Level.BAD, "overloaded", "more than it carries", List.of());
        assertEquals(List.of(), BenchSigns.of(load, null));
    }

    /** The words that verdicts are known by are still those of the bench. */
    @Test
    void verdicts_areInTheBenchsWords() {
        assertEquals(List.of("self-assigned"), subnet("169.254.7.9"));
        assertEquals(List.of("unusable"), subnet("127.0.0.1"));
        assertEquals(List.of(), subnet("10.0.0.7"));
    }

    private static List<String> subnet(String address) {
        Subnet.Input in = new Subnet.Input(address, "24", "");
        return names(calculation("subnet", in), in);
    }

    @Test
    void loadOfAnUps_isTheShareThatBinds() {
        UpsLoad.Input in = new UpsLoad.Input(600, 1000, 540, 700.0, null, null);
        assertEquals(List.of("load 90.0"), names(calculation("ups-load", in), in));
    }
}

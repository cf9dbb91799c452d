package org.benchtrail.core.advice;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.bench.power.Rails.Rail;
import org.benchtrail.core.measure.Unit;
import org.benchtrail.core.measure.Units;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.Settlement;
import org.jspecify.annotations.Nullable;

/**
 * What a job sheet already knows of the values that a calculation asks for: what the device's label says, and over it the
 * readings, the latest of each kind, by what their words say was measured. What the words leave open is left empty: nothing is
 * guessed.
 *
 * @param values by the path of the field, as text that the form reads, with its unit
 * @param from the label and the readings taken, as sentences without a stop
 */
public record BenchStart(Map<String, String> values, List<String> from) {
    /** Readings in a unit that converts to this one, whose words match, answer that field. */
    private record Answer(String calculation, String field, String unit, Pattern words) {
        static Answer of(String calculation, String field, String unit, String words) {
            return new Answer(
                    calculation, field, unit, Pattern.compile("\\b(" + words + ")", Pattern.CASE_INSENSITIVE));
        }

        boolean fits(ReadingRecorded reading) {
            return isIn(reading, unit) && words.matcher(reading.quantity()).find();
        }
    }

    private static final String CHIP = "processor|chip|CPU|GPU|graphics";
    private static final String AIR = "ambient|air|room|inlet|intake";
    private static final String DELAY = "delay|latency|round|ping";

    private static final List<Answer> ANSWERS = List.of(
            Answer.of("mains", "volts", "V", "mains|outlet|socket|line"),
            Answer.of("mains", "hertz", "Hz", "mains|outlet|socket|line"),
            Answer.of("ups-load", "watts", "W", "load|draw|power"),
            Answer.of("ups-load", "va", "VA", "load|draw|apparent"),
            Answer.of("ups-runtime", "watts", "W", "load|draw|power"),
            Answer.of("battery-health", "fullCharge", "Wh", "full"),
            Answer.of("battery-health", "design", "Wh", "design"),
            Answer.of("battery-health", "cycles", "count", "cycles"),
            Answer.of("heat-path", "chip", "°C", CHIP),
            Answer.of("heat-path", "ambient", "°C", AIR),
            Answer.of("heat-path", "watts", "W", CHIP + "|package"),
            Answer.of("clock-heat", "chip", "°C", CHIP),
            Answer.of("clock-heat", "ambient", "°C", AIR),
            Answer.of("fan", "speed", "1/min", "fan|speed"),
            Answer.of("room-heat", "inlet", "°C", AIR),
            Answer.of("path-throughput", "rtt", "ms", DELAY),
            Answer.of("path-throughput", "loss", "%", "loss|lost"),
            Answer.of("voice", "delay", "ms", "one-way|delay"),
            Answer.of("voice", "jitter", "ms", "jitter"),
            Answer.of("voice", "loss", "%", "loss|lost"),
            Answer.of("backup-time", "amount", "GB", "data|used|amount"),
            Answer.of("backup-time", "rate", "MB/s", "rate|speed|throughput"),
            Answer.of("copper-link", "permanent", "m", "link|cable|run"),
            Answer.of("radio-link", "distance", "m", "distance"));

    private static final Map<Rail, Pattern> RAILS = rails();

    public BenchStart {
        values = Map.copyOf(values);
        from = List.copyOf(from);
    }

    /** What the sheet knows for that calculation; nothing if it knows nothing. */
    public static BenchStart of(String calculation, JobSheet sheet) {
        Draft draft = new Draft(sheet);
        draft.label(DeviceValues.printed(calculation, sheet.opened().device()));
        switch (calculation) {
            case "rails" -> draft.rails();
            case "against-limit" -> draft.againstLimit();
            case "meter" -> draft.meter();
            case "before-after" -> draft.beforeAfter();
            default ->
                ANSWERS.stream()
                        .filter(a -> a.calculation.equals(calculation))
                        .forEach(a -> draft.latest(a::fits).ifPresent(r -> draft.put(a.field, measured(r), r)));
        }
        return new BenchStart(draft.values, draft.from);
    }

    public boolean isEmpty() {
        return values.isEmpty();
    }

    private static Map<Rail, Pattern> rails() {
        Map<Rail, Pattern> rails = new LinkedHashMap<>();
        rails.put(Rail.STANDBY_5, Pattern.compile("stand-?by|5 ?VSB", Pattern.CASE_INSENSITIVE));
        rails.put(Rail.MINUS_12, Pattern.compile("[-\u2212\u2013]12 ?V"));
        rails.put(Rail.PLUS_3_3, Pattern.compile("\\b3[.,]3 ?V"));
        rails.put(Rail.PLUS_12, Pattern.compile("\\b12 ?V"));
        rails.put(Rail.PLUS_5, Pattern.compile("(?<![0-9.,])5 ?V"));
        return rails;
    }

    private static boolean isIn(ReadingRecorded reading, String unit) {
        Optional<Unit> asked = Units.find(unit);
        Optional<Unit> read = Units.find(reading.unit());
        return asked.isPresent()
                && read.isPresent()
                && asked.get().dimension() == read.get().dimension();
    }

    private static String measured(ReadingRecorded reading) {
        return reading.value() + " " + reading.unit();
    }

    /** Values while they are gathered. */
    private static final class Draft {
        private final JobSheet sheet;
        private final Map<String, String> values = new LinkedHashMap<>();
        private final List<String> from = new ArrayList<>();

        Draft(JobSheet sheet) {
            this.sheet = sheet;
        }

        Optional<ReadingRecorded> latest(Predicate<ReadingRecorded> which) {
            return sheet.latest(ReadingRecorded.class, r -> which.test(r.fact()))
                    .map(StandingFact::fact);
        }

        void label(Map<String, String> printed) {
            values.putAll(printed);
            if (!printed.isEmpty()) {
                from.add("the device's name, " + String.join(" and ", printed.values()));
            }
        }

        void put(String field, String text, ReadingRecorded reading) {
            values.put(field, text);
            String taken = reading.quantity() + " " + measured(reading);
            if (!from.contains(taken)) {
                from.add(taken);
            }
        }

        /** Each rail once, idle or under load as the words of the reading say; idle where they say nothing. */
        void rails() {
            int row = 0;
            for (Map.Entry<Rail, Pattern> rail : RAILS.entrySet()) {
                boolean found = false;
                for (boolean load : new boolean[] {false, true}) {
                    Optional<ReadingRecorded> reading =
                            latest(r -> isIn(r, "V") && rail(r) == rail.getKey() && underLoad(r) == load);
                    if (reading.isPresent()) {
                        put(
                                "readings[" + row + "]." + (load ? "load" : "idle"),
                                measured(reading.get()),
                                reading.get());
                        found = true;
                    }
                }
                if (found) {
                    values.put("readings[" + row + "].rail", rail.getKey().name());
                    row++;
                }
            }
        }

        private static @Nullable Rail rail(ReadingRecorded reading) {
            return RAILS.entrySet().stream()
                    .filter(e -> e.getValue().matcher(reading.quantity()).find())
                    .map(Map.Entry::getKey)
                    .findFirst()
                    .orElse(null);
        }

        private static boolean underLoad(ReadingRecorded reading) {
            return Pattern.compile("\\bload", Pattern.CASE_INSENSITIVE)
                    .matcher(reading.quantity() + " " + reading.point())
                    .find();
        }

        void againstLimit() {
            latest(r -> r.lower() != null || r.upper() != null).ifPresent(r -> {
                put("value", r.value(), r);
                values.put("unit", r.unit());
                putIfThere("lower", r.lower());
                putIfThere("upper", r.upper());
                putIfThere("guard", r.guard());
                r.standardUncertainty().ifPresent(u -> values.put("uncertainty", Numeral.of(u)));
            });
        }

        void meter() {
            latest(r -> true).ifPresent(r -> {
                put("readings", r.value(), r);
                values.put("unit", r.unit());
            });
        }

        /** The quantity read last, before and after the first action that was carried out; nothing if none was. */
        void beforeAfter() {
            int fix = sheet.all(ActionSettled.class, a -> a.fact().settlement() == Settlement.CARRIED_OUT).stream()
                    .mapToInt(StandingFact::entry)
                    .min()
                    .orElse(Integer.MAX_VALUE);
            latest(r -> true).ifPresent(last -> {
                List<StandingFact<ReadingRecorded>> alike = sheet.all(
                        ReadingRecorded.class,
                        r -> r.fact().samePlace(last) && r.fact().unit().equals(last.unit()));
                String before = listed(alike, r -> r.entry() < fix);
                String after = listed(alike, r -> r.entry() > fix);
                if (!before.isEmpty() && !after.isEmpty()) {
                    put("before", before, last);
                    values.put("after", after);
                    values.put("unit", last.unit());
                }
            });
        }

        private static String listed(
                List<StandingFact<ReadingRecorded>> readings, Predicate<StandingFact<ReadingRecorded>> which) {
            return String.join(
                    "\n",
                    readings.stream().filter(which).map(r -> r.fact().value()).toList());
        }

        private void putIfThere(String field, @Nullable String text) {
            if (text != null) {
                values.put(field, text);
            }
        }
    }
}

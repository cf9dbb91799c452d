package org.benchtrail.core.advice;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.benchtrail.core.measure.Unit;
import org.benchtrail.core.measure.Units;

/**
 * What a calculation asks of the device itself, and not of how it does today: its ratings, its sizes, what is built in. It stands
 * on the device's label, or was given for the device before, and holds on its next ticket too.
 */
public final class DeviceValues {
    static final Map<String, Set<String>> OWN = Map.ofEntries(
            Map.entry("rails", Set.of("edition")),
            Map.entry("supply-size", Set.of("ratedWatts", "twelveVoltWatts", "parts")),
            Map.entry("mains", Set.of("region")),
            Map.entry("ups-load", Set.of("ratedWatts", "ratedVa")),
            Map.entry(
                    "ups-runtime",
                    Set.of(
                            "blocks",
                            "blockVolts",
                            "ampHours",
                            "ratedHours",
                            "exponent",
                            "secondAmps",
                            "secondHours",
                            "efficiency",
                            "usable",
                            "shutdownMinutes")),
            Map.entry("battery-health", Set.of("kind", "design", "ratedCycles")),
            Map.entry("heat-path", Set.of("rated", "limit")),
            Map.entry("clock-heat", Set.of("ratedWatts", "ratedClock", "ratedVolts")),
            Map.entry("fan", Set.of("ratedSpeed", "tolerance")),
            Map.entry("room-heat", Set.of("coolingWatts", "inletClass")),
            Map.entry("array", Set.of("level", "members", "errorsPerBit", "mttf")),
            Map.entry("endurance", Set.of("rated")),
            Map.entry("drive-fit", Set.of("bay", "bayForm", "bayHeight", "bayPower")),
            Map.entry(
                    "module-fit",
                    Set.of(
                            "boardGeneration",
                            "boardForm",
                            "boardVoltage",
                            "boardBuffering",
                            "boardCorrection",
                            "boardSpeed",
                            "slots",
                            "largest",
                            "most")),
            Map.entry("copper-link", Set.of("category", "permanent", "cords")),
            Map.entry("poe-budget", Set.of("budget", "highestClass")),
            Map.entry("path-throughput", Set.of("bandwidth")),
            Map.entry(
                    "radio-link",
                    Set.of("power", "sendGain", "receiveGain", "cableLoss", "frequency", "distance", "sensitivity")));

    /** Where the label names such a thing, its one figure in a unit of that kind is the rating. */
    private record Printed(String calculation, String field, String unit, Pattern words) {
        static Printed of(String calculation, String field, String unit, String words) {
            return new Printed(
                    calculation, field, unit, Pattern.compile("\\b(" + words + ")\\b", Pattern.CASE_INSENSITIVE));
        }
    }

    private static final List<Printed> PRINTED = List.of(
            Printed.of("supply-size", "ratedWatts", "W", "supply|PSU"),
            Printed.of("ups-load", "ratedWatts", "W", "UPS"),
            Printed.of("ups-load", "ratedVa", "VA", "UPS"),
            Printed.of("ups-runtime", "ampHours", "Ah", "UPS|battery"),
            Printed.of("battery-health", "design", "Wh", "battery|laptop|notebook|tablet|phone"),
            Printed.of("clock-heat", "ratedClock", "GHz", "processor|CPU"),
            Printed.of("fan", "ratedSpeed", "1/min", "fan"),
            Printed.of("room-heat", "coolingWatts", "W", "cooling|air conditioner"),
            Printed.of("poe-budget", "budget", "W", "PoE"),
            Printed.of("path-throughput", "bandwidth", "Mb/s", "line|link|connection|uplink"));

    private static final Pattern FIGURE = Pattern.compile(
            "(?<![\\p{L}\\p{N}.,-])([0-9]{1,6}(?:\\.[0-9]{1,3})?) ?(\\p{L}[\\p{L}/]{0,6})(?![\\p{L}\\p{N}])");

    private DeviceValues() {}

    /** Those of the values, by path, that a calculation asks of the device itself. */
    public static Map<String, String> among(String calculation, Map<String, String> values) {
        Map<String, String> own = new LinkedHashMap<>(values);
        own.keySet().removeIf(path -> !isOwn(calculation, path));
        return own;
    }

    private static boolean isOwn(String calculation, String path) {
        return OWN.getOrDefault(calculation, Set.of()).contains(path.replaceAll("[\\[.].*", ""));
    }

    /** What the device's label says of them; two figures in units of one kind say nothing, for either may be meant. */
    static Map<String, String> printed(String calculation, String label) {
        Map<String, String> values = new LinkedHashMap<>();
        for (Printed printed : PRINTED) {
            if (printed.calculation.equals(calculation)
                    && printed.words.matcher(label).find()) {
                only(label, printed.unit).ifPresent(text -> values.put(printed.field, text));
            }
        }
        return values;
    }

    private static Optional<String> only(String label, String unit) {
        Unit asked = Units.find(unit).orElseThrow();
        List<String> found = FIGURE.matcher(label)
                .results()
                .filter(figure -> isIn(figure, asked))
                .map(figure -> figure.group(1) + " " + figure.group(2))
                .toList();
        return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
    }

    private static boolean isIn(MatchResult figure, Unit asked) {
        return Units.find(figure.group(2))
                .filter(unit -> unit.dimension() == asked.dimension())
                .isPresent();
    }
}

package org.benchtrail.core.bench;

import static java.lang.Math.abs;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What a verdict's sentence must be true of, read again from its text: under these words the numbers that the pattern finds
 * stand so to each other.
 */
record Saying(String calculation, String words, Pattern pattern, Predicate<double[]> holds) {
    private static final String N = "(-?[0-9]+(?:\\.[0-9]+)?(?:e-?[0-9]+)?)";

    private static Saying of(String calculation, String words, String pattern, Predicate<double[]> holds) {
        return new Saying(calculation, words, Pattern.compile(pattern.replace("#", N)), holds);
    }

    static final List<Saying> ALL = List.of(
            of("rails", "outside the guide", "reads # V, outside # V to # V", n -> isOutside(abs(n[0]), n[1], n[2])),
            of("rails", "within the guide", "reads # V, within # V to # V", n -> !isOutside(abs(n[0]), n[1], n[2])),
            of(
                    "rails",
                    "too close to call",
                    "reads # V, nearer to a limit of # V to # V than the uncertainty of # V",
                    n -> Math.min(abs(abs(n[0]) - abs(n[1])), abs(abs(n[0]) - abs(n[2]))) <= n[3] * (1 + 1e-9)),
            of(
                    "mains",
                    "spot reading outside the range",
                    "^# V lies outside # to # V",
                    n -> isOutside(n[0], n[1], n[2])),
            of(
                    "mains",
                    "spot reading in the wider range only",
                    "^# V lies outside # to # V, within the wider # to # V",
                    n -> isOutside(n[0], n[1], n[2]) && !isOutside(n[0], n[3], n[4])),
            of(
                    "mains",
                    "spot reading within the range",
                    "^# V lies within # to # V",
                    n -> !isOutside(n[0], n[1], n[2])),
            of(
                    "mains",
                    "too close to call",
                    "^# V is nearer to a limit of # to # V than the uncertainty of # V",
                    n -> Math.min(abs(n[0] - n[1]), abs(n[0] - n[2])) <= n[3] * (1 + 1e-9)),
            of(
                    "warm-up",
                    "will reach the trip point",
                    "between # and # °C at 95 %; the trip point of # °C",
                    n -> n[0] >= n[2] && n[1] >= n[0]),
            of(
                    "warm-up",
                    "stays below the trip point",
                    "between # and # °C at 95 %; the trip point of # °C",
                    n -> n[1] < n[2]),
            of(
                    "warm-up",
                    "trip point reached while measuring",
                    "the trip point of # °C.* the hottest sample, # °C",
                    n -> n[1] >= n[0]),
            of("supply-size", "too small", "is # % of", n -> n[0] > 100),
            of("supply-size", "too small for the peak", "W, # % of", n -> n[0] > 110),
            of("ups-load", "overloaded", "is # % of the rating", n -> n[0] > 100),
            of("ups-load", "carries it with little to spare", "is # % of the rating", n -> n[0] > 80 && n[0] <= 100),
            of("ups-load", "carries it", "is # % of the rating", n -> n[0] <= 80),
            of(
                    "ups-outlets",
                    "keeps the rules",
                    "battery side carries # W, # % of # W",
                    n -> n[1] <= 80 && n[0] <= 0.8 * n[2] * (1 + 1e-9)),
            of(
                    "ups-outlets",
                    "plan with reservations",
                    "^The battery side carries # W, # % of # W",
                    n -> n[1] > 80 && n[0] <= n[2]),
            of("ups-runtime", "too short for an orderly shutdown", "about # min; .* needs # min", n -> n[0] < n[1]),
            of(
                    "ups-runtime",
                    "long enough, with little in hand",
                    "about # min; .* needs # min",
                    n -> n[0] >= n[1] && n[0] < 2 * n[1]),
            of(
                    "ups-runtime",
                    "long enough for an orderly shutdown",
                    "about # min; .* needs # min",
                    n -> n[0] >= 2 * n[1]),
            of("battery-health", "due for replacement", "takes # % .* below # %", n -> n[0] < n[1]),
            of("battery-health", "holds its charge", "takes # % .* below # %", n -> n[0] >= n[1]),
            of("clock-heat", "hotter than rated", ", # times the rated", n -> n[0] > 1.02),
            of("clock-heat", "no hotter than rated", ", # times the rated", n -> n[0] <= 1.02),
            of("heat-path", "much worse than rated", ", # times the rated", n -> n[0] > 1.5),
            of("heat-path", "worse than rated", ", # times the rated", n -> n[0] > 1.15 && n[0] <= 1.5),
            of("heat-path", "as rated", ", # times the rated", n -> n[0] <= 1.15 && n[0] >= 0.666),
            of("heat-path", "too hot", "# °C at .* limit of # °C", n -> n[0] >= n[1]),
            of("fan", "at duty", ": # % of it, with a tolerance of # %", n -> Math.abs(n[0] - 100) <= n[1] + 1e-9),
            of("fan", "slow", ": # % of it, with a tolerance of # %", n -> n[0] < 100 - n[1] && n[0] >= 50),
            of("fan", "much too slow", ": # % of it", n -> n[0] < 50),
            of("fan", "faster than its duty asks", ": # % of it, with a tolerance of # %", n -> n[0] > 100 + n[1]),
            of("fan", "faster than a fan can be: check the pulses per turn", "is # % of its rated", n -> n[0] > 150),
            of("room-heat", "more heat than cooling", "are # % of", n -> n[0] > 100),
            of("room-heat", "little cooling in hand", "are # % of", n -> n[0] > 80 && n[0] <= 100),
            of("array", "survives 1 failure, the rebuild is risky", "at most about # %", n -> n[0] > 10),
            of("array", "survives 1 failure", "at most about # %", n -> n[0] <= 10),
            of("backup-time", "does not finish in time", "about # h and # h", n -> n[0] > n[1]),
            of(
                    "backup-time",
                    "finishes with little to spare",
                    "about # h and # h",
                    n -> n[0] <= n[1] && n[0] > n[1] / 2),
            of("backup-time", "finishes before it", "about # h and # h", n -> n[0] <= n[1] / 2),
            of("endurance", "rated endurance used up", "^# % of", n -> n[0] >= 100),
            of("endurance", "endurance left", "about # days are left, perhaps only #", n -> n[1] >= 90 && n[0] >= n[1]),
            of("endurance", "endurance left, by two readings only", "about # days are left", n -> n[0] >= 90),
            of("poe-budget", "budget exceeded", "^# W of # W .* headroom # W", n -> n[0] > n[1] && n[2] < 0),
            of("poe-budget", "within the budget", "^# W of # W .* headroom # W", n -> n[2] >= 0.1 * n[1] * (1 - 1e-12)),
            of(
                    "poe-budget",
                    "within the budget, little headroom",
                    "^# W of # W .* headroom # W",
                    n -> n[2] >= 0 && n[2] < 0.1 * n[1]),
            of("path-throughput", "the link binds", "most # Mb/s of the link's # Mb/s", n -> n[0] == n[1]),
            of("path-throughput", "the window binds", "most # Mb/s of the link's # Mb/s", n -> n[0] < n[1]),
            of("path-throughput", "loss binds", "most # Mb/s of the link's # Mb/s", n -> n[0] < n[1]),
            of("loss", "the loss is real", "between # % and # %; allowed are # %", n -> n[0] > n[2] && n[1] >= n[0]),
            of("loss", "within what is allowed", "between # % and # %; allowed are # %", n -> n[1] <= n[2]),
            of(
                    "loss",
                    "too few probes to say",
                    "between # % and # %; allowed are # %",
                    n -> n[0] <= n[2] && n[1] > n[2]),
            of(
                    "radio-link",
                    "too weak for the rate",
                    "^# dBm are received, # dBm needed: margin # dB",
                    n -> n[2] < 0 && n[0] < n[1]),
            of("radio-link", "little margin", "margin # dB, wanted # dB", n -> n[0] >= 0 && n[0] < n[1]),
            of("radio-link", "margin enough", "margin # dB, wanted # dB", n -> n[0] >= n[1]),
            of("radio-link", "margin enough", "^# dBm are received", n -> n[0] <= -20),
            of(
                    "radio-link",
                    "margin enough, but too strong for many receivers",
                    "^# dBm are received.* Above # dBm",
                    n -> n[0] > n[1]),
            of("jitter", "above what is allowed", "is # ms over .* allowed are # ms", n -> n[0] > n[1]),
            of("jitter", "within what is allowed", "is # ms over .* allowed are # ms", n -> n[0] <= n[1]),
            of("voice", "best", "^R = # ", n -> n[0] >= 90),
            of("voice", "best", "delay of # ms", n -> n[0] <= 150),
            of("voice", "best, but late", "delay of # ms", n -> n[0] > 150 && n[0] <= 400),
            of("voice", "high, but late", "delay of # ms", n -> n[0] > 150 && n[0] <= 400),
            of("voice", "low, but far too late", "delay of # ms", n -> n[0] > 400),
            of("voice", "high", "^R = # ", n -> n[0] >= 80 && n[0] < 90),
            of("voice", "medium", "^R = # ", n -> n[0] >= 70 && n[0] < 80),
            of("voice", "low", "^R = # ", n -> n[0] >= 60 && n[0] < 70),
            of("voice", "poor", "^R = # ", n -> n[0] >= 50 && n[0] < 60),
            of("copper-link", "insertion loss above the limit", "margin # dB", n -> n[0] < 0),
            of("copper-link", "within the limit", "margin # dB", n -> n[0] >= 0),
            of("soak", "ran long enough", "for # h and has run for # h", n -> n[1] >= n[0]),
            of("soak", "not long enough yet", "for # h and has run for # h", n -> n[1] < n[0]),
            of("against-limit", "within", "^# .* limits of # to # ", n -> n[0] >= n[1] && n[0] <= n[2]),
            of("before-after", "no change shown", "\\(# to # ", n -> n[0] <= 0 && n[1] >= 0),
            of("before-after", "changed for the better", "\\(# to # ", n -> n[0] * n[1] > 0),
            of("before-after", "changed for the worse", "\\(# to # ", n -> n[0] * n[1] > 0));

    private static boolean isOutside(double value, double low, double high) {
        return value < Math.min(abs(low), abs(high)) || value > Math.max(abs(low), abs(high));
    }

    private static final Map<String, List<Saying>> BY_CALCULATION =
            ALL.stream().collect(Collectors.groupingBy(Saying::calculation));

    /** What the sentences of one calculation have to be true of. */
    static List<Saying> of(String calculation) {
        return BY_CALCULATION.getOrDefault(calculation, List.of());
    }

    /** Whether a result that carries these words says something else; the pattern need not be found in every sentence. */
    boolean isBroken(Result result) {
        if (!words.equals(result.judgement().words())) {
            return false;
        }
        Matcher found = pattern.matcher(result.judgement().reason());
        if (!found.find()) {
            return false;
        }
        List<Double> numbers = new ArrayList<>();
        for (int i = 1; i <= found.groupCount(); i++) {
            numbers.add(Double.valueOf(found.group(i)));
        }
        return !holds.test(numbers.stream().mapToDouble(d -> d).toArray());
    }
}

package org.benchtrail.core.bench;

import java.util.Arrays;
import java.util.List;
import org.benchtrail.core.bench.Result.Level;

/**
 * Which way one input drives the verdict while all others stay: the levels in the order in which they may come as it grows.
 * Some may be left out, none may come back.
 */
record Drive(String calculation, String path, List<Level> order) {
    private static Drive of(String calculation, String path, String order) {
        return new Drive(
                calculation,
                path,
                Arrays.stream(order.split(" ")).map(Level::valueOf).toList());
    }

    static final List<Drive> ALL = List.of(
            of("rails", "readings[0].idle", "BAD UNDECIDED CAREFUL GOOD CAREFUL UNDECIDED BAD"),
            of("rails", "readings[1].load", "BAD UNDECIDED CAREFUL GOOD CAREFUL UNDECIDED BAD"),
            of("supply-size", "ratedWatts", "BAD CAREFUL GOOD"),
            of("supply-size", "twelveVoltWatts", "BAD CAREFUL GOOD"),
            of("supply-size", "parts[2].watts", "GOOD CAREFUL BAD"),
            of("supply-size", "parts[0].peakWatts", "GOOD CAREFUL BAD"),
            of(
                    "mains",
                    "volts",
                    "BAD UNDECIDED CAREFUL UNDECIDED CAREFUL GOOD CAREFUL UNDECIDED CAREFUL UNDECIDED BAD"),
            of("mains", "hertz", "BAD UNDECIDED CAREFUL GOOD CAREFUL UNDECIDED BAD"),
            of("ups-load", "ratedWatts", "BAD CAREFUL GOOD"),
            of("ups-load", "amps", "GOOD CAREFUL BAD"),
            of("ups-outlets", "ratedWatts", "BAD CAREFUL GOOD"),
            of("ups-runtime", "watts", "GOOD CAREFUL BAD"),
            of("ups-runtime", "health", "BAD CAREFUL GOOD"),
            of("ups-runtime", "ampHours", "BAD CAREFUL GOOD"),
            of("ups-runtime", "shutdownMinutes", "GOOD CAREFUL BAD"),
            of("battery-health", "fullCharge", "BAD CAREFUL GOOD"),
            of("heat-path", "chip", "UNDECIDED GOOD CAREFUL BAD"),
            of("heat-path", "watts", "BAD CAREFUL GOOD UNDECIDED"),
            of("clock-heat", "clock", "GOOD CAREFUL"),
            of("clock-heat", "volts", "GOOD CAREFUL"),
            of("warm-up", "trip", "BAD UNDECIDED CAREFUL GOOD"),
            of("fan", "speed", "BAD CAREFUL GOOD CAREFUL UNDECIDED"),
            of("fan", "tolerance", "CAREFUL GOOD"),
            of("room-heat", "coolingWatts", "BAD CAREFUL GOOD"),
            of("room-heat", "inlet", "BAD CAREFUL GOOD CAREFUL BAD"),
            of("room-heat", "sources[0].watts", "GOOD CAREFUL BAD"),
            of("array", "errorsPerBit", "GOOD CAREFUL"),
            of("backup-time", "amount", "GOOD CAREFUL BAD"),
            of("backup-time", "rate", "BAD CAREFUL GOOD"),
            of("backup-time", "left", "BAD CAREFUL GOOD"),
            of("endurance", "rated", "BAD CAREFUL UNDECIDED GOOD"),
            of("poe-budget", "budget", "BAD CAREFUL GOOD"),
            of("poe-budget", "ports[0].metres", "GOOD CAREFUL BAD"),
            of("path-throughput", "bandwidth", "GOOD CAREFUL"),
            of("path-throughput", "loss", "GOOD CAREFUL BAD"),
            of("loss", "allowed", "BAD UNDECIDED GOOD"),
            of("copper-link", "readings[0].loss", "GOOD CAREFUL UNDECIDED BAD"),
            of("copper-link", "cords", "GOOD CAREFUL UNDECIDED BAD"),
            of("copper-link", "permanent", "GOOD CAREFUL UNDECIDED BAD"),
            of("radio-link", "power", "BAD CAREFUL GOOD CAREFUL"),
            of("radio-link", "distance", "CAREFUL GOOD CAREFUL BAD"),
            of("radio-link", "sensitivity", "GOOD CAREFUL BAD"),
            of("radio-link", "wanted", "GOOD CAREFUL"),
            of("voice", "delay", "GOOD CAREFUL UNDECIDED BAD"),
            of("voice", "loss", "GOOD CAREFUL UNDECIDED BAD"),
            of("jitter", "allowed", "BAD UNDECIDED GOOD"),
            of("against-limit", "value", "BAD UNDECIDED GOOD UNDECIDED BAD"),
            of("before-after", "confidence", "GOOD BAD UNDECIDED"),
            of("soak", "clean", "UNDECIDED GOOD"),
            of("soak", "every", "GOOD UNDECIDED"),
            of("soak", "doubt", "UNDECIDED GOOD"));

    /** Whether the levels, in the order of the growing input, go the way this input drives them. */
    boolean leads(List<Level> seen) {
        int at = 0;
        for (Level level : seen) {
            while (at < order.size() && order.get(at) != level) {
                at++;
            }
        }
        return seen.size() < 2 || at < order.size();
    }
}

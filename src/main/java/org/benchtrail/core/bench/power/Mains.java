package org.benchtrail.core.bench.power;

import java.util.Arrays;
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
 * A spot reading of the mains, rms volts and hertz, against the published range of the region.
 *
 * <p>Sources: IEC 60038 (230 V, 10 % either way), EN 50160 (all ten-minute means within +10/-15 %; frequency within 1 % for
 * 99.5 % of the year and within +4/-6 % always), ANSI C84.1 table 1 (120 V; from memory, and the utilization limits differ
 * between editions, so the edition is a choice of the input). Limits are inclusive. Frequency limits at 60 Hz are common
 * practice.
 */
public final class Mains {
    public enum Region implements Choice {
        EUROPE_230_V(
                "Europe, 230 V",
                230,
                207,
                253,
                195.5,
                253,
                Citation.seen("IEC 60038, IEC standard voltages"),
                Citation.seen(
                        "EN 50160, Voltage characteristics of public electricity networks, all ten-minute means")),
        NORTH_AMERICA_120_V_SERVICE(
                "North America, 120 V, at the service entrance",
                120,
                114,
                126,
                110,
                127,
                Citation.fromMemory("ANSI C84.1, Voltage Ratings, range A, service"),
                Citation.fromMemory("ANSI C84.1, Voltage Ratings, range B, service")),
        NORTH_AMERICA_120_V_OUTLET(
                "North America, 120 V, at the outlet",
                120,
                108,
                126,
                104,
                127,
                Citation.fromMemory("ANSI C84.1, Voltage Ratings, range A, utilization"),
                Citation.fromMemory("ANSI C84.1, Voltage Ratings, range B, utilization")),
        NORTH_AMERICA_120_V_OUTLET_OLDER(
                "North America, 120 V, at the outlet, older edition",
                120,
                110,
                126,
                106,
                127,
                Citation.fromMemory("ANSI C84.1, Voltage Ratings, range A, utilization, older edition"),
                Citation.fromMemory("ANSI C84.1, Voltage Ratings, range B, utilization, older edition")),
        JAPAN_100_V(
                "Japan, 100 V",
                100,
                95,
                107,
                90,
                110,
                Citation.fromMemory("Japan, ordinance on the electricity business law, 101 V plus or minus 6 V"),
                Citation.COMMON_PRACTICE);

        private final String words;

        private final double nominal;
        private final Band normal;
        private final Band wider;

        Region(
                String words,
                double nominal,
                double low,
                double high,
                double widerLow,
                double widerHigh,
                Citation source,
                Citation widerSource) {
            this.words = words;
            this.nominal = nominal;
            this.normal = new Band(low, high, source);
            this.wider = new Band(widerLow, widerHigh, widerSource);
        }

        @Override
        public String words() {
            return words;
        }

        /** Lowest voltage of the usual range, inclusive, V. */
        public double lowest() {
            return normal.low();
        }

        /** Highest voltage of the usual range, inclusive, V. */
        public double highest() {
            return normal.high();
        }

        /** Nominal frequency, the nearer one where the east and the west of a country have two. */
        double hertz(double read) {
            boolean fifty = this == EUROPE_230_V || (this == JAPAN_100_V && read < BETWEEN_HERTZ);
            return fifty ? 50 : 60;
        }

        /** Whether a reading looks like this region's mains at all: within a quarter of its voltage, at its frequency. */
        boolean looksLike(double volts, double hertz) {
            return Math.abs(volts - nominal) <= nominal / 4 && Math.abs(hertz - hertz(hertz)) < BETWEEN_HERTZ - 50;
        }
    }

    /** Hz; nearer to 50 below, nearer to 60 above. */
    private static final double BETWEEN_HERTZ = 55;

    record Band(double low, double high, Citation source) {
        boolean holds(double value) {
            return value >= low && value <= high;
        }

        boolean near(double value, double uncertainty) {
            return Side.below(Math.abs(value - low), uncertainty) || Side.below(Math.abs(value - high), uncertainty);
        }

        String text(String unit) {
            return Numeral.of(low) + " to " + Numeral.of(high) + " " + unit;
        }
    }

    /** Of the nominal voltage. */
    private static final double HARDLY_ANY = 0.4;

    private static final double TWICE = 1.6;

    private static final Band HERTZ_50 = new Band(
            49.5,
            50.5,
            Citation.seen("EN 50160, Voltage characteristics of public electricity networks, 99.5 % of the year"));
    private static final Band HERTZ_50_ALWAYS =
            new Band(47, 52, Citation.seen("EN 50160, Voltage characteristics of public electricity networks, always"));
    private static final Band HERTZ_60 = new Band(59.4, 60.6, Citation.COMMON_PRACTICE);
    private static final Band HERTZ_60_ALWAYS = new Band(56.4, 62.4, Citation.COMMON_PRACTICE);

    public record Input(
            @Ask(label = "Region and place", hint = "Outlet for a reading at a socket, service for one at the entrance")
            Region region,

            @Ask(
                    label = "Voltage",
                    unit = "V",
                    hint = "True-rms reading between line and neutral, or from the UPS's display")
            double volts,

            @Ask(label = "Frequency", unit = "Hz", hint = "Empty if not measured") @Nullable
            Double hertz,

            @Ask(label = "Expanded uncertainty of the meter", unit = "V", hint = "U at k = 2; empty to compare without")
            @Nullable
            Double uncertainty) {
        public Input {
            InputCheck check = new InputCheck();
            check.present("region", region);
            check.within("volts", volts, 0, 1000, "V");
            check.optional("hertz", hertz, 1, 1000, "Hz");
            check.optional("uncertainty", uncertainty, 0, 50, "V");
            if (check.isClean() && hertz != null) {
                check.ask(
                        "region",
                        volts,
                        isOfAnother(region, volts, hertz),
                        v -> Numeral.of(v) + " V at "
                                + Numeral.of(hertz) + " Hz look like the mains of another region than "
                                + region.words() + ": is the region right?");
            }
            check.done();
        }
    }

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "mains",
            3,
            Trade.POWER,
            "Mains voltage and frequency",
            "Is the mains voltage and frequency within its published range?",
            new Input(Region.EUROPE_230_V, 226.4, 50.02, 1.8),
            Mains::calculate);

    private Mains() {}

    /** Whether voltage and frequency both speak against the region and for another one. */
    private static boolean isOfAnother(Region region, double volts, double hertz) {
        boolean strange = Math.abs(volts - region.nominal) > region.nominal / 4
                && Math.abs(hertz - region.hertz(hertz)) >= BETWEEN_HERTZ - 50;
        return strange && Arrays.stream(Region.values()).anyMatch(other -> other.looksLike(volts, hertz));
    }

    public static Result calculate(Input input) {
        ResultDraft draft = new ResultDraft();
        volts(draft, input);
        Double hertz = input.hertz();
        if (hertz != null) {
            hertz(draft, input.region(), hertz);
        }
        draft.assume("This is a spot reading. The published ranges speak of means over ten minutes, a week or a year.")
                .assume("Work on the wiring, the outlet or the panel belongs to a licensed electrician under the local"
                        + " code.")
                .caution("MAINS");
        doubts(draft, input.volts(), input.region().nominal);
        Rule deciding = Severity.deciding(draft.rules());
        return draft.judged(deciding.outcome(), words(deciding.outcome()), Severity.reason(draft.rules()));
    }

    /** What a voltage far off may be besides a fault: a slip, stray volts, another pair of wires. */
    private static void doubts(ResultDraft draft, double volts, double nominal) {
        if (volts == 0) {
            draft.assume("0 V shows no supply at this point only: prove the meter on a live source, before and after.");
        } else if (volts < HARDLY_ANY * nominal) {
            draft.assume("Far below any mains: did the decimal point slip? On a conductor that is not connected a meter"
                    + " also shows stray volts; treat it as live until it is proven dead.");
        } else if (volts > TWICE * nominal) {
            draft.assume("Near or above twice the nominal voltage: was it read between two line conductors, or is the"
                    + " neutral broken? Switch nothing on.");
        }
    }

    private static String words(Level level) {
        return switch (level) {
            case BAD -> "spot reading outside the range";
            case UNDECIDED -> "too close to call";
            case CAREFUL -> "spot reading in the wider range only";
            case GOOD, NONE -> "spot reading within the range";
        };
    }

    private static void volts(ResultDraft draft, Input input) {
        Region region = input.region();
        deviation(draft, "Voltage, deviation", input.volts(), region.nominal);
        double uncertainty = input.uncertainty() == null ? 0 : input.uncertainty();
        if (region.normal.near(input.volts(), uncertainty)) {
            tooClose(draft, input.volts(), uncertainty, region.normal);
        } else if (region.wider.near(input.volts(), uncertainty)) {
            tooClose(draft, input.volts(), uncertainty, region.wider);
        } else {
            judge(draft, "Voltage", input.volts(), "V", region.normal, region.wider);
        }
    }

    private static void tooClose(ResultDraft draft, double volts, double uncertainty, Band band) {
        String sentence = Numeral.of(volts) + " V is nearer to a limit of " + band.text("V")
                + " than the uncertainty of " + Numeral.of(uncertainty) + " V.";
        draft.rule("Voltage", Level.UNDECIDED, sentence, band.source());
    }

    private static void hertz(ResultDraft draft, Region region, double hertz) {
        double nominal = region.hertz(hertz);
        deviation(draft, "Frequency, deviation", hertz, nominal);
        boolean fifty = nominal == 50;
        judge(draft, "Frequency", hertz, "Hz", fifty ? HERTZ_50 : HERTZ_60, fifty ? HERTZ_50_ALWAYS : HERTZ_60_ALWAYS);
    }

    private static void deviation(ResultDraft draft, String name, double value, double nominal) {
        draft.figure(
                name,
                "100 × (measured - nominal) / nominal",
                "100 × (" + Numeral.of(value) + " - " + Numeral.of(nominal) + ") / " + Numeral.of(nominal),
                100 * (value - nominal) / nominal,
                "%",
                3);
    }

    private static void judge(ResultDraft draft, String name, double value, String unit, Band normal, Band wider) {
        String read = Numeral.of(value) + " " + unit;
        if (normal.holds(value)) {
            draft.rule(name, Level.GOOD, read + " lies within " + normal.text(unit) + ".", normal.source());
        } else if (wider.holds(value)) {
            String sentence =
                    read + " lies outside " + normal.text(unit) + ", within the wider " + wider.text(unit) + ".";
            draft.rule(name, Level.CAREFUL, sentence, wider.source());
        } else {
            draft.rule(name, Level.BAD, read + " lies outside " + wider.text(unit) + ".", wider.source());
        }
    }
}

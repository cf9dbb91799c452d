package org.benchtrail.core.bench.network;

import static org.benchtrail.core.bench.Numeral.beside;
import static org.benchtrail.core.bench.Numeral.digitsBeside;
import static org.benchtrail.core.bench.Numeral.of;

import java.util.Comparator;
import java.util.List;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Choice;
import org.benchtrail.core.bench.Citation;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.Result.Point;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Side;
import org.benchtrail.core.bench.Trade;

/**
 * A twisted-pair channel: its length, and its measured insertion loss against the limit of its class.
 *
 * <p>Sources: ISO/IEC 11801 channel limits as tabulated in an IEEE 802.3 task-force contribution of March 2004 (seen);
 * TIA-568-C.2 (from memory).
 */
public final class CopperLink {
    private static final double ISO_FLOOR = 4.0;

    /** Class or category with its insertion-loss limit: factor (a √f + b f + c / √f) + 4 d √f + e f^1.5, f in MHz, in dB. */
    public enum Category implements Choice {
        ISO_D("class D (ISO/IEC 11801)", 100, 1.05, 1.9108, 0.0222, 0.20, 0.04, 0),
        ISO_E("class E (ISO/IEC 11801)", 250, 1.05, 1.82, 0.0169, 0.25, 0.02, 0),
        ISO_F("class F (ISO/IEC 11801)", 600, 1.05, 1.80, 0.0100, 0.20, 0.02, 0),
        TIA_5E("category 5e (TIA-568)", 100, 1.02, 1.967, 0.023, 0.050, 0.04, 0),
        TIA_6("category 6 (TIA-568)", 250, 1.02, 1.808, 0.017, 0.2, 0.02, 0.0003);

        private final String words;

        private final double highest;
        private final double factor;
        private final double root;
        private final double linear;
        private final double inverse;
        private final double plug;
        private final double power;

        Category(
                String words,
                double highest,
                double factor,
                double root,
                double linear,
                double inverse,
                double plug,
                double power) {
            this.words = words;
            this.highest = highest;
            this.factor = factor;
            this.root = root;
            this.linear = linear;
            this.inverse = inverse;
            this.plug = plug;
            this.power = power;
        }

        @Override
        public String words() {
            return words;
        }

        /** Highest frequency the category is defined for, MHz; the lowest is 1. */
        public double highest() {
            return highest;
        }

        /** In dB: that of the formula, but for ISO never below its floor. */
        double limit(double f) {
            return iso() ? Math.max(ISO_FLOOR, computed(f)) : computed(f);
        }

        /** The formula's value, in dB. */
        double computed(double f) {
            double r = Math.sqrt(f);
            return factor * (root * r + linear * f + inverse / r) + 4 * plug * r + power * f * r;
        }

        boolean isAtFloor(double f) {
            return limit(f) > computed(f);
        }

        String formula() {
            return String.format(
                    java.util.Locale.ROOT,
                    "%s × (%s × √f + %s × f + %s / √f) + 4 × %s × √f + %s × f^1.5",
                    of(factor),
                    of(root),
                    of(linear),
                    of(inverse),
                    of(plug),
                    of(power));
        }

        String put(double f) {
            return formula()
                    .replace("√f", "√" + of(f))
                    .replace("× f^", "× " + of(f) + "^")
                    .replace("× f", "× " + of(f));
        }

        boolean iso() {
            return name().startsWith("ISO");
        }

        Citation source() {
            return iso()
                    ? Citation.seen(
                            "ISO/IEC 11801, Generic cabling for customer premises, limits as in an IEEE 802.3 contribution of"
                                    + " March 2004")
                    : Citation.fromMemory(
                            "TIA-568-C.2, Balanced Twisted-Pair Telecommunications Cabling and Components Standards");
        }
    }

    /** One point of the tester's sweep, worst pair. */
    public record Reading(
            @Ask(label = "Frequency", unit = "MHz") double frequency,

            @Ask(label = "Insertion loss", unit = "dB", hint = "Worst pair, as a positive number")
            double loss) {}

    public record Input(
            @Ask(label = "Class or category") Category category,

            @Ask(label = "Permanent link", unit = "m", hint = "From outlet to panel")
            double permanent,

            @Ask(label = "Cords in all", unit = "m", hint = "Both ends together")
            double cords,

            @Ask(label = "Measured insertion loss", hint = "May be empty: then only the length is judged")
            List<Reading> readings,

            @Ask(label = "Uncertainty of the tester", unit = "dB", hint = "Expanded, off its datasheet; 0 if unknown")
            double uncertainty) {
        public Input {
            InputCheck check = new InputCheck();
            boolean known = check.present("category", category);
            check.within("permanent", permanent, 0.01, 1000, "m");
            check.within("cords", cords, 0, 1000, "m");
            double highest = known ? category.highest() : 600;
            readings = check.list("readings", readings, 0, 2000, (path, reading) -> {
                check.within(path + ".frequency", reading.frequency(), 1, highest, "MHz");
                check.within(path + ".loss", reading.loss(), 0, 200, "dB");
            });
            check.rule(
                    readings.stream().mapToDouble(Reading::frequency).distinct().count() == readings.size(),
                    "readings",
                    "give each frequency once");
            check.within("uncertainty", uncertainty, 0, 10, "dB");
            check.done();
        }
    }

    private static final double LONGEST_LINK = 90;
    private static final double LONGEST_CHANNEL = 100;
    private static final Citation FLOOR_SOURCE =
            Citation.fromMemory("ISO/IEC 11801, Generic cabling for customer premises, limits below 4.0 dB");
    private static final Citation CORD_SOURCE = Citation.fromMemory(
            "TIA-568-C.1, Commercial Building Telecommunications Cabling Standard, cord lengths in open offices");
    private static final Citation LENGTH_SOURCE =
            Citation.seen("ISO/IEC 11801, Generic cabling for customer premises; IEEE 802.3, Standard for Ethernet");

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "copper-link",
            2,
            Trade.NETWORK,
            "Copper link",
            "Are this channel's length and measured insertion loss within the limit of its class?",
            new Input(
                    Category.ISO_E,
                    62,
                    8,
                    List.of(new Reading(1, 1.4), new Reading(10, 4.5), new Reading(100, 15.1), new Reading(250, 25.2)),
                    0.3),
            CopperLink::calculate);

    private CopperLink() {}

    public static Result calculate(Input in) {
        ResultDraft draft = new ResultDraft();
        boolean fits = length(draft, in);
        curves(draft, in);
        draft.assume("Copper at 20 °C; a warmer cable loses more.");
        if (in.readings().isEmpty()) {
            return unmeasured(draft, in, fits);
        }
        Reading worst = in.readings().stream()
                .min(Comparator.comparingDouble(r -> margin(in, r)))
                .orElseThrow();
        double limit = draft.figure(
                "Limit at the worst point",
                "IL = " + (in.category().iso() ? "the greater of 4 and " : "")
                        + in.category().formula(),
                put(in.category(), worst.frequency()),
                in.category().limit(worst.frequency()),
                "dB",
                4);
        double margin = draft.figure(
                "Margin at the worst point",
                "limit - measured",
                of(limit) + " - " + of(worst.loss()),
                margin(in, worst),
                "dB",
                3);
        in.readings().forEach(r -> row(draft, in, r));
        return judge(draft, in, fits, worst, margin);
    }

    private static String put(Category category, double f) {
        return category.iso() ? "max(4, " + category.put(f) + ")" : category.put(f);
    }

    private static double margin(Input in, Reading r) {
        return Side.rest(in.category().limit(r.frequency()), r.loss());
    }

    private static boolean length(ResultDraft draft, Input in) {
        double channel = draft.figure(
                "Channel length",
                "permanent link + cords",
                of(in.permanent()) + " + " + of(in.cords()),
                in.permanent() + in.cords(),
                "m",
                digitsBeside(in.permanent() + in.cords(), 4, LONGEST_CHANNEL));
        boolean link = in.permanent() <= LONGEST_LINK;
        boolean whole = !Side.above(channel, LONGEST_CHANNEL);
        draft.rule(
                "permanent link",
                link ? Level.GOOD : Level.BAD,
                of(in.permanent()) + " m, at most 90 m.",
                LENGTH_SOURCE);
        draft.rule(
                "channel",
                whole ? Level.GOOD : Level.BAD,
                beside(channel, 9, LONGEST_CHANNEL) + " m, at most 100 m.",
                LENGTH_SOURCE);
        cords(draft, in);
        return link && whole;
    }

    /** Stranded cords lose a fifth more for each metre: what the link leaves of 102 m, divided by 1.2, is theirs. */
    static double longestCords(double link) {
        return (102 - link) / 1.2;
    }

    private static void cords(ResultDraft draft, Input in) {
        double most = longestCords(in.permanent());
        boolean longer = Side.above(in.cords(), most);
        draft.rule(
                "cords",
                longer ? Level.CAREFUL : Level.GOOD,
                of(in.cords()) + " m, at most " + beside(Math.max(0, most), 3, in.cords()) + " m beside this link"
                        + (longer ? ": stranded cords lose more than solid cable." : "."),
                CORD_SOURCE);
    }

    /** Inclusive: a loss at the limit conforms. Within the tester's uncertainty of the limit nothing is decided. */
    private static Level level(Input in, Reading r) {
        double margin = margin(in, r);
        if (Side.below(Math.abs(margin), in.uncertainty())) {
            return Level.UNDECIDED;
        }
        return margin >= 0 ? Level.GOOD : Level.BAD;
    }

    private static void row(ResultDraft draft, Input in, Reading r) {
        double limit = in.category().limit(r.frequency());
        boolean floor = in.category().isAtFloor(r.frequency());
        draft.rule(
                "insertion loss at " + of(r.frequency()) + " MHz",
                level(in, r),
                of(r.loss()) + " dB"
                        + (in.uncertainty() == 0 ? "" : ", give or take " + of(in.uncertainty()) + " dB") + ", limit "
                        + beside(limit, 4, r.loss(), r.loss() + in.uncertainty(), r.loss() - in.uncertainty()) + " dB"
                        + (floor ? ", below which the standard lowers none." : "."),
                floor ? FLOOR_SOURCE : in.category().source());
    }

    private static void curves(ResultDraft draft, Input in) {
        draft.curve(new Curve(
                "Limit",
                "frequency",
                "MHz",
                "insertion loss",
                "dB",
                ResultDraft.sample(1, in.category().highest(), 100, in.category()::limit)));
        if (!in.readings().isEmpty()) {
            draft.curve(new Curve(
                    "Measured",
                    "frequency",
                    "MHz",
                    "insertion loss",
                    "dB",
                    in.readings().stream()
                            .sorted(Comparator.comparingDouble(Reading::frequency))
                            .map(r -> new Point(r.frequency(), r.loss()))
                            .toList()));
        }
    }

    private static Result unmeasured(ResultDraft draft, Input in, boolean fits) {
        String length = "The channel is " + beside(in.permanent() + in.cords(), 9, LONGEST_CHANNEL)
                + " m long, its link " + of(in.permanent()) + " m, against 100 m and 90 m";
        return fits
                ? draft.judged(Level.UNDECIDED, "length within, loss not measured", length + ".")
                : draft.judged(Level.BAD, "too long", length + ".");
    }

    private static Result judge(ResultDraft draft, Input in, boolean fits, Reading worst, double margin) {
        String reason = "Worst at " + of(worst.frequency()) + " MHz: " + of(worst.loss()) + " dB measured, margin "
                + beside(margin, 3, 0, in.uncertainty(), -in.uncertainty()) + " dB; the channel is "
                + beside(in.permanent() + in.cords(), 9, LONGEST_CHANNEL) + " m long.";
        List<Level> levels = in.readings().stream().map(r -> level(in, r)).toList();
        if (!fits) {
            return draft.judged(Level.BAD, "too long", reason);
        }
        if (levels.contains(Level.BAD)) {
            return draft.judged(Level.BAD, "insertion loss above the limit", reason);
        }
        if (levels.contains(Level.UNDECIDED)) {
            return draft.judged(
                    Level.UNDECIDED,
                    "too close to call",
                    reason + " The tester is good to " + of(in.uncertainty()) + " dB.");
        }
        return Side.above(in.cords(), longestCords(in.permanent()))
                ? draft.judged(Level.CAREFUL, "within the limit, with long cords", reason)
                : draft.judged(Level.GOOD, "within the limit", reason);
    }
}

package org.benchtrail.core.bench.storage;

import static org.benchtrail.core.bench.Numeral.beside;
import static org.benchtrail.core.bench.Numeral.digitsBeside;
import static org.benchtrail.core.bench.Numeral.of;
import static org.benchtrail.core.bench.Numeral.percent;

import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Choice;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Side;
import org.benchtrail.core.bench.Trade;

/**
 * Capacity, failures survived, rebuild and exposure of a disk array.
 *
 * <p>Sources: SNIA DDF definitions for capacity and tolerance; Patterson, Gibson, Katz, SIGMOD 1988, for the mean time to data
 * loss with one check disk; its extension to more failures is the textbook product form (Chen et al., ACM Computing Surveys
 * 1994, from memory).
 */
public final class Array {
    /** The five levels that are judged, with what each asks of its members. */
    public enum RaidLevel implements Choice {
        RAID0("RAID 0", 2),
        RAID1("RAID 1", 2),
        RAID5("RAID 5", 3),
        RAID6("RAID 6", 4),
        RAID10("RAID 10", 4);

        private final String words;
        private final int least;

        RaidLevel(String words, int least) {
            this.words = words;
            this.least = least;
        }

        @Override
        public String words() {
            return words;
        }

        /** As sentences name it. */
        @Override
        public String toString() {
            return words;
        }

        public int least() {
            return least;
        }

        /** Members' worth of capacity that can be used, of n. */
        int usable(int n) {
            return switch (this) {
                case RAID0 -> n;
                case RAID1 -> 1;
                case RAID5 -> n - 1;
                case RAID6 -> n - 2;
                case RAID10 -> n / 2;
            };
        }

        /** Failures survived whichever members fail. */
        int survives(int n) {
            return switch (this) {
                case RAID0 -> 0;
                case RAID1 -> n - 1;
                case RAID5, RAID10 -> 1;
                case RAID6 -> 2;
            };
        }

        int survivesAtBest(int n) {
            return this == RAID10 ? n / 2 : survives(n);
        }

        /** Members that must be read in full when as many have failed as are survived for certain. */
        int readInRebuild(int n) {
            return switch (this) {
                case RAID0 -> 0;
                case RAID1, RAID10 -> 1;
                case RAID5 -> n - 1;
                case RAID6 -> n - 2;
            };
        }
    }

    public record Input(
            @Ask(label = "Level") RaidLevel level,

            @Ask(label = "Members", unit = "TB", hint = "Capacity of each, decimal terabytes, off the label")
            List<Double> members,

            @Ask(label = "Rebuild rate", unit = "MB/s", hint = "Sustained write rate of one member")
            double rebuildRate,

            @Ask(label = "Share of the rate under load", unit = "%", hint = "100 if the array is idle, about 30 in use")
            double share,

            @Ask(label = "Unrecoverable read errors", unit = "1/bit", hint = "Datasheet, such as 1e-14 or 1e-15")
            double errorsPerBit,

            @Ask(label = "MTTF of one member", unit = "h", hint = "Datasheet; often called MTBF")
            double mttf,

            @Ask(label = "Time until the replacement is there", unit = "h", hint = "0 with a hot spare")
            double untilReplaced) {
        public Input {
            InputCheck check = new InputCheck();
            check.present("level", level);
            members = check.list("members", members, 2, 256, (path, tb) -> check.within(path, tb, 0.001, 1000, "TB"));
            for (int i = 0; i < members.size(); i++) {
                double largest = Collections.max(members);
                check.ask(
                        "members[" + i + "]",
                        members.get(i),
                        members.get(i) * UNLIKE < largest && Double.isFinite(largest),
                        tb -> "one member of " + of(tb) + " TB beside one of " + of(largest)
                                + " TB leaves nearly nothing of the array: is it in GB? Type it with its unit");
            }
            if (level != null && !members.isEmpty()) {
                check.rule(
                        members.size() >= level.least(),
                        "members",
                        level + " needs at least " + level.least() + " members, not " + members.size());
                check.rule(
                        level != RaidLevel.RAID10 || members.size() % 2 == 0,
                        "members",
                        level + " needs an even number of members, not " + members.size());
            }
            check.within("rebuildRate", rebuildRate, 0.1, 100_000, "MB/s");
            check.within("share", share, 1, 100, "%");
            check.zeroOr("errorsPerBit", errorsPerBit, 1e-20, 1e-6, "1/bit");
            check.within("mttf", mttf, 1, 1e8, "h");
            check.within("untilReplaced", untilReplaced, 0, 10_000, "h");
            check.done();
        }
    }

    /** How many times smaller a member can hardly be meant to be. */
    private static final double UNLIKE = 100;
    /** Percent of what the members hold, below which unlike ones leave much unused: common practice. */
    private static final double MUCH_LOST = 75;

    private static final double HOURS_PER_YEAR = 8760;
    private static final double BITS_PER_TB = 8e12;
    private static final double HIGH_CHANCE = 0.1;

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "array",
            3,
            Trade.STORAGE,
            "Disk array",
            "How much does the array hold, how many failures does it survive, and what does a rebuild risk?",
            new Input(RaidLevel.RAID5, List.of(4.0, 4.0, 4.0, 4.0), 150, 30, 1e-14, 1_200_000, 24),
            Array::calculate);

    private Array() {}

    /**
     * Patterson, Gibson, Katz 1988: MTTF^2 / ((D + C n_G)(G + C - 1) MTTR), in hours.
     *
     * @param data D, data disks in all
     * @param group G, data disks in a group
     * @param checks C, check disks in a group
     */
    static double meanTimeToDataLoss(double mttf, double mttr, int data, int group, int checks) {
        double groups = (double) data / group;
        return mttf * mttf / ((data + checks * groups) * (group + checks - 1) * mttr);
    }

    /** Chance of at least one unrecoverable error in so many bits: 1 - (1 - p)^bits, without cancellation. */
    static double unrecoverable(double perBit, double bits) {
        return -Math.expm1(bits * Math.log1p(-perBit));
    }

    /** Share of a population that fails within a year: 1 - e^(-8760 / MTTF). */
    static double annualFailureRate(double mttf) {
        return -Math.expm1(-HOURS_PER_YEAR / mttf);
    }

    public static Result calculate(Input in) {
        ResultDraft draft = new ResultDraft();
        double smallest =
                in.members().stream().mapToDouble(Double::doubleValue).min().orElseThrow();
        capacity(draft, in, smallest);
        yearly(draft, in);
        draft.assume("Capacity is that of the smallest member, in decimal terabytes, before any file system.");
        draft.assume("An array is no backup: it does not bring back what was deleted or overwritten.");
        draft.caution("DATA_LOSS");
        if (in.level() == RaidLevel.RAID0) {
            return withoutRedundancy(draft, in);
        }
        double rebuild = rebuild(draft, in, smallest);
        double chance = readError(draft, in, smallest);
        exposure(draft, in, rebuild);
        return judge(draft, in, chance, rebuild);
    }

    private static void capacity(ResultDraft draft, Input in, double smallest) {
        int n = in.members().size();
        int parts = in.level().usable(n);
        draft.say("Smallest member", "c = min of the members", "c = " + of(smallest) + " TB, n = " + n);
        draft.figure(
                "Usable capacity", usableFormula(in.level()), parts + " × " + of(smallest), parts * smallest, "TB", 4);
        draft.figure(
                "Share of the raw capacity",
                "usable / sum of the members × 100",
                shareText(in, parts * smallest),
                100 * parts * smallest / total(in),
                "%",
                3);
        int sure = in.level().survives(n);
        int best = in.level().survivesAtBest(n);
        draft.figure("Failures survived for certain", "table of the level", String.valueOf(sure), sure, "1", 3);
        draft.figure("Failures survived at best", "table of the level", String.valueOf(best), best, "1", 3);
        if (in.level() == RaidLevel.RAID10) {
            draft.figure(
                    "Chance that a second failure is fatal",
                    "1 / (n - 1) × 100",
                    "1 / (" + n + " - 1) × 100",
                    100.0 / (n - 1),
                    "%",
                    3);
        }
    }

    private static double total(Input in) {
        return in.members().stream().mapToDouble(Double::doubleValue).sum();
    }

    private static String shareText(Input in, double usable) {
        return of(usable) + " / " + of(total(in)) + " × 100";
    }

    private static String usableFormula(RaidLevel level) {
        return switch (level) {
            case RAID0 -> "n × c";
            case RAID1 -> "1 × c";
            case RAID5 -> "(n - 1) × c";
            case RAID6 -> "(n - 2) × c";
            case RAID10 -> "(n / 2) × c";
        };
    }

    private static void yearly(ResultDraft draft, Input in) {
        double rate = 100 * annualFailureRate(in.mttf());
        draft.figure(
                "Members that fail within a year",
                "AFR = (1 - e^(-8760 / MTTF)) × 100",
                "(1 - exp(-8760 / " + of(in.mttf()) + ")) × 100",
                rate,
                "%",
                3);
    }

    private static double rebuild(ResultDraft draft, Input in, double smallest) {
        double hours = smallest * 1e6 / (in.rebuildRate() * in.share() / 100) / 3600;
        draft.figure(
                "Rebuild time, at least",
                "t = c × 10^6 / (rate × share / 100) / 3600",
                of(smallest) + " × 10^6 / (" + of(in.rebuildRate()) + " × " + of(in.share()) + " / 100) / 3600",
                hours,
                "h",
                4);
        return hours;
    }

    private static double readError(ResultDraft draft, Input in, double smallest) {
        int read = in.level().readInRebuild(in.members().size());
        double bits = read * smallest * BITS_PER_TB;
        draft.step(
                "Bits read",
                "bits = members read × c × 8 × 10^12",
                read + " × " + of(smallest) + " × 8 × 10^12",
                bits,
                "bit",
                4);
        double chance = unrecoverable(in.errorsPerBit(), bits);
        draft.figure(
                "Chance of an unrecoverable read, at most about",
                "P = (1 - e^(-p × bits)) × 100, equal to 1 - (1 - p)^bits for small p",
                "(1 - exp(-" + of(in.errorsPerBit()) + " × " + of(bits) + ")) × 100",
                100 * chance,
                "%",
                digitsBeside(100 * chance, 3, 100 * HIGH_CHANCE));
        draft.curve(new Curve(
                "Unrecoverable read",
                "read in the rebuild",
                "TB",
                "chance",
                "%",
                ResultDraft.sample(
                        0, 2 * read * smallest, 41, tb -> 100 * unrecoverable(in.errorsPerBit(), tb * BITS_PER_TB))));
        draft.assume("The datasheet's error rate is an upper bound; the chance is at most about the one given.");
        if (in.level() == RaidLevel.RAID6) {
            draft.assume(
                    "The chance is for two members lost; with one lost the second parity still corrects a bad read.");
        } else if (keepsRedundancy(in)) {
            draft.assume("The chance is for one member left; with more left another copy still corrects a bad read.");
        }
        return chance;
    }

    private static void exposure(ResultDraft draft, Input in, double rebuild) {
        int n = in.members().size();
        double window = in.untilReplaced() + rebuild;
        draft.figure(
                "Time exposed", "MTTR = wait + rebuild", of(in.untilReplaced()) + " + " + of(rebuild), window, "h", 4);
        draft.figure(
                "Chance of a further failure meanwhile",
                "P = (1 - e^(-(n - 1) × MTTR / MTTF)) × 100",
                "(1 - exp(-(" + n + " - 1) × " + of(window) + " / " + of(in.mttf()) + ")) × 100",
                -100 * Math.expm1(-(n - 1) * window / in.mttf()),
                "%",
                3);
        if (window * n > in.mttf() / 10) {
            draft.assume(
                    "A mean time to data loss is not given: the formula needs a repair much shorter than MTTF / n.");
            return;
        }
        dataLoss(draft, in, window);
    }

    private static void dataLoss(ResultDraft draft, Input in, double window) {
        int n = in.members().size();
        if (in.level() == RaidLevel.RAID5 || in.level() == RaidLevel.RAID10) {
            int group = in.level() == RaidLevel.RAID5 ? n - 1 : 1;
            int data = in.level().usable(n);
            double hours = meanTimeToDataLoss(in.mttf(), window, data, group, 1);
            draft.figure(
                    "Mean time to data loss, optimistic",
                    "MTTF^2 / ((D + C × D / G)(G + C - 1) × MTTR) / 8760",
                    String.format(
                            Locale.ROOT,
                            "%s^2 / ((%d + 1 × %d / %d) × (%d + 1 - 1) × %s) / 8760",
                            of(in.mttf()),
                            data,
                            data,
                            group,
                            group,
                            of(window)),
                    hours / HOURS_PER_YEAR,
                    "a",
                    2);
        } else {
            severalFailures(draft, in, window);
        }
        draft.assume("Failures are taken as independent and evenly likely over life, bad reads left out: optimistic.");
    }

    private static void severalFailures(ResultDraft draft, Input in, double window) {
        int n = in.members().size();
        int k = in.level().survives(n);
        if (k > 2) {
            return;
        }
        double ways = k == 1 ? n * (n - 1.0) : n * (n - 1.0) * (n - 2.0);
        draft.figure(
                "Mean time to data loss, optimistic",
                "MTTF^(k+1) / (n(n-1)...(n-k) × MTTR^k) / 8760, k failures survived",
                of(in.mttf()) + "^" + (k + 1) + " / (" + of(ways) + " × " + of(window) + "^" + k + ") / 8760",
                Math.pow(in.mttf(), k + 1) / (ways * Math.pow(window, k)) / HOURS_PER_YEAR,
                "a",
                2);
    }

    private static Result withoutRedundancy(ResultDraft draft, Input in) {
        int n = in.members().size();
        draft.figure(
                "Mean time to data loss, optimistic",
                "MTTF / n / 8760",
                of(in.mttf()) + " / " + n + " / 8760",
                in.mttf() / n / HOURS_PER_YEAR,
                "a",
                2);
        return draft.judged(
                Level.BAD,
                "survives no failure",
                "With " + in.level() + " over " + n + " members the first failure loses everything.");
    }

    /** Whether one lost member leaves an array that still corrects a bad read while it rebuilds. */
    private static boolean keepsRedundancy(Input in) {
        return in.level().survives(in.members().size()) > 1;
    }

    private static Result judge(ResultDraft draft, Input in, double chance, double rebuild) {
        int sure = in.level().survives(in.members().size());
        String survives = "survives " + sure + (sure == 1 ? " failure" : " failures");
        String takes = "The array " + survives + " for certain; the rebuild takes at least "
                + (rebuild < 0.001 ? "a few seconds" : of(rebuild, 3) + " h") + " and ";
        String most = "with a chance of at most about " + percent(100 * chance, 100 * HIGH_CHANCE);
        if (keepsRedundancy(in)) {
            return fine(
                    draft,
                    in,
                    survives,
                    takes + "after one failure a bad read is still corrected meanwhile; after " + sure
                            + " failures it meets one " + most + ".");
        }
        String meets = takes + "meets an unrecoverable read " + most;
        if (Side.above(chance, HIGH_CHANCE)) {
            return draft.judged(
                    Level.CAREFUL,
                    survives + ", the rebuild is risky",
                    meets + ", above the 10 % that common practice accepts.");
        }
        return fine(draft, in, survives, meets + ".");
    }

    /** Good, unless unlike members leave much of what they hold unused. */
    private static Result fine(ResultDraft draft, Input in, String survives, String reason) {
        double used = 100 * in.members().size() * Collections.min(in.members()) / total(in);
        return Side.below(used, MUCH_LOST)
                ? draft.judged(
                        Level.CAREFUL,
                        survives + ", much of the capacity is lost to the smallest member",
                        reason + " Only " + beside(used, 3, MUCH_LOST) + " % of what the members hold is made use of.")
                : draft.judged(Level.GOOD, survives, reason);
    }
}

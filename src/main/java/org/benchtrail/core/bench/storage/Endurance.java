package org.benchtrail.core.bench.storage;

import static org.benchtrail.core.bench.Numeral.beside;
import static org.benchtrail.core.bench.Numeral.digitsBeside;
import static org.benchtrail.core.bench.Numeral.of;
import static org.benchtrail.core.bench.Numeral.percent;

import java.util.List;
import org.apache.commons.statistics.distribution.TDistribution;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.Result.Point;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Side;
import org.benchtrail.core.bench.Trade;

/**
 * Written against rated endurance, and the days left at this rate.
 *
 * <p>The counter is taken as a drift with independent increments whose variance grows with their length, so the drift is
 * (last - first) / time, and its interval is Student's t with one degree less than there are increments (textbook: maximum
 * likelihood for Brownian motion with drift). A line fitted to a running total would give too narrow an interval.
 */
public final class Endurance {
    /** The write counter on a day. */
    public record Sample(
            @Ask(label = "Day", unit = "d", hint = "Counted from any start; later readings have greater days")
            double day,

            @Ask(label = "Written so far", unit = "TB", hint = "NVMe: data units written × 512000 / 10^12")
            double written) {}

    public record Input(
            @Ask(label = "Rated endurance", unit = "TB", hint = "Datasheet: TBW")
            double rated,

            @Ask(
                    label = "Readings of the write counter",
                    hint = "Two or more, oldest first; three or more give an interval")
            List<Sample> readings) {
        public Input {
            InputCheck check = new InputCheck();
            check.within("rated", rated, 0.001, 1e7, "TB");
            readings = check.list("readings", readings, 2, 1000, (path, sample) -> {
                check.within(path + ".day", sample.day(), 0, 1e5, "d");
                check.within(path + ".written", sample.written(), 0, 1e7, "TB");
            });
            for (int i = 1; i < readings.size(); i++) {
                String path = "readings[" + i + "]";
                check.rule(
                        readings.get(i).day() - readings.get(i - 1).day() >= 0.01,
                        path + ".day",
                        "give a later day than before");
                check.rule(
                        readings.get(i).written() >= readings.get(i - 1).written(),
                        path + ".written",
                        "a write counter does not go back: check the reading and the drive");
            }
            check.done();
        }
    }

    private static final double CONFIDENCE = 0.95;
    private static final double SOON = 90;
    /** Beyond a thousand years a figure of days says nothing. */
    private static final double FAR = 365_000;

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "endurance",
            2,
            Trade.STORAGE,
            "Write endurance",
            "How much of the rated endurance is written, and how many days are left at this rate?",
            new Input(
                    300, List.of(new Sample(0, 210), new Sample(30, 216.5), new Sample(60, 222), new Sample(90, 229))),
            Endurance::calculate);

    private Endurance() {}

    public static Result calculate(Input in) {
        ResultDraft draft = new ResultDraft();
        Sample first = in.readings().get(0);
        Sample last = in.readings().get(in.readings().size() - 1);
        double share = draft.figure(
                "Share of the rated endurance",
                "written / rated × 100",
                of(last.written()) + " / " + of(in.rated()) + " × 100",
                100 * last.written() / in.rated(),
                "%",
                digitsBeside(100 * last.written() / in.rated(), 3, 100));
        double span = last.day() - first.day();
        double rate = draft.figure(
                "Rate",
                "r = (last - first) / days",
                "(" + of(last.written()) + " - " + of(first.written()) + ") / " + of(span),
                (last.written() - first.written()) / span,
                "TB/d",
                3);
        curves(draft, in);
        draft.assume("The rating is the maker's warranty limit; a drive may fail long before it or write on past it.");
        draft.assume("Writing goes on as between the readings.");
        if (last.written() >= in.rated()) {
            draft.caution("DATA_LOSS");
            return draft.judged(
                    Level.BAD,
                    "rated endurance used up",
                    sharePhrase(share, in) + ": back up first, plan its replacement.");
        }
        return days(draft, in, last, share, rate, span);
    }

    private static String sharePhrase(double share, Input in) {
        return percent(share) + " of the rated " + of(in.rated()) + " TB are written";
    }

    private static Result days(ResultDraft draft, Input in, Sample last, double share, double rate, double span) {
        double remaining = in.rated() - last.written();
        if (rate * FAR < remaining) {
            return draft.judged(
                    Level.GOOD, "hardly written to", sharePhrase(share, in) + " and next to nothing is added.");
        }
        double left = draft.figure(
                "Days left at this rate",
                "d = (rated - written) / r",
                "(" + of(in.rated()) + " - " + of(last.written()) + ") / " + of(rate),
                remaining / rate,
                "d",
                digitsBeside(remaining / rate, 3, SOON));
        String reason = sharePhrase(share, in) + "; at " + of(rate, 3) + " TB/d "
                + (left < 1 ? "less than a day is left" : "about " + beside(left, 3, SOON) + " days are left");
        if (in.readings().size() == 2) {
            draft.assume("Two readings give no interval: read the counter again on another day.");
            return judged(
                    draft,
                    left,
                    reason + "; two readings give no interval.",
                    Level.UNDECIDED,
                    "endurance left, by two readings only");
        }
        double soonest = interval(draft, in, remaining, rate, span);
        return judged(
                draft,
                soonest,
                reason + ", perhaps only " + (soonest < 1 ? "hours" : beside(soonest, 3, SOON)) + ".",
                Level.GOOD,
                "endurance left");
    }

    private static Result judged(ResultDraft draft, double soonest, String reason, Level level, String words) {
        return Side.below(soonest, SOON)
                ? draft.judged(
                        Level.CAREFUL,
                        "endurance runs out soon",
                        reason + " Fewer than the 90 days that common practice keeps: plan its replacement.")
                : draft.judged(level, words, reason);
    }

    /** Adds the interval and answers its lower end, in days. */
    private static double interval(ResultDraft draft, Input in, double remaining, double rate, double span) {
        int increments = in.readings().size() - 1;
        double error = errorOfRate(draft, in.readings(), rate, span);
        double t = TDistribution.of(increments - 1).inverseSurvivalProbability((1 - CONFIDENCE) / 2);
        draft.say(
                "Student's t", "t for 95 % and m - 1 degrees of freedom", "t(" + (increments - 1) + ") = " + of(t, 4));
        double soonest = draft.figure(
                "Days left, lower end of 95 %",
                "(rated - written) / (r + t × u)",
                of(remaining) + " / (" + of(rate) + " + " + of(t) + " × " + of(error) + ")",
                remaining / (rate + t * error),
                "d",
                digitsBeside(remaining / (rate + t * error), 3, SOON));
        double slow = rate - t * error;
        if (slow * FAR < remaining) {
            draft.assume("The interval of the days has no upper end: the rate may be next to nothing.");
        } else {
            draft.figure(
                    "Days left, upper end of 95 %",
                    "(rated - written) / (r - t × u)",
                    of(remaining) + " / (" + of(rate) + " - " + of(t) + " × " + of(error) + ")",
                    remaining / slow,
                    "d",
                    3);
        }
        return soonest;
    }

    /** Standard error of the rate, TB/d, from the scatter of the increments. */
    private static double errorOfRate(ResultDraft draft, List<Sample> s, double rate, double span) {
        int increments = s.size() - 1;
        double sum = 0;
        for (int i = 1; i < s.size(); i++) {
            double days = s.get(i).day() - s.get(i - 1).day();
            double off = s.get(i).written() - s.get(i - 1).written() - rate * days;
            sum += off * off / days;
        }
        draft.say(
                "Scatter of the increments",
                "S = sum (dW - r × dt)^2 / dt over the " + increments + " increments",
                "S = " + of(sum));
        return draft.step(
                "Standard error of the rate",
                "u = √(S / (m - 1) / days)",
                "√(" + of(sum) + " / (" + increments + " - 1) / " + of(span) + ")",
                Math.sqrt(sum / (increments - 1) / span),
                "TB/d",
                3);
    }

    private static void curves(ResultDraft draft, Input in) {
        List<Point> points =
                in.readings().stream().map(s -> new Point(s.day(), s.written())).toList();
        draft.curve(new Curve("Written", "day", "d", "written", "TB", points));
        draft.curve(new Curve(
                "Rated",
                "day",
                "d",
                "written",
                "TB",
                List.of(
                        new Point(points.get(0).x(), in.rated()),
                        new Point(points.get(points.size() - 1).x(), in.rated()))));
    }
}

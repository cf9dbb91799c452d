package org.benchtrail.core.bench.storage;

import static org.benchtrail.core.bench.Numeral.about;
import static org.benchtrail.core.bench.Numeral.beside;
import static org.benchtrail.core.bench.Numeral.of;

import java.util.List;
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
import org.jspecify.annotations.Nullable;

/** Will the backup finish before what is predicted, such as a drive's failure or a battery's end? Plain arithmetic. */
public final class BackupTime {
    public record Input(
            @Ask(label = "Amount to back up", unit = "GB", hint = "Decimal gigabytes")
            double amount,

            @Ask(label = "Sustained rate", unit = "MB/s", hint = "Measured on this drive, not off the label")
            double rate,

            @Ask(
                    label = "Time for reading it back",
                    unit = "%",
                    hint = "100 if every byte is compared afterwards, else 0")
            double checking,

            @Ask(
                    label = "Time that is left",
                    unit = "h",
                    hint = "The lower end of the prediction; empty if there is none")
            @Nullable
            Double left) {
        public Input {
            InputCheck check = new InputCheck();
            check.within("amount", amount, 1e-6, 1e9, "GB");
            check.within("rate", rate, 0.001, 1e6, "MB/s");
            check.within("checking", checking, 0, 1000, "%");
            if (left != null) {
                check.zeroOr("left", left, 0.01, 1e6, "h");
            }
            check.done();
        }
    }

    private static final double COMFORT = 0.5;

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "backup-time",
            2,
            Trade.STORAGE,
            "Backup time",
            "Will the backup finish before what is predicted?",
            new Input(812, 93, 100, 47.0),
            BackupTime::calculate);

    private BackupTime() {}

    public static Result calculate(Input in) {
        ResultDraft draft = new ResultDraft();
        double copy = in.amount() * 1000 / in.rate() / 3600;
        draft.figure(
                "Time to copy",
                "t = amount × 1000 / rate / 3600",
                of(in.amount()) + " × 1000 / " + of(in.rate()) + " / 3600",
                copy,
                "h",
                3);
        double all = copy * (1 + in.checking() / 100);
        draft.figure(
                "Time in all",
                "T = t × (1 + checking / 100)",
                of(copy) + " × (1 + " + of(in.checking()) + " / 100)",
                all,
                "h",
                3);
        draft.assume("The rate is held throughout; a failing drive slows down as it retries bad places.");
        draft.caution("DATA_LOSS");
        draft.curve(new Curve(
                "Copied", "time", "h", "amount", "GB", List.of(new Point(0, 0), new Point(copy, in.amount()))));
        Double left = in.left();
        return left == null ? untimed(draft, all) : timed(draft, in, all, left);
    }

    private static Result untimed(ResultDraft draft, double all) {
        return draft.judged(Level.NONE, "a time", "Copying and checking take " + about(3600 * all) + ".");
    }

    /** In hours beside the hours that are left; far below them as people say it. */
    private static String taken(double all, double left) {
        return all < (left == 0 ? 1 : Math.min(1, left / 20))
                ? about(3600 * all)
                : "about " + beside(all, 3, left, COMFORT * left) + " h";
    }

    private static Result timed(ResultDraft draft, Input in, double all, double left) {
        draft.figure("Time to spare", "left - T", of(left) + " - " + of(all), Side.rest(left, all), "h", 3);
        String compared = "It takes " + taken(all, left) + " and " + of(left) + " h are left";
        if (Side.above(all, left)) {
            double saved = Math.min(in.amount(), in.rate() * left * 3.6);
            draft.figure(
                    "Copied when the time is up",
                    "the lesser of amount and rate × left × 3600 / 1000",
                    "min(" + of(in.amount()) + ", " + of(in.rate()) + " × " + of(left) + " × 3600 / 1000)",
                    saved,
                    "GB",
                    3);
            return draft.judged(Level.BAD, "does not finish in time", compared + ": copy what matters most first.");
        }
        return Side.above(all, COMFORT * left)
                ? draft.judged(
                        Level.CAREFUL,
                        "finishes with little to spare",
                        compared + ", less than the twice that common practice keeps: start now.")
                : draft.judged(Level.GOOD, "finishes before it", compared + ".");
    }
}

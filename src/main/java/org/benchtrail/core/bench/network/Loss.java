package org.benchtrail.core.bench.network;

import static org.benchtrail.core.bench.Numeral.digitsBeside;
import static org.benchtrail.core.bench.Numeral.digitsWithin;
import static org.benchtrail.core.bench.Numeral.of;
import static org.benchtrail.core.bench.Numeral.percent;
import static org.benchtrail.core.bench.Numeral.share;

import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Trade;

/**
 * Some probes out of many were lost: is the loss real?
 *
 * <p>Source: the exact interval of Clopper and Pearson as in NIST/SEMATECH e-Handbook 7.2.4.1.
 */
public final class Loss {
    private static final int DIGITS = 3;

    public record Input(
            @Ask(label = "Probes lost", unit = "1") int lost,
            @Ask(label = "Probes sent", unit = "1") int probes,

            @Ask(label = "Loss that is allowed", unit = "%", hint = "Site policy or service contract; 0 if none at all")
            double allowed,

            @Ask(label = "Confidence", unit = "%", hint = "Two-sided, commonly 95")
            double confidence) {
        public Input {
            InputCheck check = new InputCheck();
            check.rule(probes >= 1 && probes <= 10_000_000, "probes", "give 1 to 10000000 probes");
            check.rule(lost >= 0, "lost", "give 0 or more");
            check.rule(lost <= probes, "lost", "no more can be lost than was sent");
            check.zeroOr("allowed", allowed, 0.0001, 99.9, "%");
            check.within("confidence", confidence, 50, 99.999, "%");
            check.done();
        }
    }

    /** Lower and upper end, as fractions. */
    record Interval(double low, double high) {}

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "loss",
            3,
            Trade.NETWORK,
            "Packet loss",
            "So many of so many probes were lost: is the loss real?",
            new Input(7, 370, 0.5, 95),
            Loss::calculate);

    private Loss() {}

    /** Clopper-Pearson; tail is the probability left out on each side. */
    static Interval exact(int lost, int probes, double tail) {
        double low =
                lost == 0 ? 0 : BetaDistribution.of(lost, probes - lost + 1.0).inverseCumulativeProbability(tail);
        double high = lost == probes
                ? 1
                : BetaDistribution.of(lost + 1.0, probes - lost).inverseSurvivalProbability(tail);
        return new Interval(low, high);
    }

    public static Result calculate(Input in) {
        ResultDraft draft = new ResultDraft();
        double tail = (1 - in.confidence() / 100) / 2;
        Interval interval = exact(in.lost(), in.probes(), tail);
        double share = 100.0 * in.lost() / in.probes();
        int known = known(share, interval);
        draft.figure(
                "Loss seen",
                "lost / sent × 100",
                in.lost() + " / " + in.probes() + " × 100",
                share,
                "%",
                digitsBeside(share, known, in.allowed()));
        draft.step(
                "Left out on each side",
                "(1 - confidence / 100) / 2",
                "(1 - " + of(in.confidence()) + " / 100) / 2",
                tail,
                "1",
                6);
        ends(draft, in, interval, tail);
        double chance = chance(draft, in);
        draft.assume("Probes are lost independently of each other; loss in bursts makes the interval too narrow.");
        draft.assume("A device may answer probes with low priority: measure to the end host as well.");
        return judge(draft, in, share(share, known, in.allowed()) + " %", interval, chance);
    }

    /** Digits of the loss seen: it is known no better than its interval is wide. */
    private static int known(double share, Interval interval) {
        return digitsWithin(share, 50 * (interval.high() - interval.low()), DIGITS);
    }

    private static void ends(ResultDraft draft, Input in, Interval interval, double tail) {
        int k = in.lost();
        int n = in.probes();
        if (k == 0) {
            draft.figure("Loss, lower end", "0 if none is lost", "0", 0, "%", 3);
            draft.figure(
                    "Loss, upper end",
                    "(1 - tail^(1/n)) × 100",
                    "(1 - " + of(tail) + "^(1 / " + n + ")) × 100",
                    100 * interval.high(),
                    "%",
                    digitsBeside(100 * interval.high(), DIGITS, in.allowed()));
            return;
        }
        draft.say(
                "Lower end",
                "the p at which k or more lost has the probability tail",
                "Beta quantile (" + of(tail) + "; " + k + ", " + (n - k + 1) + ")");
        int digits = digitsBeside(100 * interval.low(), DIGITS, in.allowed());
        draft.figure("Loss, lower end", "p × 100", of(interval.low()) + " × 100", 100 * interval.low(), "%", digits);
        if (k < n) {
            draft.say(
                    "Upper end",
                    "the p at which k or fewer lost has the probability tail",
                    "Beta quantile (1 - " + of(tail) + "; " + (k + 1) + ", " + (n - k) + ")");
        }
        draft.figure(
                "Loss, upper end",
                k == n ? "100 if all are lost" : "p × 100",
                of(interval.high()) + " × 100",
                100 * interval.high(),
                "%",
                digitsBeside(100 * interval.high(), DIGITS, in.allowed()));
    }

    /** How often as many losses or more would be seen if the true loss were the allowed one. */
    private static double chance(ResultDraft draft, Input in) {
        double p = in.allowed() / 100;
        double chance =
                in.lost() == 0 ? 1 : BinomialDistribution.of(in.probes(), p).survivalProbability(in.lost() - 1);
        draft.say(
                "If the loss were just the allowed one",
                "binomial probability of k or more out of n",
                "n = " + in.probes() + ", p = " + of(p) + ", k = " + in.lost());
        String name = "Chance of seeing as many at the allowed loss";
        String put = of(chance) + " × 100";
        return in.lost() > 0 && p > 0
                ? draft.chance(name, "probability × 100", put, chance, DIGITS)
                : draft.figure(name, "probability × 100", put, 100 * chance, "%", DIGITS);
    }

    private static Result judge(ResultDraft draft, Input in, String share, Interval interval, double chance) {
        double low = 100 * interval.low();
        double high = 100 * interval.high();
        String reason = in.lost() + " of " + in.probes() + " probes are " + share + ", with "
                + of(in.confidence()) + " % confidence between " + percent(low, in.allowed()) + " and "
                + percent(high, in.allowed()) + "; allowed are " + of(in.allowed()) + " %";
        if (low > in.allowed()) {
            return draft.judged(
                    Level.BAD,
                    "the loss is real",
                    reason
                            + (in.allowed() == 0
                                    ? "."
                                    : "; at that, as many would be seen with a chance of " + percent(chance) + "."));
        }
        if (high <= in.allowed()) {
            return draft.judged(Level.GOOD, "within what is allowed", reason + ".");
        }
        if (in.allowed() == 0) {
            return draft.judged(
                    Level.UNDECIDED,
                    "none lost so far",
                    reason + ": no number of probes shows that none is ever lost.");
        }
        needed(draft, in);
        return draft.judged(Level.UNDECIDED, "too few probes to say", reason + ": send more.");
    }

    /** Probes without a single loss that would show the allowed loss to be kept: whole ones, so rounded up. */
    private static void needed(ResultDraft draft, Input in) {
        double p = in.allowed() / 100;
        double tail = (1 - in.confidence() / 100) / 2;
        double least = draft.step(
                "Probes without loss, unrounded",
                "ln(tail) / ln(1 - p)",
                "ln(" + of(tail) + ") / ln(1 - " + of(p) + ")",
                Math.log(tail) / Math.log1p(-p),
                "1",
                9);
        draft.figure(
                "Probes without loss that would settle it",
                "rounded up",
                "ceil(" + of(least, 15) + ")",
                Math.ceil(least),
                "1",
                12);
    }
}

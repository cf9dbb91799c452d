package org.benchtrail.core.bench.voice;

import static org.benchtrail.core.bench.Numeral.beside;
import static org.benchtrail.core.bench.Numeral.digitsBeside;
import static org.benchtrail.core.bench.Numeral.of;

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
import org.jspecify.annotations.Nullable;

/**
 * Rating R and mean opinion score of a call from delay, jitter and loss.
 *
 * <p>Sources: ITU-T G.107 (R = 93.2 with all else at its default; delay and loss impairments from memory; score of annex B
 * seen), G.113 appendix I (Ie and Bpl, from memory), G.109 (bands, from memory), G.114 (150 and 400 ms, seen). Echo is taken to
 * be controlled, so that delay costs what annex-free G.107 calls Idd only.
 */
public final class Voice {
    /** Codec with its impairment Ie, its robustness to random loss Bpl, and the delay of its frame and look-ahead in ms. */
    public enum Codec implements Choice {
        G711("G.711", 0, 4.3, 20),
        G711_CONCEALED("G.711 with loss concealment", 0, 25.1, 20),
        G729A("G.729A", 11, 19, 25),
        G723_1("G.723.1", 15, 16.1, 37.5);

        private final String words;

        private final double impairment;
        private final double robustness;
        private final double delay;

        Codec(String words, double impairment, double robustness, double delay) {
            this.words = words;
            this.impairment = impairment;
            this.robustness = robustness;
            this.delay = delay;
        }

        @Override
        public String words() {
            return words;
        }
    }

    public record Input(
            @Ask(label = "Codec") Codec codec,

            @Ask(label = "One-way delay of the network", unit = "ms", hint = "Not the round trip; about half of it")
            double delay,

            @Ask(label = "Jitter", unit = "ms") double jitter,

            @Ask(label = "Jitter buffer", unit = "ms", hint = "Empty: twice the jitter, which is common practice")
            @Nullable
            Double buffer,

            @Ask(label = "Loss", unit = "%", hint = "Late packets included")
            double loss,

            @Ask(label = "Burst ratio", unit = "1", hint = "1 for loss at random, more for loss in bursts")
            double burst) {
        public Input {
            InputCheck check = new InputCheck();
            check.present("codec", codec);
            check.within("delay", delay, 0, 5000, "ms");
            check.within("jitter", jitter, 0, 2000, "ms");
            check.optional("buffer", buffer, 0, 5000, "ms");
            check.within("loss", loss, 0, 100, "%");
            check.within("burst", burst, 1, 100, "1");
            check.done();
        }
    }

    private static final double BASE = 93.2;
    private static final double MOST_IMPAIRMENT = 95;
    private static final double FREE_DELAY = 100;
    private static final double GOOD_DELAY = 150;
    private static final double LONGEST_DELAY = 400;
    /** Lower ends of the bands of G.109. */
    private static final double[] BANDS = {90, 80, 70, 60, 50};

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "voice",
            3,
            Trade.VOICE,
            "Voice quality",
            "How will this call sound, given delay, jitter and loss?",
            new Input(Codec.G729A, 90, 15, null, 1, 1),
            Voice::calculate);

    private Voice() {}

    /** G.107 annex B, held at 1 where the polynomial dips below it (R below about 6.5). */
    static double meanOpinionScore(double r) {
        if (r <= 0) {
            return 1;
        }
        return r >= 100 ? 4.5 : Math.max(1, 1 + 0.035 * r + r * (r - 60) * (100 - r) * 7e-6);
    }

    /** G.107 Idd for the default delay sensitivity; Ta in ms. */
    static double delayImpairment(double ta) {
        if (ta <= FREE_DELAY) {
            return 0;
        }
        double x = logRatio(ta);
        return 25 * (sixth(x) - 3 * sixth(x / 3) + 2);
    }

    private static double logRatio(double ta) {
        return Math.log(ta / FREE_DELAY) / Math.log(2);
    }

    private static double sixth(double x) {
        return Math.pow(1 + Math.pow(x, 6), 1.0 / 6);
    }

    /** G.107 Ie-eff; loss in %. */
    static double lossImpairment(double ie, double bpl, double loss, double burst) {
        return loss == 0 ? ie : ie + (MOST_IMPAIRMENT - ie) * loss / (loss / burst + bpl);
    }

    public static Result calculate(Input in) {
        ResultDraft draft = new ResultDraft();
        double ta = delay(draft, in);
        double idd = idd(draft, ta);
        Codec c = in.codec();
        double ie = draft.step(
                "Impairment by codec and loss",
                "Ie-eff = Ie + (95 - Ie) × Ppl / (Ppl / BurstR + Bpl)",
                of(c.impairment) + " + (95 - " + of(c.impairment) + ") × " + of(in.loss()) + " / (" + of(in.loss())
                        + " / " + of(in.burst()) + " + " + of(c.robustness) + ")",
                lossImpairment(c.impairment, c.robustness, in.loss(), in.burst()),
                "1",
                5);
        double r = draft.figure(
                "Rating R",
                "R = 93.2 - Idd - Ie-eff",
                "93.2 - " + of(idd) + " - " + of(ie),
                BASE - idd - ie,
                "1",
                digitsBeside(BASE - idd - ie, 4, BANDS));
        double mos = score(draft, r);
        draft.curve(new Curve(
                "Score over loss",
                "loss",
                "%",
                "MOS",
                "1",
                ResultDraft.sample(
                        0,
                        20,
                        41,
                        p -> meanOpinionScore(
                                BASE - idd - lossImpairment(c.impairment, c.robustness, p, in.burst())))));
        draft.assume("Echo is controlled, and all else is at the default of G.107 (R = 93.2).");
        draft.assume("Ie and Bpl of the codec are those of G.113 appendix I, from memory, not checked.");
        return judge(draft, in, r, mos, ta);
    }

    private static double delay(ResultDraft draft, Input in) {
        Double given = in.buffer();
        double buffer = given == null
                ? draft.step("Jitter buffer", "twice the jitter", "2 × " + of(in.jitter()), 2 * in.jitter(), "ms", 4)
                : given;
        if (given == null) {
            draft.assume("The jitter buffer is twice the jitter: common practice, no source.");
        } else if (given < in.jitter()) {
            draft.assume("The buffer is shorter than the jitter: more packets come too late than the loss says.");
        }
        return draft.figure(
                "Delay from mouth to ear",
                "network + buffer + codec",
                of(in.delay()) + " + " + of(buffer) + " + " + of(in.codec().delay),
                in.delay() + buffer + in.codec().delay,
                "ms",
                digitsBeside(in.delay() + buffer + in.codec().delay, 4, GOOD_DELAY, LONGEST_DELAY));
    }

    private static double idd(ResultDraft draft, double ta) {
        if (ta <= FREE_DELAY) {
            return draft.step("Impairment by delay", "Idd = 0 up to 100 ms", "0", 0, "1", 5);
        }
        double x = draft.step(
                "Delay in doublings of 100 ms",
                "X = ln(Ta / 100) / ln(2)",
                "ln(" + of(ta) + " / 100) / ln(2)",
                logRatio(ta),
                "1",
                6);
        return draft.step(
                "Impairment by delay",
                "Idd = 25 × ((1 + X^6)^(1/6) - 3 × (1 + (X/3)^6)^(1/6) + 2)",
                "25 × ((1 + " + of(x) + "^6)^(1 / 6) - 3 × (1 + (" + of(x) + " / 3)^6)^(1 / 6) + 2)",
                delayImpairment(ta),
                "1",
                5);
    }

    private static double score(ResultDraft draft, double r) {
        double mos = meanOpinionScore(r);
        if (r <= 0) {
            return draft.figure("MOS", "1 if R is 0 or less", "1", mos, "1", 3);
        }
        return draft.figure(
                "MOS",
                "the greater of 1 and 1 + 0.035 R + R (R - 60)(100 - R) × 7 × 10^-6",
                "max(1, 1 + 0.035 × " + of(r) + " + " + of(r) + " × (" + of(r) + " - 60) × (100 - " + of(r)
                        + ") × 0.000007)",
                mos,
                "1",
                3);
    }

    /** Band of G.109 by its lower limit. */
    private static String band(double r) {
        if (!Side.below(r, 90)) {
            return "best";
        }
        if (!Side.below(r, 80)) {
            return "high";
        }
        if (!Side.below(r, 70)) {
            return "medium";
        }
        if (!Side.below(r, 60)) {
            return "low";
        }
        return r >= 50 ? "poor" : "below poor";
    }

    /** What the delay adds to the band: it may be noticed where the sound alone is fine. */
    private static String delayed(double ta) {
        if (Side.above(ta, LONGEST_DELAY)) {
            return ", but far too late";
        }
        return Side.above(ta, GOOD_DELAY) ? ", but late" : "";
    }

    private static String delayWords(double ta) {
        if (!Side.above(ta, GOOD_DELAY)) {
            return "at most 150 ms, fine for most uses";
        }
        return Side.above(ta, LONGEST_DELAY)
                ? "above 400 ms, not to be planned with"
                : "between 150 and 400 ms, to be kept in mind";
    }

    private static Result judge(ResultDraft draft, Input in, double r, double mos, double ta) {
        String reason = "R = " + beside(r, 3, BANDS) + " and MOS = " + of(mos, 3) + " are in the band '" + band(r)
                + "' of G.109; the delay of " + beside(ta, 3, GOOD_DELAY, LONGEST_DELAY) + " ms is " + delayWords(ta)
                + " (G.114).";
        String heard = band(r) + delayed(ta);
        if (Side.below(r, 60) || Side.above(ta, LONGEST_DELAY)) {
            return draft.judged(Level.BAD, heard, reason);
        }
        Double buffer = in.buffer();
        if (buffer != null && buffer < in.jitter()) {
            return draft.judged(
                    Level.UNDECIDED,
                    "at best " + heard,
                    reason + " The buffer of " + of(buffer) + " ms is shorter than the jitter of " + of(in.jitter())
                            + " ms: packets come too late, and how many is not in these figures.");
        }
        return Side.below(r, 80) || Side.above(ta, GOOD_DELAY)
                ? draft.judged(Level.CAREFUL, heard, reason)
                : draft.judged(Level.GOOD, heard, reason);
    }
}

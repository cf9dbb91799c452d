package org.benchtrail.core.bench.network;

import static org.benchtrail.core.bench.Numeral.beside;
import static org.benchtrail.core.bench.Numeral.digitsBeside;
import static org.benchtrail.core.bench.Numeral.of;

import java.util.List;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Choice;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.Result.Point;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Side;
import org.benchtrail.core.bench.Trade;
import org.jspecify.annotations.Nullable;

/**
 * What one TCP connection can carry over a path: link, window or loss, whichever binds.
 *
 * <p>Sources: RFC 6349 (bandwidth-delay product, window, efficiency, buffer delay); Mathis et al., ACM CCR 27(3) 1997 (loss),
 * from memory.
 */
public final class PathThroughput {
    /** How the receiver acknowledges, with the constant C of the loss formula. */
    public enum Acknowledgement implements Choice {
        EACH("for each segment", 1.5),
        DELAYED("delayed, for every second segment", 0.75);

        private final String words;

        private final double squared;

        Acknowledgement(String words, double squared) {
            this.words = words;
            this.squared = squared;
        }

        @Override
        public String words() {
            return words;
        }

        double constant() {
            return Math.sqrt(squared);
        }
    }

    public record Input(
            @Ask(label = "Bottleneck", unit = "Mb/s", hint = "The slowest link on the way")
            double bandwidth,

            @Ask(label = "Round-trip time, idle", unit = "ms")
            double rtt,

            @Ask(label = "Receive window", unit = "B", hint = "65535 without window scaling")
            double window,

            @Ask(label = "Loss", unit = "%", hint = "Share of packets lost; 0 if none")
            double loss,

            @Ask(label = "Segment size", unit = "B", hint = "1460 on plain Ethernet")
            double segment,

            @Ask(label = "Acknowledgements") Acknowledgement acknowledgement,

            @Ask(label = "Round-trip time under load", unit = "ms", hint = "Empty if not measured") @Nullable
            Double loadedRtt,

            @Ask(label = "Bytes sent", unit = "B", hint = "Retransmissions included; empty if not known") @Nullable
            Double sent,

            @Ask(label = "Bytes retransmitted", unit = "B", hint = "Empty if not known") @Nullable
            Double resent) {
        public Input {
            InputCheck check = new InputCheck();
            check.within("bandwidth", bandwidth, 0.001, 1e6, "Mb/s");
            check.within("rtt", rtt, 0.001, 60_000, "ms");
            check.within("window", window, 1, 1.1e9, "B");
            check.within("loss", loss, 0, 100, "%");
            check.within("segment", segment, 64, 65_495, "B");
            check.present("acknowledgement", acknowledgement);
            check.optional("loadedRtt", loadedRtt, 0.001, 600_000, "ms");
            check.rule(
                    loadedRtt == null || !(loadedRtt < rtt), "loadedRtt", "give no less than the idle round-trip time");
            check.optional("sent", sent, 1, 1e18, "B");
            check.optional("resent", resent, 0, 1e18, "B");
            check.rule(
                    (sent == null) == (resent == null),
                    "resent",
                    "give both, bytes sent and retransmitted, or neither");
            check.rule(
                    sent == null || resent == null || !(resent > sent),
                    "resent",
                    "no more can be sent again than was sent");
            check.done();
        }
    }

    private static final double HIGHEST_LOSS = 0.02;

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "path-throughput",
            2,
            Trade.NETWORK,
            "Path throughput",
            "What can one connection carry over this path, and what binds it: link, window or loss?",
            new Input(100, 40, 65_535, 0.01, 1460, Acknowledgement.DELAYED, 55.0, 102_000_000.0, 10_000.0),
            PathThroughput::calculate);

    private PathThroughput() {}

    /** Window per round trip, Mb/s. */
    static double windowLimit(double bytes, double rttMillis) {
        return bytes * 8 / rttMillis / 1000;
    }

    /** Mathis et al.: (MSS x 8 / RTT) x C / √p, Mb/s; p as a fraction above 0 and below about 0.02. */
    static double lossLimit(double segment, double rttMillis, double p, double constant) {
        return segment * 8 / rttMillis / 1000 * constant / Math.sqrt(p);
    }

    public static Result calculate(Input in) {
        ResultDraft draft = new ResultDraft();
        double product = draft.figure(
                "Bandwidth-delay product",
                "BDP = bandwidth × 10^6 × RTT / 1000",
                of(in.bandwidth()) + " × 10^6 × " + of(in.rtt()) + " / 1000",
                in.bandwidth() * in.rtt() * 1000,
                "bit",
                6);
        draft.figure("Window that fills the path", "BDP / 8", of(product) + " / 8", product / 8, "B", 6);
        double window = draft.figure(
                "Window limit",
                "window × 8 / RTT / 1000, RTT in ms",
                of(in.window()) + " × 8 / " + of(in.rtt()) + " / 1000",
                windowLimit(in.window(), in.rtt()),
                "Mb/s",
                5);
        measured(draft, in);
        curves(draft, in);
        draft.assume("One connection; several share the link but not the window.");
        double p = in.loss() / 100;
        if (p >= HIGHEST_LOSS) {
            return tooLossy(draft, in);
        }
        double least = Math.min(in.bandwidth(), window);
        if (p == 0) {
            draft.assume("Without loss the loss formula says nothing.");
            return judge(draft, in, window, Double.POSITIVE_INFINITY, least);
        }
        double loss = lossLimited(draft, in, p);
        return judge(draft, in, window, loss, Math.min(least, loss));
    }

    private static double lossLimited(ResultDraft draft, Input in, double p) {
        double c = in.acknowledgement().constant();
        draft.assume("C = " + of(c, 6) + " for "
                + (in.acknowledgement() == Acknowledgement.EACH
                        ? "an acknowledgement for each segment"
                        : "delayed acknowledgements")
                + "; loss comes at random; congestion control of the 1990s: newer kinds may do better.");
        return draft.figure(
                "Loss limit",
                "segment × 8 / RTT / 1000 × C / √p",
                of(in.segment()) + " × 8 / " + of(in.rtt()) + " / 1000 × " + of(c) + " / √" + of(p),
                lossLimit(in.segment(), in.rtt(), p, c),
                "Mb/s",
                5);
    }

    private static void measured(ResultDraft draft, Input in) {
        Double loaded = in.loadedRtt();
        if (loaded != null) {
            draft.figure(
                    "Buffer delay",
                    "100 × (RTT under load - RTT) / RTT",
                    "100 × (" + of(loaded) + " - " + of(in.rtt()) + ") / " + of(in.rtt()),
                    100 * (loaded - in.rtt()) / in.rtt(),
                    "%",
                    3);
        }
        Double sent = in.sent();
        Double resent = in.resent();
        if (sent != null && resent != null) {
            draft.figure(
                    "TCP efficiency",
                    "100 × (sent - retransmitted) / sent",
                    "100 × (" + of(sent) + " - " + of(resent) + ") / " + of(sent),
                    100 * (sent - resent) / sent,
                    "%",
                    6);
        }
    }

    private static void curves(ResultDraft draft, Input in) {
        double far = 3 * in.rtt();
        draft.curve(new Curve(
                "Window limit",
                "round-trip time",
                "ms",
                "throughput",
                "Mb/s",
                ResultDraft.sample(in.rtt() / 3, far, 60, ms -> windowLimit(in.window(), ms))));
        draft.curve(new Curve(
                "Link",
                "round-trip time",
                "ms",
                "throughput",
                "Mb/s",
                List.of(new Point(in.rtt() / 3, in.bandwidth()), new Point(far, in.bandwidth()))));
    }

    private static Result tooLossy(ResultDraft draft, Input in) {
        draft.assume("The loss formula holds below about 2 % only; no throughput is given.");
        if (in.loss() == 100) {
            return draft.judged(
                    Level.BAD,
                    "nothing gets through",
                    "At 100 % loss there is no connection: find where the path ends.");
        }
        return draft.judged(
                Level.BAD,
                "loss is too high to predict",
                "At " + of(in.loss()) + " % loss the connection mostly waits for timeouts: find the loss first.");
    }

    private static Result judge(ResultDraft draft, Input in, double window, double loss, double least) {
        String limits = Double.isFinite(loss)
                ? "min(" + of(in.bandwidth()) + ", " + of(window) + ", " + of(loss) + ")"
                : "min(" + of(in.bandwidth()) + ", " + of(window) + ")";
        draft.figure(
                "Throughput, at most",
                "the least of link, window limit and loss limit",
                limits,
                least,
                "Mb/s",
                digitsBeside(least, 4, in.bandwidth()));
        String reason =
                "At most " + beside(least, 4, in.bandwidth()) + " Mb/s of the link's " + of(in.bandwidth()) + " Mb/s";
        if (!Side.below(least, in.bandwidth())) {
            return draft.judged(Level.GOOD, "the link binds", reason + ".");
        }
        return least == window
                ? draft.judged(Level.CAREFUL, "the window binds", reason + ": a larger window would carry more.")
                : draft.judged(Level.CAREFUL, "loss binds", reason + ": find where packets are lost.");
    }
}

package org.benchtrail.core.bench.voice;

import static org.benchtrail.core.bench.Numeral.beside;
import static org.benchtrail.core.bench.Numeral.digitsBeside;
import static org.benchtrail.core.bench.Numeral.of;
import static org.benchtrail.core.bench.Numeral.term;

import java.util.ArrayList;
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

/**
 * Interarrival jitter from the packets' timestamps and arrival times.
 *
 * <p>Source: RFC 3550 section 6.4.1 and appendix A.8: J += (|D| - J) / 16, D the change of transit time between packets in
 * the order of their arrival.
 */
public final class Jitter {
    /** One packet, in the order of arrival. */
    public record Packet(
            @Ask(label = "RTP timestamp", unit = "1", hint = "In ticks of the media clock; may run over at 2^32")
            double timestamp,

            @Ask(label = "Arrival", unit = "ms", hint = "Receiver's clock")
            double arrival) {}

    public record Input(
            @Ask(label = "Media clock", unit = "Hz", hint = "8000 for narrow-band speech")
            double clock,

            @Ask(label = "Packets", hint = "Two or more, in the order they came in")
            List<Packet> packets,

            @Ask(label = "Jitter allowed", unit = "ms", hint = "The receiver's buffer; 30 is common practice")
            double allowed) {
        public Input {
            InputCheck check = new InputCheck();
            check.within("clock", clock, 1000, 1e6, "Hz");
            packets = check.list("packets", packets, 2, 100_000, (path, packet) -> {
                check.within(path + ".timestamp", packet.timestamp(), 0, WRAP - 1, "1");
                check.rule(
                        packet.timestamp() == Math.rint(packet.timestamp()),
                        path + ".timestamp",
                        "give a whole number of ticks");
                check.within(path + ".arrival", packet.arrival(), 0, 1e13, "ms");
            });
            for (int i = 1; i < packets.size(); i++) {
                check.rule(
                        packets.get(i).arrival() >= packets.get(i - 1).arrival(),
                        "packets[" + i + "].arrival",
                        "give the packets in the order of their arrival");
            }
            check.within("allowed", allowed, 0, 10_000, "ms");
            check.done();
        }
    }

    private static final double WRAP = 0x1p32;
    private static final int SHOWN = 12;
    /** Changes after which less than a twentieth of the start at 0 is left: (15/16)^47 is the first power below 0.05. */
    private static final int SETTLED = 47;

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "jitter",
            2,
            Trade.VOICE,
            "Interarrival jitter",
            "How unevenly do the packets of this call arrive?",
            new Input(
                    8000,
                    List.of(
                            new Packet(0, 100),
                            new Packet(160, 121),
                            new Packet(320, 139.5),
                            new Packet(480, 166),
                            new Packet(640, 181),
                            new Packet(800, 200)),
                    30),
            Jitter::calculate);

    private Jitter() {}

    /** Difference of two timestamps in ticks; one that runs over at 2^32 is taken the short way round. */
    private static double ticks(Packet from, Packet to) {
        double difference = to.timestamp() - from.timestamp();
        if (difference > WRAP / 2) {
            return difference - WRAP;
        }
        return difference < -WRAP / 2 ? difference + WRAP : difference;
    }

    public static Result calculate(Input in) {
        ResultDraft draft = new ResultDraft();
        double jitter = 0;
        double largest = 0;
        List<Point> points = new ArrayList<>();
        for (int i = 1; i < in.packets().size(); i++) {
            double change = change(draft, in, i);
            double next = jitter + (Math.abs(change) - jitter) / 16;
            update(draft, in, i, jitter, change, next);
            jitter = next;
            largest = Math.max(largest, Math.abs(change));
            points.add(new Point(i, jitter));
        }
        draft.figure("Largest change of the transit time", "max |D|", of(largest), largest, "ms", 4);
        draft.curve(new Curve("Jitter", "packet", "1", "jitter", "ms", points));
        draft.assume("The estimate starts at 0 and follows with a gain of 1/16: with few packets it is still low.");
        return judge(draft, in, jitter);
    }

    private static boolean shown(Input in, int i) {
        return i <= SHOWN || i == in.packets().size() - 1;
    }

    private static double change(ResultDraft draft, Input in, int i) {
        Packet from = in.packets().get(i - 1);
        Packet to = in.packets().get(i);
        double ticks = ticks(from, to);
        double change = to.arrival() - from.arrival() - ticks / in.clock() * 1000;
        if (shown(in, i)) {
            draft.step(
                    "Packet " + i + ": change of transit time",
                    "D = (arrival - arrival before) - ticks / clock × 1000",
                    "(" + of(to.arrival(), 15) + " - " + of(from.arrival(), 15) + ") - " + term(ticks) + " / "
                            + of(in.clock()) + " × 1000",
                    change,
                    "ms",
                    6);
        }
        return change;
    }

    private static void update(ResultDraft draft, Input in, int i, double before, double change, double after) {
        String put = of(before) + " + (" + of(Math.abs(change)) + " - " + of(before) + ") / 16";
        if (i == in.packets().size() - 1) {
            int digits = digitsBeside(after, 4, in.allowed());
            draft.figure("Jitter", "J = J + (|D| - J) / 16, after the last packet", put, after, "ms", digits);
        } else if (shown(in, i)) {
            draft.step("Packet " + i + ": jitter", "J = J + (|D| - J) / 16", put, after, "ms", 6);
        }
    }

    private static Result judge(ResultDraft draft, Input in, double jitter) {
        int changes = in.packets().size() - 1;
        String reason = "Jitter is " + beside(jitter, 3, in.allowed()) + " ms over "
                + in.packets().size() + " packets, allowed are " + of(in.allowed()) + " ms";
        if (Side.above(jitter, in.allowed())) {
            return draft.judged(Level.BAD, "above what is allowed", reason + ".");
        }
        if (changes < SETTLED) {
            return draft.judged(
                    Level.UNDECIDED,
                    "too few packets to say",
                    reason + "; the estimate starts at 0 and has not settled before " + (SETTLED + 1)
                            + " packets: take more.");
        }
        return draft.judged(Level.GOOD, "within what is allowed", reason + ".");
    }
}

package org.benchtrail.core.bench.wireless;

import static org.benchtrail.core.bench.Numeral.beside;
import static org.benchtrail.core.bench.Numeral.digitsBeside;
import static org.benchtrail.core.bench.Numeral.of;
import static org.benchtrail.core.bench.Numeral.term;

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
 * Level received over a radio link, and its margin to what the receiver needs for a rate.
 *
 * <p>Source: ITU-R P.525, free-space loss 20 log10(4 π d / λ) with the exact speed of light; losses of walls are added in dB.
 */
public final class RadioLink {
    /** Walls of one kind on the way. */
    public record Wall(
            @Ask(label = "How many", unit = "1") int count,

            @Ask(label = "Loss of each", unit = "dB", hint = "Measured, or a maker's table for this frequency")
            double loss) {}

    /** dBm, a kilowatt; no station of a site's own network sends more. */
    private static final double STRONGEST = 60;
    /** MHz; no radio network of a site works below it. */
    private static final double LOWEST = 100;

    public record Input(
            @Ask(label = "Transmit power", unit = "dBm") double power,

            @Ask(label = "Gain of the sending antenna", unit = "dBi")
            double sendGain,

            @Ask(label = "Gain of the receiving antenna", unit = "dBi")
            double receiveGain,

            @Ask(label = "Loss in cables and plugs", unit = "dB", hint = "Both ends together")
            double cableLoss,

            @Ask(label = "Frequency", unit = "MHz") double frequency,
            @Ask(label = "Distance", unit = "m") double distance,

            @Ask(label = "Walls on the way", hint = "May be empty")
            List<Wall> walls,

            @Ask(label = "Level needed for the rate", unit = "dBm", hint = "Receiver's datasheet, such as -64")
            double sensitivity,

            @Ask(label = "Margin wanted", unit = "dB", hint = "For fading; 10 is common practice")
            double wanted) {
        public Input {
            InputCheck check = new InputCheck();
            check.within("power", power, -100, 100, "dBm");
            check.within("sendGain", sendGain, -50, 60, "dBi");
            check.within("receiveGain", receiveGain, -50, 60, "dBi");
            check.within("cableLoss", cableLoss, 0, 100, "dB");
            boolean tuned = check.within("frequency", frequency, 1, 300_000, "MHz");
            boolean placed = check.within("distance", distance, 1e-5, 1e7, "m");
            check.rule(
                    !tuned || !placed || distance >= nearest(frequency),
                    "distance",
                    "the formula does not hold nearer than a wavelength over 4 pi: give a greater distance");
            walls = check.list("walls", walls, 0, 100, (path, wall) -> {
                check.rule(wall.count() >= 0 && wall.count() <= 1000, path + ".count", "give 0 to 1000 walls");
                check.within(path + ".loss", wall.loss(), 0, 200, "dB");
            });
            check.within("sensitivity", sensitivity, -200, 50, "dBm");
            check.within("wanted", wanted, 0, 100, "dB");
            slips(check, power, frequency, sensitivity);
            if (check.isClean()) {
                double received = level(power, sendGain, receiveGain, cableLoss, frequency, distance, walls);
                check.rule(
                        received <= power,
                        "distance",
                        "more would be received than is sent: the formula does not hold so near to antennas of these"
                                + " gains, give a greater distance or check the gains");
            }
            check.done();
        }

        /** What was most likely typed in another unit, or without its sign. */
        private static void slips(InputCheck check, double power, double frequency, double sensitivity) {
            check.ask(
                    "power",
                    power,
                    power > STRONGEST,
                    p -> of(p) + " dBm are more than a kilowatt: were " + of(p) + " mW meant, which are "
                            + of(10 * Math.log10(p), 3) + " dBm?");
            check.ask(
                    "frequency",
                    frequency,
                    frequency < LOWEST,
                    f -> of(f) + " MHz is no channel of a radio network: was " + of(f)
                            + " GHz meant? Type it with its unit");
            check.ask(
                    "sensitivity",
                    sensitivity,
                    sensitivity > 0,
                    s -> "receivers hear levels far below 0 dBm: was " + of(-s) + " dBm meant? Type the sign with it");
        }

        /** Level from which on receivers for this frequency need not work any more, dBm. */
        double strongest() {
            return frequency < FIVE_GHZ_FROM ? STRONGEST_RECEIVED : STRONGEST_RECEIVED_5_GHZ;
        }
    }

    /** dBm; what a receiver has to stand, IEEE 802.11 receiver maximum input level, from memory. */
    private static final double STRONGEST_RECEIVED = -20;

    private static final double STRONGEST_RECEIVED_5_GHZ = -30;
    /** MHz; between the bands of 2.4 and 5 GHz. */
    private static final double FIVE_GHZ_FROM = 3000;

    private static final double LIGHT = 299_792_458;

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "radio-link",
            3,
            Trade.WIRELESS,
            "Radio link",
            "Which level is received, and what margin is there to the level the rate needs?",
            new Input(17, 3, 2, 1, 5500, 30, List.of(new Wall(2, 6)), -64, 5),
            RadioLink::calculate);

    private RadioLink() {}

    private static double wavelength(double megahertz) {
        return LIGHT / (megahertz * 1e6);
    }

    private static double nearest(double megahertz) {
        return wavelength(megahertz) / (4 * Math.PI);
    }

    /** ITU-R P.525 in dB; metres and megahertz above 0. */
    static double freeSpaceLoss(double metres, double megahertz) {
        return 20 * Math.log10(4 * Math.PI * metres / wavelength(megahertz));
    }

    private static double wallLoss(List<Wall> walls) {
        return walls.stream().mapToDouble(w -> w.count() * w.loss()).sum();
    }

    /** The whole sum at once, dBm. */
    private static double level(
            double power, double send, double receive, double cable, double mhz, double metres, List<Wall> walls) {
        return power - cable + send - freeSpaceLoss(metres, mhz) - wallLoss(walls) + receive;
    }

    public static Result calculate(Input in) {
        ResultDraft draft = new ResultDraft();
        double received = received(draft, in);
        double margin = draft.figure(
                "Margin",
                "received - needed",
                of(received) + " - " + term(in.sensitivity()),
                Side.rest(received, in.sensitivity()),
                "dB",
                digitsBeside(Side.rest(received, in.sensitivity()), 3, 0, in.wanted()));
        curves(draft, in, received);
        draft.assume("Free sight but for the walls given; reflections, people and interference are not in it.");
        draft.assume("The cable loss is taken off once; which end it is at makes no difference to the level.");
        draft.assume("What may be radiated is set by local rules: this does not check them.");
        return judge(draft, in, received, margin);
    }

    /** Level at the receiver, dBm. */
    private static double received(ResultDraft draft, Input in) {
        double radiated = draft.figure(
                "Radiated (EIRP)",
                "power - cable loss + gain of the sending antenna",
                of(in.power()) + " - " + of(in.cableLoss()) + " + " + term(in.sendGain()),
                in.power() - in.cableLoss() + in.sendGain(),
                "dBm",
                4);
        double length = draft.step(
                "Wavelength",
                "λ = 299792458 / (f × 10^6)",
                "299792458 / (" + of(in.frequency()) + " × 10^6)",
                wavelength(in.frequency()),
                "m",
                6);
        double space = draft.figure(
                "Free-space loss",
                "20 × log(4 × π × d / λ)",
                "20 × log(4 × 3.14159265 × " + of(in.distance()) + " / " + of(length) + ")",
                freeSpaceLoss(in.distance(), in.frequency()),
                "dB",
                5);
        double walls =
                draft.figure("Loss in walls", "sum of count × loss", wallText(in), wallLoss(in.walls()), "dB", 4);
        return draft.figure(
                "Received",
                "EIRP - free-space loss - walls + gain of the receiving antenna",
                of(radiated) + " - " + of(space) + " - " + of(walls) + " + " + term(in.receiveGain()),
                radiated - space - walls + in.receiveGain(),
                "dBm",
                4);
    }

    private static String wallText(Input in) {
        List<String> parts =
                in.walls().stream().map(w -> w.count() + " × " + of(w.loss())).toList();
        return parts.isEmpty() ? "0" : String.join(" + ", parts);
    }

    private static void curves(ResultDraft draft, Input in, double received) {
        double near = Math.max(in.distance() / 20, nearest(in.frequency()));
        double far = 2 * in.distance();
        double atDistance = received + freeSpaceLoss(in.distance(), in.frequency());
        draft.curve(new Curve(
                "Received",
                "distance",
                "m",
                "level",
                "dBm",
                ResultDraft.sample(near, far, 80, d -> atDistance - freeSpaceLoss(d, in.frequency()))));
        draft.curve(new Curve(
                "Needed",
                "distance",
                "m",
                "level",
                "dBm",
                List.of(new Point(near, in.sensitivity()), new Point(far, in.sensitivity()))));
    }

    private static Result judge(ResultDraft draft, Input in, double received, double margin) {
        String reason = beside(received, 4, in.sensitivity(), in.strongest()) + " dBm are received, "
                + of(in.sensitivity()) + " dBm needed: margin " + beside(margin, 3, 0, in.wanted()) + " dB";
        if (margin < 0) {
            return draft.judged(Level.BAD, "too weak for the rate", reason + ".");
        }
        String wanted = reason + ", wanted " + of(in.wanted()) + " dB";
        if (Side.below(received, in.sensitivity() + in.wanted())) {
            return draft.judged(Level.CAREFUL, "little margin", wanted + ".");
        }
        double strongest = in.strongest();
        if (Side.above(received, strongest)) {
            draft.assume("The strongest level that a receiver has to stand is that of IEEE 802.11, receiver maximum"
                    + " input level: from memory, not checked. The maker's datasheet goes first.");
            return draft.judged(
                    Level.CAREFUL,
                    "margin enough, but too strong for many receivers",
                    wanted + ". Above " + of(strongest)
                            + " dBm a receiver may be overdriven: send less, or move them apart.");
        }
        return draft.judged(Level.GOOD, "margin enough", wanted + ".");
    }
}

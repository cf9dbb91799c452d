package org.benchtrail.core.bench.network;

import static org.benchtrail.core.bench.Numeral.beside;
import static org.benchtrail.core.bench.Numeral.of;

import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Citation;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Side;
import org.benchtrail.core.bench.Trade;

/**
 * Power over Ethernet: what each port sets aside, what is lost in the cable, and what is left of the switch's budget.
 *
 * <p>Source: IEEE 802.3 clauses 33 and 145 (watts and lowest voltages of the classes seen; loop resistances from memory, they
 * reproduce the watts).
 */
public final class PoeBudget {
    /** Loop resistance of 100 m: one twisted pair each way for type 1 and 2, two for four-pair power. */
    private static final double TYPE1_OHMS = 20;

    private static final double TYPE2_OHMS = 12.5;
    private static final double FOUR_PAIR_OHMS = 6.25;

    /** One class: watts at the switch, watts promised to the device, lowest volts at the switch, ohms of 100 m. */
    record PowerClass(int type, double switchWatts, double deviceWatts, double volts, double ohms) {
        double amperes() {
            return switchWatts / volts;
        }

        double loss(double metres) {
            return amperes() * amperes() * ohms * metres / 100;
        }
    }

    private static final List<PowerClass> CLASSES = List.of(
            new PowerClass(1, 15.4, 12.95, 44, TYPE1_OHMS),
            new PowerClass(1, 4.0, 3.84, 44, TYPE1_OHMS),
            new PowerClass(1, 7.0, 6.49, 44, TYPE1_OHMS),
            new PowerClass(1, 15.4, 12.95, 44, TYPE1_OHMS),
            new PowerClass(2, 30, 25.5, 50, TYPE2_OHMS),
            new PowerClass(3, 45, 40, 50, FOUR_PAIR_OHMS),
            new PowerClass(3, 60, 51, 50, FOUR_PAIR_OHMS),
            new PowerClass(4, 75, 62, 52, FOUR_PAIR_OHMS),
            new PowerClass(4, 90, 71.3, 52, FOUR_PAIR_OHMS));

    static PowerClass powerClass(int number) {
        return CLASSES.get(number);
    }

    /** A port with a powered device. */
    public record Port(
            @Ask(label = "Class of the device", unit = "1", hint = "0 to 8, off its label or datasheet")
            int deviceClass,

            @Ask(label = "Cable", unit = "m", hint = "Cords included")
            double metres) {}

    public record Input(
            @Ask(label = "Power budget of the switch", unit = "W", hint = "For all ports together")
            double budget,

            @Ask(
                    label = "Highest class a port gives",
                    unit = "1",
                    hint = "3 for type 1, 4 for type 2, 6 for type 3, 8 for type 4")
            int highestClass,

            @Ask(label = "Ports") List<Port> ports) {
        public Input {
            InputCheck check = new InputCheck();
            check.within("budget", budget, 0.1, 100_000, "W");
            check.rule(highestClass >= 0 && highestClass <= 8, "highestClass", "give a class from 0 to 8");
            ports = check.list("ports", ports, 1, 512, (path, port) -> {
                check.rule(
                        port.deviceClass() >= 0 && port.deviceClass() <= 8,
                        path + ".deviceClass",
                        "give a class from 0 to 8");
                check.within(path + ".metres", port.metres(), 0.01, 500, "m");
            });
            check.done();
        }
    }

    private static final double LONGEST = 100;
    private static final double COMFORT = 0.1;
    private static final Citation SOURCE = Citation.seen("IEEE 802.3, Standard for Ethernet, clauses 33 and 145");

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "poe-budget",
            2,
            Trade.NETWORK,
            "Power over Ethernet budget",
            "Does the switch have the power for these devices, and what reaches them?",
            new Input(125, 4, List.of(new Port(4, 30), new Port(4, 75), new Port(3, 40), new Port(2, 12))),
            PoeBudget::calculate);

    private PoeBudget() {}

    public static Result calculate(Input in) {
        ResultDraft draft = new ResultDraft();
        List<String> terms = new ArrayList<>();
        double sum = 0;
        for (int i = 0; i < in.ports().size(); i++) {
            Port port = in.ports().get(i);
            port(draft, in, port, i + 1);
            double watts = given(in, port).switchWatts();
            terms.add(of(watts));
            sum += watts;
        }
        draft.figure("Set aside", "sum of the classes' watts at the switch", String.join(" + ", terms), sum, "W", 4);
        double headroom = draft.figure(
                "Headroom",
                "budget - set aside",
                of(in.budget()) + " - " + of(sum),
                Side.rest(in.budget(), sum),
                "W",
                4);
        draft.figure(
                "Share of the budget",
                "set aside / budget × 100",
                of(sum) + " / " + of(in.budget()) + " × 100",
                100 * sum / in.budget(),
                "%",
                3);
        draft.assume("Every port sets the full watts of its class aside; a switch that measures may set less aside.");
        draft.assume(
                "Voltage at the switch is the lowest its class allows, the cable the worst allowed: losses are upper"
                        + " bounds. The cable's ohms are from memory, not checked.");
        return judge(draft, in, sum, headroom);
    }

    private static void port(ResultDraft draft, Input in, Port port, int number) {
        PowerClass c = given(in, port);
        String name = "Port " + number;
        double amperes = draft.step(
                name + ": current", "I = P / U", of(c.switchWatts()) + " / " + of(c.volts()), c.amperes(), "A", 4);
        double loss = draft.step(
                name + ": lost in the cable",
                "I^2 × R × length / 100",
                of(amperes) + "^2 × " + of(c.ohms()) + " × " + of(port.metres()) + " / 100",
                c.loss(port.metres()),
                "W",
                4);
        draft.figure(
                name + ": at the device",
                "P - loss",
                of(c.switchWatts()) + " - " + of(loss),
                c.switchWatts() - loss,
                "W",
                4);
        draft.rule(
                name + ": class",
                classGiven(in, port) ? Level.GOOD : Level.CAREFUL,
                "Device of class " + port.deviceClass() + ", port up to class " + in.highestClass()
                        + (classGiven(in, port)
                                ? "."
                                : ": the device gets less than it asks for, and may not do all it can."),
                SOURCE);
        draft.rule(
                name + ": length",
                port.metres() <= LONGEST ? Level.GOOD : Level.BAD,
                of(port.metres()) + " m, at most 100 m; the class promises the device " + of(c.deviceWatts())
                        + " W up to there.",
                SOURCE);
    }

    /** The class that the port gives: the device's own, or the port's highest where that is lower. */
    private static PowerClass given(Input in, Port port) {
        return powerClass(classGiven(in, port) ? port.deviceClass() : in.highestClass());
    }

    /** Class 0 may draw as much as class 3. */
    private static boolean classGiven(Input in, Port port) {
        int asked = port.deviceClass() == 0 ? 3 : port.deviceClass();
        int given = in.highestClass() == 0 ? 3 : in.highestClass();
        return asked <= given;
    }

    private static Result judge(ResultDraft draft, Input in, double sum, double headroom) {
        String reason = beside(sum, 4, in.budget()) + " W of " + of(in.budget()) + " W are set aside, headroom "
                + beside(headroom, 4, 0, COMFORT * in.budget()) + " W";
        long broken = broken(draft, Level.BAD);
        if (headroom < 0) {
            return draft.judged(Level.BAD, "budget exceeded", reason + ": a port will be left without power.");
        }
        if (broken > 0) {
            return draft.judged(Level.BAD, "a cable is too long", reason + "; " + rules(broken) + " not met.");
        }
        if (broken(draft, Level.CAREFUL) > 0) {
            return draft.judged(
                    Level.CAREFUL,
                    "a device gets less than it asks for",
                    reason + "; " + rules(broken(draft, Level.CAREFUL)) + " met with a warning.");
        }
        return Side.above(sum, (1 - COMFORT) * in.budget())
                ? draft.judged(
                        Level.CAREFUL,
                        "within the budget, little headroom",
                        reason + ", below the 10 % that common practice keeps.")
                : draft.judged(Level.GOOD, "within the budget", reason + ".");
    }

    private static long broken(ResultDraft draft, Level level) {
        return draft.rules().stream().filter(r -> r.outcome() == level).count();
    }

    private static String rules(long count) {
        return count == 1 ? "1 rule is" : count + " rules are";
    }
}

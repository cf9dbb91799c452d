package org.benchtrail.core.bench.network;

import static org.benchtrail.core.Published.check;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.network.PoeBudget.Input;
import org.benchtrail.core.bench.network.PoeBudget.Port;
import org.benchtrail.core.bench.network.PoeBudget.PowerClass;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PoeBudgetTest {
    private static final String IEEE = "IEEE 802.3 clauses 33 and 145, classes";

    private static Result of(double budget, int highest, Port... ports) {
        return PoeBudget.calculate(new Input(budget, highest, List.of(ports)));
    }

    @ParameterizedTest
    @CsvSource({
        "0, 1, 15.4, 12.95, 44, 0.35, 2.45, 12.9500",
        "3, 1, 15.4, 12.95, 44, 0.35, 2.45, 12.9500",
        "1, 1, 4.0, 3.84, 44, 0.090909, 0.165289, 3.8347",
        "2, 1, 7.0, 6.49, 44, 0.159091, 0.506198, 6.4938",
        "4, 2, 30, 25.5, 50, 0.60, 4.50, 25.5000",
        "5, 3, 45, 40, 50, 0.90, 5.0625, 39.9375",
        "6, 3, 60, 51, 50, 1.20, 9.00, 51.0000",
        "7, 4, 75, 62, 52, 1.442308, 13.001572, 61.9984",
        "8, 4, 90, 71.3, 52, 1.730769, 18.722263, 71.2777"
    })
    void classes_reproduceTheTable(
            int number, int type, double pse, double pd, double volts, double amperes, double loss, double left) {
        PowerClass c = PoeBudget.powerClass(number);
        check(IEEE, type, c.type(), 0);
        check(IEEE, pse, c.switchWatts(), 0);
        check(IEEE, pd, c.deviceWatts(), 0);
        check(IEEE, volts, c.volts(), 0);
        check(IEEE, amperes, c.amperes(), 5e-7);
        check(IEEE, loss, c.loss(100), 5e-7);
        double atDevice = FigureOf.value(of(1000, 8, new Port(number, 100)), "Port 1: at the device");
        check(IEEE, left, atDevice, 5e-5);
        check(IEEE, pd, atDevice, 0.1);
    }

    /** A switch that gives less than a device asks for assigns the highest class it gives: 3, 4, 6 or 8 by its type. */
    @Test
    void everyDevice_isAssignedItsClassOrThePortsHighest() {
        double[] watts = {15.4, 4.0, 7.0, 15.4, 30, 45, 60, 75, 90};
        for (int highest : new int[] {3, 4, 6, 8}) {
            for (int device = 0; device <= 8; device++) {
                double assigned = Math.min(watts[device], watts[highest]);
                double aside = FigureOf.value(of(1000, highest, new Port(device, 50)), "Set aside");
                check("IEEE 802.3 clauses 33 and 145, classes assigned (from memory)", assigned, aside, 1e-12);
            }
        }
    }

    @Test
    void thirtyMetresOfTypeTwo() {
        String source = "IEEE 802.3 class 4, drop recomputed";
        check(source, 28.65, FigureOf.value(of(100, 4, new Port(4, 30)), "Port 1: at the device"), 1e-9);
        PowerClass c = PoeBudget.powerClass(4);
        check(source, 2.25, c.loss(30) / c.amperes(), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"60, GOOD", "45.4, CAREFUL", "50, CAREFUL", "51, GOOD", "45.3, BAD"})
    void budget_decides(double budget, Level level) {
        Result result = of(budget, 4, new Port(4, 50), new Port(3, 50));
        assertEquals(level, result.judgement().level(), result.judgement().reason());
        assertEquals(budget - 45.4, FigureOf.value(result, "Headroom"), 1e-9);
    }

    @Test
    void classAboveThePort_andCableBeyondHundredMetres_areNotMet() {
        Result result = of(500, 4, new Port(6, 50), new Port(3, 101));
        assertEquals(Level.CAREFUL, FigureOf.rule(result, "Port 1: class").outcome());
        assertEquals(Level.GOOD, FigureOf.rule(result, "Port 2: class").outcome());
        assertEquals(Level.BAD, FigureOf.rule(result, "Port 2: length").outcome());
        assertEquals(Level.BAD, result.judgement().level());
    }

    @Test
    void classZero_asksAsMuchAsClassThree() {
        assertEquals(
                Level.CAREFUL,
                FigureOf.rule(of(100, 2, new Port(0, 10)), "Port 1: class").outcome());
        assertEquals(
                Level.GOOD,
                FigureOf.rule(of(100, 3, new Port(0, 10)), "Port 1: class").outcome());
    }

    @ParameterizedTest
    @ValueSource(ints = {-1, 9})
    void otherClasses_areRefused(int number) {
        Invalid refusal = assertThrows(Invalid.class, () -> of(100, 4, new Port(number, 10)));
        assertEquals("ports[0].deviceClass", refusal.problems().get(0).field());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void longerCable_deliversLess(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 300; i++) {
            int number = random.nextInt(9);
            double metres = 1 + 90 * random.nextDouble();
            double near = FigureOf.value(of(100, 8, new Port(number, metres)), "Port 1: at the device");
            double far = FigureOf.value(of(100, 8, new Port(number, metres * 1.01)), "Port 1: at the device");
            assertTrue(far < near && far > 0, "seed " + seed + " class " + number + " " + metres);
        }
    }
}

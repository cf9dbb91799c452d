package org.benchtrail.core.bench.cooling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CoolingTest {
    private static final String JESD51 = "JEDEC JESD51, definition of theta, recomputed";
    private static final String CMOS = "CMOS dynamic power alpha C V^2 f, textbook, recomputed";
    private static final String FAN_LAWS =
            "fan laws, textbook: half speed moves half the air with a quarter of the pressure and an eighth of the"
                    + " power";

    private static Result path(double chip, double ambient, double watts, List<Double> rated, Double limit) {
        return HeatPath.calculate(new HeatPath.Input(chip, ambient, watts, rated, limit));
    }

    @Test
    void heatPath() {
        Published.check(
                JESD51, 0.578947, FigureOf.value(path(80, 25, 95, List.of(), null), "Thermal resistance"), 5e-7);
        Published.check(
                JESD51, 0.569231, FigureOf.value(path(72, 35, 65, List.of(), null), "Thermal resistance"), 5e-7);
        Published.check(
                JESD51, 68.75, FigureOf.value(path(70, 25, 125, List.of(0.35), null), "Temperature to expect"), 1e-9);
        Published.check(
                JESD51,
                130.0,
                FigureOf.value(path(60, 35, 50, List.of(), 100.0), "Power at which the limit is reached"),
                1e-9);
        Published.check(
                JESD51,
                68.75,
                FigureOf.value(path(70, 25, 125, List.of(0.1, 0.05, 0.2), null), "Temperature to expect"),
                1e-9);
    }

    @Test
    void heatPath_verdicts() {
        assertEquals(Level.NONE, path(80, 25, 100, List.of(), null).judgement().level());
        assertEquals(
                Level.GOOD, path(80, 25, 100, List.of(0.5), null).judgement().level());
        assertEquals(
                Level.CAREFUL,
                path(80, 25, 100, List.of(0.45), null).judgement().level());
        assertEquals(
                Level.BAD, path(80, 25, 100, List.of(0.3), null).judgement().level());
        assertEquals(
                "too hot", path(95, 25, 100, List.of(1.0), 95.0).judgement().words());
        FigureOf.names(assertThrows(Invalid.class, () -> path(24, 25, 95, List.of(), null)), "chip");
        FigureOf.names(assertThrows(Invalid.class, () -> path(80, 25, 0, List.of(0.0), 20.0)), "rated[0]");
        FigureOf.names(assertThrows(Invalid.class, () -> path(80, 25, 0, List.of(), 20.0)), "limit");
    }

    private static Result clock(double watts, double f1, double f2, double v1, double v2) {
        return ClockHeat.calculate(new ClockHeat.Input(watts, f1, f2, v1, v2, null, null));
    }

    @Test
    void clockHeat() {
        Published.check(CMOS, 100.723140, FigureOf.value(clock(65, 3.5, 4.2, 1.10, 1.25), "Power now"), 5e-7);
        Published.check(CMOS, 61.306667, FigureOf.value(clock(95, 3.6, 3.0, 1.25, 1.10), "Power now"), 5e-7);
        Published.check(CMOS, 200, FigureOf.value(clock(100, 2, 4, 1, 1), "Power now"), 1e-9);
        Published.check(CMOS, 121, FigureOf.value(clock(100, 2, 2, 1, 1.1), "Power now"), 1e-9);
    }

    @Test
    void clockHeat_temperatureBackAtTheDefault() {
        Result doubled = ClockHeat.calculate(new ClockHeat.Input(100, 2, 4, 1, 1, 85.0, 25.0));
        assertEquals(55, FigureOf.value(doubled, "Temperature to expect at the default"), 1e-9);
        assertEquals(Level.CAREFUL, doubled.judgement().level());
        assertEquals(Level.GOOD, clock(100, 2, 2, 1, 1).judgement().level());
        FigureOf.names(assertThrows(Invalid.class, () -> new ClockHeat.Input(100, 2, 4, 1, 1, 85.0, null)), "ambient");
    }

    private static Result fan(double rated, double speed, Double duty) {
        return Fan.calculate(new Fan.Input(rated, speed, duty, 10));
    }

    @Test
    void fan_laws() {
        Result half = fan(2000, 1000, null);
        Published.check(FAN_LAWS, 50, FigureOf.value(half, "Air flow against rated"), 1e-9);
        Published.check(FAN_LAWS, 25, FigureOf.value(half, "Pressure against rated"), 1e-9);
        Published.check(FAN_LAWS, 12.5, FigureOf.value(half, "Shaft power against rated"), 1e-9);
    }

    @Test
    void fan_verdicts() {
        assertEquals("stalled", fan(2000, 0, 50.0).judgement().words());
        assertEquals(Level.BAD, fan(2000, 999, null).judgement().level());
        assertEquals("slow", fan(2000, 1000, null).judgement().words());
        assertEquals("slow", fan(2000, 1799, null).judgement().words());
        assertEquals("at duty", fan(2000, 1800, null).judgement().words());
        assertEquals("at duty", fan(2000, 1000, 50.0).judgement().words());
        assertEquals(
                "faster than its duty asks", fan(2000, 1101, 50.0).judgement().words());
        assertEquals("stopped, as its duty asks", fan(2000, 0, 0.0).judgement().words());
        assertEquals("turns at no duty", fan(2000, 300, 0.0).judgement().words());
    }

    private static Result room(double watts, Double cooling, Double inlet, RoomHeat.InletClass type) {
        return RoomHeat.calculate(
                new RoomHeat.Input(List.of(new RoomHeat.Source("rack", 1, watts)), cooling, inlet, type));
    }

    @Test
    void roomHeat() {
        String ton = "ton of refrigeration: 12 000 BTU/h are 3516.853 W (NIST SP 811, from memory)";
        Published.check(
                ton,
                12_000,
                FigureOf.value(room(3516.853, null, null, RoomHeat.InletClass.A1), "Heat in BTU/h"),
                0.005);
        Published.check(
                "1 W is 3.412142 BTU/h (ISO 31-4, international table BTU, from memory)",
                3.412142,
                RoomHeat.BTU_PER_HOUR,
                5e-7);
        assertEquals(
                Level.GOOD,
                room(800, 1000.0, null, RoomHeat.InletClass.A1).judgement().level());
        assertEquals(
                Level.CAREFUL,
                room(801, 1000.0, null, RoomHeat.InletClass.A1).judgement().level());
        assertEquals(
                Level.BAD,
                room(1001, 1000.0, null, RoomHeat.InletClass.A1).judgement().level());
        assertEquals(
                Level.NONE,
                room(1001, null, null, RoomHeat.InletClass.A1).judgement().level());
    }

    @Test
    void roomHeat_inlet() {
        String ashrae = "ASHRAE thermal guidelines, classes A1 to A4 (from memory)";
        Published.check(ashrae, Level.GOOD, inlet(18, RoomHeat.InletClass.A1));
        Published.check(ashrae, Level.GOOD, inlet(27, RoomHeat.InletClass.A4));
        Published.check(ashrae, Level.CAREFUL, inlet(27.1, RoomHeat.InletClass.A1));
        Published.check(ashrae, Level.CAREFUL, inlet(32, RoomHeat.InletClass.A1));
        Published.check(ashrae, Level.BAD, inlet(32.1, RoomHeat.InletClass.A1));
        Published.check(ashrae, Level.CAREFUL, inlet(35, RoomHeat.InletClass.A2));
        Published.check(ashrae, Level.BAD, inlet(40.1, RoomHeat.InletClass.A3));
        Published.check(ashrae, Level.CAREFUL, inlet(45, RoomHeat.InletClass.A4));
        Published.check(ashrae, Level.BAD, inlet(14.9, RoomHeat.InletClass.A1));
    }

    private static Level inlet(double temperature, RoomHeat.InletClass type) {
        return room(100, null, temperature, type).judgement().level();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void temperaturesAndShares_moveTheWayPhysicsSays(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 200; i++) {
            double watts = random.nextDouble(1, 130);
            double theta = random.nextDouble(0.05, 0.9);
            double volts = random.nextDouble(0.6, 1.6);
            String row = "seed " + seed + ", row " + i;
            assertTrue(expected(watts * 1.01, theta) > expected(watts, theta), row);
            assertTrue(expected(watts, theta * 1.01) > expected(watts, theta), row);
            assertTrue(power(volts * 1.01) > power(volts), row);
            Result settled = path(25 + watts * theta, 25, watts, List.of(theta), null);
            assertEquals(theta, FigureOf.value(settled, "Thermal resistance"), 1e-9, row);
            assertEquals(0, FigureOf.value(settled, "Excess over what is expected"), 1e-9, row);
        }
    }

    private static double expected(double watts, double theta) {
        return FigureOf.value(path(100, 25, watts, List.of(theta), null), "Temperature to expect");
    }

    private static double power(double volts) {
        return FigureOf.value(clock(65, 3, 4, 1, volts), "Power now");
    }

    @Test
    void heatPath_curvesRiseWithPower() {
        path(80, 25, 95, List.of(0.4), 95.0).curves().stream()
                .filter(c -> !c.title().equals("Limit"))
                .forEach(curve -> {
                    for (int i = 1; i < curve.points().size(); i++) {
                        assertTrue(curve.points().get(i).y()
                                > curve.points().get(i - 1).y());
                    }
                });
        assertFalse(path(80, 25, 95, List.of(0.4), 95.0).curves().isEmpty());
    }
}

package org.benchtrail.core.bench.power;

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
import org.benchtrail.core.bench.power.Mains.Region;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PowerTest {
    private static final String IEC = "IEC 60038, 230 V within 10 %";
    private static final String EN = "EN 50160, low voltage and frequency";
    private static final String ANSI = "ANSI C84.1, service voltage (from memory; 5 % recomputed)";
    private static final String IEEE_1459 = "IEEE Std 1459 definitions, recomputed";
    private static final String PEUKERT = "Peukert 1897, tutorial worked example";
    private static final String ENERGY = "stored energy over power, recomputed";

    private static Result mains(Region region, double volts, Double hertz) {
        return Mains.calculate(new Mains.Input(region, volts, hertz, null));
    }

    private static Level volts(Region region, double volts) {
        return FigureOf.rule(mains(region, volts, null), "Voltage").outcome();
    }

    @Test
    void mains_europe() {
        Published.check(IEC, false, volts(Region.EUROPE_230_V, 206.9) == Level.GOOD);
        Published.check(IEC, Level.GOOD, volts(Region.EUROPE_230_V, 207));
        Published.check(IEC, Level.GOOD, volts(Region.EUROPE_230_V, 253));
        Published.check(IEC, Level.BAD, volts(Region.EUROPE_230_V, 253.1));
        Published.check(EN, Level.CAREFUL, volts(Region.EUROPE_230_V, 195.5));
        Published.check(EN, Level.BAD, volts(Region.EUROPE_230_V, 195.4));
    }

    @Test
    void mains_frequency() {
        Published.check(EN, Level.GOOD, hertz(49.5));
        Published.check(EN, Level.GOOD, hertz(50.5));
        Published.check(EN, Level.CAREFUL, hertz(49.49));
        Published.check(EN, Level.CAREFUL, hertz(47));
        Published.check(EN, Level.CAREFUL, hertz(52));
        Published.check(EN, Level.BAD, hertz(46.99));
        Published.check(EN, Level.BAD, hertz(52.01));
        assertEquals(
                "common practice, no source",
                FigureOf.rule(mains(Region.NORTH_AMERICA_120_V_OUTLET, 120, 60.0), "Frequency")
                        .source());
    }

    private static Level hertz(double hertz) {
        return FigureOf.rule(mains(Region.EUROPE_230_V, 230, hertz), "Frequency")
                .outcome();
    }

    @Test
    void mains_northAmerica() {
        Published.check(ANSI, Level.GOOD, volts(Region.NORTH_AMERICA_120_V_SERVICE, 114));
        Published.check(ANSI, Level.GOOD, volts(Region.NORTH_AMERICA_120_V_SERVICE, 126));
        Published.check(ANSI, Level.CAREFUL, volts(Region.NORTH_AMERICA_120_V_SERVICE, 113.9));
        Published.check(ANSI, Level.BAD, volts(Region.NORTH_AMERICA_120_V_SERVICE, 109.9));
        assertEquals(Level.GOOD, volts(Region.NORTH_AMERICA_120_V_OUTLET, 109));
        assertEquals(Level.CAREFUL, volts(Region.NORTH_AMERICA_120_V_OUTLET_OLDER, 109));
    }

    @Test
    void mains_nearALimit_isTooCloseToCall() {
        Level near = Mains.calculate(new Mains.Input(Region.EUROPE_230_V, 208, null, 1.8))
                .judgement()
                .level();
        assertEquals(Level.UNDECIDED, near);
        Level clear = Mains.calculate(new Mains.Input(Region.EUROPE_230_V, 209, null, 1.8))
                .judgement()
                .level();
        assertEquals(Level.GOOD, clear);
        Level nearWider = Mains.calculate(new Mains.Input(Region.EUROPE_230_V, 195, null, 1.8))
                .judgement()
                .level();
        assertEquals(Level.UNDECIDED, nearWider);
    }

    @Test
    void mains_saysThatItIsASpotReading() {
        assertTrue(mains(Region.EUROPE_230_V, 230, 50.0).judgement().words().contains("spot reading"));
        assertTrue(mains(Region.EUROPE_230_V, 230, 50.0).assumptions().stream()
                .anyMatch(a -> a.contains("licensed electrician")));
    }

    private static Result load(double watts, Double va, Double volts, Double amps, double ratedWatts, double ratedVa) {
        return UpsLoad.calculate(new UpsLoad.Input(ratedWatts, ratedVa, watts, va, volts, amps));
    }

    @Test
    void upsLoad_powerFactor() {
        Result first = load(540, null, 230.0, 2.61, 900, 1000);
        Published.check(IEEE_1459, 600.3, FigureOf.value(first, "Apparent power"), 1e-9);
        Published.check(IEEE_1459, 0.899550, FigureOf.value(first, "Power factor"), 5e-7);
        Result second = load(720, null, 120.0, 8.0, 900, 1000);
        Published.check(IEEE_1459, 960, FigureOf.value(second, "Apparent power"), 1e-9);
        Published.check(IEEE_1459, 0.75, FigureOf.value(second, "Power factor"), 1e-12);
        Result triangle = load(300, Math.hypot(300, 400), null, null, 900, 1000);
        Published.check(
                "power triangle, S^2 = P^2 + Q^2, textbook (300 W, 400 var)",
                0.6,
                FigureOf.value(triangle, "Power factor"),
                1e-12);
    }

    @Test
    void upsLoad_testsBothRatings() {
        Result fits = load(540, 600.0, null, null, 900, 1000);
        Published.check(IEEE_1459, 60.0, FigureOf.value(fits, "Load by watts"), 1e-9);
        Published.check(IEEE_1459, 60.0, FigureOf.value(fits, "Load by volt-amperes"), 1e-9);
        assertEquals(Level.GOOD, fits.judgement().level());
        Result over = load(700, 750.0, null, null, 500, 1000);
        Published.check(IEEE_1459, 140.0, FigureOf.value(over, "Load"), 1e-9);
        Published.check(IEEE_1459, 75.0, FigureOf.value(over, "Load by volt-amperes"), 1e-9);
        assertEquals(Level.BAD, over.judgement().level());
        assertTrue(over.judgement().reason().contains("watts bind"));
        Result byVa = load(400, 900.0, null, null, 900, 1000);
        assertTrue(byVa.judgement().reason().contains("volt-amperes bind"));
        assertEquals(Level.CAREFUL, byVa.judgement().level());
        assertEquals(
                Level.CAREFUL,
                load(1000, 1000.0, null, null, 1000, 1000).judgement().level());
    }

    @Test
    void upsLoad_refusesMoreWattsThanVoltAmperes() {
        FigureOf.names(assertThrows(Invalid.class, () -> load(700, 600.0, null, null, 900, 1000)), "watts");
        assertEquals(1, FigureOf.value(load(606, 600.0, null, null, 900, 1000), "Power factor"), 1e-12);
        FigureOf.names(assertThrows(Invalid.class, () -> load(500, 600.0, 230.0, 2.6, 900, 1000)), "va");
        FigureOf.names(assertThrows(Invalid.class, () -> load(500, null, 230.0, null, 900, 1000)), "va");
        FigureOf.names(assertThrows(Invalid.class, () -> load(500, 600.0, null, null, 1000, 900)), "ratedVa");
    }

    private static UpsRuntime.Input runtime(
            int blocks, double amps, double exponent, double health, double efficiency, double usable, double watts) {
        return new UpsRuntime.Input(
                blocks, 12, amps, 20, exponent, null, null, health, efficiency, usable, watts, null);
    }

    private static double figure(UpsRuntime.Input input, String name) {
        return FigureOf.value(UpsRuntime.calculate(input), name);
    }

    @Test
    void runtime_byEnergy() {
        Published.check(ENERGY, 38.88, figure(runtime(2, 9, 1, 100, 90, 100, 300), "Runtime by energy"), 1e-9);
        Published.check(ENERGY, 45.6192, figure(runtime(4, 9, 1, 100, 88, 80, 400), "Runtime by energy"), 1e-9);
        assertEquals(38.88, figure(runtime(2, 9, 1, 100, 90, 100, 300), "Runtime"), 1e-9);
        assertEquals(38.88 / 2, figure(runtime(2, 9, 1, 50, 90, 100, 300), "Runtime"), 1e-9);
    }

    @Test
    void peukert() {
        Published.check(PEUKERT, 0.301709, Peukert.hours(120, 20, 120, 1.4), 5e-7);
        Published.check(PEUKERT, 36.2051, 120 * Peukert.hours(120, 20, 120, 1.4), 5e-5);
        Published.check("Peukert 1897, recomputed", 3.789291, Peukert.hours(100, 20, 20, 1.2), 5e-7);
        Published.check("Peukert 1897, recomputed", 75.7858, 20 * Peukert.hours(100, 20, 20, 1.2), 5e-5);
        Published.check("Peukert 1897, recomputed", 9.330330, Peukert.hours(100, 20, 10, 1.1), 5e-7);
        Published.check("Peukert 1897, recomputed", 0.254706, Peukert.hours(9, 20, 20, 1.15), 5e-7);
        Published.check("Peukert 1897, recomputed", 1.2, Peukert.exponent(5, 20, 20, 3.789291), 1e-6);
        for (double k : new double[] {1, 1.1, 1.3, 2}) {
            Published.check("Peukert 1897, identity at the rated current", 20.0, Peukert.hours(100, 20, 5, k), 1e-12);
        }
    }

    /** 240 W at full efficiency draw 20 A from one 12 V block. */
    @Test
    void runtime_byPeukert() {
        Published.check(
                "Peukert 1897, recomputed",
                60 * 3.789291,
                figure(runtime(1, 100, 1.2, 100, 100, 100, 240), "Runtime by Peukert's law"),
                1e-4);
        UpsRuntime.Input twoPoints =
                new UpsRuntime.Input(1, 12, 100, 20, null, 20.0, 3.789291, 100, 100, 100, 240, null);
        Published.check("Peukert 1897, recomputed", 1.2, figure(twoPoints, "Peukert exponent"), 1e-6);
        assertEquals(60 * 3.789291, figure(twoPoints, "Runtime"), 1e-4);
    }

    @Test
    void runtime_takesTheShorterOfBothBounds() {
        UpsRuntime.Input light = runtime(1, 100, 1.3, 100, 100, 100, 12);
        assertTrue(figure(light, "Runtime by Peukert's law") > figure(light, "Runtime by energy"));
        assertEquals(figure(light, "Runtime by energy"), figure(light, "Runtime"));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void runtime_fallsWithLoad_andWithAge(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 200; i++) {
            double amps = random.nextDouble(1, 200);
            double k = random.nextDouble(1, 2);
            double health = random.nextDouble(20, 100);
            double watts = random.nextDouble(5, 5000);
            double base = figure(runtime(4, amps, k, health, 90, 80, watts), "Runtime");
            String row = "seed " + seed + ", row " + i;
            assertTrue(figure(runtime(4, amps, k, health, 90, 80, watts * 1.01), "Runtime") < base, row);
            assertTrue(figure(runtime(4, amps, k, health * 0.99, 90, 80, watts), "Runtime") < base, row);
            assertTrue(figure(runtime(5, amps, k, health, 90, 80, watts), "Runtime") > base, row);
        }
    }

    @Test
    void runtime_verdict_andRefusals() {
        assertEquals(
                Level.NONE,
                UpsRuntime.calculate(runtime(2, 9, 1, 100, 90, 100, 300))
                        .judgement()
                        .level());
        assertEquals(Level.BAD, shutdown(38.9));
        assertEquals(Level.CAREFUL, shutdown(38.8));
        assertEquals(Level.GOOD, shutdown(19));
        FigureOf.names(assertThrows(Invalid.class, () -> runtime(2, 9, 1, 100, 90, 100, 0)), "watts");
        FigureOf.names(assertThrows(Invalid.class, () -> runtime(2, 9, 0.9, 100, 90, 100, 100)), "exponent");
        FigureOf.names(
                assertThrows(
                        Invalid.class,
                        () -> new UpsRuntime.Input(2, 12, 9, 20, null, null, null, 100, 90, 100, 100, null)),
                "exponent");
        FigureOf.names(
                assertThrows(
                        Invalid.class,
                        () -> new UpsRuntime.Input(2, 12, 9, 20, null, 9.0, 5.0, 100, 90, 100, 100, null)),
                "secondAmps");
    }

    private static Level shutdown(double minutes) {
        return UpsRuntime.calculate(new UpsRuntime.Input(2, 12, 9, 20, 1.0, null, null, 100, 90, 100, 300, minutes))
                .judgement()
                .level();
    }

    private static Result battery(double full, double design, boolean swollen) {
        return BatteryHealth.calculate(
                new BatteryHealth.Input(BatteryHealth.Kind.PORTABLE, full, design, null, null, swollen));
    }

    @Test
    void battery_health() {
        assertEquals(68.2142857, FigureOf.value(battery(38.2, 56, false), "Health"), 1e-6);
        assertEquals(Level.GOOD, battery(80, 100, false).judgement().level());
        assertEquals(Level.CAREFUL, battery(79.9, 100, false).judgement().level());
        assertEquals(Level.CAREFUL, battery(60, 100, false).judgement().level());
        assertEquals(Level.BAD, battery(59.9, 100, false).judgement().level());
        String standby = "IEEE Std 450 and 1188, replacement below 80 % of rated capacity (from memory)";
        Published.check(standby, Level.BAD, standby(79.9));
        Published.check(standby, Level.CAREFUL, standby(80));
        FigureOf.names(assertThrows(Invalid.class, () -> battery(5600, 56, false)), "fullCharge");
    }

    private static Level standby(double percent) {
        return BatteryHealth.calculate(
                        new BatteryHealth.Input(BatteryHealth.Kind.STANDBY_LEAD_ACID, percent, 100, null, null, false))
                .judgement()
                .level();
    }

    @Test
    void battery_swollenIsOutOfUse_whateverItHolds() {
        Result swollen = battery(100, 100, true);
        assertEquals("take it out of use", swollen.judgement().words());
        assertTrue(swollen.cautions().contains("SWELLING"));
        assertFalse(battery(100, 100, false).cautions().contains("SWELLING"));
    }

    @Test
    void supply_size() {
        Result result = SupplySize.calculate(SupplySize.CALCULATION.example());
        assertEquals(105 + 200 + 45 + 14 + 12, FigureOf.value(result, "Sustained draw"), 1e-9);
        assertEquals(142 + 320 + 45 + 48 + 12, FigureOf.value(result, "Peak draw"), 1e-9);
        assertEquals(331, FigureOf.value(result, "Draw from +12 V"), 1e-9);
        assertEquals(Level.CAREFUL, result.judgement().level());
        assertEquals(Level.GOOD, supply(500));
        assertEquals(Level.CAREFUL, supply(499));
        assertEquals(Level.CAREFUL, supply(400));
        assertEquals(Level.BAD, supply(399));
    }

    private static Level supply(double rated) {
        List<SupplySize.Part> parts = List.of(new SupplySize.Part("All", 4, 100, null, true));
        return SupplySize.calculate(new SupplySize.Input(rated, null, parts))
                .judgement()
                .level();
    }
}

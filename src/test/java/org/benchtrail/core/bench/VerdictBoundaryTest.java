package org.benchtrail.core.bench;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.cooling.ClockHeat;
import org.benchtrail.core.bench.cooling.Fan;
import org.benchtrail.core.bench.cooling.HeatPath;
import org.benchtrail.core.bench.judging.Soak;
import org.benchtrail.core.bench.judging.Subset;
import org.benchtrail.core.bench.network.CopperLink;
import org.benchtrail.core.bench.network.Loss;
import org.benchtrail.core.bench.network.PathThroughput;
import org.benchtrail.core.bench.network.PoeBudget;
import org.benchtrail.core.bench.power.BatteryHealth;
import org.benchtrail.core.bench.power.Mains;
import org.benchtrail.core.bench.power.Rails;
import org.benchtrail.core.bench.power.SupplySize;
import org.benchtrail.core.bench.power.UpsLoad;
import org.benchtrail.core.bench.power.UpsRuntime;
import org.benchtrail.core.bench.storage.Array;
import org.benchtrail.core.bench.storage.DriveHealth;
import org.benchtrail.core.bench.storage.Endurance;
import org.benchtrail.core.bench.voice.Jitter;
import org.benchtrail.core.bench.voice.Voice;
import org.benchtrail.core.bench.wireless.RadioLink;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each verdict at, under and over the boundary at which it changes. */
class VerdictBoundaryTest {
    private static void assertVerdict(Level level, String words, Result result) {
        assertEquals(level, result.judgement().level(), result.judgement().reason());
        assertEquals(words, result.judgement().words(), result.judgement().reason());
    }

    // ---- power

    @ParameterizedTest
    @CsvSource({
        "900, GOOD, carries it",
        "850, CAREFUL, carries it with little to spare",
        "818.19, CAREFUL, carries it with little to spare",
        "818.18, BAD, too small for the peak",
        "300, BAD, too small for the peak"
    })
    void supply_isTooSmallForAPeakBeyondWhatItRidesThrough(double rated, Level level, String words) {
        List<SupplySize.Part> parts = List.of(new SupplySize.Part("All", 1, 200, 900.0, false));
        assertVerdict(level, words, SupplySize.calculate(new SupplySize.Input(rated, null, parts)));
    }

    @ParameterizedTest
    @CsvSource({"300, GOOD", "272.8, CAREFUL", "272.7, BAD"})
    void supply_isTooSmallForThePeakOnTwelveVolts(double twelve, Level level) {
        List<SupplySize.Part> parts = List.of(
                new SupplySize.Part("Card", 1, 200, 300.0, true), new SupplySize.Part("Rest", 1, 20, null, false));
        Result result = SupplySize.calculate(new SupplySize.Input(1000, twelve, parts));
        assertEquals(level, FigureOf.rule(result, "Peak on +12 V").outcome());
    }

    /** Real power is never more than apparent power: a reading above it is the meters' tolerance. */
    @ParameterizedTest
    @CsvSource({"594, 0.99", "600, 1", "606, 1", "612, 1"})
    void powerFactor_isNeverAboveOne(double watts, double factor) {
        Result result = UpsLoad.calculate(new UpsLoad.Input(900, 1000, watts, 600.0, null, null));
        assertEquals(factor, FigureOf.value(result, "Power factor"), 1e-12);
        assertEquals(watts > 600, result.assumptions().stream().anyMatch(a -> a.contains("meter")));
    }

    @Test
    void powerAboveApparentPower_isRefusedBeyondTheMetersTolerance() {
        FigureOf.names(
                assertThrows(Invalid.class, () -> new UpsLoad.Input(900, 1000, 612.1, 600.0, null, null)), "watts");
    }

    /** By hand each sum is just the limit; in binary numbers it is a trace off. */
    @ParameterizedTest
    @CsvSource({"33.3, GOOD", "33.4, BAD"})
    void supply_sumOfDecimalsAtTheRatingIsAtTheRating(double watts, Level level) {
        List<SupplySize.Part> parts = List.of(new SupplySize.Part("Card", 3, watts, null, true));
        Result result = SupplySize.calculate(new SupplySize.Input(99.9 / 0.8, 99.9, parts));
        Level share = FigureOf.rule(result, "Share of the +12 V rating").outcome();
        assertEquals(level == Level.GOOD ? Level.CAREFUL : Level.BAD, share);
        assertEquals(
                level == Level.GOOD ? Level.GOOD : Level.CAREFUL,
                FigureOf.rule(result, "Share of the rating").outcome());
    }

    @ParameterizedTest
    @CsvSource({
        "11.48999999, UNDECIDED",
        "11.49, GOOD",
        "12.51, GOOD",
        "12.51000001, UNDECIDED",
        "11.31, UNDECIDED",
        "11.30999999, BAD"
    })
    void rail_isJudgedFromTheLimitMovedByTheUncertaintyOn(double volts, Level level) {
        Result result = Rails.calculate(new Rails.Input(
                Rails.Edition.ATX12V_2_0, List.of(new Rails.Reading(Rails.Rail.PLUS_12, null, volts, false, 0.09))));
        assertEquals(level, result.judgement().level(), result.judgement().reason());
    }

    /** Full charge in Wh and the design in mWh is a slip, not a battery to throw away; one that takes nothing is one. */
    @ParameterizedTest
    @CsvSource({"0, BAD", "0.0001, ", "0.4999, ", "0.5, BAD", "0.5001, BAD", "29.9, BAD", "60, GOOD", "60.1, "})
    void battery_capacitiesInTwoUnitsAreAskedAbout(double fullCharge, Level level) {
        Executable input =
                () -> new BatteryHealth.Input(BatteryHealth.Kind.PORTABLE, fullCharge, 50, null, null, false);
        if (level == null) {
            FigureOf.names(assertThrows(Invalid.class, input), "fullCharge");
        } else {
            Result result = BatteryHealth.calculate(
                    new BatteryHealth.Input(BatteryHealth.Kind.PORTABLE, fullCharge, 50, null, null, false));
            assertEquals(level, result.judgement().level(), result.judgement().reason());
        }
    }

    /** Below the rated discharge the unit's own draw is as much as the load: the sum is a bound then, and no comfort. */
    @ParameterizedTest
    @CsvSource({
        "9.71, 5, GOOD, at most about 20 h",
        "9.71, 600.1, CAREFUL, at most about 20 h",
        "9.73, 5, GOOD, about 1200 min",
        "0.2, 600, GOOD, at most about 40.5 d",
        "0.2, 600.1, CAREFUL, at most about 40.5 d",
        "0.2, 58320, CAREFUL, at most about 40.5 d",
        "0.2, 58321, BAD, at most about 40.5 d"
    })
    void runtime_ofNearlyNoLoadIsABound(double watts, double needed, Level level, String held) {
        Result result =
                UpsRuntime.calculate(new UpsRuntime.Input(2, 12, 9, 20, 1.0, null, null, 100, 90, 100, watts, needed));
        assertEquals(level, result.judgement().level(), result.judgement().reason());
        assertTrue(result.judgement().reason().startsWith("It holds for " + held), result.judgement()::reason);
        boolean bound = held.startsWith("at most");
        assertEquals(bound, result.assumptions().stream().anyMatch(a -> a.contains("UPS itself draws")));
    }

    /** What holds for moments is said in seconds; nothing shuts down in less than six of them. */
    @ParameterizedTest
    @CsvSource({"0.01, true", "0.0999, true", "0.1, false", "1, false"})
    void runtime_ofMomentsIsSaidInSeconds(double needed, boolean refused) {
        if (refused) {
            FigureOf.names(assertThrows(Invalid.class, () -> moments(needed)), "shutdownMinutes");
            return;
        }
        Result result = UpsRuntime.calculate(moments(needed));
        assertVerdict(Level.BAD, "too short for an orderly shutdown", result);
        assertTrue(
                result.judgement().reason().matches("It holds for (?:less than 1 ms|about [0-9.]+ m?s); .*"),
                result.judgement()::reason);
    }

    private static UpsRuntime.Input moments(double needed) {
        return new UpsRuntime.Input(1, 12, 0.01, 20, 1.15, null, null, 50, 50, 50, 1000, needed);
    }

    /** Voltage and frequency that both belong elsewhere are a wrong region; one of them alone is a fault. */
    @ParameterizedTest
    @CsvSource({
        "EUROPE_230_V, 115, 60, ",
        "EUROPE_230_V, 115, 50, BAD",
        "EUROPE_230_V, 230, 60, BAD",
        "EUROPE_230_V, 23, 60, BAD",
        "EUROPE_230_V, 172.4, 60, BAD",
        "NORTH_AMERICA_120_V_OUTLET, 230, 50, ",
        "NORTH_AMERICA_120_V_OUTLET, 230, 60, BAD",
        "NORTH_AMERICA_120_V_OUTLET, 120, 50, BAD",
        "JAPAN_100_V, 101, 50, GOOD",
        "JAPAN_100_V, 101, 60, GOOD",
        "JAPAN_100_V, 101, 55, BAD",
        "JAPAN_100_V, 230, 50, BAD"
    })
    void mainsOfAnotherRegion_areAskedAbout(Mains.Region region, double volts, double hertz, Level level) {
        Executable input = () -> new Mains.Input(region, volts, hertz, null);
        if (level == null) {
            FigureOf.names(assertThrows(Invalid.class, input), "region");
        } else {
            Result result = Mains.calculate(new Mains.Input(region, volts, hertz, null));
            assertEquals(level, result.judgement().level(), result.judgement().reason());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "0, prove the meter",
        "2.3, decimal point",
        "23, decimal point",
        "91.9, decimal point",
        "92, ",
        "230, ",
        "368, ",
        "369, neutral"
    })
    void mainsFarOff_areDoubtedInWords(double volts, String said) {
        List<String> assumptions = Mains.calculate(new Mains.Input(Mains.Region.EUROPE_230_V, volts, null, null))
                .assumptions();
        for (String word : List.of("prove the meter", "decimal point", "neutral")) {
            assertEquals(
                    word.equals(said), assumptions.stream().anyMatch(a -> a.contains(word)), assumptions.toString());
        }
    }

    /** With one left out that may be the faulty one, nothing is proved; with none, all is. */
    @ParameterizedTest
    @CsvSource({
        "2, 1, 95, shows that there is none",
        "10, 10, 95, shows that fewer than 10 have it",
        "20, 1, 95, does not prove that there is none",
        "20, 1, 96, shows that there is none",
        "187, 9, 95, does not prove that there is none"
    })
    void subset_provesOnlyWhatCannotHaveBeenMissed(int size, int faulty, double confidence, String said) {
        Result result = Subset.calculate(new Subset.Input(size, faulty, confidence));
        assertTrue(result.judgement().reason().endsWith("; finding none " + said + "."), result.judgement()::reason);
    }

    // ---- cooling

    @ParameterizedTest
    @CsvSource({
        "17.5, 1.1, ",
        "17.51, 1.1, clock",
        "35, 1.1, clock",
        "0.35, 1.1, ",
        "3.5, 2.2, ",
        "3.5, 2.21, volts",
        "3.5, 5, volts",
        "3.5, 0.6, "
    })
    void clockOrVoltageThatNoCoreHas_isAskedAbout(double clock, double volts, String asked) {
        Executable input = () -> new ClockHeat.Input(65, 3.5, clock, 1.1, volts, null, null);
        if (asked == null) {
            assertDoesNotThrow(input);
        } else {
            FigureOf.names(assertThrows(Invalid.class, input), asked);
        }
    }

    @ParameterizedTest
    @CsvSource({"150, true", "150.1, false", "400, false"})
    void chipHotterThanSiliconWorks_isAskedAbout(double chip, boolean taken) {
        Executable input = () -> new HeatPath.Input(chip, 25, 100, List.of(), null);
        if (taken) {
            assertDoesNotThrow(input);
        } else {
            Invalid asked = assertThrows(Invalid.class, input);
            FigureOf.names(asked, "chip");
            assertTrue(asked.getMessage().contains("?") || chip > 300, asked.getMessage());
        }
    }

    @ParameterizedTest
    @CsvSource({"10000, UNDECIDED", "10001, ", "60000, "})
    void fan_atManyTimesItsRatingIsAskedAbout(double speed, Level level) {
        if (level != null) {
            assertEquals(
                    level,
                    Fan.calculate(new Fan.Input(2000, speed, null, 10))
                            .judgement()
                            .level());
        } else {
            Invalid asked = assertThrows(Invalid.class, () -> new Fan.Input(2000, speed, null, 10));
            FigureOf.names(asked, "speed");
            assertTrue(asked.getMessage().contains("which of the two"), asked.getMessage());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "0.3, UNDECIDED, better than it can be: check the readings",
        "0.6, UNDECIDED, better than it can be: check the readings",
        "0.667, GOOD, as rated",
        "1, GOOD, as rated",
        "1.15, GOOD, as rated",
        "1.16, CAREFUL, worse than rated",
        "1.5, CAREFUL, worse than rated",
        "1.51, BAD, much worse than rated"
    })
    void heatPath_farBelowItsRatingIsNotBelieved(double ratio, Level level, String words) {
        assertVerdict(
                level, words, HeatPath.calculate(new HeatPath.Input(25 + 50 * ratio, 25, 100, List.of(0.5), null)));
    }

    @ParameterizedTest
    @CsvSource({
        "3000, CAREFUL, faster than its duty asks",
        "3001, UNDECIDED, faster than a fan can be: check the pulses per turn",
        "4000, UNDECIDED, faster than a fan can be: check the pulses per turn"
    })
    void fan_aboveHalfAgainItsRatingIsAPulseCount(double speed, Level level, String words) {
        assertVerdict(level, words, Fan.calculate(new Fan.Input(2000, speed, null, 10)));
    }

    @Test
    void fan_thatKeepsALowestSpeedIsNoPulseCount() {
        assertVerdict(Level.CAREFUL, "faster than its duty asks", Fan.calculate(new Fan.Input(2000, 700, 20.0, 10)));
    }

    // ---- storage

    private static Result array(Array.RaidLevel level, int members, double errors) {
        return Array.calculate(
                new Array.Input(level, Collections.nCopies(members, 12.0), 150, 100, errors, 1_200_000, 0));
    }

    /** 1e-14 over 12 TB gives a chance of 62 %, 1e-16 one of 0.96 %. */
    @ParameterizedTest
    @CsvSource({
        "RAID5, 3, 1e-14, CAREFUL",
        "RAID5, 3, 1e-17, GOOD",
        "RAID10, 4, 1e-14, CAREFUL",
        "RAID1, 2, 1e-14, CAREFUL",
        "RAID1, 3, 1e-14, GOOD",
        "RAID6, 4, 1e-14, GOOD"
    })
    void array_thatKeepsRedundancyWhileItRebuildsRisksNoReadError(
            Array.RaidLevel level, int members, double errors, Level expected) {
        Result result = array(level, members, errors);
        assertEquals(expected, result.judgement().level(), result.judgement().reason());
        assertEquals(
                expected == Level.CAREFUL, result.judgement().words().contains("risky"), result.judgement()::words);
    }

    /** ln(1 - 0.1) over the bits of one member: just at ten per cent. */
    @ParameterizedTest
    @CsvSource({"0.999999, GOOD", "1.000001, CAREFUL"})
    void array_rebuildIsRiskyAboveTenPerCent(double share, Level expected) {
        double bits = 12 * 8e12;
        double errors = -Math.expm1(Math.log(0.9) * share / bits);
        assertEquals(
                expected, array(Array.RaidLevel.RAID10, 4, errors).judgement().level());
    }

    private static Result nvme(int offset, int value) {
        return nvme(offset, value, null);
    }

    private static Result nvme(int offset, int value, Double critical) {
        byte[] page = new byte[512];
        page[1] = 0x36;
        page[2] = 0x01;
        page[3] = 100;
        page[4] = 10;
        page[128] = 10;
        page[offset] = (byte) value;
        String hex = java.util.HexFormat.of().formatHex(page);
        return DriveHealth.calculate(
                new DriveHealth.Input(DriveHealth.Form.NVME_PAGE, hex, "", 0, List.of(), critical));
    }

    /** 85 °C are 358 K, 0x166. */
    @ParameterizedTest
    @CsvSource({"0x65, GOOD", "0x66, BAD", "0x67, BAD"})
    void nvme_compositeAtItsCriticalTemperatureIsAnAlarm(String low, Level level) {
        assertEquals(level, nvme(1, Integer.decode(low), 85.0).judgement().level());
        assertEquals(level, nvme(1, Integer.decode(low), null).judgement().level());
    }

    @ParameterizedTest
    @CsvSource({
        "192, 0, GOOD",
        "192, 1, CAREFUL",
        "195, 1, CAREFUL",
        "196, 0, GOOD",
        "196, 1, CAREFUL",
        "199, 1, CAREFUL"
    })
    void nvme_minutesTooHotAreSaid(int offset, int value, Level level) {
        Result result = nvme(offset, value);
        assertEquals(level, result.judgement().level(), result.judgement().reason());
        if (value > 0) {
            assertTrue(
                    result.judgement().reason().contains("min"),
                    result.judgement().reason());
        }
    }

    @Test
    void nvme_minutesAtTheWarningTemperaturePointAtTheCooling() {
        assertVerdict(Level.CAREFUL, "check the cooling", nvme(192, 1));
        assertVerdict(Level.CAREFUL, "suspicious", nvme(196, 1));
        assertEquals(List.of(), nvme(192, 1).cautions());
    }

    private static Result ata(String rows) {
        return DriveHealth.calculate(new DriveHealth.Input(DriveHealth.Form.ATA_ROWS, rows, "", 5, List.of(), null));
    }

    @Test
    void ata199_pointsAtTheCable() {
        assertVerdict(Level.CAREFUL, "check the cable", ata("199 200 200 0 1"));
        assertVerdict(Level.GOOD, "no alarm", ata("199 200 200 0 0"));
        assertVerdict(Level.CAREFUL, "suspicious", ata("199 200 200 0 1\n5 100 100 10 1"));
        assertEquals(List.of(), ata("199 200 200 0 1").cautions());
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "1, 1", "65535, 65535", "65536, 1", "4295032833, 3", "8590065666, 6"})
    void ata188_isUnpackedIntoItsThreeCounters(long raw, int timeouts) {
        Result result = ata("188 100 100 0 " + raw);
        String said = FigureOf.rule(result, "attribute 188 by its count").sentence();
        assertTrue(said.startsWith(timeouts + " "), said);
    }

    @Test
    void endurance_ofTwoReadingsSaysThatItHasNoInterval() {
        Result two = Endurance.calculate(
                new Endurance.Input(1000, List.of(new Endurance.Sample(0, 80), new Endurance.Sample(10, 90))));
        assertVerdict(Level.UNDECIDED, "endurance left, by two readings only", two);
        assertTrue(two.judgement().reason().contains("two readings give no interval"), two.judgement()::reason);
        assertFalse(
                two.judgement().reason().contains("perhaps only"),
                two.judgement().reason());
        Result soon = Endurance.calculate(
                new Endurance.Input(100, List.of(new Endurance.Sample(0, 80), new Endurance.Sample(10, 90))));
        assertVerdict(Level.CAREFUL, "endurance runs out soon", soon);
        Result three = Endurance.calculate(new Endurance.Input(
                1000, List.of(new Endurance.Sample(0, 80), new Endurance.Sample(5, 85), new Endurance.Sample(10, 90))));
        assertVerdict(Level.GOOD, "endurance left", three);
    }

    /** 90 days exactly are not fewer than 90. */
    @ParameterizedTest
    @CsvSource({"181, UNDECIDED", "180, UNDECIDED", "179, CAREFUL"})
    void endurance_runsOutSoonBelowNinetyDays(double rated, Level level) {
        Result result = Endurance.calculate(
                new Endurance.Input(rated, List.of(new Endurance.Sample(0, 80), new Endurance.Sample(10, 90))));
        assertEquals(level, result.judgement().level(), result.judgement().reason());
    }

    // ---- network and wireless

    private static RadioLink.Input radio(double power, double frequency, double sensitivity) {
        return new RadioLink.Input(power, 3, 2, 1, frequency, 30, List.of(), sensitivity, 5);
    }

    @ParameterizedTest
    @CsvSource({
        "60, 100, 0, ''",
        "60.1, 5500, -64, power: 60.1 dBm are more than a kilowatt",
        "100, 5500, -64, 'were 100 mW meant, which are 20 dBm?'",
        "17, 99.9, -64, frequency: 99.9 MHz is no channel",
        "17, 2.437, -64, was 2.437 GHz meant?",
        "17, 5500, 0.1, sensitivity: receivers hear",
        "17, 5500, 64, was -64 dBm meant?"
    })
    void radio_whatCanHardlyBeMeantIsAskedAbout(double power, double frequency, double sensitivity, String asked) {
        if (asked.isEmpty()) {
            assertDoesNotThrow(() -> radio(power, frequency, sensitivity));
        } else {
            Invalid question = assertThrows(Invalid.class, () -> radio(power, frequency, sensitivity));
            assertTrue(question.getMessage().contains(asked), question.getMessage());
        }
    }

    @ParameterizedTest
    @CsvSource({"81.7, 18.3, true", "81.7, 18.31, false", "89.9, 10.1, true", "90, 10, true", "90.01, 9.99, false"})
    void copper_channelIsAtMostAHundredMetres(double link, double cords, boolean fits) {
        Result result = copper(CopperLink.Category.ISO_E, link, cords, new CopperLink.Reading(100, 10));
        assertEquals(
                !fits,
                result.judgement().words().equals("too long"),
                result.judgement().reason());
    }

    @ParameterizedTest
    @CsvSource({"46.2, CAREFUL", "46.19, BAD", "51.34, GOOD", "51.33, CAREFUL"})
    void poe_budgetAndHeadroomAtTheirLimits(double budget, Level level) {
        List<PoeBudget.Port> ports = Collections.nCopies(3, new PoeBudget.Port(3, 30));
        Result result = PoeBudget.calculate(new PoeBudget.Input(budget, 4, ports));
        assertEquals(level, result.judgement().level(), result.judgement().reason());
    }

    @Test
    void poe_deviceOnAPortOfALowerClassGetsThatClass() {
        Result result = PoeBudget.calculate(
                new PoeBudget.Input(100, 3, List.of(new PoeBudget.Port(4, 100), new PoeBudget.Port(3, 50))));
        assertEquals(15.4 + 15.4, FigureOf.value(result, "Set aside"), 1e-12);
        assertEquals(12.95, FigureOf.value(result, "Port 1: at the device"), 0.005);
        assertVerdict(Level.CAREFUL, "a device gets less than it asks for", result);
        assertEquals(Level.CAREFUL, FigureOf.rule(result, "Port 1: class").outcome());
        assertEquals(Level.GOOD, FigureOf.rule(result, "Port 2: class").outcome());
    }

    @ParameterizedTest
    @CsvSource({"4, 4, GOOD", "4, 3, CAREFUL", "0, 3, GOOD", "0, 2, CAREFUL", "6, 8, GOOD"})
    void poe_classIsHeldAgainstThePort(int device, int port, Level level) {
        Result result = PoeBudget.calculate(new PoeBudget.Input(200, port, List.of(new PoeBudget.Port(device, 10))));
        assertEquals(level, FigureOf.rule(result, "Port 1: class").outcome());
    }

    private static Result copper(CopperLink.Category category, double link, double cords, CopperLink.Reading... r) {
        return CopperLink.calculate(new CopperLink.Input(category, link, cords, List.of(r), 0));
    }

    @ParameterizedTest
    @CsvSource({"3.9, GOOD", "4.0, GOOD", "4.01, BAD"})
    void copper_isoLimitIsNeverBelowFourDecibels(double loss, Level level) {
        Result result = copper(CopperLink.Category.ISO_E, 80, 5, new CopperLink.Reading(1, loss));
        assertEquals(level, result.judgement().level(), result.judgement().reason());
        assertEquals(4.0 - loss, FigureOf.value(result, "Margin at the worst point"), 1e-12);
    }

    @Test
    void copper_uncertaintyIsHeldAgainstTheLiftedLimit() {
        Result result = CopperLink.calculate(
                new CopperLink.Input(CopperLink.Category.ISO_E, 80, 5, List.of(new CopperLink.Reading(1, 3.8)), 0.3));
        assertEquals(Level.UNDECIDED, result.judgement().level());
    }

    /** Cords of stranded wire lose a fifth more for each metre: (102 m - link) / 1.2 is what is left for them. */
    @ParameterizedTest
    @CsvSource({"90, 10, GOOD", "80, 18.3, GOOD", "80, 18.4, CAREFUL", "70, 26.6, GOOD", "70, 27.5, CAREFUL"})
    void copper_longCordsAreSaid(double link, double cords, Level level) {
        Result result = copper(CopperLink.Category.ISO_E, link, cords, new CopperLink.Reading(100, 10));
        assertEquals(level, FigureOf.rule(result, "cords").outcome());
        assertEquals(level, result.judgement().level(), result.judgement().reason());
    }

    @Test
    void loss_probesThatSettleItAreWholeAndEnough() {
        Result result = Loss.calculate(new Loss.Input(0, 200, 0.5, 95));
        double probes = FigureOf.value(result, "Probes without loss that would settle it");
        assertEquals(Math.rint(probes), probes, "no part of a probe can be sent");
        assertEquals(
                Level.GOOD,
                Loss.calculate(new Loss.Input(0, (int) probes, 0.5, 95))
                        .judgement()
                        .level());
        assertEquals(
                Level.UNDECIDED,
                Loss.calculate(new Loss.Input(0, (int) probes - 1, 0.5, 95))
                        .judgement()
                        .level());
        String shown = Numeral.of(
                probes,
                result.figures().stream()
                        .filter(f -> f.name().startsWith("Probes without"))
                        .findFirst()
                        .orElseThrow()
                        .digits());
        assertEquals(probes, Double.parseDouble(shown));
    }

    /** ln(0.025) / ln(0.99) = 367.04, which rounded to the nearest would be one too few. */
    @ParameterizedTest
    @CsvSource({"367, UNDECIDED", "368, GOOD", "369, GOOD"})
    void loss_probesThatSettleItAreRoundedUp(int probes, Level level) {
        Result open = Loss.calculate(new Loss.Input(0, 200, 1, 95));
        assertEquals(368, FigureOf.value(open, "Probes without loss that would settle it"));
        assertEquals(
                level,
                Loss.calculate(new Loss.Input(0, probes, 1, 95)).judgement().level());
    }

    @Test
    void loss_thatMayNeverBeCannotBeShownNotToBe() {
        Result result = Loss.calculate(new Loss.Input(0, 1_000_000, 0, 95));
        assertVerdict(Level.UNDECIDED, "none lost so far", result);
        assertFalse(
                result.judgement().reason().contains("send more"),
                result.judgement().reason());
    }

    // ---- voice

    /** Packets 20 ms apart, each coming {@code late} ms later or earlier than the one before, in turn. */
    private static Result jitter(int packets, double late, double allowed) {
        List<Jitter.Packet> all = new ArrayList<>();
        for (int i = 0; i < packets; i++) {
            all.add(new Jitter.Packet(160.0 * i, 20.0 * i + (i % 2) * late));
        }
        return Jitter.calculate(new Jitter.Input(8000, all, allowed));
    }

    /** (15/16)^47 is the first power below five per cent: 47 changes, 48 packets. */
    @ParameterizedTest
    @CsvSource({"6, UNDECIDED", "47, UNDECIDED", "48, GOOD", "200, GOOD"})
    void jitter_ofTooFewPacketsIsNotCalledWithin(int packets, Level level) {
        Result result = jitter(packets, 10, 12);
        assertEquals(level, result.judgement().level(), result.judgement().reason());
    }

    @Test
    void jitter_aboveWhatIsAllowedIsToldAtOnce() {
        assertVerdict(Level.BAD, "above what is allowed", jitter(4, 15, 1));
    }

    private static Result voice(double jitter, Double buffer) {
        return Voice.calculate(new Voice.Input(Voice.Codec.G711, 20, jitter, buffer, 0, 1));
    }

    @Test
    void voice_withoutABufferAsLongAsTheJitterIsNotCalledGood() {
        assertEquals(Level.UNDECIDED, voice(30, 0.0).judgement().level());
        assertEquals(Level.UNDECIDED, voice(30, 29.9).judgement().level());
        assertEquals(Level.GOOD, voice(30, 30.0).judgement().level());
        assertEquals(Level.GOOD, voice(30, null).judgement().level());
        assertEquals(Level.GOOD, voice(0, 0.0).judgement().level());
        assertTrue(
                voice(30, 0.0).judgement().words().startsWith("at best "),
                voice(30, 0.0).judgement().words());
    }

    // ---- judging

    @Test
    void soak_saysTheChanceOfQuietIfTheFaultIsStillThere() {
        Result result = Soak.calculate(new Soak.Input(24, 5, 48.0));
        String reason = result.judgement().reason();
        assertTrue(reason.contains("if the fault were still there"), reason);
        assertFalse(reason.contains("doubt"), reason);
        assertEquals(
                100 * Math.exp(-2),
                FigureOf.value(result, "Chance of so long a quiet if the fault is still there"),
                1e-12);
    }

    /** Three times the mean leaves e^-3, less than five per cent; ln 20 times leaves just five. */
    @ParameterizedTest
    @CsvSource({"29.9, UNDECIDED", "29.957322735539908, GOOD", "29.96, GOOD"})
    void soak_isLongEnoughFromTheTimeOn(double clean, Level level) {
        Result result = Soak.calculate(new Soak.Input(10, 5, clean));
        assertEquals(level, result.judgement().level(), result.judgement().reason());
    }

    /** 30 dBm sent: at 2.4 GHz -20 dBm is the most a receiver has to stand, at 5 GHz -30 dBm. */
    @ParameterizedTest
    @CsvSource({
        "2437, -19.9, CAREFUL, 'margin enough, but too strong for many receivers'",
        "2437, -20, GOOD, margin enough",
        "5500, -29.9, CAREFUL, 'margin enough, but too strong for many receivers'",
        "5500, -30, GOOD, margin enough",
        "5500, -59, GOOD, margin enough",
        "5500, -60, CAREFUL, little margin",
        "5500, -64.1, BAD, too weak for the rate"
    })
    void radioLink_isNeitherTooWeakNorTooStrong(double megahertz, double received, Level level, String words) {
        double away = Math.pow(10, (30 - received) / 20) * 299_792_458 / (4 * Math.PI * megahertz * 1e6);
        assertVerdict(
                level,
                words,
                RadioLink.calculate(new RadioLink.Input(30, 0, 0, 0, megahertz, away, List.of(), -64, 5)));
    }

    /** No antenna makes more of it than was sent. */
    @ParameterizedTest
    @CsvSource({"0.301, true", "0.299, false", "0.05, false"})
    void radioLink_thatReceivesMoreThanIsSent_isRefused(double metres, boolean taken) {
        Executable input = () -> new RadioLink.Input(30, 20, 16.8, 0, 5500, metres, List.of(), -64, 5);
        if (taken) {
            assertDoesNotThrow(input);
        } else {
            FigureOf.names(assertThrows(Invalid.class, input), "distance");
        }
    }

    @ParameterizedTest
    @CsvSource({
        "130, GOOD, best",
        "131, CAREFUL, 'best, but late'",
        "380, CAREFUL, 'low, but late'",
        "381, BAD, 'low, but far too late'"
    })
    void voice_saysThatItComesLate(double delay, Level level, String words) {
        assertVerdict(level, words, Voice.calculate(new Voice.Input(Voice.Codec.G711, delay, 0, null, 0, 1)));
    }

    @ParameterizedTest
    @CsvSource({
        "4, GOOD, survives 1 failure",
        "2.67, GOOD, survives 1 failure",
        "2.66, CAREFUL, 'survives 1 failure, much of the capacity is lost to the smallest member'",
        "0.04, CAREFUL, 'survives 1 failure, much of the capacity is lost to the smallest member'"
    })
    void array_ofUnlikeMembersSaysWhatIsLost(double smallest, Level level, String words) {
        assertVerdict(level, words, Array.calculate(array(smallest)));
    }

    @Test
    void array_ofAMemberInAnotherUnit_isAskedAbout() {
        Invalid asked = assertThrows(Invalid.class, () -> array(0.0399));
        FigureOf.names(asked, "members[1]");
        assertTrue(asked.getMessage().contains("GB?"), asked.getMessage());
    }

    private static Array.Input array(double smallest) {
        List<Double> members = List.of(4.0, smallest, 4.0);
        return new Array.Input(Array.RaidLevel.RAID5, members, 150, 100, 1e-17, 1_200_000, 24);
    }

    @ParameterizedTest
    @CsvSource({
        "1.99, CAREFUL, loss binds",
        "2, BAD, loss is too high to predict",
        "99.9, BAD, loss is too high to predict",
        "100, BAD, nothing gets through"
    })
    void path_thatLosesAllCarriesNothing(double loss, Level level, String words) {
        assertVerdict(
                level,
                words,
                PathThroughput.calculate(new PathThroughput.Input(
                        100, 40, 1e9, loss, 1460, PathThroughput.Acknowledgement.DELAYED, null, null, null)));
    }
}

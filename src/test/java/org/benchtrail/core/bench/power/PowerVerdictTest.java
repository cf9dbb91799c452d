package org.benchtrail.core.bench.power;

import static org.benchtrail.core.bench.FigureOf.assertVerdict;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each verdict at, under and over the boundary at which it changes. */
class PowerVerdictTest {
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
}

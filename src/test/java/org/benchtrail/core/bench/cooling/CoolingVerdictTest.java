package org.benchtrail.core.bench.cooling;

import static org.benchtrail.core.bench.FigureOf.assertVerdict;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result.Level;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each verdict at, under and over the boundary at which it changes. */
class CoolingVerdictTest {
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
}

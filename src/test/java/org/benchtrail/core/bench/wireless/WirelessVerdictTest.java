package org.benchtrail.core.bench.wireless;

import static org.benchtrail.core.bench.FigureOf.assertVerdict;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result.Level;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each verdict at, under and over the boundary at which it changes. */
class WirelessVerdictTest {
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
}

package org.benchtrail.core.bench;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.judging.AgainstLimit;
import org.benchtrail.core.bench.judging.Meter;
import org.benchtrail.core.bench.network.CopperLink;
import org.benchtrail.core.bench.network.PathThroughput;
import org.benchtrail.core.bench.voice.Voice;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SideTest {
    @Test
    void sumOfDecimals_liesOnTheLimitThatItIsByHand() {
        double sum = 0.1 + 0.2;
        assertTrue(sum > 0.3, "in binary numbers the sum is a trace too great");
        assertFalse(Side.above(sum, 0.3));
        assertFalse(Side.below(0.3, sum));
        assertEquals(0, Side.rest(0.3, sum));
    }

    @Test
    void lastDigitThatAnybodyTypes_tells() {
        assertTrue(Side.above(11.4000000001, 11.4));
        assertTrue(Side.below(11.3999999999, 11.4));
        assertFalse(Side.above(11.4, 11.4));
        assertFalse(Side.below(11.4, 11.4));
        assertEquals(-1e-10, Side.rest(11.4, 11.4000000001), 1e-14);
    }

    @Test
    void zeroAndTheInfinities_areLimitsToo() {
        assertTrue(Side.below(-1e-300, 0));
        assertTrue(Side.above(1e-300, 0));
        assertTrue(Side.below(1e300, Double.POSITIVE_INFINITY));
        assertTrue(Side.above(0, Double.NEGATIVE_INFINITY));
        assertFalse(Side.above(0, -0.0));
    }

    /** What lies on a limit but for a trace is written as the limit, and judged as it. */
    @Test
    void traceBesideALimit_isNeitherJudgedNorWritten() {
        double trace = 2 - 1e-12;
        assertFalse(Side.below(trace, 2));
        assertEquals("2", Numeral.beside(trace, 3, 2));
        assertEquals("1.99999999", Numeral.beside(1.99999999, 3, 2));
        assertEquals("100.990083215", Numeral.beside(100.990083215 * (1 - 1e-14), 3, 100.990083215));
    }

    @Test
    void windowThatJustFillsTheLink_doesNotBind() {
        Result result = PathThroughput.calculate(new PathThroughput.Input(
                20.9977792, 40, 104_988.896, 0.01, 1460, PathThroughput.Acknowledgement.DELAYED, 55.0, null, null));
        assertEquals("the link binds", result.judgement().words());
    }

    @Test
    void voiceRatingOnTheEdgeOfABand_isInIt() {
        Result result = Voice.calculate(new Voice.Input(Voice.Codec.G729A, 41.2660013, 1e-6, null, 0.511002445, 1));
        assertTrue(
                result.judgement().reason().startsWith("R = 80 "),
                result.judgement().reason());
        assertEquals("high", result.judgement().words());
    }

    @Test
    void linkWithinTheTestersUncertainty_saysSo() {
        Result result = CopperLink.calculate(
                new CopperLink.Input(CopperLink.Category.ISO_E, 80, 5, List.of(new CopperLink.Reading(1, 3.8)), 0.3));
        String sentence = FigureOf.rule(result, "insertion loss at 1 MHz").sentence();
        assertTrue(sentence.startsWith("3.8 dB, give or take 0.3 dB, limit 4 dB"), sentence);
    }

    @ParameterizedTest
    @ValueSource(strings = {"-0", "12", "", " ", "+", "1.0"})
    void numberThatStandsForAUnit_isRefused(String unit) {
        FigureOf.names(
                assertThrows(Invalid.class, () -> new AgainstLimit.Input(unit, 11.62, 0.05, 11.4, 12.6, 0)), "unit");
    }

    @Test
    void numberThatStandsForAUnit_isAnsweredWithWhatToDo() {
        Invalid limit = assertThrows(Invalid.class, () -> new AgainstLimit.Input("12", 11.62, 0.05, 11.4, 12.6, 0));
        assertTrue(limit.getMessage().contains("give the unit"), limit.getMessage());
        Invalid meter = assertThrows(
                Invalid.class, () -> new Meter.Input("12", List.of(1.0), 1, 1, 0.01, null, null, null, null));
        assertTrue(meter.getMessage().contains("give the unit of the reading"), meter.getMessage());
    }

    @ParameterizedTest
    @ValueSource(strings = {"V", "%", "1", "\u00b0", "1/min", "\u00b5m"})
    void unit_isTaken(String unit) {
        assertDoesNotThrow(() -> new AgainstLimit.Input(unit, 11.62, 0.05, 11.4, 12.6, 0));
    }
}

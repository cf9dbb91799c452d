package org.benchtrail.core.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Limits;
import org.benchtrail.core.diagnosis.Risk;
import org.benchtrail.core.method.test.ExpectedValue;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bounds of what is expected to be measured. */
class ExpectedReadingTest {
    private static Finding measured(@Nullable Double low, @Nullable Double high) {
        List<String> values = List.of(Finding.INSIDE, Finding.BELOW, Finding.ABOVE);
        Limits limits = new Limits("V", low, high, 0, null, null);
        return new Finding("p1", "Rail", Finding.Kind.READING, values, Map.of(), 5, Risk.NONE, List.of(), null, limits);
    }

    private static String words(Finding finding, String value, double chance) {
        return ExpectedReading.of(finding, value, chance)
                .map(ExpectedValue::words)
                .orElse("-");
    }

    @ParameterizedTest
    @CsvSource({
        "inside, 11.4 to 12.6 V",
        "below, at most 11.4 V",
        "above, at least 12.6 V",
        "outside, -",
        "unknown, -",
    })
    void eachValue_hasItsBounds(String value, String bounds) {
        assertEquals(bounds, words(measured(11.4, 12.6), value, 1));
    }

    @Test
    void limitThatIsNot_boundsNothing() {
        assertEquals("at most 12.6 V", words(measured(null, 12.6), Finding.INSIDE, 1));
        assertEquals("at least 11.4 V", words(measured(11.4, null), Finding.INSIDE, 1));
        assertEquals("-", words(measured(null, 12.6), Finding.BELOW, 1));
        assertEquals("-", words(measured(11.4, null), Finding.ABOVE, 1));
    }

    @Test
    void valueThatIsNotLikelyEnough_decidesNothing() {
        assertEquals("at most 11.4 V", words(measured(11.4, 12.6), Finding.BELOW, ExpectedReading.LIKELY));
        assertEquals("-", words(measured(11.4, 12.6), Finding.BELOW, 0.79));
    }

    @Test
    void wholeNumberAndTinyOne_areWrittenPlainly() {
        ExpectedValue fan =
                ExpectedReading.of(measured(600.0, 1.0E-4), Finding.BELOW, 1).orElseThrow();
        assertEquals("600", fan.upper());
        assertEquals(
                "0.0001",
                ExpectedReading.of(measured(600.0, 1.0E-4), Finding.ABOVE, 1)
                        .orElseThrow()
                        .lower());
    }

    @Test
    void plainAnswer_hasNone() {
        Finding asked = new Finding(
                "q", "Noise", Finding.Kind.ANSWER, List.of("no", "yes"), Map.of(), 1, Risk.NONE, List.of(), null, null);
        assertEquals(Optional.empty(), ExpectedReading.of(asked, "yes", 1));
    }
}

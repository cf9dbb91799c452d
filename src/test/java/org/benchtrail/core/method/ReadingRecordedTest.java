package org.benchtrail.core.method;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReadingVerdict;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Decimals as they are typed, and verdicts at the limits. */
class ReadingRecordedTest {
    private static ReadingRecorded volts(String value, @Nullable String lower, @Nullable String upper) {
        String source = lower == null && upper == null ? "" : "nameplate";
        return new ReadingRecorded("supply voltage", value, "V", "12 V rail", "meter", lower, upper, source);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "11.38;11.38",
                "11,38;11.38",
                "' 11,38 ';11.38",
                "\u221211,38;-11.38",
                "-0.5;-0.5",
                "+12;12",
                "+12,50;12.50",
                "007;007",
                "123456789012345.123456789012345;123456789012345.123456789012345"
            })
    void decimal_isKeptAsTyped(String typed, String kept) {
        assertEquals(kept, volts(typed, null, null).value());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "1e3",
                "1E-3",
                "1.2.3",
                "1,2,3",
                "1.234,5",
                "1,234.5",
                "--1",
                "+-1",
                "\u2212\u22121",
                ".5",
                "5.",
                "NaN",
                "Infinity",
                "0x10",
                "\u0661\u0662",
                "1234567890123456",
                "1 000",
                "1_000"
            })
    void anythingElse_isRefusedOnItsField(String typed) {
        assertEquals(List.of("value"), fields(() -> volts(typed, null, null)));
        assertEquals(List.of("lower"), fields(() -> volts("1", typed, null)));
        assertEquals(List.of("upper"), fields(() -> volts("1", "0", typed)));
        assertEquals(List.of("lower", "upper"), fields(() -> volts("1", typed, typed)));
    }

    /** A text as long as a line allows, and one as long as a request, that look like a number to their last sign but one. */
    @ParameterizedTest
    @ValueSource(ints = {FieldChecks.LINE, FieldChecks.LINE + 1, 1_000_000})
    void endlessNumber_isRefusedAtOnce(int length) {
        for (String endless : List.of(
                "1".repeat(length - 1) + "!",
                "1".repeat(length - 1) + "V",
                "1,".repeat(length / 2),
                " 1".repeat(length / 2),
                "-".repeat(length),
                "1e" + "9".repeat(length - 3) + "V")) {
            long before = System.nanoTime();
            assertEquals(List.of("value"), fields(() -> volts(endless, null, null)));
            assertEquals(
                    List.of("value"),
                    fields(() -> new ReadingRecorded("voltage", endless, "", "plug", "", null, null, "")).stream()
                            .filter("value"::equals)
                            .toList());
            assertEquals(List.of("lower", "upper"), fields(() -> volts("1", endless, endless)));
            long millis = (System.nanoTime() - before) / 1_000_000;
            assertTrue(millis < 200, endless.length() + " characters took " + millis + " ms");
        }
    }

    private static List<String> fields(Runnable made) {
        return assertThrows(Invalid.class, made::run).problems().stream()
                .map(Problem::field)
                .toList();
    }

    @ParameterizedTest
    @CsvSource({
        "11.40, 11.4, 12.6, WITHIN",
        "12.6, 11.4, 12.60, WITHIN",
        "11.3999999, 11.4, 12.6, OUTSIDE",
        "12.6000001, 11.4, 12.6, OUTSIDE",
        "12, , 12, WITHIN",
        "12.1, , 12, OUTSIDE",
        "-5, -5, , WITHIN",
        "-5.1, -5, , OUTSIDE",
        "0.3, 0.3, 0.3, WITHIN",
        "99, , , NOT_JUDGED"
    })
    void verdict_includesTheLimits(
            String value, @Nullable String lower, @Nullable String upper, ReadingVerdict expected) {
        assertEquals(expected, volts(value, lower, upper).verdict());
    }

    @Test
    void missing_isToldFieldByField() {
        assertEquals(
                List.of("quantity", "value", "unit", "point"),
                fields(() -> new ReadingRecorded("", " ", "", "", "", null, null, "")));
        assertEquals(List.of("limitSource"), fields(() -> new ReadingRecorded("a", "1", "V", "b", "", "0", null, " ")));
        assertEquals(List.of("upper"), fields(() -> volts("1", "2", "1.99")));
    }

    @Test
    void samePlace_doesNotMindLetterCase() {
        ReadingRecorded one = volts("1", null, null);
        assertTrue(one.samePlace(new ReadingRecorded("Supply Voltage", "2", "V", "12 v RAIL", "", null, null, "")));
        assertEquals(
                false, one.samePlace(new ReadingRecorded("Supply Voltage", "2", "V", "5 V rail", "", null, null, "")));
    }

    private static ReadingRecorded metered(String value, String unit, String accuracy) {
        return new ReadingRecorded(
                "+12 V rail", value, unit, "drive plug", "meter", "11.4", "12.6", "design guide", accuracy, null, null);
    }

    @ParameterizedTest
    @CsvSource({
        "11.38 V, 11.38, V",
        "'11,38V', 11.38, V",
        "450 mV, 450, mV",
        "212 \u00b0F, 212, \u00b0F",
        "3.4 GHz, 3.4, GHz",
        "'1 234.5 r/min', 1234.5, r/min"
    })
    void unit_isTakenFromTheValue(String typed, String value, String unit) {
        ReadingRecorded reading = new ReadingRecorded("a", typed, "", "b", "", null, null, "");
        assertEquals(value + " " + unit, reading.value() + " " + reading.unit());
        assertEquals(reading, new ReadingRecorded("a", typed, null, "b", "", null, null, ""));
    }

    @Test
    void valueWithAnotherUnit_isConverted() {
        ReadingRecorded reading = new ReadingRecorded("ripple", "45 mV", "V", "b", "", null, "120 mV", "guide");
        assertEquals("0.045 V, at most 0.12", reading.value() + " " + reading.unit() + ", at most " + reading.upper());
        assertEquals(List.of("value"), fields(() -> new ReadingRecorded("a", "45 W", "V", "b", "", null, null, "")));
        assertEquals(
                List.of("value"), fields(() -> new ReadingRecorded("a", "45 furlong", "", "b", "", null, null, "")));
    }

    /** 0.5 % of 11.38 V and 2 counts of 0.01 V: a = 0.0769 V, u = a/\u221a3 = 0.0444 V (GUM 4.3.7), guard band 2 u. */
    @Test
    void accuracy_makesTheVerdictHonest() {
        ReadingRecorded near = metered("11.38", "V", "0.5 % + 2");
        assertEquals(ReadingVerdict.TOO_CLOSE, near.verdict());
        assertEquals(0.0769 / Math.sqrt(3), near.standardUncertainty().orElseThrow(), 1e-12);
        assertEquals(ReadingVerdict.OUTSIDE, metered("11.30", "V", "0.5 % + 2").verdict());
        assertEquals(ReadingVerdict.WITHIN, metered("11.50", "V", "0.5 % + 2").verdict());
        assertEquals(ReadingVerdict.OUTSIDE, near.guarded("0").verdict());
        assertEquals(ReadingVerdict.OUTSIDE, volts("11.38", "11.4", "12.6").verdict());
    }

    @Test
    void accuracy_weighsAtOneLimitAlone_andJudgesNothingWithoutOne() {
        assertEquals(ReadingVerdict.TOO_CLOSE, bounded("11.38", "11.4", null).verdict());
        assertEquals(ReadingVerdict.TOO_CLOSE, bounded("12.58", null, "12.6").verdict());
        assertEquals(ReadingVerdict.WITHIN, bounded("12.58", "11.4", null).verdict());
        assertEquals(ReadingVerdict.NOT_JUDGED, bounded("12.58", null, null).verdict());
        assertTrue(bounded("12.58", null, null).judgement().isEmpty());
        assertTrue(volts("12.58", "11.4", null).judgement().isEmpty());
    }

    private static ReadingRecorded bounded(String value, @Nullable String lower, @Nullable String upper) {
        return new ReadingRecorded(
                "+12 V rail", value, "V", "drive plug", "meter", lower, upper, "guide", "0.5 % + 2", null, null);
    }

    @Test
    void accuracyThatCannotBeMeant_isRefused() {
        assertEquals(List.of("accuracy"), fields(() -> metered("11.38", "V", "good")));
        assertEquals(List.of("accuracy"), fields(() -> metered("11.38", "V", "2 W")));
        assertEquals(List.of("unit"), fields(() -> metered("11.38", "squiggle", "1 %")));
        assertEquals(List.of("guard"), fields(() -> metered("11.38", "V", "1 %").guarded("11")));
    }
}

package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.temperature;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.benchtrail.core.method.identify.ReadingRecorded;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What was outside its limit is back within that very limit, and known as well as it was when it was found outside. */
class BackWithinTest {
    private static ReadingRecorded now(String value, String unit, @Nullable String accuracy) {
        return new ReadingRecorded("ripple", value, unit, "plug", "scope", null, null, "", accuracy, null, null);
    }

    private static ReadingRecorded outside(@Nullable String lower, @Nullable String upper, @Nullable String accuracy) {
        return new ReadingRecorded("ripple", "70", "mV", "plug", "scope", lower, upper, "guide", accuracy, null, null);
    }

    @ParameterizedTest
    @CsvSource({
        "50, mV, , true",
        "50.1, mV, , false",
        "0.05, V, , true",
        "0.0501, V, , false",
        "40, mV, 1 %, true",
        "0.04, V, 1 %, true",
        "49.9, mV, 1 %, false",
        "60, mV, 1 %, false",
        "0.04, A, , false",
        "0.04, A, 1 %, false",
        "40, squiggle, , false"
    })
    void foundOutsideByPlainComparison(String value, String unit, @Nullable String accuracy, boolean back) {
        assertEquals(back, now(value, unit, accuracy).isWithinLimitOf(outside(null, "50", null)));
    }

    @ParameterizedTest
    @CsvSource({"40, mV, , false", "0.04, V, , false", "40, mV, 1 %, true", "49.9, mV, 1 %, false"})
    void foundOutsideWithAKnownAccuracy(String value, String unit, @Nullable String accuracy, boolean back) {
        assertEquals(back, now(value, unit, accuracy).isWithinLimitOf(outside(null, "50", "1 %")));
    }

    @ParameterizedTest
    @CsvSource({"80, mV, , true", "79.9, mV, , false", "0.08, V, , true", "90, mV, 1 %, true", "80, mV, 1 %, false"})
    void foundBelow(String value, String unit, @Nullable String accuracy, boolean back) {
        assertEquals(back, now(value, unit, accuracy).isWithinLimitOf(outside("80", null, null)));
    }

    @Test
    void foundInAUnitThatNobodyKnows_isHeldAgainstItsNumber() {
        assertTrue(temperature("85", "memory").isWithinLimitOf(temperature("96", "memory")));
        assertEquals(false, temperature("86", "memory").isWithinLimitOf(temperature("96", "memory")));
    }

    @Test
    void guardBand_isTheOneOfTheNewReading() {
        ReadingRecorded near = now("49.9", "mV", "1 %");
        assertTrue(near.guarded("0").isWithinLimitOf(outside(null, "50", null)));
    }
}

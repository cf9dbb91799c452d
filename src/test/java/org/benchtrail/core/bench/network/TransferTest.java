package org.benchtrail.core.bench.network;

import static org.benchtrail.core.Published.check;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.network.Transfer.ByteUnit;
import org.benchtrail.core.bench.network.Transfer.Input;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TransferTest {
    private static double seconds(
            double amount, ByteUnit unit, double rate, double efficiency, int files, double perFile) {
        Result result = Transfer.calculate(new Input(amount, unit, rate, efficiency, files, perFile));
        return FigureOf.value(result, "Time in all");
    }

    @ParameterizedTest
    @CsvSource({
        "MB, 1000000",
        "MIB, 1048576",
        "GB, 1000000000",
        "GIB, 1073741824",
        "TB, 1000000000000",
        "TIB, 1099511627776"
    })
    void units_areThoseOfTheStandard(ByteUnit unit, double bytes) {
        check("IEC 80000-13 binary prefixes", bytes, unit.bytes(), 0);
    }

    @Test
    void knownTimes() {
        assertEquals(8, seconds(1, ByteUnit.GB, 1000, 100, 0, 0), 1e-12);
        assertEquals(8.589934592, seconds(1, ByteUnit.GIB, 1000, 100, 1, 0), 1e-12);
        assertEquals(16, seconds(1, ByteUnit.GB, 1000, 50, 0, 0), 1e-12);
        assertEquals(8 + 60, seconds(1, ByteUnit.GB, 1000, 100, 12_000, 5), 1e-12);
    }

    /** 1 GB over 1000 Mb/s takes 8 s: so many GB are eight times as many seconds. */
    @ParameterizedTest
    @CsvSource({
        "0.0000624, It takes less than 1 ms at, false",
        "0.0000626, It takes about 0.501 ms at, false",
        "0.125, It takes about 1 s at, false",
        "14.98, It takes about 120 s at, false",
        "14.9999, It takes about 120 s at, false",
        "15, It takes about 2 min at, true",
        "15.01, It takes about 2 min at, true",
        "1111.625, It takes about 2.47 h at, true"
    })
    void shortTime_isToldInSecondsAndNeverInAFractionOfAMinute(double amount, String told, boolean minutes) {
        Result result = Transfer.calculate(new Input(1000 * amount, ByteUnit.MB, 1000, 100, 0, 0));
        assertTrue(
                result.judgement().reason().startsWith(told), result.judgement().reason());
        assertEquals(minutes, FigureOf.has(result, "The same in minutes"));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void fasterOrLess_neverTakesLonger(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 500; i++) {
            double amount = Math.pow(10, 4 * random.nextDouble());
            double rate = Math.pow(10, 5 * random.nextDouble());
            double here = seconds(amount, ByteUnit.GB, rate, 90, 10, 5);
            assertTrue(seconds(amount, ByteUnit.GB, rate * 1.01, 90, 10, 5) < here, "seed " + seed);
            assertTrue(seconds(amount * 1.01, ByteUnit.GB, rate, 90, 10, 5) > here, "seed " + seed);
            assertTrue(seconds(amount, ByteUnit.GIB, rate, 90, 10, 5) > here, "seed " + seed);
        }
    }
}

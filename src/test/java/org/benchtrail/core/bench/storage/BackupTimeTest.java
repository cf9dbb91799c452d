package org.benchtrail.core.bench.storage;

import static org.benchtrail.core.Published.check;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.storage.BackupTime.Input;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class BackupTimeTest {
    private static Result of(double amount, double rate, double checking, Double left) {
        return BackupTime.calculate(new Input(amount, rate, checking, left));
    }

    @Test
    void time_isAmountOverRate() {
        check(
                "capacity over rate, recomputed 4.6",
                7.407407,
                FigureOf.value(of(4000, 150, 0, null), "Time to copy"),
                5e-7);
        assertEquals(14.814815, FigureOf.value(of(4000, 150, 100, null), "Time in all"), 1e-6);
    }

    @ParameterizedTest
    @CsvSource({"14.9, GOOD", "14.8, CAREFUL", "7.5, CAREFUL", "7.4, BAD", "0, BAD"})
    void deadline_decides(double left, Level level) {
        assertEquals(level, of(4000, 150, 0, left).judgement().level());
    }

    /** 889.2 GB at 100 MB/s take 2.47 h: what takes longer is not written as if it took just what is left. */
    @ParameterizedTest
    @CsvSource({
        "889.1, CAREFUL, It takes about 2.4697 h and 2.47 h are left",
        "889.2, CAREFUL, It takes about 2.47 h and 2.47 h are left",
        "889.3, BAD, It takes about 2.4703 h and 2.47 h are left"
    })
    void timeBesideTheDeadline_isWrittenOnItsSideOfIt(double amount, Level level, String sentence) {
        Result result = of(amount, 100, 0, 2.47);
        assertEquals(level, result.judgement().level());
        assertTrue(
                result.judgement().reason().startsWith(sentence),
                result.judgement().reason());
    }

    /** 100 MB/s are 360 GB an hour. With 10 h left, half an hour is where hours begin. */
    @ParameterizedTest
    @CsvSource({
        "0.1, about 1 s and 10 h",
        "11.9, about 119 s and 10 h",
        "12, about 2 min and 10 h",
        "179.9, about 30 min and 10 h",
        "180, about 0.5 h and 10 h",
        "180.1, about 0.5 h and 10 h"
    })
    void shortTime_isToldAsPeopleSayIt(double amount, String told) {
        String reason = of(amount, 100, 0, 10.0).judgement().reason();
        assertTrue(reason.contains(told), reason);
    }

    @Test
    void withoutDeadline_isATime() {
        assertEquals(Level.NONE, of(4000, 150, 0, null).judgement().level());
    }

    @Test
    void tooLate_saysHowMuchIsCopied() {
        assertEquals(540, FigureOf.value(of(4000, 150, 0, 1.0), "Copied when the time is up"), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void moreData_neverTakesLess(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 500; i++) {
            double amount = 1 + 1e4 * random.nextDouble();
            double rate = 1 + 500 * random.nextDouble();
            double time = FigureOf.value(of(amount, rate, 50, null), "Time in all");
            assertTrue(FigureOf.value(of(amount * 1.01, rate, 50, null), "Time in all") > time, "seed " + seed);
            assertTrue(FigureOf.value(of(amount, rate * 1.01, 50, null), "Time in all") < time, "seed " + seed);
        }
    }
}

package org.benchtrail.core.bench.judging;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each verdict at, under and over the boundary at which it changes. */
class JudgingVerdictTest {
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
}

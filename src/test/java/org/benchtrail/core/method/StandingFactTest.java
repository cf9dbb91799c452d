package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.INES;
import static org.benchtrail.core.method.Sheets.anySymptom;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.benchtrail.core.method.identify.SymptomRecorded;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Before, with and after an entry: on what side of it a fact lies that was recorded, and perhaps put right. */
class StandingFactTest {
    private static Stamp stamp(int entry) {
        return new Stamp(entry, TicketFixture.START, INES.account(), INES.roles());
    }

    private static StandingFact<SymptomRecorded> recorded(int entry, @Nullable Integer corrected) {
        return new StandingFact<>(
                anySymptom(false), stamp(entry), 1, Step.IDENTIFY, false, corrected == null ? null : stamp(corrected));
    }

    @ParameterizedTest
    @CsvSource({"4, true", "5, false", "6, false"})
    void recordedWithEntry5_isAfter(int entry, boolean after) {
        assertEquals(after, recorded(5, null).isAfter(entry));
        assertEquals(after, recorded(5, 9).isAfter(entry), "put right later, but recorded then");
    }

    @ParameterizedTest
    @CsvSource({"4, false", "5, false", "6, true"})
    void recordedWithEntry5_isSettledBefore(int entry, boolean settled) {
        assertEquals(settled, recorded(5, null).isSettledBefore(entry));
        assertEquals(settled, recorded(2, 5).isSettledBefore(entry), "put right with entry 5");
    }
}

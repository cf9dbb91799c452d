package org.benchtrail.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlanFormTest {
    @ParameterizedTest
    @CsvSource(
            nullValues = "none",
            value = {
                "none, 2026-11",
                "2026-10-31T23:00:00Z, 2026-11",
                "2026-11-14T23:00:00Z, 2026-12",
                "2026-11-30T23:00:00Z, 2026-12",
                "2026-12-31T23:00:00Z, 2027-01"
            })
    void theMonthOffered_isTheFirstThatHasNoLot(Instant lastEnd, String offered) {
        assertEquals(
                offered,
                PlanForm.usual(
                                Instant.parse("2026-11-20T12:00:00Z"),
                                Optional.ofNullable(lastEnd),
                                ZoneId.of("Europe/Berlin"),
                                List.of())
                        .value("lot"));
    }
}

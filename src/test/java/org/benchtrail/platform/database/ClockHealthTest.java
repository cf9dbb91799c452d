package org.benchtrail.platform.database;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ClockHealthTest {
    @ParameterizedTest
    @CsvSource({
        "PT0S, agrees",
        "PT60S, agrees",
        "PT-60S, agrees",
        "PT61S, 61 s behind: set both by NTP",
        "PT-1H, 3600 s ahead: set both by NTP"
    })
    void clocksThatDiffer_areTold(Duration behind, String told) {
        assertEquals(told, ClockHealth.words(behind));
    }
}

package org.benchtrail.site;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.smallrye.config.SmallRyeConfigBuilder;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.site.SiteRules;
import org.benchtrail.core.site.WorkMinutes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the site decides, typed and read again. */
class RulesTextTest {
    private static SiteRules start() {
        return new SmallRyeConfigBuilder()
                .withMapping(PolicyConfig.class)
                .build()
                .getConfigMapping(PolicyConfig.class)
                .rules();
    }

    @Test
    void whatTheServerIsStartedWith_isTheSameWrittenAndReadAgain() {
        assertEquals(start(), RulesText.read(RulesText.of(start()).json()).rules());
    }

    @Test
    void whatIsTyped_isTheSameWrittenAndReadAgain() {
        RulesText plain = RulesText.of(start());
        RulesText typed = new RulesText(
                "Europe/Berlin",
                Map.of("MONDAY", " 8:00-12:00,13:00 - 17:00", "SUNDAY", "22:00-24:00"),
                "2026-12-24 12:00-24:00 Afternoon off\n\n 2026-12-25   Closed all day ",
                plain.times(),
                List.of("SOAK", "PART"),
                "120",
                "2.5",
                "99.50",
                "0.5",
                "36",
                "0",
                "1.96");
        RulesText written = RulesText.of(typed.rules());
        assertEquals(written, RulesText.of(RulesText.read(written.json()).rules()));
        assertEquals(Map.of("MONDAY", "08:00-12:00, 13:00-17:00", "SUNDAY", "22:00-24:00"), written.week());
        assertEquals("2026-12-24 12:00-24:00 Afternoon off\n2026-12-25 Closed all day", written.holidays());
        assertEquals(List.of("PART", "SOAK"), written.stops());
        assertEquals("0.5", written.dataAnswerHours());
    }

    @ParameterizedTest
    @CsvSource({"30 min, 30", "4 h, 240", "2 h 30 min, 150", "2h30min, 150", "0 min, 0", "240 h, 14400"})
    void workingTime_isReadAndWritten(String text, int minutes) {
        assertEquals(minutes, WorkMinutes.parse(text).getAsInt());
        assertEquals(minutes, WorkMinutes.parse(WorkMinutes.text(minutes)).getAsInt());
    }

    @ParameterizedTest
    @CsvSource({"''", "4", "h", "-1 h", "1.5 h", "4 days", "9999999 min"})
    void whatIsNoWorkingTime_isNotRead(String text) {
        assertEquals(true, WorkMinutes.parse(text).isEmpty());
    }
}

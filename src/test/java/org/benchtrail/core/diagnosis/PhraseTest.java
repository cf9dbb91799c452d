package org.benchtrail.core.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PhraseTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            goes off | The PC just goes off. | true
            goes off | It goes straight off when I print | true
            goes off | It goes on and then off | false
            goes off | It goes, off and on | false
            goes off | It never goes off | false
            goes off | It doesn't goes off | false
            goes off | No light, but it goes off | true
            goes off | Off it goes | false
            does not charge | It does not charge | true
            does not charge | It does charge | false
            dust* | Dusty vents | true
            dust* | sawdust | false
            lamp flicker | the lamps flickered | true
            lamp flicker | the lamp will flickering | true
            lamp flicker | the lamp does not flicker | false
            crc error | switch: port 14 crc errors 18220 | true
            won't start | It WON\u2019T start | true
            read errors | It says 'drive 1: 14 read errors' | true
            power denied | 'power denied' | true
            - | power - denied | false
            burnt | no burnt smell | false
            up 100 | eth0: link up 100 Mbps | true
            """)
    void phrase_isFoundWhereItIsSaidAndNotDenied(String phrase, String said, boolean found) {
        assertEquals(found, Phrase.of(phrase).isIn(Said.of(said)));
    }

    @ParameterizedTest
    @CsvSource({"'', goes off", "goes off, ''"})
    void nothing_isFoundNowhere(String phrase, String said) {
        assertEquals(false, Phrase.of(phrase).isIn(Said.of(said)));
    }
}

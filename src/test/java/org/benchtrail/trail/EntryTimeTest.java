package org.benchtrail.trail;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The time in an entry, held against the reading that the Java platform has for all times. */
class EntryTimeTest {
    private static final long SEED = 20261129;

    private static String outcome(java.util.function.Supplier<Instant> reading) {
        try {
            return reading.get().toString();
        } catch (DateTimeException e) {
            return "no time";
        }
    }

    private static void alike(String text) {
        assertEquals(outcome(() -> Instant.parse(text)), outcome(() -> EntryTime.read(text)), text);
    }

    @Test
    void whatIsWritten_isReadAgain() {
        Random random = new Random(SEED);
        for (int i = 0; i < 100_000; i++) {
            Instant at = Instant.ofEpochSecond(
                            random.nextLong(
                                    Instant.parse("0001-01-01T00:00:00Z").getEpochSecond(),
                                    Instant.parse("9999-12-31T23:59:59Z").getEpochSecond()),
                            random.nextInt(1_000_000_000))
                    .truncatedTo(ChronoUnit.MICROS);
            String text = EntryTime.write(at);
            assertEquals(at, EntryTime.read(text), text);
            assertEquals(Instant.parse(text), EntryTime.read(text), text);
        }
    }

    @Test
    void whateverElseIsThere_isReadAsThePlatformReadsIt() {
        List.of(
                        "2024-02-29T00:00:00.000000Z",
                        "2026-02-29T00:00:00.000000Z",
                        "2026-13-01T00:00:00.000000Z",
                        "2026-00-01T00:00:00.000000Z",
                        "2026-01-32T00:00:00.000000Z",
                        "2026-01-01T24:00:00.000000Z",
                        "2026-01-01T24:00:01.000000Z",
                        "2026-01-01T25:00:00.000000Z",
                        "2026-01-01T12:60:00.000000Z",
                        "2016-12-31T23:59:60.000000Z",
                        "2016-12-31T12:00:60.000000Z",
                        "2026-01-01T12:00:61.000000Z",
                        "2026-01-01t12:00:00.000000z",
                        "2026-01-01T12:00:00,000000Z",
                        "2026-01-01 12:00:00.000000Z",
                        "2026-01-01T12:00:00.00000\u0660Z",
                        "2026-01-01T12:00:00.000000+",
                        "+026-01-01T12:00:00.000000Z",
                        "-026-01-01T12:00:00.000000Z",
                        "2026-01-01T12:00:00.00000Z",
                        "2026-01-01T12:00:00Z",
                        "2026-01-01T12:00:00.123456789Z",
                        "2026-01-01T12:00:00.000000+00:00",
                        "0000-01-01T00:00:00.000000Z",
                        "",
                        "yesterday")
                .forEach(EntryTimeTest::alike);
    }

    @Test
    void aCharacterThatIsChanged_isReadAsThePlatformReadsIt() {
        Random random = new Random(SEED);
        for (int i = 0; i < 200_000; i++) {
            StringBuilder text = new StringBuilder("2026-11-28T09:05:07.000123Z");
            text.setCharAt(random.nextInt(text.length()), (char) (' ' + random.nextInt(95)));
            if (random.nextBoolean()) {
                text.setCharAt(random.nextInt(text.length()), (char) ('0' + random.nextInt(10)));
            }
            alike(text.toString());
        }
    }
}

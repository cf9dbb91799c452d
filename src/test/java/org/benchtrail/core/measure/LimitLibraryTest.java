package org.benchtrail.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.benchtrail.core.measure.LimitLibrary.Row;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LimitLibraryTest {
    private static final LimitLibrary LIBRARY = LimitLibrary.published();

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "atx12v-2.0-plus12|11.40 to 12.60 V|2.0",
                "atx12v-2.0-plus12-peak|10.80 to 13.20 V|2.0",
                "atx12v-2.0-plus5|4.75 to 5.25 V|2.0",
                "atx12v-2.0-plus3.3|3.14 to 3.47 V|2.0",
                "atx12v-2.0-minus12|-13.20 to -10.80 V|2.0",
                "atx12v-2.0-plus5sb|4.75 to 5.25 V|2.0",
                "atx-2.1-plus3.3|3.168 to 3.432 V|2.1",
                "iec-60038-230|207 to 253 V|2009",
                "en-50160-voltage-all|195.5 to 253 V|-",
                "en-50160-frequency-99.5|49.5 to 50.5 Hz|-",
                "en-50160-frequency-all|47 to 52 Hz|-",
                "iso-11801-class-e-250|at most 35.93 dB|2002",
                "poe-class4-device|at most 25.5 W|-",
                "itu-g.114-delay-good|at most 150 ms|2003",
            })
    void published_rowsSeenInTheirSource(String id, String words, String edition) {
        Row row = LIBRARY.find(id).orElseThrow();
        Published.check(row.limit().source(), words, row.limit().words());
        assertEquals(edition, row.edition());
        assertEquals(Provenance.SEEN, row.provenance());
    }

    @Test
    void published_everyRow_hasASourceAndNoneIsCalledSeenWithoutOne() {
        assertTrue(LIBRARY.rows().size() > 50);
        for (Row row : LIBRARY.rows()) {
            boolean sourceless = row.limit().source().equals("common practice, no source");
            assertEquals(row.provenance() == Provenance.COMMON_PRACTICE, sourceless, row.id());
            assertFalse(row.provenance() == Provenance.GIVEN, row.id());
        }
    }

    @Test
    void measuring_givesRowsOfThatKindOnly() {
        assertTrue(LIBRARY.measuring(Dimension.FREQUENCY).stream()
                .allMatch(r -> r.limit().unit().equals(Units.HERTZ)));
        assertEquals(2, LIBRARY.measuring(Dimension.FREQUENCY).size());
    }

    @Test
    void with_ownRow_leavesTheOldLibraryAndTheOldVerdictAsTheyWere() {
        Limit plate = Limit.between("11.0", "13.0", Units.VOLT, "nameplate of the bench supply");
        LimitLibrary own = LIBRARY.with(new Row("bench-supply-1", "output", plate, "-", Provenance.GIVEN, ""));
        Judgement old = own.find("bench-supply-1")
                .orElseThrow()
                .limit()
                .judge(Reading.plain(Quantity.parse("11.2 V")), GuardBand.NONE);
        Limit stricter = Limit.between("11.5", "12.5", Units.VOLT, "policy of May");
        LimitLibrary newer = own.with(new Row("bench-supply-2", "output", stricter, "-", Provenance.GIVEN, ""));
        assertEquals(plate, old.limit());
        assertEquals(Verdict.WITHIN, old.verdict());
        assertEquals(plate, newer.find("bench-supply-1").orElseThrow().limit());
        assertTrue(LIBRARY.find("bench-supply-1").isEmpty());
    }

    @Test
    void with_takenOrIllFormedId_isRefused() {
        Limit limit = Limit.atMost("1", Units.VOLT, "policy");
        Row taken = new Row("iec-60038-230", "mains", limit, "-", Provenance.GIVEN, "");
        assertThrows(Invalid.class, () -> LIBRARY.with(taken));
        assertThrows(Invalid.class, () -> new Row("Upper Case", "mains", limit, "-", Provenance.GIVEN, ""));
        assertThrows(Invalid.class, () -> new Row("ok", " ", limit, "-", Provenance.GIVEN, ""));
    }
}

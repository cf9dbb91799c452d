package org.benchtrail.core.readin;

import static org.benchtrail.core.readin.Seen.assertRefused;
import static org.benchtrail.core.readin.Seen.reading;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SeriesSummaryTest {
    private static final About CELSIUS = new About("processor", "temperature", "°C");

    @Test
    void series_isSummedUp_andKept() {
        ReadIn found = SeriesSummary.read("time,temp\n0,25\n20,48.5\n40,-3\n60.5,44", CELSIUS);
        assertEquals("25", reading(found, "temperature, first", "processor").value());
        assertEquals("44", reading(found, "temperature, last", "processor").value());
        assertEquals("-3", reading(found, "temperature, lowest", "processor").value());
        assertEquals("48.5", reading(found, "temperature, highest", "processor").value());
        assertEquals(
                "60.5",
                reading(found, "time from first to last row", "processor").value());
        assertEquals("4", reading(found, "rows", "processor").value());
        assertEquals(4, found.series().orElseThrow().size());
        assertEquals("°C", reading(found, "temperature, first", "processor").unit());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''|rows|No rows",
                "0;x|rows[0]|not a number",
                "0,25~10,NaN|rows[1]|Row 2",
                "0,25~10,Infinity|rows[1]|Row 2",
                "0,25~10|rows[1]|a time and a value",
                "10,25~5,30|rows[1]|not later",
                "0,1e20|rows|15 digits"
            })
    void malformed_isRefusedWithItsRow(String lines, String field, String reason) {
        assertRefused(field, reason, () -> SeriesSummary.read(lines.replace('~', '\n'), CELSIUS));
    }

    @Test
    void withoutUnit_isRefused() {
        assertRefused("unit", "Give the unit", () -> SeriesSummary.read("0,1\n1,2", About.NOTHING));
    }
}

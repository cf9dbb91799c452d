package org.benchtrail.core.measure;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.Locale;
import java.util.Random;
import org.benchtrail.core.Invalid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SeriesTest {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "0,25.0\n20,48.5\n40,63\n",
                "0;25,0\n20;48,5\n40;63\n",
                "0;25.0\r\n20;48.5\r\n40;63\r\n",
                "0\t25,0\n20\t48,5\n40\t63",
                "0 25,0\n20   48,5\n 40 63 ",
                "time,temp\n0,25.0\n20,48.5\n40,63\n",
                "time (s), temp\n0\t25,0\n20\t48,5\n40\t63",
                "# exported; by hand\n0;25\n20;48,5\n40;63",
                "\uFEFF\"time\";\"value\"\n\"0\";\"25,0\"\n\n\"20\";\"48,5\"\n\"40\";\"63\"\n\n",
                "0, 25.0\n2e1, 4.85e1\n40.0, 63.\n",
                "\"0\",\"25.0\"\n\"20\",\"48.5\"\n\"40\",\"63\"",
            })
    void parse_formsThatArePasted_giveTheSameSeries(String text) {
        Series series = Series.parse(text);
        assertArrayEquals(new double[] {0, 20, 40}, series.times());
        assertArrayEquals(new double[] {25, 48.5, 63}, series.values());
        assertEquals(40, series.span());
        assertTrue(series.start().isEmpty());
    }

    @Test
    void parse_dates_countFromTheFirst() {
        Series series = Series.parse("when,temp\n2026-03-01T09:30:00+01:00,25\n2026-03-01T08:30:20.5Z,48\n");
        assertArrayEquals(new double[] {0, 20.5}, series.times(), 1e-9);
        assertEquals(Instant.parse("2026-03-01T08:30:00Z"), series.start().orElseThrow());
        Series local = Series.parse("2026-03-01 09:30:00 25,5\n2026-03-01 09:31:00 26,5");
        assertArrayEquals(new double[] {0, 60}, local.times());
        assertArrayEquals(new double[] {25.5, 26.5}, local.values());
        assertTrue(local.start().isEmpty());
    }

    @Test
    void parse_negativeNumbers_withEitherMinus() {
        Series series = Series.parse("-10;\u221225\n0;-24,5");
        assertArrayEquals(new double[] {-10, 0}, series.times());
        assertArrayEquals(new double[] {-25, -24.5}, series.values());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0;25#20;abc#40;63|Row 2: its value, 'abc', is not a number",
                "0;25#20;#40;63|Row 2: its value is missing",
                "0;25#20;NaN|Row 2: its value, 'NaN', is not a number",
                "0;25#Infinity;3|Row 2: its time, 'Infinity'",
                "0;25#20;1e999|Row 2: its value, '1e999', is larger than anything",
                "0;25#0;26|Row 2: its time, 0 s, is not later than the one before, 0 s",
                "0;25#5;26#4,5;27|Row 3: its time, 4.5 s, is not later than the one before, 5 s",
                "0,25#10,26,7|Row 2: it has 3 fields separated by a comma",
                "0,5,25,1#1,5,26,1|with decimal commas, separate by semicolons",
                "0;1.234,5|Row 1: its value",
                "0;25#2026-03-01T09:30:00Z;26|Row 2: its time is a date with an offset, the rows before give seconds",
                "2026-03-01T09:30:00Z;25#2026-03-01T09:31:00;26|Row 2: its time is a date without an offset",
                "2026-13-01T09:30:00Z;25|is no date and time",
                "nan;25|Row 1: its time",
            })
    void parse_rowsThatCannotBeTaken_areNamed(String text, String sentence) {
        Invalid refused = assertThrows(Invalid.class, () -> Series.parse(text.replace('#', '\n')));
        assertTrue(refused.getMessage().contains(sentence), refused.getMessage());
    }

    @Test
    void parse_severalBadRows_areAllTold() {
        Invalid refused = assertThrows(Invalid.class, () -> Series.parse("0;1\nx;2\n3;y\n4;5"));
        assertEquals(2, refused.problems().size());
        assertEquals("rows[1]", refused.problems().get(0).field());
        assertEquals("rows[2]", refused.problems().get(1).field());
        String many = "0;1\n" + "1;x\n".repeat(1000);
        Invalid first = assertThrows(Invalid.class, () -> Series.parse(many));
        assertEquals(21, first.problems().size());
        assertTrue(first.getMessage().contains("980 more rows"), first.getMessage());
    }

    @Test
    void parse_nothingAndTooMuch_areRefused() {
        assertThrows(Invalid.class, () -> Series.parse(""));
        assertThrows(Invalid.class, () -> Series.parse("time;value\n"));
        assertThrows(Invalid.class, () -> Series.parse("0;" + "1".repeat(300)));
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < Series.MOST_ROWS; i++) {
            text.append(i).append(";1\n");
        }
        assertEquals(Series.MOST_ROWS, Series.parse(text.toString()).size());
        text.append(Series.MOST_ROWS).append(";1\n");
        Invalid refused = assertThrows(Invalid.class, () -> Series.parse(text.toString()));
        assertTrue(refused.getMessage().contains("more than 100000 rows"), refused.getMessage());
    }

    @Test
    void of_outsideItsDomain_isRefused() {
        assertThrows(Invalid.class, () -> Series.of(new double[0], new double[0]));
        assertThrows(Invalid.class, () -> Series.of(new double[] {1}, new double[] {1, 2}));
        assertThrows(Invalid.class, () -> Series.of(new double[] {1, 1}, new double[] {1, 2}));
        Invalid refused =
                assertThrows(Invalid.class, () -> Series.of(new double[] {1, 2}, new double[] {1, Double.NaN}));
        assertEquals("rows[1]", refused.problems().get(0).field());
        assertThrows(Invalid.class, () -> Series.of(new double[] {1, Double.POSITIVE_INFINITY}, new double[] {1, 2}));
    }

    @Test
    void of_doesNotShareItsArrays() {
        double[] times = {0, 1};
        Series series = Series.of(times, new double[] {5, 6});
        times[1] = 99;
        series.values()[0] = 99;
        assertEquals(1, series.time(1));
        assertEquals(5, series.value(0));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void parse_whatWasWritten_comesBack(long seed) {
        Random random = new Random(seed);
        String[] separators = {";", "\t", " "};
        for (int run = 0; run < 100; run++) {
            String separator = separators[random.nextInt(3)];
            int n = 1 + random.nextInt(50);
            double[] times = new double[n];
            double[] values = new double[n];
            StringBuilder text = new StringBuilder();
            double time = random.nextInt(100) - 50;
            for (int i = 0; i < n; i++) {
                time += 1 + random.nextInt(1000);
                times[i] = time / 8;
                values[i] = (random.nextInt(2_000_001) - 1_000_000) / 1000.0;
                String row = String.format(Locale.ROOT, "%.3f%s%.3f", times[i], separator, values[i]);
                text.append(random.nextBoolean() ? row.replace('.', ',') : row).append('\n');
            }
            Series series = Series.parse(text.toString());
            assertArrayEquals(times, series.times(), "seed " + seed);
            assertArrayEquals(values, series.values(), "seed " + seed);
        }
    }
}

package org.benchtrail.platform;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CsvTest {
    /** RFC 4180, section 2: lines end with CRLF; commas, quotes and line ends stand within quotes, quotes are doubled. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            quoteCharacter = '`',
            value = {"plain;plain", "a, b;\"a, b\"", "say \"no\";\"say \"\"no\"\"\"", "'';''"})
    void cells_areWrittenByTheRfc(String text, String written) {
        for (Csv form : Csv.values()) {
            assertEquals(written + ",x\r\n", form.line(List.of(text, "x")));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+a", "-1+1", "-", "@x", "\tx", "-1\n", "-1,2", "+1.", "--1"})
    void whatASpreadsheetWouldRun_isText(String text) {
        String quoted = text.contains(",") || text.contains("\n") ? "\"'" + text + "\"" : "'" + text;
        assertEquals(quoted + "\r\n", Csv.FOR_SPREADSHEET.line(List.of(text)));
        assertEquals(quoted.replaceFirst("'", "") + "\r\n", Csv.PLAIN.line(List.of(text)), "the plain one stays true");
    }

    /** A reading of minus five degrees stays one: a spreadsheet counts with it. */
    @ParameterizedTest
    @ValueSource(strings = {"-5", "+1", "-0.25", "-1.5e-3", "+2E10"})
    void aNumber_staysANumber(String text) {
        assertEquals(text + "\r\n", Csv.FOR_SPREADSHEET.line(List.of(text)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"a\nb", "a\r\nb"})
    void lineEnds_standWithinQuotes(String text) {
        assertEquals("\"" + text + "\"\r\n", Csv.FOR_SPREADSHEET.line(List.of(text)));
    }
}

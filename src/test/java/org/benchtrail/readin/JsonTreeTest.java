package org.benchtrail.readin;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JsonTreeTest {
    @Test
    void everyNumber_isADecimal_withItsDigits() {
        assertEquals(
                Map.of("a", Arrays.asList(new BigDecimal("1"), new BigDecimal("12.050"), null, true, "x")),
                JsonTree.parse("{\"a\": [1, 12.050, null, true, \"x\"]}"));
        assertEquals(List.of(new BigDecimal("99999999999999999999")), JsonTree.parse("[99999999999999999999]"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '\0',
            value = {
                "{\"a\": NaN}|NaN",
                "{\"a\": 1|too early",
                "{\"a\": 1} x|not JSON",
                "{\"a\": 1, \"a\": 2}|twice",
                "{'a': 1}|not JSON",
                "hot|not JSON"
            })
    void whatIsNoJson_isRefusedWithLineAndColumn(String text, String reason) {
        Invalid refusal = assertThrows(Invalid.class, () -> JsonTree.parse("\n" + text));
        assertTrue(refusal.problems().get(0).field().startsWith("line 2, column "), refusal::getMessage);
        assertTrue(refusal.getMessage().contains(reason), refusal::getMessage);
    }

    @Test
    void deepNesting_isRefused() {
        assertThrows(Invalid.class, () -> JsonTree.parse("[".repeat(100_000)));
    }
}

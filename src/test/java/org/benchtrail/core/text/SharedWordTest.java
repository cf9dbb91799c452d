package org.benchtrail.core.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SharedWordTest {
    @ParameterizedTest
    @CsvSource({
        "Quillifer asked for it by letter, Quillifer",
        "asked for by QUILLIFER, QUILLIFER",
        "asked for by q. osmotrude-weiß, osmotrude",
        "they left; was reached at bell 77431, 77431",
        "asked for by letter, ''",
        "'', ''",
        // words of three letters tell nobody apart
        "asked for by Zyx of wing 77, ''",
        "Quilliferous, ''"
    })
    void wordThatBothHave_isFound(String text, String word) {
        assertEquals(
                word, SharedWord.of(text, "Quillifer Osmotrude", "77431, Zyx").orElse(""));
    }
}

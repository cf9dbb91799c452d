package org.benchtrail.core;

import static org.benchtrail.core.Published.check;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class SpellingTest {
    @Test
    void edits_areLevenshteins() {
        check("Levenshtein distance, the textbooks' example (from memory)", 3, Spelling.edits("kitten", "sitting"));
        assertEquals(0, Spelling.edits("UPS", "ups"));
        assertEquals(3, Spelling.edits("", "abc"));
    }

    @Test
    void nearest_isTheFirstOfTheNearest() {
        assertEquals("volt", Spelling.nearest("vol", List.of("watt", "volt", "vola")));
    }
}

package org.benchtrail.knowledge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Words in the form of the database's queries, and passages in pieces. */
class TermsTest {
    @Test
    void words_standForTheirStems_theLastForItsBeginning() {
        Terms terms = Terms.of(List.of("fans", "clicking"), Map.of("fans", "fan", "clicking", "click"));
        assertEquals("('fan':*) & ('click':*)", terms.all());
        assertEquals("('fan':*) | ('click':*)", terms.any());
        assertEquals(
                "('fan') & ('fla':*)", Terms.of(List.of("fan", "fla"), Map.of()).all());
        Map<String, String> changed = Map.of("xyzzed", "qyzz");
        assertEquals(
                "('qyzz':* | 'xyzzed':*)", Terms.of(List.of("xyzzed"), changed).all());
    }

    /** Batteries and battery have the stem 'batteri'. */
    @Test
    void endingInY_isFoundFromThePlural() {
        Map<String, String> stems = Map.of("battery", "batteri", "batteries", "batteri", "dead", "dead");
        assertTrue(Terms.of(List.of("battery", "dead"), stems).all().contains("'batter':*"));
        assertTrue(Terms.of(List.of("batteries", "dead"), stems).all().contains("'batter':*"));
    }

    @Test
    void wordsThatSayNothing_areLeftOut_unlessThereIsNothingElse() {
        assertEquals(
                "('fan':*)",
                Terms.of(List.of("the", "fan"), Map.of("the", "", "fan", "fan")).all());
        assertEquals("('the':*)", Terms.of(List.of("the"), Map.of("the", "")).all());
        assertTrue(Terms.of(List.of(), Map.of()).isEmpty());
    }

    @Test
    void correctedWords_takeThePlaceOfMistypedOnes() {
        Terms terms = Terms.of(List.of("fna", "dust"), Map.of());
        assertEquals(
                "('fan' | 'fang') & ('dust':*)",
                terms.corrected(Map.of("fna", List.of("fang", "fan"))).all());
    }

    @Test
    void plainWords_areLettersAndDigits() {
        assertEquals(List.of("ws", "22", "5", "1", "größe", "50", "c"), Plain.words("WS-22: 5.1\n'Größe' 50 °C & | !"));
        assertEquals("a b", Plain.index(" A,b "));
        assertEquals(List.of("x".repeat(100)), Plain.words("x".repeat(3_000)));
    }

    @Test
    void marked_keepsEveryLetterInPieces() {
        Marked marked = Marked.read("A " + Marked.START + "fan" + Marked.STOP + " <b>");
        assertEquals(
                List.of(new Marked.Piece("A ", false), new Marked.Piece("fan", true), new Marked.Piece(" <b>", false)),
                marked.pieces());
        assertEquals("A fan <b>", marked.toString());
        assertTrue(Marked.read("").isEmpty());
        assertTrue(Marked.plain("").isEmpty());
    }

    /** A text that itself holds the marks loses them, and nothing else. */
    @Test
    void marked_bearsMarksOutOfPlace() {
        assertEquals(
                "ab",
                Marked.read("a" + Marked.STOP + Marked.STOP + "b" + Marked.START)
                        .toString());
    }
}

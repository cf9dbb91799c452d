package org.benchtrail.knowledge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Words in the form of the database's queries, and passages in pieces. */
class QueryTermsTest {
    @Test
    void words_standForTheirStems_theLastForItsBeginning() {
        QueryTerms terms = QueryTerms.of(List.of("fans", "clicking"), Map.of("fans", "fan", "clicking", "click"));
        assertEquals("('fan':*) & ('click':*)", terms.all());
        assertEquals("('fan':*) | ('click':*)", terms.any());
        assertEquals(
                "('fan') & ('fla':*)",
                QueryTerms.of(List.of("fan", "fla"), Map.of()).all());
        Map<String, String> changed = Map.of("xyzzed", "qyzz");
        assertEquals(
                "('qyzz':* | 'xyzzed':*)",
                QueryTerms.of(List.of("xyzzed"), changed).all());
    }

    /** Batteries and battery have the stem 'batteri'. */
    @Test
    void endingInY_isFoundFromThePlural() {
        Map<String, String> stems = Map.of("battery", "batteri", "batteries", "batteri", "dead", "dead");
        assertTrue(QueryTerms.of(List.of("battery", "dead"), stems).all().contains("'batter':*"));
        assertTrue(QueryTerms.of(List.of("batteries", "dead"), stems).all().contains("'batter':*"));
    }

    @Test
    void wordsThatSayNothing_areLeftOut_unlessThereIsNothingElse() {
        assertEquals(
                "('fan':*)",
                QueryTerms.of(List.of("the", "fan"), Map.of("the", "", "fan", "fan"))
                        .all());
        assertEquals(
                "('the':*)", QueryTerms.of(List.of("the"), Map.of("the", "")).all());
        assertTrue(QueryTerms.of(List.of(), Map.of()).isEmpty());
    }

    @Test
    void correctedWords_takeThePlaceOfMistypedOnes() {
        QueryTerms terms = QueryTerms.of(List.of("fna", "dust"), Map.of());
        assertEquals(
                "('fan' | 'fang') & ('dust':*)",
                terms.corrected(Map.of("fna", List.of("fang", "fan"))).all());
    }

    @Test
    void plainWords_areLettersAndDigits() {
        assertEquals(
                List.of("ws", "22", "5", "1", "größe", "50", "c"), SearchText.words("WS-22: 5.1\n'Größe' 50 °C & | !"));
        assertEquals("a b", SearchText.index(" A,b "));
        assertEquals(List.of("x".repeat(100)), SearchText.words("x".repeat(3_000)));
    }

    @Test
    void marked_keepsEveryLetterInPieces() {
        Highlighted marked = Highlighted.read("A " + Highlighted.START + "fan" + Highlighted.STOP + " <b>");
        assertEquals(
                List.of(
                        new Highlighted.Piece("A ", false),
                        new Highlighted.Piece("fan", true),
                        new Highlighted.Piece(" <b>", false)),
                marked.pieces());
        assertEquals("A fan <b>", marked.toString());
        assertTrue(Highlighted.read("").isEmpty());
        assertTrue(Highlighted.plain("").isEmpty());
    }

    /** A text that itself holds the marks loses them, and nothing else. */
    @Test
    void marked_bearsMarksOutOfPlace() {
        assertEquals(
                "ab",
                Highlighted.read("a" + Highlighted.STOP + Highlighted.STOP + "b" + Highlighted.START)
                        .toString());
    }
}

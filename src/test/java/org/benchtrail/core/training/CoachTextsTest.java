package org.benchtrail.core.training;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CoachTextsTest {
    private static CoachText text(String code) {
        return CoachText.of(code, "Why.", "Good.", "Seen [[here]] today.", "Poor.", "Fails.", CoachText.Judge.P);
    }

    private static List<CoachText> all() {
        return new ArrayList<>(
                Requirements.all().stream().map(r -> text(r.code())).toList());
    }

    @Test
    void aTextForEachRequirement_isTaken() {
        assertEquals("here", new CoachTexts(all()).of("scope-known").blank());
        assertThrows(IllegalArgumentException.class, () -> new CoachTexts(all()).of("no-such"));
    }

    @Test
    void aRequirementWithoutAText_aTextWithoutARequirement_andTwoOfOne_areRefused() {
        List<CoachText> fewer = all();
        fewer.remove(3);
        assertTrue(assertThrows(IllegalArgumentException.class, () -> new CoachTexts(fewer))
                .getMessage()
                .contains("without a text: [scope-known]"));
        List<CoachText> more = all();
        more.add(text("scope-unknown"));
        assertTrue(assertThrows(IllegalArgumentException.class, () -> new CoachTexts(more))
                .getMessage()
                .contains("no requirement: [scope-unknown]"));
        List<CoachText> twice = all();
        twice.add(text("scope-known"));
        assertThrows(IllegalArgumentException.class, () -> new CoachTexts(twice));
    }

    @ParameterizedTest
    @ValueSource(strings = {"nothing open", "[[one]] and [[two]]", "[[]] empty", "[[not closed", "a [ single ]", ""})
    void anExample_hasOnePartLeftOpen(String example) {
        assertThrows(
                IllegalArgumentException.class,
                () -> CoachText.of("a", "Why.", "Good.", example, "Poor.", "Fails.", CoachText.Judge.M));
    }

    @Test
    void noTextIsEmpty() {
        assertThrows(
                IllegalArgumentException.class,
                () -> CoachText.of("a", "Why.", " ", "[[x]]", "Poor.", "Fails.", CoachText.Judge.M));
    }

    @Test
    void safety_isWhatGuardsPeopleAndData() {
        List<String> safety = Requirements.all().stream()
                .filter(CoachTexts::isOfSafety)
                .map(Requirement::code)
                .toList();
        assertEquals(
                List.of(
                        "hazards-screened",
                        "data-protected",
                        "invasive-guarded",
                        "plan-approved",
                        "cautions-taken",
                        "data-still-protected"),
                safety);
        assertFalse(safety.contains("scope-known"));
    }
}

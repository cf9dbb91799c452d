package org.benchtrail.core.method;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.core.method.IdentifyFact.AttachmentAdded;
import org.benchtrail.core.method.IdentifyFact.SymptomRecorded;
import org.benchtrail.core.method.PlanFact.ActionPlanned;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What facts take as text, and that all problems are told at once. */
class TextsTest {
    private static List<String> fields(Supplier<?> made) {
        return assertThrows(Invalid.class, made::get).problems().stream()
                .map(Problem::field)
                .distinct()
                .toList();
    }

    private static String kept(String typed) {
        return new SymptomRecorded(typed, "Seen", false).words();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "\t\r\n", "\u2003"})
    void emptyOrBlank_isRefused(String typed) {
        assertEquals(List.of("words"), fields(() -> new SymptomRecorded(typed, "Seen", false)));
    }

    @Test
    void tooLong_isRefusedByOneCharacter() {
        assertEquals(4_000, kept("x".repeat(4_000)).length());
        assertEquals(4_000, kept("  " + "x".repeat(4_000) + "  ").length());
        assertEquals(List.of("words"), fields(() -> new SymptomRecorded("x".repeat(4_001), "Seen", false)));
        assertEquals(
                300, new TheorizeFact.TheoryStated("x".repeat(300), null).text().length());
        assertEquals(List.of("text"), fields(() -> new TheorizeFact.TheoryStated("x".repeat(301), null)));
        assertEquals(
                20_000,
                new IdentifyFact.ExtractRecorded("log", "x".repeat(20_000))
                        .text()
                        .length());
        assertEquals(List.of("text"), fields(() -> new IdentifyFact.ExtractRecorded("log", "x".repeat(20_001))));
    }

    @ParameterizedTest
    @ValueSource(strings = {"a\u0000b", "a\u0007b", "a\u001bb", "\u0001", "a\ud83d", "\ude00a", "a\ude00\ud83db"})
    void controlCharactersAndLoneSurrogates_areRefused(String typed) {
        assertEquals(List.of("words"), fields(() -> new SymptomRecorded(typed, "Seen", false)));
    }

    @Test
    void lineEnds_becomeOne_andTheRestIsKept() {
        assertEquals("a\nb\nc\nd", kept("a\r\nb\rc\nd\r\n"));
        assertEquals("fan \ud83d\udd25 \u00e9\u4e2d\u6587\tok", kept("fan \ud83d\udd25 \u00e9\u4e2d\u6587\tok"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"a\nb", "a\r\nb", "a \r b", "a\tb", "a\n\n\nb", "a\u2028b", "a\u2029b", "a\u0085b", "\na\nb\n"})
    void oneLine_isFolded(String typed) {
        assertEquals("a b", new TheorizeFact.TheoryStated(typed, null).text());
        assertEquals("a b", new TheorizeFact.TheoryStated("Dust", typed).causeId());
        assertEquals(List.of("a b"), new IdentifyFact.LikenessChecked(List.of(typed)).shown());
    }

    @Test
    void identifiers_areCheckedAsText() {
        assertEquals(List.of("causeId"), fields(() -> new TheorizeFact.TheoryStated("Dust", "\ud83d")));
        assertEquals(List.of("shown"), fields(() -> new IdentifyFact.LikenessChecked(List.of("40718-6", "\u0000"))));
        assertEquals(
                List.of("shown"), fields(() -> new IdentifyFact.LikenessChecked(Collections.nCopies(201, "40718-6"))));
    }

    @Test
    void allProblems_areToldAtOnce() {
        assertEquals(List.of("words", "observable"), fields(() -> new SymptomRecorded("", " ", false)));
        assertEquals(
                List.of("what", "effect", "impact", "wayBack", "cost"),
                fields(() -> new ActionPlanned("", "", "", "", false, false, false, false, "a lot", null, Set.of())));
    }

    static Stream<Arguments> malformed() {
        Map<IdentifyFact.Change, IdentifyFact.Answer> changes =
                new EnumMap<>(Sheets.anyChanges().answers());
        changes.remove(IdentifyFact.Change.PLACE);
        Map<IdentifyFact.Change, IdentifyFact.Answer> yes =
                new EnumMap<>(Sheets.anyChanges().answers());
        yes.put(IdentifyFact.Change.PLACE, IdentifyFact.Answer.YES);
        Map<IdentifyFact.Hazard, Boolean> hazards =
                new EnumMap<>(Sheets.noHazard().present());
        hazards.remove(IdentifyFact.Hazard.SMOKE);
        Map<TheorizeFact.Obvious, TheorizeFact.Look> looks =
                new EnumMap<>(Sheets.anyObvious().looks());
        looks.remove(TheorizeFact.Obvious.CABLES);
        Map<Integer, VerifyFact.ItemState> items = new HashMap<>();
        items.put(0, null);
        return Stream.of(
                row("when", () -> new IdentifyFact.OnsetRecorded(true, "")),
                row("answers.PLACE", () -> new IdentifyFact.ChangesAsked(changes, "")),
                row("note", () -> new IdentifyFact.ChangesAsked(yes, "")),
                row("present.SMOKE", () -> new IdentifyFact.HazardsScreened(hazards)),
                row("acknowledged", () -> new IdentifyFact.StopWorkCleared("Aired", false)),
                row("note", () -> new IdentifyFact.DataAnswered(IdentifyFact.DataState.IMPOSSIBLE, "")),
                row("file", () -> new AttachmentAdded("a", "b", 0, "0".repeat(64), "c")),
                row("sha256", () -> new AttachmentAdded("a", "b", 1, "0".repeat(63) + "G", "c")),
                row("sha256", () -> new AttachmentAdded("a", "b", 1, null, "c")),
                row("bytes", () -> new AttachmentAdded("a", "b", (1L << 53) + 1, "0".repeat(64), "c")),
                row("duplicateOf", () -> new MoveFact.Cancelled("Same", "40718-5")),
                row("duplicateOf", () -> new MoveFact.Cancelled("Same", "seven")),
                row("looks.CABLES", () -> new TheorizeFact.ObviousQuestioned(looks, "")),
                row("order", () -> new TheorizeFact.TheoriesRanked(List.of(), "x")),
                row("actions", () -> new PlanFact.PlanApproved(List.of(), "")),
                row("note", () -> new PlanFact.ActionSettled(1, PlanFact.Settlement.FAILED, "")),
                row("note", () -> new PlanFact.ActionSettled(1, PlanFact.Settlement.NOT_NEEDED, "")),
                row("items", () -> new VerifyFact.FunctionChecked(Map.of(), "")),
                row("items", () -> new VerifyFact.FunctionChecked(items, "")),
                row("minutes", () -> new VerifyFact.SoakRun(0, false, "")),
                row("minutes", () -> new VerifyFact.SoakRun(525_601, false, "")),
                row("minutes", () -> new DocumentFact.EffortRecorded(0, "")),
                row("cost", () -> Sheets.action(false, false, false, false, "1.234", null)),
                row("cost", () -> Sheets.action(false, false, false, false, "-1", null)));
    }

    private static Arguments row(String field, Supplier<Fact> made) {
        return Arguments.of(field, made);
    }

    @ParameterizedTest
    @MethodSource("malformed")
    void malformedFact_namesItsField(String field, Supplier<Fact> made) {
        assertEquals(List.of(field), fields(made));
    }

    @Test
    void cost_isReadWithCommaOrPoint() {
        assertEquals(
                "84.50",
                Sheets.action(false, false, false, false, " 84,50 ", null).cost());
        assertEquals(0, Sheets.anyAction().costAmount().signum());
    }

    @Test
    void factsKeepTheirOwnCopies() {
        Map<Integer, VerifyFact.ItemState> items = new HashMap<>(Map.of(0, VerifyFact.ItemState.WORKS));
        VerifyFact.FunctionChecked fact = new VerifyFact.FunctionChecked(items, "");
        items.put(0, VerifyFact.ItemState.FAULTY);
        assertEquals(VerifyFact.ItemState.WORKS, fact.items().get(0));
        assertTrue(Sheets.demandingAction().cautions().contains(Caution.MAINS));
        assertThrows(UnsupportedOperationException.class, () -> fact.items().clear());
    }
}

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
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.ChangeAnswer;
import org.benchtrail.core.method.identify.ChangeKind;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.LikenessChecked;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.StopWorkCleared;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.theorize.Inspection;
import org.benchtrail.core.method.theorize.Obvious;
import org.benchtrail.core.method.theorize.ObviousQuestioned;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.core.method.verify.FunctionChecked;
import org.benchtrail.core.method.verify.ItemState;
import org.benchtrail.core.method.verify.SoakRun;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What facts take as text, and that all problems are told at once. */
class FactTextsTest {
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
        assertEquals(300, new TheoryStated("x".repeat(300), null).text().length());
        assertEquals(List.of("text"), fields(() -> new TheoryStated("x".repeat(301), null)));
        assertEquals(
                20_000, new ExtractRecorded("log", "x".repeat(20_000)).text().length());
        assertEquals(List.of("text"), fields(() -> new ExtractRecorded("log", "x".repeat(20_001))));
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
        assertEquals("a b", new TheoryStated(typed, null).text());
        assertEquals("a b", new TheoryStated("Dust", typed).causeId());
        assertEquals(List.of("a b"), new LikenessChecked(List.of(typed)).shown());
    }

    @Test
    void identifiers_areCheckedAsText() {
        assertEquals(List.of("causeId"), fields(() -> new TheoryStated("Dust", "\ud83d")));
        assertEquals(List.of("shown"), fields(() -> new LikenessChecked(List.of("40718-6", "\u0000"))));
        assertEquals(List.of("shown"), fields(() -> new LikenessChecked(Collections.nCopies(201, "40718-6"))));
    }

    @Test
    void allProblems_areToldAtOnce() {
        assertEquals(List.of("words", "observable"), fields(() -> new SymptomRecorded("", " ", false)));
        assertEquals(
                List.of("what", "effect", "impact", "wayBack", "cost"),
                fields(() -> new ActionPlanned("", "", "", "", false, false, false, false, "a lot", null, Set.of())));
    }

    static Stream<Arguments> malformed() {
        Map<ChangeKind, ChangeAnswer> changes =
                new EnumMap<>(Sheets.anyChanges().answers());
        changes.remove(ChangeKind.PLACE);
        Map<ChangeKind, ChangeAnswer> yes = new EnumMap<>(Sheets.anyChanges().answers());
        yes.put(ChangeKind.PLACE, ChangeAnswer.YES);
        Map<Hazard, Boolean> hazards = new EnumMap<>(Sheets.noHazard().present());
        hazards.remove(Hazard.SMOKE);
        Map<Obvious, Inspection> looks = new EnumMap<>(Sheets.anyObvious().looks());
        looks.remove(Obvious.CABLES);
        Map<Integer, ItemState> items = new HashMap<>();
        items.put(0, null);
        return Stream.of(
                row("when", () -> new OnsetRecorded(true, "")),
                row("answers.PLACE", () -> new ChangesAsked(changes, "")),
                row("note", () -> new ChangesAsked(yes, "")),
                row("present.SMOKE", () -> new HazardsScreened(hazards)),
                row("acknowledged", () -> new StopWorkCleared("Aired", false)),
                row("note", () -> new DataAnswered(DataState.IMPOSSIBLE, "")),
                row("file", () -> new AttachmentAdded("a", "b", 0, "0".repeat(64), "c")),
                row("sha256", () -> new AttachmentAdded("a", "b", 1, "0".repeat(63) + "G", "c")),
                row("sha256", () -> new AttachmentAdded("a", "b", 1, null, "c")),
                row("bytes", () -> new AttachmentAdded("a", "b", (1L << 53) + 1, "0".repeat(64), "c")),
                row("duplicateOf", () -> new Cancelled("Same", "40718-5")),
                row("duplicateOf", () -> new Cancelled("Same", "seven")),
                row("looks.CABLES", () -> new ObviousQuestioned(looks, "")),
                row("order", () -> new TheoriesRanked(List.of(), "x")),
                row("actions", () -> new PlanApproved(List.of(), "")),
                row("note", () -> new ActionSettled(1, Settlement.FAILED, "")),
                row("note", () -> new ActionSettled(1, Settlement.NOT_NEEDED, "")),
                row("answers", () -> new FunctionChecked(Map.of(), "", null)),
                row("answers", () -> new FunctionChecked(items, "", null)),
                row("minutes", () -> new SoakRun(0, false, "")),
                row("minutes", () -> new SoakRun(525_601, false, "")),
                row("minutes", () -> new EffortRecorded(0, "")),
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
        Map<Integer, ItemState> items = new HashMap<>(Map.of(0, ItemState.WORKS));
        FunctionChecked fact = new FunctionChecked(items, "", null);
        items.put(0, ItemState.FAULTY);
        assertEquals(ItemState.WORKS, fact.items().get(0));
        assertTrue(Sheets.demandingAction().cautions().contains(Caution.MAINS));
        assertThrows(UnsupportedOperationException.class, () -> fact.items().clear());
    }
}

package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.INES;
import static org.benchtrail.core.method.Sheets.anySymptom;
import static org.benchtrail.core.method.Sheets.hazard;
import static org.benchtrail.core.method.Sheets.noHazard;
import static org.benchtrail.core.method.Sheets.plain;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.ChangeAnswer;
import org.benchtrail.core.method.identify.ChangeKind;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.ResultRecorded;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What a fact offers to the cause catalogue: signs that its feeds may take, and words that may suggest an answer. */
class FactSignsTest {
    private static List<String> signs(Fact fact, TicketFixture desk) {
        return fact.signs(desk.sheet()).stream().map(Sign::name).sorted().toList();
    }

    /** Recorded, and asked at once. */
    private static List<String> recorded(Fact fact) {
        TicketFixture desk = plain();
        desk.as(INES).records(fact);
        return signs(fact, desk);
    }

    private static ChangesAsked changes(ChangeAnswer hardware) {
        Map<ChangeKind, ChangeAnswer> answers = new EnumMap<>(ChangeKind.class);
        for (ChangeKind kind : ChangeKind.values()) {
            answers.put(kind, ChangeAnswer.UNKNOWN);
        }
        answers.put(ChangeKind.HARDWARE, hardware);
        answers.put(ChangeKind.PLACE, ChangeAnswer.NO);
        return new ChangesAsked(answers, "A new hub");
    }

    @Test
    void changes_areSignsWhereTheyAreKnown() {
        assertEquals(List.of("changed/HARDWARE/YES", "changed/PLACE/NO"), recorded(changes(ChangeAnswer.YES)));
        assertEquals(List.of("changed/PLACE/NO"), recorded(changes(ChangeAnswer.UNKNOWN)));
    }

    @Test
    void hazards_areSignsBothWays() {
        HazardsScreened screened = hazard(Hazard.SMELL);
        List<String> signs = recorded(screened);
        assertEquals(screened.present().size(), signs.size());
        assertTrue(signs.contains("hazard/SMELL/present"), signs.toString());
        assertTrue(signs.contains("hazard/SMOKE/absent"), signs.toString());
    }

    @Test
    void scope_isASign() {
        assertEquals(List.of("scope/SITE"), recorded(new ScopeRecorded(Scope.SITE, "")));
    }

    /** Of answers of which the latest counts, an older one says nothing any more. */
    @Test
    void whatWasAnsweredAnew_saysNothing() {
        TicketFixture desk = plain();
        ChangesAsked changed = changes(ChangeAnswer.YES);
        HazardsScreened smell = hazard(Hazard.SMELL);
        ScopeRecorded one = new ScopeRecorded(Scope.ONE, "");
        ReproductionTried yes = new ReproductionTried(Reproduction.YES, "Idle");
        for (Fact first : List.of(changed, one, yes, smell)) {
            desk.as(INES).forces(first);
        }
        assertEquals(List.of("scope/ONE"), signs(one, desk));
        for (Fact second : List.of(
                changes(ChangeAnswer.NO),
                new ScopeRecorded(Scope.SITE, ""),
                new ReproductionTried(Reproduction.INTERMITTENT, "Idle"),
                noHazard())) {
            desk.as(INES).forces(second);
        }
        for (Fact first : List.of(changed, one, yes, smell)) {
            assertEquals(List.of(), signs(first, desk), first.toString());
        }
    }

    @Test
    void reproduction_saysWhetherItComesAndGoes_unlessASymptomSaidSo() {
        assertEquals(
                List.of("comes-and-goes/true"), recorded(new ReproductionTried(Reproduction.INTERMITTENT, "Idle")));
        assertEquals(List.of("comes-and-goes/false"), recorded(new ReproductionTried(Reproduction.YES, "Idle")));
        assertEquals(List.of(), recorded(new ReproductionTried(Reproduction.NO, "Idle")));
        TicketFixture desk = plain();
        ReproductionTried yes = new ReproductionTried(Reproduction.YES, "Idle");
        desk.as(INES).records(anySymptom(true));
        desk.as(INES).records(yes);
        assertEquals(List.of(), signs(yes, desk));
        TicketFixture steady = plain();
        steady.as(INES).records(anySymptom(false));
        steady.as(INES).records(yes);
        assertEquals(List.of("comes-and-goes/false"), signs(yes, steady));
    }

    @Test
    void symptomAndFinding_areSignsOnlyWhereTheySayMore() {
        assertEquals(List.of("comes-and-goes/true"), recorded(anySymptom(true)));
        assertEquals(List.of(), recorded(anySymptom(false)));
        assertEquals(List.of("drive-failure/true"), recorded(new FindingRecorded("It clicks", true)));
        assertEquals(List.of(), recorded(new FindingRecorded("It clicks", false)));
    }

    static Stream<Arguments> words() {
        return Stream.of(
                Arguments.of(changes(ChangeAnswer.NO), List.of(new Wording("A new hub", Source.REPORTED))),
                Arguments.of(
                        new ScopeRecorded(Scope.ONE, "Only she"), List.of(new Wording("Only she", Source.REPORTED))),
                Arguments.of(
                        new ReproductionTried(Reproduction.YES, "Idle"), List.of(new Wording("Idle", Source.SEEN))),
                Arguments.of(new LogsReviewed(true, "Over current"), List.of(new Wording("Over current", Source.SEEN))),
                Arguments.of(new ExtractRecorded("Log", "port 3"), List.of(new Wording("port 3", Source.SEEN))),
                Arguments.of(new FindingRecorded("It clicks", true), List.of(new Wording("It clicks", Source.SEEN))),
                Arguments.of(new OnsetRecorded(true, "Monday"), List.of(new Wording("Monday", Source.REPORTED))),
                Arguments.of(
                        new SymptomRecorded("It dies", "No light", false),
                        List.of(new Wording("It dies", Source.REPORTED), new Wording("No light", Source.SEEN))),
                Arguments.of(
                        new AttachmentAdded("f.png", "image/png", 9, "a".repeat(64), "The fan"),
                        List.of(new Wording("The fan", Source.SEEN))),
                Arguments.of(
                        new ResultRecorded(3, "It stands", CheckOutcome.SUPPORTS, null),
                        List.of(new Wording("It stands", Source.SEEN))),
                Arguments.of(
                        Sheets.opened(INES),
                        List.of(
                                new Wording("Switches off after ten minutes", Source.REPORTED),
                                new Wording("", Source.REPORTED))));
    }

    @ParameterizedTest
    @MethodSource("words")
    void wordings_areThoseThatSomebodyWrote_andHowTheyAreKnown(Fact fact, List<Wording> words) {
        assertEquals(words, fact.wordings());
    }

    @Test
    void whatIsReadOffTheDevice_saysSo() {
        assertTrue(Sheets.temperature("60", "processor").comesFromDevice());
        assertTrue(new FindingAnswered("h1", "Does it turn?", "no", Source.SEEN).comesFromDevice());
        assertTrue(new FindingRecorded("It clicks", false).comesFromDevice());
        assertFalse(new OnsetRecorded(true, "Monday").comesFromDevice());
        assertFalse(Sheets.theory("Dust").comesFromDevice());
    }
}

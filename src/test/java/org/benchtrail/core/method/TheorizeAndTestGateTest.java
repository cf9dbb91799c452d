package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.desk.RuledOut;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.IdentifyRequirement;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.test.TestRequirement;
import org.benchtrail.core.method.theorize.Inspection;
import org.benchtrail.core.method.theorize.Obvious;
import org.benchtrail.core.method.theorize.ObviousQuestioned;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.benchtrail.core.method.theorize.TheorizeRequirement;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.junit.jupiter.api.Test;

/** Ranking and ruling out theories; checks, their order, and the guard of invasive ones. */
class TheorizeAndTestGateTest {
    private static final MoveFact ADVANCE = new Advanced();

    /** In round 2 at theorize, after the given theory was ruled out. */
    private static TicketFixture afterRulingOut(TheoryStated theory) {
        TicketFixture desk = atStep(Step.THEORIZE);
        meet(desk, TheorizeRequirement.SIMPLE_THINGS_FIRST);
        desk.as(INES).records(choose(desk.as(INES).records(theory)));
        desk.as(INES).records(ADVANCE);
        meet(desk, TestRequirement.EXPECTATION_FIRST);
        desk.as(INES).records(result(desk.latest(CheckPlanned.class), CheckOutcome.REFUTES));
        desk.as(INES).records(new RuledOut());
        assertEquals(2, desk.sheet().round());
        return desk;
    }

    @Test
    void ruledOutTheory_isChosenAgainOnlyOnNewEvidence() {
        TicketFixture desk = afterRulingOut(theory("Dust"));
        int theory = desk.latest(TheoryStated.class);
        assertEquals(List.of("theory-stated", "theory-chosen"), desk.missing());
        desk.as(INES).records(choose(theory));
        desk.as(INES).lacks("not-already-refuted", ADVANCE);
        desk.as(INES).records(new TheoryChosen(theory, "", "A second look shows dust behind the shroud"));
        desk.as(INES).records(ADVANCE);
    }

    @Test
    void ruledOutTheory_mayBeWaivedInstead() {
        TicketFixture desk = afterRulingOut(theory("Dust"));
        desk.as(INES).records(choose(desk.latest(TheoryStated.class)));
        desk.as(SUE).records(waive(TheorizeRequirement.NOT_ALREADY_REFUTED));
        desk.as(INES).records(ADVANCE);
    }

    @Test
    void sameCauseStatedAgain_isStillRuledOut() {
        TicketFixture words = afterRulingOut(theory("Dust in the Cooler"));
        words.as(INES).records(choose(words.as(INES).records(theory("dust in the COOLER"))));
        words.as(INES).lacks("not-already-refuted", ADVANCE);

        TicketFixture catalogue = afterRulingOut(new TheoryStated("Dust", "cooling.dust"));
        catalogue.as(INES).records(choose(catalogue.as(INES).records(new TheoryStated("Felt", "cooling.dust"))));
        catalogue.as(INES).lacks("not-already-refuted", ADVANCE);

        TicketFixture another = afterRulingOut(new TheoryStated("Dust", "cooling.dust"));
        another.as(INES).records(choose(another.as(INES).records(new TheoryStated("Paste", "cooling.paste"))));
        another.as(INES).records(ADVANCE);
    }

    @Test
    void ruledOut_isRememberedInEveryLaterRound() {
        TicketFixture desk = afterRulingOut(theory("Dust"));
        int dust = desk.latest(TheoryStated.class);
        bring(desk, Step.PLAN);
        desk.as(INES).records(new Rethought("No effect", true));
        assertEquals(3, desk.sheet().round());
        assertEquals(2, desk.sheet().ruledOut().size());
        desk.as(INES).records(choose(dust));
        desk.as(INES).lacks("not-already-refuted", ADVANCE);
    }

    @Test
    void failedAction_doesNotRuleTheTheoryOut() {
        TicketFixture desk = atStep(Step.PLAN);
        desk.as(INES).records(new Rethought("The screw broke", false));
        assertEquals(List.of(), desk.sheet().ruledOut());
        desk.as(INES).records(choose(desk.latest(TheoryStated.class)));
        desk.as(INES).records(ADVANCE);
    }

    @Test
    void notTheBestRanked_needsAReason() {
        TicketFixture desk = atStep(Step.THEORIZE);
        meet(desk, TheorizeRequirement.SIMPLE_THINGS_FIRST);
        int dust = desk.as(INES).records(theory("Dust"));
        int paste = desk.as(INES).records(theory("Dry paste"));
        desk.as(INES).records(new TheoriesRanked(List.of(paste, dust), "judgement"));
        desk.as(INES).records(choose(dust));
        desk.as(INES).lacks("theory-chosen", ADVANCE);
        desk.as(INES).records(new TheoryChosen(dust, "Quicker to see", ""));
        assertEquals(List.of(), desk.missing());
        desk.as(INES).records(choose(paste));
        desk.as(INES).records(ADVANCE);
    }

    @Test
    void bestRanked_isAmongThoseNotRuledOut() {
        TicketFixture desk = afterRulingOut(theory("Dust"));
        int dust = desk.latest(TheoryStated.class);
        int paste = desk.as(INES).records(theory("Dry paste"));
        desk.as(INES).records(new TheoriesRanked(List.of(dust, paste), "judgement"));
        desk.as(INES).records(choose(paste));
        desk.as(INES).records(ADVANCE);
    }

    @Test
    void whatIsReferredTo_hasToBeThere() {
        TicketFixture desk = atStep(Step.THEORIZE);
        assertThrows(Invalid.class, () -> desk.as(INES).does(choose(1)));
        assertThrows(Invalid.class, () -> desk.as(INES).does(choose(999)));
        assertThrows(Invalid.class, () -> desk.as(INES).does(new TheoriesRanked(List.of(999), "judgement")));
        bring(desk, Step.TEST);
        assertThrows(Invalid.class, () -> desk.as(INES).does(check(999)));
        assertThrows(Invalid.class, () -> desk.as(INES).does(result(999, CheckOutcome.SUPPORTS)));
        int check = desk.as(INES).records(check(desk.latest(TheoryStated.class)));
        assertThrows(
                Invalid.class, () -> desk.as(INES).does(new ResultRecorded(check, "Seen", CheckOutcome.SUPPORTS, 999)));
        int before = desk.latest(ReadingRecorded.class);
        assertThrows(
                Invalid.class,
                () -> desk.as(INES).does(new ResultRecorded(check, "Seen", CheckOutcome.SUPPORTS, before)));
        int reading = desk.as(INES).records(temperature("71", "processor"));
        desk.as(INES).records(new ResultRecorded(check, "Seen", CheckOutcome.SUPPORTS, reading));
    }

    @Test
    void checkWithoutExpectation_doesNotCount() {
        TicketFixture desk = atStep(Step.TEST);
        int theory = desk.latest(TheoryStated.class);
        int check = desk.as(INES).records(new CheckPlanned(theory, "Look", "", false, Set.of()));
        desk.as(INES).records(result(check, CheckOutcome.SUPPORTS));
        assertEquals(
                List.of("expectation-first", "result-recorded", "theory-supported"),
                desk.as(INES).missingFor(ADVANCE));
        desk.as(INES).lacks("relied-on", new Corrected(check, "Forgot it", check(theory)));
    }

    @Test
    void expectationAddedBeforeTheResult_counts() {
        TicketFixture desk = atStep(Step.TEST);
        int theory = desk.latest(TheoryStated.class);
        int check = desk.as(INES).records(new CheckPlanned(theory, "Look", "", false, Set.of()));
        desk.as(INES).records(new Corrected(check, "Forgot it", check(theory)));
        desk.as(INES).records(result(check, CheckOutcome.SUPPORTS));
        desk.as(INES).records(ADVANCE);
    }

    @Test
    void resultForcedInBeforeItsCheck_doesNotCount() {
        TicketFixture desk = atStep(Step.TEST);
        desk.as(INES).forces(result(desk.sheet().entries() + 2, CheckOutcome.SUPPORTS));
        desk.as(INES).records(check(desk.latest(TheoryStated.class)));
        assertEquals(List.of("result-recorded", "theory-supported"), desk.missing());
    }

    @Test
    void checkAndItsResultInOneRequest_areRefused_andDoNotCountWhereTheyGotIn() {
        TicketFixture desk = atStep(Step.TEST);
        CheckPlanned check = check(desk.latest(TheoryStated.class));
        int next = desk.sheet().entries() + 1;
        assertEquals(
                "expectation-first",
                desk.as(INES)
                        .together(check, result(next, CheckOutcome.SUPPORTS))
                        .get(0)
                        .code());
        desk.as(INES).records(result(next, CheckOutcome.SUPPORTS));
        assertEquals("", sentence(desk, "result-recorded"));

        TicketFixture other = atStep(Step.TEST);
        int forced = other.sheet().entries() + 1;
        other.together(() -> {
            other.as(INES).forces(check(other.latest(TheoryStated.class)));
            other.as(INES).forces(result(forced, CheckOutcome.SUPPORTS));
        });
        assertTrue(sentence(other, "result-recorded").startsWith("Make the check"));
    }

    @Test
    void checkOfAnotherTheory_doesNotCount() {
        TicketFixture desk = atStep(Step.TEST);
        int other = desk.as(INES).records(theory("A loose fan cable"));
        desk.as(INES).records(result(desk.as(INES).records(check(other)), CheckOutcome.SUPPORTS));
        assertEquals(List.of("expectation-first", "result-recorded", "theory-supported"), desk.missing());
    }

    @Test
    void latestConclusiveCheck_wins() {
        TicketFixture desk = atStep(Step.TEST);
        int theory = desk.latest(TheoryStated.class);
        desk.as(INES).records(result(desk.as(INES).records(check(theory)), CheckOutcome.SUPPORTS));
        desk.as(INES).lacks("theory-supported", new RuledOut());
        desk.as(INES).records(result(desk.as(INES).records(check(theory)), CheckOutcome.REFUTES));
        desk.as(INES).lacks("theory-supported", ADVANCE);
        desk.as(INES).records(result(desk.as(INES).records(check(theory)), CheckOutcome.INCONCLUSIVE));
        desk.as(INES).lacks("theory-supported", ADVANCE);
        desk.as(INES).records(new RuledOut());
        assertEquals(Step.THEORIZE, desk.step());
    }

    @Test
    void checkIsMadeOnce_andInItsRound() {
        TicketFixture desk = atStep(Step.TEST);
        int check = desk.as(INES).records(check(desk.latest(TheoryStated.class)));
        int idle = desk.as(INES).records(check(desk.latest(TheoryStated.class)));
        desk.as(INES).records(result(check, CheckOutcome.REFUTES));
        assertThrows(Invalid.class, () -> desk.as(INES).does(result(check, CheckOutcome.SUPPORTS)));
        desk.as(INES).records(new RuledOut());
        desk.as(INES).records(choose(desk.as(INES).records(theory("Dry paste"))));
        desk.as(INES).records(ADVANCE);
        assertThrows(Invalid.class, () -> desk.as(INES).does(result(idle, CheckOutcome.SUPPORTS)));
    }

    @Test
    void anyCheck_waitsForTheHazard() {
        TicketFixture desk = atStep(Step.TEST);
        int check = desk.as(INES).records(check(desk.latest(TheoryStated.class)));
        desk.as(INES).records(hazard(Hazard.SMOKE));
        desk.as(INES).lacks("hazards-screened", result(check, CheckOutcome.SUPPORTS));
        desk.as(OLE).records(cleared());
        desk.as(INES).records(result(check, CheckOutcome.SUPPORTS));
    }

    @Test
    void invasiveCheck_waitsForItsCautions() {
        TicketFixture desk = atStep(Step.TEST);
        int check = desk.as(INES).records(invasive(desk.latest(TheoryStated.class), Caution.MAINS, Caution.STATIC));
        desk.as(INES).lacks("invasive-guarded", result(check, CheckOutcome.SUPPORTS));
        desk.as(INES).records(new CautionsAcknowledged(check, Set.of(Caution.MAINS)));
        desk.as(INES).lacks("invasive-guarded", result(check, CheckOutcome.SUPPORTS));
        desk.as(INES).records(new CautionsAcknowledged(check, Set.of(Caution.STATIC)));
        desk.as(INES).records(result(check, CheckOutcome.SUPPORTS));
        desk.as(INES).records(ADVANCE);
    }

    @Test
    void cautionsOfACheckThatWasChanged_areAcknowledgedAnew() {
        TicketFixture desk = atStep(Step.TEST);
        int theory = desk.latest(TheoryStated.class);
        int check = desk.as(INES).records(invasive(theory, Caution.STATIC));
        desk.as(INES).records(new CautionsAcknowledged(check, Set.of(Caution.STATIC)));
        desk.as(INES).records(new Corrected(check, "More of it", invasive(theory, Caution.STATIC)));
        desk.as(INES).lacks("invasive-guarded", result(check, CheckOutcome.SUPPORTS));
        desk.as(INES).records(new CautionsAcknowledged(check, Set.of(Caution.STATIC)));
        desk.as(INES).records(result(check, CheckOutcome.SUPPORTS));
    }

    @Test
    void invasiveCheck_waitsForTheData() {
        TicketFixture desk = atStep(Step.TEST);
        int check = desk.as(INES).records(invasive(desk.latest(TheoryStated.class)));
        int gentle = desk.as(INES).records(check(desk.latest(TheoryStated.class)));
        desk.as(INES).records(data(DataState.IMPOSSIBLE));
        desk.as(INES).records(drive(true));
        desk.as(INES).records(result(gentle, CheckOutcome.SUPPORTS));
        desk.as(INES).lacks("invasive-guarded", result(check, CheckOutcome.SUPPORTS));
        desk.as(SUE).records(waive(IdentifyRequirement.DATA_PROTECTED));
        desk.as(INES).records(result(check, CheckOutcome.SUPPORTS));
        desk.as(INES).records(ADVANCE);
    }

    @Test
    void invasiveCheckMadeUnguarded_keepsTheStep() {
        for (Fact worse : List.of(hazard(Hazard.SMOKE), drive(true), new LogsReviewed(true, "Nothing"))) {
            TicketFixture desk = atStep(Step.TEST);
            meetAll(desk);
            desk.as(INES).records(data(DataState.NO_USER_DATA));
            boolean cautions = worse instanceof LogsReviewed;
            Caution[] asked = cautions ? new Caution[] {Caution.LASER} : new Caution[0];
            int check = desk.as(INES).records(invasive(desk.latest(TheoryStated.class), asked));
            desk.as(INES).records(worse);
            desk.as(INES).forces(result(check, CheckOutcome.SUPPORTS));
            if (desk.sheet().workStopped()) {
                desk.as(OLE).records(cleared());
            }
            desk.as(INES).records(data(DataState.TAKEN_NOW));
            desk.as(INES).records(new CautionsAcknowledged(check, Set.of(asked)));
            desk.as(INES).lacks("invasive-guarded", ADVANCE);
        }
    }

    @Test
    void findingCorrectedAfterwards_doesNotUndoACheckThatWasGuarded() {
        TicketFixture desk = atStep(Step.TEST);
        desk.as(INES).records(data(DataState.NO_USER_DATA));
        int finding = desk.as(INES).records(drive(false));
        int check = desk.as(INES).records(invasive(desk.latest(TheoryStated.class)));
        desk.as(INES).records(result(check, CheckOutcome.SUPPORTS));
        desk.as(INES).records(new Corrected(finding, "It does fail", drive(true)));
        desk.as(INES).lacks("data-protected", ADVANCE);
        desk.as(INES).records(data(DataState.TAKEN_NOW));
        desk.as(INES).records(ADVANCE);
        assertTrue(desk.sheet().driveFailure().isPresent());
    }

    @Test
    void simpleThingThatDoesNotApply_isSaidWhyNot() {
        TicketFixture desk = atStep(Step.THEORIZE);
        Map<Obvious, Inspection> looks = new EnumMap<>(anyObvious().looks());
        looks.put(Obvious.CABLES, Inspection.NOT_APPLICABLE);
        Invalid e = assertThrows(Invalid.class, () -> desk.as(INES).does(new ObviousQuestioned(looks, "")));
        assertEquals("note", e.problems().get(0).field());
        desk.as(INES).records(new ObviousQuestioned(looks, "It has none"));
    }

    /** A waiver of earlier times names the requirement as it was called then. */
    @Test
    void simpleThings_areKnownByTheirOldNameToo() {
        assertEquals(
                TheorizeRequirement.SIMPLE_THINGS_FIRST,
                Requirements.of("obvious-questioned").orElseThrow());
        TicketFixture desk = atStep(Step.THEORIZE);
        desk.as(SUE).forces(new Waived("obvious-questioned", "Nothing to look at"));
        assertEquals(
                Requirement.State.WAIVED, status(desk, "simple-things-first").state());
    }
}

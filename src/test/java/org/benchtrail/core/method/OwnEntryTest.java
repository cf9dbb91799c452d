package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.RuledOut;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.Fit;
import org.benchtrail.core.method.plan.PartFitChecked;
import org.benchtrail.core.method.plan.PartOverrideApproved;
import org.benchtrail.core.method.plan.PlanDeclined;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.core.method.verify.SymptomRechecked;
import org.junit.jupiter.api.Test;

/** What is answered counts for the entry that it names, as that stands, and for no other; and the sentences name what is open. */
class OwnEntryTest {
    private static void names(List<String> parts, TicketFixture desk, String code) {
        String sentence = sentence(desk, code);
        parts.forEach(part -> assertTrue(sentence.contains(part), sentence));
    }

    private static void namesNot(String part, TicketFixture desk, String code) {
        assertFalse(sentence(desk, code).contains(part), sentence(desk, code));
    }

    // ---- plan

    private static ActionPlanned with(String part) {
        return action(false, false, false, false, null, part);
    }

    @Test
    void fitOfOnePart_isNotTheFitOfAnother() {
        TicketFixture desk = atStep(Step.PLAN);
        int fan = desk.as(INES).records(with("Fan"));
        int filter = desk.as(INES).records(with("Filter"));
        names(List.of("Fan", "Filter"), desk, "parts-fit");
        desk.as(INES).records(new PartFitChecked(filter, Fit.FITS, "Same size"));
        names(List.of("Fan"), desk, "parts-fit");
        namesNot("Filter", desk, "parts-fit");
        desk.as(INES).records(new PartFitChecked(fan, Fit.FITS, "Same socket"));
        assertEquals("", sentence(desk, "parts-fit"));
    }

    @Test
    void overrideForOnePart_isNoneForAnother_norForOneThatWasChangedSince() {
        TicketFixture desk = atStep(Step.PLAN);
        int fan = desk.as(INES).records(with("Fan"));
        int filter = desk.as(INES).records(with("Filter"));
        desk.as(INES).records(new PartFitChecked(fan, Fit.DOES_NOT_FIT, "Another socket"));
        desk.as(INES).records(new PartFitChecked(filter, Fit.DOES_NOT_FIT, "Too wide"));
        desk.as(SUE).records(new PartOverrideApproved(filter, "Filed to size"));
        names(List.of("Fan"), desk, "parts-fit");
        namesNot("Filter", desk, "parts-fit");
        desk.as(INES).records(new Corrected(filter, "Sold out", with("Other mesh")));
        names(List.of("Fan", "Other mesh"), desk, "parts-fit");
    }

    @Test
    void oneActionCarriedOut_doesNotSettleAnother() {
        TicketFixture desk = atStep(Step.PLAN);
        meetAll(desk);
        assertEquals("", sentence(desk, "actions-settled"));
        desk.as(INES).records(anyAction());
        names(List.of("1 still open"), desk, "actions-settled");
        desk.as(INES).records(anyAction());
        names(List.of("2 still open"), desk, "actions-settled");
        desk.as(INES).lacks("actions-settled", new Advanced());
    }

    @Test
    void cautionsStillOpen_areNamed() {
        TicketFixture desk = atStep(Step.PLAN);
        int action =
                desk.as(INES).records(action(false, false, false, false, null, null, Caution.LIFTING, Caution.LASER));
        names(List.of(Caution.LIFTING.title(), Caution.LASER.title()), desk, "cautions-taken");
        desk.as(INES).records(new CautionsAcknowledged(action, Set.of(Caution.LASER)));
        names(List.of(Caution.LIFTING.title()), desk, "cautions-taken");
        namesNot(Caution.LASER.title(), desk, "cautions-taken");
    }

    @Test
    void answerAboutDataGivenAfterwards_isNoneForWhatWasDoneBefore() {
        TicketFixture desk = atStep(Step.PLAN);
        int action = desk.as(INES).records(action(false, true, false, false, null, null));
        desk.passes(Duration.ofDays(3));
        desk.as(INES).forces(carriedOut(action));
        desk.as(INES).records(data(DataState.TAKEN_NOW));
        assertEquals(
                Requirement.State.MISSING, status(desk, "data-still-protected").state());
    }

    @Test
    void planIsDeclined_byWhoMayApproveIt() {
        TicketFixture desk = atStep(Step.PLAN);
        desk.as(INES).records(action(true, false, false, false, null, null));
        PlanDeclined declined = new PlanDeclined("Too late in the day");
        desk.as(OLE).lacks("not-your-role", declined);
        desk.as(MAREK).lacks("not-your-role", declined);
        desk.as(INES).lacks("not-your-role", declined);
        desk.as(SUE).records(declined);
        names(List.of("Too late in the day"), desk, "plan-approved");
    }

    // ---- theorize and test

    @Test
    void theoryThatNobodyRestsOn_isPutRight_whateverWasDoneWithAnother() {
        TicketFixture desk = atStep(Step.TEST);
        int idle = desk.as(INES).records(theory("Paste"));
        desk.as(INES).records(check(desk.sheet().activeTheory().orElseThrow().entry()));
        desk.as(INES).records(new Corrected(idle, "Clearer", theory("Dry paste")));
        assertEquals(
                "Dry paste",
                desk.sheet().at(idle, TheoryStated.class, "theory").fact().text());
    }

    @Test
    void readingThatNoResultCites_isPutRight_whateverAnotherResultRestsOn() {
        TicketFixture desk = atStep(Step.TEST);
        int check = desk.as(INES).records(check(desk.latest(TheoryStated.class)));
        int cited = desk.as(INES).records(temperature("97", "processor"));
        int idle = desk.as(INES).records(temperature("40", "memory"));
        desk.as(INES).records(new ResultRecorded(check, "Hot", CheckOutcome.SUPPORTS, cited));
        desk.as(INES).records(new Corrected(idle, "Misread", temperature("41", "memory")));
        assertEquals(
                "41",
                desk.sheet().at(idle, ReadingRecorded.class, "reading").fact().value());
    }

    @Test
    void checkOfTheTheory_saysWhichWayItPoints() {
        TicketFixture desk = atStep(Step.TEST);
        int theory = desk.latest(TheoryStated.class);
        assertEquals("No check has settled the theory yet: make one that does.", sentence(desk, "theory-supported"));
        desk.as(INES).records(result(desk.as(INES).records(check(theory)), CheckOutcome.INCONCLUSIVE));
        assertEquals("No check has settled the theory yet: make one that does.", sentence(desk, "theory-supported"));
        desk.as(INES).records(result(desk.as(INES).records(check(theory)), CheckOutcome.REFUTES));
        assertEquals(
                "The latest check rules the theory out: go back to theorize with another one.",
                sentence(desk, "theory-supported"));
        desk.as(INES).records(result(desk.as(INES).records(check(theory)), CheckOutcome.SUPPORTS));
        assertEquals("", sentence(desk, "theory-supported"));
        assertEquals(
                "The latest check supports the theory: it cannot be ruled out on that.",
                desk.as(INES).isRefused(new RuledOut()).get(0).sentence());
    }

    // ---- verify

    @Test
    void symptomsStillToBeLookedFor_areNamed() {
        TicketFixture desk = atStep(Step.VERIFY);
        int first = desk.latest(SymptomRecorded.class);
        desk.as(INES).records(new SymptomRecorded("It smells", "Warm plastic", false));
        names(List.of("Screen goes dark, fans stop", "Warm plastic"), desk, "symptoms-gone");
        desk.as(INES).records(new SymptomRechecked(first, true, "Ran it"));
        names(List.of("Warm plastic"), desk, "symptoms-gone");
        namesNot("Screen goes dark", desk, "symptoms-gone");
    }

    @Test
    void readingsToRepeat_areNamedOnceEach() {
        TicketFixture desk = atStep(Step.VERIFY);
        desk.as(INES).records(temperature("96", "processor"));
        desk.as(INES).records(temperature("91", "graphics"));
        desk.as(INES).records(temperature("97", "processor"));
        names(List.of("temperature, processor", "temperature, graphics"), desk, "readings-back");
        assertEquals(2, Method.readingsToRepeat(desk.sheet()).size());
    }

    // ---- the draft of the summary

    @Test
    void everyAction_isToldUnderItsOwnWords() {
        TicketFixture desk = atStep(Step.PLAN);
        meetAll(desk);
        ActionPlanned second = new ActionPlanned(
                "Order a filter",
                "It stays clean",
                "Nobody",
                "Send it back",
                false,
                false,
                false,
                false,
                null,
                null,
                Set.of());
        desk.as(INES).records(carriedOut(desk.as(INES).records(second)));
        assertEquals(
                "Clean the cooler: carried out. As planned, or why not.\n"
                        + "Order a filter: carried out. As planned, or why not.",
                SummaryDraft.of(desk.sheet()).actions());
    }
}

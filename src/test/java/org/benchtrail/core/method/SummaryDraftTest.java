package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.RuledOut;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.core.method.verify.PreventionConsidered;
import org.benchtrail.core.method.verify.RequesterState;
import org.junit.jupiter.api.Test;

/** What is drafted from the record for the assignee to edit and sign. */
class SummaryDraftTest {
    private static SummaryDraft draft(TicketFixture desk) {
        return SummaryDraft.of(desk.sheet());
    }

    @Test
    void plainTicket_isToldInItsOwnWords() {
        TicketFixture desk = atStep(Step.DOCUMENT);
        assertEquals(
                "Symptom: Screen goes dark, fans stop.\nBorne out: Cooler clogged with dust (A felt of dust).",
                draft(desk).findings());
        assertEquals(
                "Clean the cooler: carried out. As planned, or why not.",
                draft(desk).actions());
        assertEquals(
                "The symptom was looked for again and is gone.\n"
                        + "Measured afterwards: temperature, processor: 68 Cel.\n"
                        + "The requester agrees that it is solved.\n"
                        + "Prevention: Clean it every half year.",
                draft(desk).outcome());
    }

    @Test
    void nothingRecorded_isNothingToldOfIt() {
        SummaryDraft draft = draft(plain());
        assertEquals("", draft.findings());
        assertEquals("", draft.actions());
        assertEquals("All 0 symptoms looked for again and gone.", draft.outcome());
    }

    @Test
    void findings_areInTheirOrderWithOneFullStopEach() {
        TicketFixture desk = atStep(Step.THEORIZE);
        desk.as(INES).records(temperature("96", "processor"));
        desk.as(INES).records(temperature("60", "memory"));
        desk.as(INES).records(new FindingRecorded("The filter is grey.", false));
        desk.as(INES).records(anyObvious());
        int paste = desk.as(INES).records(theory("Dry paste."));
        desk.as(INES).records(choose(paste));
        desk.as(INES).records(new Advanced());
        desk.as(INES).records(check(paste));
        desk.as(INES).records(result(desk.latest(CheckPlanned.class), CheckOutcome.REFUTES));
        desk.as(INES).records(new RuledOut());
        desk.as(INES).records(theory("Dust"));
        desk.as(INES).records(choose(desk.latest(TheoryStated.class)));
        assertEquals(
                "Symptom: Screen goes dark, fans stop.\n"
                        + "Outside its limit: temperature, processor: 96 Cel.\n"
                        + "Found: The filter is grey.\n"
                        + "Ruled out: Dry paste.\n"
                        + "Borne out: Dust.",
                draft(desk).findings());
    }

    @Test
    void everyResultOfTheActiveTheory_isNamed() {
        TicketFixture desk = atStep(Step.TEST);
        int theory = desk.latest(TheoryStated.class);
        desk.as(INES).records(result(desk.as(INES).records(check(theory)), CheckOutcome.INCONCLUSIVE));
        desk.as(INES)
                .records(new ResultRecorded(
                        desk.as(INES).records(check(theory)), "Fins grey all over", CheckOutcome.SUPPORTS, null));
        assertTrue(
                draft(desk).findings().endsWith("Cooler clogged with dust (A felt of dust; Fins grey all over)."),
                draft(desk).findings());
    }

    @Test
    void actions_areToldUnlessTheyWereNotNeeded() {
        TicketFixture desk = atStep(Step.PLAN);
        int first = desk.as(INES).records(anyAction());
        int second = desk.as(INES).records(anyAction());
        desk.as(INES).forces(new ActionSettled(first, Settlement.NOT_NEEDED, "It was clean"));
        desk.as(INES).forces(new ActionSettled(second, Settlement.FAILED, "The screw broke."));
        assertEquals("Clean the cooler: failed. The screw broke.", draft(desk).actions());
        desk.as(INES).forces(new ActionSettled(second, Settlement.CARRIED_OUT, ""));
        assertEquals(
                "Clean the cooler: failed. The screw broke.\nClean the cooler: carried out.",
                draft(desk).actions());
    }

    @Test
    void outcome_tellsWhatVerificationShowed() {
        TicketFixture desk = atStep(Step.VERIFY);
        desk.as(INES).records(new SymptomRecorded("It smells", "Warm plastic", false));
        desk.as(INES).records(requester(RequesterState.NO_USER, 0));
        desk.as(INES).records(new PreventionConsidered(false, "A single grain"));
        assertEquals(
                "All 2 symptoms looked for again and gone.\nThe device has no user.\nNo prevention: A single grain.",
                draft(desk).outcome());
    }

    @Test
    void draft_isNoLongerThanASummaryMayBe() {
        TicketFixture desk = atStep(Step.THEORIZE);
        desk.as(INES).records(new FindingRecorded("x".repeat(4_000), false));
        assertEquals(4_000, draft(desk).findings().length());
        assertTrue(draft(desk).findings().startsWith("Symptom: Screen goes dark, fans stop.\nFound: xxx"));
    }
}

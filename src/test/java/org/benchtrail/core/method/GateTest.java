package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.HandOverOffered;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.desk.RuledOut;
import org.benchtrail.core.method.document.DocumentRequirement;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.identify.IdentifyRequirement;
import org.benchtrail.core.method.plan.PlanRequirement;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.TestRequirement;
import org.benchtrail.core.method.theorize.TheorizeRequirement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Each requirement left out alone: the move is refused with its code, and passes once it is met. */
class GateTest {
    /** Those that stand by themselves; the others are proven below, each with what hangs on it. */
    private static final Set<Requirement> ENTAILED = Set.of(
            TheorizeRequirement.THEORY_STATED,
            TheorizeRequirement.NOT_ALREADY_REFUTED,
            TestRequirement.EXPECTATION_FIRST,
            TestRequirement.RESULT_RECORDED,
            TestRequirement.THEORY_SUPPORTED,
            TestRequirement.INVASIVE_GUARDED,
            PlanRequirement.ACTION_PLANNED,
            DocumentRequirement.SUMMARY_WRITTEN);

    static Stream<Requirement> alone() {
        return Requirements.all().stream().filter(r -> !ENTAILED.contains(r));
    }

    static Stream<Requirement> waivableAlone() {
        return alone().filter(Requirement::waivable);
    }

    static MoveFact leave(Step step) {
        return step == Step.DOCUMENT ? new Closed() : new Advanced();
    }

    /** The demanding ticket at the step of that requirement, with everything done but that, and no action carried out. */
    private static TicketFixture without(Requirement left) {
        TicketFixture desk = demandingAtStep(left.step());
        for (Requirement r : Requirements.of(left.step())) {
            if (r != left && r != PlanRequirement.ACTIONS_SETTLED) {
                meet(desk, r);
            }
        }
        return desk;
    }

    private static void assertOnly(String code, boolean waivable, List<Missing> missing) {
        assertEquals(List.of(code), missing.stream().map(Missing::code).toList());
        assertEquals(code, missing.get(0).anchor());
        assertFalse(missing.get(0).sentence().isBlank());
        assertTrue(missing.get(0).sentence().endsWith("."), missing.get(0).sentence());
        assertEquals(waivable, missing.get(0).waivable());
    }

    /** What the requirement guards: carrying out for the plan, which is not left while an action is open; else the move. */
    private static Fact guarded(TicketFixture desk, Requirement requirement) {
        boolean carrying = requirement.step() == Step.PLAN && requirement != PlanRequirement.ACTIONS_SETTLED;
        return carrying ? carriedOut(desk.sheet().actions().get(0).entry()) : leave(requirement.step());
    }

    private static void assertLeaves(TicketFixture desk, Step step) {
        if (step == Step.PLAN && !desk.sheet().actions().isEmpty()) {
            desk.sheet().actions().stream()
                    .filter(a -> desk.sheet().settlement(a.entry()).isEmpty())
                    .forEach(a -> desk.assignee().records(carriedOut(a.entry())));
        }
        desk.assignee().records(leave(step));
        assertTrue(desk.step() != step || desk.sheet().course().standing() == Standing.CLOSED);
    }

    @ParameterizedTest
    @MethodSource("alone")
    void missingAlone_isRefusedWithItsCode_andPassesOnceMet(Requirement requirement) {
        TicketFixture desk = without(requirement);
        assertOnly(requirement.code(), requirement.waivable(), desk.assignee().isRefused(guarded(desk, requirement)));
        assertTrue(desk.assignee().missingFor(leave(requirement.step())).contains(requirement.code()));
        meet(desk, requirement);
        assertLeaves(desk, requirement.step());
    }

    @ParameterizedTest
    @MethodSource("waivableAlone")
    void waivedBySomebodyElse_passes(Requirement requirement) {
        TicketFixture desk = without(requirement);
        desk.as(SUE).records(waive(requirement));
        assertEquals(Requirement.State.WAIVED, desk.state(requirement));
        assertLeaves(desk, requirement.step());
    }

    @ParameterizedTest
    @MethodSource("org.benchtrail.core.method.Requirements#all")
    void notWaivable_isNotWaivedByAnybody(Requirement requirement) {
        TicketFixture desk = demandingAtStep(requirement.step());
        if (!requirement.waivable()) {
            desk.as(SUE).lacks("not-waivable", waive(requirement));
        }
        desk.as(INES).lacks("not-your-role", waive(requirement));
        desk.as(MAREK).lacks("not-your-role", waive(requirement));
        desk.assignee().lacks("not-your-role", waive(requirement));
        desk.as(ADA).lacks("not-your-role", waive(requirement));
    }

    @ParameterizedTest
    @EnumSource
    void everythingMet_leavesNothingMissing(Step step) {
        for (TicketFixture desk : List.of(atStep(step), demandingAtStep(step))) {
            meetAll(desk);
            assertEquals(List.of(), desk.missing());
            assertLeaves(desk, step);
        }
    }

    @Test
    void everythingMissing_isToldAtOnceInTheOrderOfTheTable() {
        TicketFixture desk = plain();
        assertEquals(
                Requirements.of(Step.IDENTIFY).stream().map(Requirement::code).toList(),
                desk.as(INES).missingFor(new Advanced()));
    }

    @Test
    void noTheory_meansNoneChosenEither() {
        TicketFixture desk = atStep(Step.THEORIZE);
        meet(desk, TheorizeRequirement.SIMPLE_THINGS_FIRST);
        assertEquals(List.of("theory-stated", "theory-chosen"), desk.as(INES).missingFor(new Advanced()));
        meet(desk, TheorizeRequirement.THEORY_STATED);
        assertEquals(List.of("theory-chosen"), desk.as(INES).missingFor(new Advanced()));
    }

    @Test
    void noCheck_meansNoResultAndNoSupport() {
        TicketFixture desk = atStep(Step.TEST);
        assertEquals(
                List.of("expectation-first", "result-recorded", "theory-supported"),
                desk.as(INES).missingFor(new Advanced()));
        meet(desk, TestRequirement.EXPECTATION_FIRST);
        assertEquals(
                List.of("result-recorded", "theory-supported"), desk.as(INES).missingFor(new Advanced()));
        desk.as(INES).records(result(desk.latest(CheckPlanned.class), CheckOutcome.INCONCLUSIVE));
        assertOnly("theory-supported", false, desk.as(INES).isRefused(new Advanced()));
        assertOnly("theory-supported", false, desk.as(INES).isRefused(new RuledOut()));
        meet(desk, TestRequirement.EXPECTATION_FIRST);
        meet(desk, TestRequirement.RESULT_RECORDED);
        desk.as(INES).records(new Advanced());
    }

    @Test
    void noAction_meansNoneSettled() {
        TicketFixture desk = atStep(Step.PLAN);
        meet(desk, PlanRequirement.MAKER_CONSULTED);
        assertEquals(List.of("action-planned"), desk.as(INES).missingFor(new Advanced()));
        meet(desk, PlanRequirement.ACTION_PLANNED);
        assertEquals(List.of("actions-settled"), desk.as(INES).missingFor(new Advanced()));
        meet(desk, PlanRequirement.ACTIONS_SETTLED);
        desk.as(INES).records(new Advanced());
    }

    @Test
    void unsignedSummary_isNoSummary() {
        TicketFixture desk = demandingAtStep(Step.DOCUMENT);
        Requirements.of(Step.DOCUMENT).stream()
                .filter(r -> r != DocumentRequirement.SUMMARY_WRITTEN && r != DocumentRequirement.MENTOR_SIGNED)
                .forEach(r -> meet(desk, r));
        assertEquals(List.of("summary-written", "mentor-signed"), desk.as(TOM).missingFor(new Closed()));
        desk.as(TOM).records(anySummary());
        desk.as(MAREK).records(new Signed(Signatory.MENTOR));
        assertOnly("summary-written", false, desk.as(TOM).isRefused(new Closed()));
        desk.as(TOM).records(new Signed(Signatory.ASSIGNEE));
        desk.as(TOM).records(new Closed());
        assertEquals(Standing.CLOSED, desk.sheet().course().standing());
    }

    @Test
    void summaryWrittenAnew_isSignedAnewByBoth() {
        TicketFixture desk = demandingAtStep(Step.DOCUMENT);
        meetAll(desk);
        desk.as(TOM).records(anySummary());
        assertEquals(List.of("summary-written", "mentor-signed"), desk.missing());
    }

    @Test
    void handedOver_isSignedByWhoHasIt() {
        TicketFixture desk = atStep(Step.DOCUMENT);
        meetAll(desk);
        desk.as(INES).records(new HandOverOffered("ole", ""));
        desk.as(OLE).records(new HandedOver("ole", OLE.roles(), ""));
        desk.as(OLE).lacks("summary-written", new Closed());
        desk.as(OLE).records(new Signed(Signatory.ASSIGNEE));
        desk.as(OLE).records(new Closed());
    }

    @Test
    void mentorOfATraineesTicket_isSomebodyElse() {
        TicketFixture desk = demandingAtStep(Step.DOCUMENT);
        meet(desk, DocumentRequirement.SUMMARY_WRITTEN);
        Signed signature = new Signed(Signatory.MENTOR);
        desk.as(TOM).lacks("not-your-role", signature);
        desk.as(INES).lacks("not-your-role", signature);
        desk.as(SUE).lacks("not-your-role", signature);
        desk.as(new Actor("tom", "Tom", Set.of(Role.TRAINEE, Role.MENTOR))).lacks("own-work", signature);
        assertInstanceOf(Decision.Allowed.class, desk.as(MAREK).does(signature));
    }

    @Test
    void waiverOfAnEarlierRound_doesNotLast_butThoseOfIdentifyDo() {
        TicketFixture desk = plain();
        Requirements.of(Step.IDENTIFY).stream()
                .filter(r -> r != IdentifyRequirement.LOGS_REVIEWED)
                .forEach(r -> meet(desk, r));
        desk.as(SUE).records(waive(IdentifyRequirement.LOGS_REVIEWED));
        desk.as(INES).records(new Advanced());
        bring(desk, Step.PLAN);
        meet(desk, PlanRequirement.ACTION_PLANNED);
        desk.as(SUE).records(waive(PlanRequirement.MAKER_CONSULTED));
        desk.as(INES).records(new Rethought("No dust there", false));
        bring(desk, Step.PLAN);
        assertEquals(Requirement.State.MISSING, desk.state(PlanRequirement.MAKER_CONSULTED));
        meetAll(desk);
        desk.as(INES).records(new Advanced());
        bring(desk, Step.DOCUMENT);
        meetAll(desk);
        desk.as(INES).records(new Closed());
        desk.as(INES).records(new Reopened("It is back"));
        assertTrue(desk.missing().contains("logs-reviewed"));
    }

    @Test
    void nothingMissing_nothingToWaive() {
        TicketFixture desk = plain();
        meet(desk, IdentifyRequirement.LOGS_REVIEWED);
        desk.as(SUE).lacks("nothing-to-waive", waive(IdentifyRequirement.LOGS_REVIEWED));
        desk.as(SUE).lacks("nothing-to-waive", waive(PlanRequirement.MAKER_CONSULTED));
    }

    @Test
    void nobodyWaivesForThemselves() {
        TicketFixture desk = TicketFixture.open(opened(SUE), SUE);
        desk.as(SUE).lacks("own-work", waive(IdentifyRequirement.LOGS_REVIEWED));
        desk.as(BORIS).records(waive(IdentifyRequirement.LOGS_REVIEWED));
    }

    @Test
    void whoWaived_doesNotPlan() {
        TicketFixture desk = atStep(Step.PLAN);
        desk.as(BORIS).records(waive(PlanRequirement.MAKER_CONSULTED));
        desk.as(SUE).lacks("has-judged", new HandedOver("boris", BORIS.roles(), ""));
        desk.as(INES).lacks("has-judged", new HandOverOffered("boris", ""));
        desk.as(SUE).records(new HandedOver("ole", OLE.roles(), ""));
        int action = desk.as(OLE).records(anyAction());
        desk.as(BORIS).lacks("own-work", new Corrected(action, "Better so", anyAction()));
        desk.as(SUE).records(new Corrected(action, "Better so", anyAction()));
    }
}

package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.LossAccepted;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.Fit;
import org.benchtrail.core.method.plan.PartFitChecked;
import org.benchtrail.core.method.plan.PartOverrideApproved;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.plan.PlanDeclined;
import org.benchtrail.core.method.plan.PlanRequirement;
import org.benchtrail.core.method.plan.Settlement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Approval, parts, cautions, the age of the answer about data, and how actions end. */
class PlanGateTest {
    private static TicketFixture planning(Actor assignee) {
        TicketFixture desk = bring(TicketFixture.open(opened(INES), INES), Step.PLAN);
        if (!assignee.equals(INES)) {
            desk.as(BORIS).records(new HandedOver(assignee.account(), assignee.roles(), ""));
        }
        meet(desk, PlanRequirement.MAKER_CONSULTED);
        return desk;
    }

    static Stream<Arguments> asking() {
        return Stream.of(
                Arguments.of(action(true, false, false, false, null, null), "an action is irreversible"),
                Arguments.of(action(false, false, true, false, null, null), "an action reaches beyond the one device"),
                Arguments.of(action(false, false, false, true, null, null), "an action is of high risk"),
                Arguments.of(
                        action(false, false, false, false, "250.01", null),
                        "it costs 250.01 in all rounds together, above the limit of 250"));
    }

    @ParameterizedTest
    @MethodSource("asking")
    void eachReasonAlone_asksForASupervisorsApproval(ActionPlanned action, String reason) {
        TicketFixture desk = planning(INES);
        int planned = desk.as(INES).records(action);
        assertEquals(List.of(reason), Method.approvalReasons(desk.sheet(), desk.policy()));
        List<Missing> missing = desk.as(INES).isRefused(carriedOut(planned));
        assertEquals("plan-approved", missing.get(0).code());
        assertTrue(missing.get(0).sentence().contains(reason));
        desk.as(MAREK).lacks("not-your-role", approve(desk.sheet()));
        desk.as(SUE).records(approve(desk.sheet()));
        desk.as(INES).records(carriedOut(planned));
        desk.as(INES).records(new Advanced());
    }

    @Test
    void traineesPlan_isApprovedByAMentorToo() {
        TicketFixture desk = planning(TOM);
        int planned = desk.as(TOM).records(anyAction());
        assertEquals(List.of("the planner is a trainee"), Method.approvalReasons(desk.sheet(), desk.policy()));
        desk.as(TOM).lacks("plan-approved", carriedOut(planned));
        desk.as(OLE).lacks("not-your-role", approve(desk.sheet()));
        desk.as(MAREK).records(approve(desk.sheet()));
        desk.as(TOM).records(carriedOut(planned));
    }

    @Test
    void mentor_doesNotApproveWhatIsMoreThanATraineesPlan() {
        TicketFixture desk = planning(TOM);
        desk.as(TOM).records(action(true, false, false, false, null, null));
        desk.as(MAREK).lacks("not-your-role", approve(desk.sheet()));
        desk.as(SUE).records(approve(desk.sheet()));
    }

    @Test
    void costsAdd_andTheLimitItselfIsFree() {
        TicketFixture desk = planning(INES);
        desk.as(INES).records(action(false, false, false, false, "150", null));
        desk.as(INES).records(action(false, false, false, false, "100.00", null));
        assertEquals(List.of(), Method.approvalReasons(desk.sheet(), desk.policy()));
        int third = desk.as(INES).records(action(false, false, false, false, "0,01", null));
        assertEquals(1, Method.approvalReasons(desk.sheet(), desk.policy()).size());
        desk.as(INES).records(settled(third, Settlement.NOT_NEEDED));
        assertEquals(List.of(), Method.approvalReasons(desk.sheet(), desk.policy()));
    }

    @Test
    void costsOfEarlierRounds_count_ifTheyWereMade() {
        TicketFixture desk = planning(INES);
        int made = desk.as(INES).records(action(false, false, false, false, "200", null));
        desk.as(INES).forces(carriedOut(made));
        int needless = desk.as(INES).records(action(false, false, false, false, "30", null));
        desk.as(INES).records(settled(needless, Settlement.NOT_NEEDED));
        desk.as(INES).records(action(false, false, false, false, "40", null)); // never made
        desk.as(INES).records(new Rethought("Another way", false));
        bring(desk, Step.PLAN);
        desk.as(INES).records(action(false, false, false, false, "45", null));
        assertEquals(List.of(), Method.approvalReasons(desk.sheet(), desk.policy()));
        desk.as(INES).records(action(false, false, false, false, "10", null));
        assertEquals(
                List.of("it costs 255 in all rounds together, above the limit of 250"),
                Method.approvalReasons(desk.sheet(), desk.policy()));
    }

    @Test
    void needlessAction_asksForNoCautions() {
        TicketFixture desk = planning(INES);
        int needless = desk.as(INES).records(action(false, false, false, false, null, null, Caution.MAINS));
        assertTrue(sentence(desk, "cautions-taken").contains(Caution.MAINS.title()));
        desk.as(INES).records(settled(needless, Settlement.NOT_NEEDED));
        assertEquals("", sentence(desk, "cautions-taken"));
    }

    @Test
    void plannedNothing_isAskedForAPlan() {
        TicketFixture desk = planning(INES);
        assertTrue(sentence(desk, "action-planned").startsWith("Plan at least one action"));
        assertEquals("", sentence(desk, "actions-settled"));
    }

    @Test
    void plannerWhoIsSupervisor_doesNotApprove() {
        TicketFixture desk = planning(SUE);
        desk.as(SUE).records(action(true, false, false, false, null, null));
        desk.as(SUE).lacks("own-work", approve(desk.sheet()));
        desk.as(SUE).records(new HandedOver("ines", INES.roles(), ""));
        desk.as(SUE).lacks("own-work", approve(desk.sheet()));
        desk.as(BORIS).records(approve(desk.sheet()));
    }

    @Test
    void whoCorrectedThePlan_doesNotApproveIt() {
        TicketFixture desk = planning(INES);
        ActionPlanned risky = action(true, false, false, false, null, null);
        int action = desk.as(INES).records(risky);
        desk.as(SUE).records(new Corrected(action, "Better so", risky));
        desk.as(SUE).lacks("own-work", approve(desk.sheet()));
        desk.as(BORIS).records(approve(desk.sheet()));
        desk.as(INES).records(carriedOut(action));
    }

    @Test
    void planCorrectedByATrainee_isATraineesPlan() {
        TicketFixture desk = planning(INES);
        int action = desk.as(INES).records(anyAction());
        desk.as(BORIS).records(new HandedOver("tom", TOM.roles(), ""));
        desk.as(TOM).records(new Corrected(action, "Otherwise", anyAction()));
        desk.as(TOM).lacks("plan-approved", carriedOut(action));
        desk.as(MAREK).records(approve(desk.sheet()));
        desk.as(TOM).records(carriedOut(action));
    }

    @Test
    void approval_isUndoneByWhatComesLater() {
        for (int how = 0; how < 3; how++) {
            TicketFixture desk = planning(INES);
            ActionPlanned risky = action(true, false, false, false, null, null);
            int action = desk.as(INES).records(risky);
            desk.as(SUE).records(approve(desk.sheet()));
            switch (how) {
                case 0 -> desk.as(INES).records(anyAction());
                case 1 -> desk.as(INES).records(new Corrected(action, "Clearer", risky));
                default -> desk.as(BORIS).records(new PlanDeclined("Too late in the day"));
            }
            List<Missing> missing = desk.as(INES).isRefused(carriedOut(action));
            assertEquals(
                    List.of("plan-approved"),
                    missing.stream().map(Missing::code).toList());
            assertEquals(how == 2, missing.get(0).sentence().contains("Too late in the day"));
            desk.as(SUE).records(approve(desk.sheet()));
            desk.as(INES).records(carriedOut(action));
        }
    }

    @Test
    void approval_coversTheActionsItNames() {
        TicketFixture desk = planning(INES);
        int first = desk.as(INES).records(action(true, false, false, false, null, null));
        int second = desk.as(INES).records(anyAction());
        desk.as(SUE).records(new PlanApproved(List.of(first), ""));
        desk.as(INES).lacks("plan-approved", carriedOut(first));
        desk.as(INES).records(settled(second, Settlement.NOT_NEEDED));
        desk.as(INES).records(carriedOut(first));
        assertThrows(Invalid.class, () -> desk.as(SUE).does(new PlanApproved(List.of(1), "")));
    }

    @Test
    void eachActionsCautions_comeBeforeTheFirstAction() {
        TicketFixture desk = planning(INES);
        int first = desk.as(INES).records(anyAction());
        int second = desk.as(INES).records(action(false, false, false, false, null, null, Caution.LIFTING));
        desk.as(INES).lacks("cautions-taken", carriedOut(first));
        desk.as(INES).records(new CautionsAcknowledged(first, Set.of(Caution.LIFTING)));
        desk.as(INES).records(carriedOut(first)); // one piece of work: the same caution is asked once
        desk.as(INES).records(carriedOut(second));
        desk.as(INES).records(new Advanced());
    }

    @Test
    void cautionsOfAChangedAction_areAcknowledgedAnew() {
        TicketFixture desk = planning(INES);
        ActionPlanned heavy = action(false, false, false, false, null, null, Caution.LIFTING);
        int action = desk.as(INES).records(heavy);
        desk.as(INES).records(new CautionsAcknowledged(action, Set.of(Caution.LIFTING)));
        desk.as(INES).records(new Corrected(action, "The other side", heavy));
        desk.as(INES).lacks("cautions-taken", carriedOut(action));
        desk.as(INES).records(new CautionsAcknowledged(action, Set.of(Caution.LIFTING)));
        desk.as(INES).records(carriedOut(action));
    }

    @Test
    void acknowledgedAfterwards_doesNotCount() {
        TicketFixture desk = planning(INES);
        int action = desk.as(INES).records(action(false, false, false, false, null, null, Caution.LIFTING));
        desk.as(INES).forces(carriedOut(action));
        desk.as(INES).records(new CautionsAcknowledged(action, Set.of(Caution.LIFTING)));
        desk.as(INES).lacks("cautions-taken", new Advanced());
    }

    @Test
    void answerAboutData_mayBeAsOldAsThePolicySays() {
        for (boolean over : new boolean[] {false, true}) {
            TicketFixture desk = planning(INES);
            int action = desk.as(INES).records(action(false, true, false, false, null, null));
            desk.as(INES).records(data(DataState.TAKEN_NOW));
            desk.passes(desk.policy().dataAnswerMaxAge().minusSeconds(60)).passes(Duration.ofSeconds(over ? 1 : 0));
            if (over) {
                desk.as(INES).lacks("data-still-protected", carriedOut(action));
                desk.as(SUE).records(waive(PlanRequirement.DATA_STILL_PROTECTED));
            }
            desk.as(INES).records(carriedOut(action));
            desk.passes(Duration.ofDays(30)).as(INES).records(new Advanced());
        }
    }

    @Test
    void actionThatTouchesNoStorage_doesNotAskHowOldTheAnswerIs() {
        TicketFixture desk = planning(INES);
        int action = desk.as(INES).records(anyAction());
        desk.passes(Duration.ofDays(300)).as(INES).records(carriedOut(action));
    }

    @Test
    void everyActionOnStorage_needsAFreshAnswerOfItsOwn() {
        TicketFixture desk = planning(INES);
        int first = desk.as(INES).records(action(false, true, false, false, null, null));
        int second = desk.as(INES).records(action(false, true, false, false, null, null));
        desk.as(INES).records(data(DataState.TAKEN_NOW));
        desk.as(INES).records(carriedOut(first));
        desk.passes(Duration.ofDays(3));
        desk.as(INES).lacks("data-still-protected", carriedOut(second));
        desk.as(INES).records(data(DataState.TAKEN_NOW));
        desk.as(INES).records(carriedOut(second));
        desk.as(INES).records(new Advanced());
    }

    @ParameterizedTest
    @EnumSource
    void partFits_whenItsLatestCheckSaysSo(Fit fit) {
        TicketFixture desk = planning(INES);
        int action = desk.as(INES).records(action(false, false, false, false, null, "Fan"));
        desk.as(INES).lacks("parts-fit", carriedOut(action));
        desk.as(INES).records(new PartFitChecked(action, Fit.FITS, "Socket"));
        desk.as(INES).records(new PartFitChecked(action, fit, "Socket, again"));
        if (fit == Fit.DOES_NOT_FIT) {
            desk.as(INES).lacks("parts-fit", carriedOut(action));
            PartOverrideApproved override = new PartOverrideApproved(action, "With an adapter");
            desk.as(INES).lacks("not-your-role", override);
            desk.as(MAREK).lacks("not-your-role", override);
            desk.as(SUE).records(override);
        }
        desk.as(INES).records(carriedOut(action));
    }

    @Test
    void anotherPart_isCheckedAnew() {
        TicketFixture desk = planning(INES);
        int action = desk.as(INES).records(action(false, false, false, false, null, "Fan"));
        desk.as(INES).records(new PartFitChecked(action, Fit.FITS, "Socket"));
        desk.as(INES).records(new Corrected(action, "Sold out", action(false, false, false, false, null, "Other fan")));
        desk.as(INES).lacks("parts-fit", carriedOut(action));
    }

    @Test
    void failedAction_leavesOnlyAnotherRound() {
        TicketFixture desk = planning(INES);
        int action = desk.as(INES).records(anyAction());
        int other = desk.as(INES).records(anyAction());
        desk.as(INES).records(settled(action, Settlement.FAILED));
        desk.as(INES).records(carriedOut(other));
        desk.as(INES).lacks("actions-settled", new Advanced());
        desk.as(INES).records(new Rethought("A screw broke", false));
        assertThrows(Invalid.class, () -> desk.as(INES).does(choose(action)));
        bring(desk, Step.PLAN);
        assertThrows(Invalid.class, () -> desk.as(INES).does(carriedOut(action)));
        bring(desk, Step.DOCUMENT);
    }

    @Test
    void nothingCarriedOut_isNoPlanCarriedOut() {
        TicketFixture desk = planning(INES);
        int action = desk.as(INES).records(anyAction());
        desk.as(INES).records(settled(action, Settlement.NOT_NEEDED));
        desk.as(INES).lacks("actions-settled", new Advanced());
        assertThrows(Invalid.class, () -> desk.as(INES).does(carriedOut(action)));
        desk.as(INES).records(carriedOut(desk.as(INES).records(anyAction())));
        desk.as(INES).records(new Advanced());
    }

    /** No backup is possible, and the action can destroy the data. */
    private static TicketFixture dataThatMayBeLost() {
        TicketFixture desk = atStep(Step.PLAN);
        desk.as(INES).records(data(DataState.IMPOSSIBLE));
        assertEquals("", sentence(desk, "data-still-protected"), "nothing endangers them");
        desk.as(INES).records(action(false, true, false, false, null, null));
        assertTrue(sentence(desk, "data-still-protected").startsWith("No backup is possible"));
        return desk;
    }

    @Test
    void dataThatMayBeLost_areGivenUpByTheirOwnerFirst() {
        TicketFixture desk = dataThatMayBeLost();
        desk.as(INES).records(new LossAccepted("The drawing office", "By mail, today"));
        assertEquals("", sentence(desk, "data-still-protected"));
    }

    @Test
    void dataThatNothingEndangersAnyMore_areNotAskedFor() {
        TicketFixture desk = dataThatMayBeLost();
        desk.as(INES).records(settled(desk.latest(ActionPlanned.class), Settlement.NOT_NEEDED));
        assertEquals("", sentence(desk, "data-still-protected"));
    }

    @Test
    void dataThatAreBackedUpAfterAll_areNotGivenUp() {
        TicketFixture desk = dataThatMayBeLost();
        desk.as(INES).records(data(DataState.TAKEN_NOW));
        assertEquals("", sentence(desk, "data-still-protected"));
    }

    @Test
    void acceptedLoss_isAskedForAnewWhenTheTicketIsReopened() {
        TicketFixture desk = atStep(Step.PLAN);
        desk.as(INES).records(new LossAccepted("The drawing office", "By mail, today"));
        bring(desk, Step.DOCUMENT);
        meetAll(desk);
        desk.as(INES).records(new Closed());
        desk.as(INES).records(new Reopened("It is back"));
        bring(desk, Step.PLAN);
        desk.as(INES).records(data(DataState.IMPOSSIBLE));
        desk.as(INES).records(action(false, true, false, false, null, null));
        assertTrue(sentence(desk, "data-still-protected").startsWith("No backup is possible"));
    }

    @Test
    void partThatTheBenchRefuses_isNotTalkedIntoFitting() {
        TicketFixture desk = atStep(Step.PLAN);
        int fan = desk.as(INES).records(action(false, false, false, false, null, "Fan 92 mm"));
        desk.as(INES).forces(new PartFitChecked(fan, Fit.DOES_NOT_FIT, "Too wide", 7));
        desk.as(INES).records(new PartFitChecked(fan, Fit.FITS, "It does"));
        assertEquals(
                "The bench says that a part does not fit: check another one there, or have an override approved:"
                        + " Fan 92 mm.",
                sentence(desk, "parts-fit"));
        desk.as(INES).forces(new PartFitChecked(fan, Fit.FITS, "After all", 8));
        assertEquals("", sentence(desk, "parts-fit"));
    }

    /** Found not to fit by a person, planned again under the same name: no other word makes it fit. */
    @Test
    void partThatWasFoundNotToFit_doesNotFitUnderAnotherEntry() {
        TicketFixture desk = atStep(Step.PLAN);
        int first = desk.as(INES).records(action(false, false, false, false, null, "Fan 92 mm"));
        desk.as(INES).records(new PartFitChecked(first, Fit.DOES_NOT_FIT, "Too wide"));
        desk.as(INES).records(settled(first, Settlement.NOT_NEEDED));
        int again = desk.as(INES).records(action(false, false, false, false, null, "fan 92mm"));
        int other = desk.as(INES).records(action(false, false, false, false, null, "Fan 80 mm"));
        desk.as(INES).records(new PartFitChecked(again, Fit.FITS, "It does"));
        desk.as(INES).records(new PartFitChecked(other, Fit.FITS_WITH_WARNING, "A little loose"));
        assertEquals(
                "Check that the part fits its place, or have an override approved: fan 92mm.",
                sentence(desk, "parts-fit"));
    }
}

package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.LesseningAgreed;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.desk.VerifyFailed;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.EvidenceImpossible;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.IdentifyRequirement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Data first once a drive fails, and work stopped by a hazard. */
class IdentifyGateTest {
    private static TicketFixture identified(DataState data) {
        TicketFixture desk = plain();
        Requirements.of(Step.IDENTIFY).stream()
                .filter(r -> r != IdentifyRequirement.DATA_PROTECTED)
                .forEach(r -> meet(desk, r));
        desk.as(INES).records(data(data));
        return desk;
    }

    @ParameterizedTest
    @EnumSource
    void anyAnswerAboutDataButNotYet_doesWithoutADriveFailure(DataState state) {
        TicketFixture desk = identified(state);
        if (state == DataState.NOT_YET) {
            desk.as(INES).lacks("data-protected", new Advanced());
        } else {
            desk.as(INES).records(new Advanced());
        }
    }

    @ParameterizedTest
    @EnumSource
    void onlyABackup_doesWithADriveFailure(DataState state) {
        TicketFixture desk = identified(state);
        desk.as(OLE).records(drive(true));
        boolean backedUp = state == DataState.BACKUP_VERIFIED || state == DataState.TAKEN_NOW;
        assertEquals(backedUp ? List.of() : List.of("data-protected"), desk.missing());
        desk.as(INES).records(data(DataState.TAKEN_NOW));
        desk.as(INES).records(new Advanced());
    }

    @Test
    void withoutADriveFailure_dataAreNotAskedForAgainAtALaterStep() {
        TicketFixture desk = atStep(Step.TEST);
        desk.as(INES).records(data(DataState.NOT_YET));
        assertFalse(desk.missing().contains("data-protected"));
        desk.as(OLE).records(drive(true));
        assertTrue(desk.missing().contains("data-protected"));
    }

    @Test
    void findingThatIsNoDriveFailure_asksNothing() {
        TicketFixture desk = identified(DataState.NO_USER_DATA);
        desk.as(INES).records(drive(false));
        desk.as(INES).records(new Advanced());
    }

    @ParameterizedTest
    @EnumSource
    void driveFailureFoundLater_stopsEveryLaterStep(Step step) {
        TicketFixture desk = bring(identified(DataState.NO_USER_DATA), step);
        meetAll(desk);
        desk.as(INES).records(data(DataState.NO_USER_DATA));
        desk.as(OLE).records(drive(true));
        desk.as(INES).lacks("data-protected", GateTest.leave(step));
        desk.as(SUE).records(waive(IdentifyRequirement.DATA_PROTECTED));
        desk.as(INES).records(GateTest.leave(step));
    }

    @Test
    void waiverGivenBeforeTheDriveFailure_countsNoMore() {
        TicketFixture desk = plain();
        Requirements.of(Step.IDENTIFY).stream()
                .filter(r -> r != IdentifyRequirement.DATA_PROTECTED)
                .forEach(r -> meet(desk, r));
        desk.as(SUE).records(waive(IdentifyRequirement.DATA_PROTECTED));
        assertEquals(List.of(), desk.missing());
        desk.as(INES).records(drive(true));
        desk.as(INES).lacks("data-protected", new Advanced());
        desk.as(SUE).records(waive(IdentifyRequirement.DATA_PROTECTED));
        desk.as(INES).records(new Advanced());
    }

    @Test
    void findingCorrectedIntoADriveFailure_endsTheWaiverGivenBefore() {
        TicketFixture desk = plain();
        Requirements.of(Step.IDENTIFY).stream()
                .filter(r -> r != IdentifyRequirement.DATA_PROTECTED)
                .forEach(r -> meet(desk, r));
        int finding = desk.as(INES).records(drive(false));
        desk.as(SUE).records(waive(IdentifyRequirement.DATA_PROTECTED));
        desk.as(INES).records(new Corrected(finding, "It does fail", drive(true)));
        desk.as(INES).lacks("data-protected", new Advanced());
    }

    @Test
    void driveFailure_isTakenBack_whenASupervisorAgrees() {
        TicketFixture desk = bring(plain(), Step.TEST);
        desk.as(INES).records(data(DataState.NO_USER_DATA));
        int finding = desk.as(INES).records(drive(true));
        for (Fact softer : new Fact[] {null, drive(false)}) {
            desk.as(INES).records(new Corrected(finding, "Wrong drive", softer));
            assertTrue(desk.missing().contains("data-protected"));
            if (softer == null) {
                finding = desk.as(INES).records(drive(true));
            }
        }
        int correction = desk.sheet().entries();
        desk.as(INES).lacks("not-your-role", new LesseningAgreed(correction, "Wrong drive"));
        desk.sheet()
                .lessenings()
                .forEach(l -> desk.as(SUE).records(new LesseningAgreed(l.by().entry(), "Wrong drive")));
        assertFalse(desk.missing().contains("data-protected"));
    }

    @ParameterizedTest
    @EnumSource
    void everyHazard_stopsTheWorkUntilCleared(Hazard hazard) {
        TicketFixture desk = identified(DataState.TAKEN_NOW);
        desk.as(INES).records(hazard(hazard));
        List<Missing> missing = desk.as(INES).isRefused(new Advanced());
        assertEquals("hazards-screened", missing.get(0).code());
        assertTrue(missing.get(0).sentence().contains(hazard.words()));
        desk.as(hazard.needsSecondPerson() ? OLE : INES).records(cleared());
        desk.as(INES).records(new Advanced());
    }

    @Test
    void screenedAgain_doesNotClearTheHazard() {
        TicketFixture desk = identified(DataState.TAKEN_NOW);
        desk.as(INES).records(hazard(Hazard.SMOKE));
        desk.as(INES).records(noHazard());
        assertTrue(desk.sheet().workStopped());
        List<Missing> missing = desk.as(INES).isRefused(new Advanced());
        assertTrue(
                missing.get(0).sentence().contains(Hazard.SMOKE.words()),
                missing.get(0).sentence());
        desk.as(SUE).records(cleared());
        assertFalse(desk.sheet().workStopped());
        desk.as(INES).records(new Advanced());
    }

    @Test
    void nothingStopped_nothingToClear() {
        TicketFixture desk = plain();
        desk.as(INES).lacks("work-not-stopped", cleared());
        desk.as(INES).records(hazard(Hazard.HEAT));
        desk.as(OLE).lacks("not-yours", cleared());
        desk.as(INES).records(cleared());
        desk.as(INES).lacks("work-not-stopped", cleared());
    }

    @ParameterizedTest
    @EnumSource
    void hazardFoundLater_stopsEveryStep(Step step) {
        TicketFixture desk = atStep(step);
        meetAll(desk);
        desk.as(INES).records(hazard(Hazard.LIQUID));
        desk.as(INES).lacks("hazards-screened", GateTest.leave(step));
        desk.as(OLE).records(cleared());
        desk.as(INES).records(GateTest.leave(step));
    }

    @Test
    void hazard_alsoStopsGoingBack() {
        TicketFixture plan = atStep(Step.PLAN);
        plan.as(INES).records(hazard(Hazard.SMELL));
        plan.as(INES).lacks("hazards-screened", new Rethought("No dust", true));
        TicketFixture verify = atStep(Step.VERIFY);
        verify.as(INES).records(hazard(Hazard.SMELL));
        verify.as(INES).lacks("hazards-screened", new VerifyFailed("Smells burnt"));
        verify.as(INES).records(cleared());
        verify.as(INES).records(new VerifyFailed("Smells burnt"));
    }

    @Test
    void eachKindOfEvidence_countsAsEvidence() {
        for (Fact evidence : List.of(
                temperature("20", "room"),
                new ExtractRecorded("System log", "thermal shutdown"),
                new AttachmentAdded("a.png", "image/png", 9, "0".repeat(64), "Dust"),
                new EvidenceImpossible("The device has been stolen"))) {
            TicketFixture desk = plain();
            assertTrue(desk.missing().contains("evidence-attached"));
            desk.as(INES).records(evidence);
            assertFalse(desk.missing().contains("evidence-attached"), evidence.toString());
        }
    }
}

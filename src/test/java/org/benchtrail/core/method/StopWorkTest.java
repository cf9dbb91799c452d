package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.INES;
import static org.benchtrail.core.method.Sheets.MAREK;
import static org.benchtrail.core.method.Sheets.OLE;
import static org.benchtrail.core.method.Sheets.SUE;
import static org.benchtrail.core.method.Sheets.TOM;
import static org.benchtrail.core.method.Sheets.anyAction;
import static org.benchtrail.core.method.Sheets.atStep;
import static org.benchtrail.core.method.Sheets.cleared;
import static org.benchtrail.core.method.Sheets.hazard;
import static org.benchtrail.core.method.Sheets.noHazard;
import static org.benchtrail.core.method.Sheets.temperature;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.desk.Escalated;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.Held;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Hazards: each answered by itself, nothing done while one stands, and cleared by whoever may. */
class StopWorkTest {
    private static final Set<Hazard> SECOND_PERSON =
            Set.of(Hazard.SMOKE, Hazard.SWELLING, Hazard.LIQUID, Hazard.EXPOSED_WIRING, Hazard.SHOCK, Hazard.ARCING);

    private static Map<Hazard, Boolean> shorterList() {
        Map<Hazard, Boolean> answers = new EnumMap<>(Hazard.class);
        for (Hazard hazard : List.of(
                Hazard.SMELL,
                Hazard.SMOKE,
                Hazard.HEAT,
                Hazard.SWELLING,
                Hazard.LIQUID,
                Hazard.MAINS_LEAD,
                Hazard.EXPOSED_WIRING)) {
            answers.put(hazard, false);
        }
        return answers;
    }

    @ParameterizedTest
    @EnumSource(Hazard.class)
    void hazardLeftOut_isAskedFor(Hazard hazard) {
        Map<Hazard, Boolean> answers = new EnumMap<>(noHazard().present());
        answers.remove(hazard);
        Invalid refused = assertThrows(Invalid.class, () -> new HazardsScreened(answers));
        assertEquals(
                List.of(new Invalid.Problem("present." + hazard, "Look for " + hazard.words() + ": yes or no.")),
                refused.problems());
    }

    @Test
    void screeningOfTheShorterList_isReadAndCounts_butIsNotRecordedAnew() {
        TicketFixture desk = Sheets.plain();
        HazardsScreened old = new HazardsScreened(shorterList());
        assertTrue(old.answersShorterList());
        assertFalse(noHazard().answersShorterList());
        desk.as(INES).forces(old);
        assertEquals("", Sheets.sentence(desk, "hazards-screened"));
        Invalid refused = assertThrows(Invalid.class, () -> desk.as(INES).does(old));
        assertEquals(4, refused.problems().size());
    }

    @ParameterizedTest
    @EnumSource(Hazard.class)
    void everyHazard_saysWhatToDo(Hazard hazard) {
        assertTrue(hazard.whatToDo().length() > 60, hazard::name);
    }

    @ParameterizedTest
    @EnumSource(Hazard.class)
    void hazard_isClearedByWhoeverMay(Hazard hazard) {
        TicketFixture desk = atStep(Step.TEST);
        desk.as(INES).records(hazard(hazard));
        if (!SECOND_PERSON.contains(hazard)) {
            desk.as(OLE).lacks("not-yours", cleared());
            desk.as(INES).records(cleared());
            assertFalse(desk.sheet().workStopped());
            return;
        }
        desk.as(INES).lacks("second-person", cleared());
        desk.as(TOM).lacks("second-person", cleared());
        desk.as(OLE).records(cleared());
        assertFalse(desk.sheet().workStopped());
    }

    @Test
    void whoHadAHandInIt_isNoSecondPerson_eitherAfterHandingOver() {
        TicketFixture desk = atStep(Step.TEST);
        desk.as(INES).records(hazard(Hazard.SMOKE));
        desk.as(SUE).records(new HandedOver("ole", Set.of(Role.TECHNICIAN), ""));
        desk.as(INES).lacks("second-person", cleared());
        desk.as(OLE).lacks("second-person", cleared());
        desk.as(SUE).records(cleared());
    }

    @Test
    void lesserHazardFoundLater_doesNotOpenTheDoorToTheGreater() {
        TicketFixture desk = atStep(Step.TEST);
        desk.as(INES).records(hazard(Hazard.SMOKE));
        desk.as(INES).records(hazard(Hazard.HEAT));
        desk.as(INES).lacks("second-person", cleared());
        desk.as(INES).records(noHazard());
        desk.as(INES).lacks("second-person", cleared());
        assertEquals(Set.of(Hazard.SMOKE, Hazard.HEAT), desk.sheet().hazards());
        desk.as(MAREK).records(cleared());
        assertFalse(desk.sheet().workStopped());
    }

    @Test
    void nothingIsMeasuredTestedOrDone_whileAHazardStands() {
        TicketFixture desk = atStep(Step.TEST);
        int theory = desk.latest(TheoryStated.class);
        int check = desk.as(INES).records(Sheets.check(theory));
        desk.as(INES).records(hazard(Hazard.HEAT));
        for (Fact deed : List.of(
                temperature("71", "processor"),
                new FindingRecorded("Dust", false),
                Sheets.check(theory),
                new CautionsAcknowledged(check, Set.of(Caution.HEAT)),
                Sheets.result(check, CheckOutcome.SUPPORTS))) {
            desk.as(INES).lacks("hazards-screened", deed);
        }
        desk.as(INES).records(noHazard());
        desk.as(OLE).records(picture());
        desk.as(INES).records(new Escalated("The maker", "Nothing yet"));
        desk.as(INES).records(new Held(WaitingFor.values()[0], desk.now().plusSeconds(7200), ""));
        desk.as(INES).records(cleared());
        assertEquals(1, desk.sheet().all(CheckPlanned.class).size());
    }

    @Test
    void actionIsNotSettled_whileAHazardStands() {
        TicketFixture desk = atStep(Step.PLAN);
        int action = desk.as(INES).records(anyAction());
        desk.as(INES).records(hazard(Hazard.HEAT));
        desk.as(INES).lacks("hazards-screened", Sheets.carriedOut(action));
        desk.as(INES).lacks("hazards-screened", anyAction());
    }

    private static AttachmentAdded picture() {
        return new AttachmentAdded("hazard.jpg", "image/jpeg", 1, "0".repeat(64), "Where it stands");
    }
}

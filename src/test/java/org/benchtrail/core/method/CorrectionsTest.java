package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.identify.IdentifyRequirement;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.TheorizeRequirement;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.junit.jupiter.api.Test;

/** An entry put right stays in its place and keeps who recorded it; what others rest on is left alone. */
class CorrectionsTest {
    private static final SymptomRecorded OTHER = new SymptomRecorded("It hums", "A hum", false);

    @Test
    void replaced_standsInTheOldPlaceWithItsOldStamp() {
        TicketFixture desk = plain();
        int first = desk.as(INES).records(anySymptom(false));
        int second = desk.as(INES).records(anySymptom(true));
        Stamp old = desk.trail().get(first - 1).stamp();
        int correction = desk.as(INES).records(new Corrected(first, "Misheard", OTHER));
        List<StandingFact<SymptomRecorded>> symptoms = desk.sheet().all(SymptomRecorded.class);
        assertEquals(
                List.of(first, second),
                symptoms.stream().map(StandingFact::entry).toList());
        StandingFact<SymptomRecorded> put = symptoms.get(0);
        assertEquals(OTHER, put.fact());
        assertEquals(old, put.stamp());
        assertNotNull(put.corrected());
        assertEquals(correction, put.corrected().entry());
        assertNull(symptoms.get(1).corrected());
        assertEquals(anySymptom(false), desk.trail().get(first - 1).fact(), "the trail keeps the old one");
    }

    @Test
    void struckOut_isNoMoreOnTheSheet_butInTheTrail() {
        TicketFixture desk = plain();
        int symptom = desk.as(INES).records(anySymptom(false));
        desk.as(INES).records(new Corrected(symptom, "Wrong ticket", null));
        assertEquals(List.of(), desk.sheet().all(SymptomRecorded.class));
        assertTrue(desk.missing().contains("symptom-observed"));
        assertEquals(3, desk.trail().size());
        assertThrows(Invalid.class, () -> desk.as(INES).does(new Corrected(symptom, "Again", OTHER)));
    }

    @Test
    void whoMayCorrect() {
        TicketFixture desk = plain();
        int oles = desk.as(OLE).records(temperature("20", "room"));
        int ines = desk.as(INES).records(temperature("21", "room"));
        desk.as(OLE).records(new Corrected(oles, "Misread", temperature("22", "room")));
        desk.as(INES).records(new Corrected(oles, "Misread", temperature("23", "room")));
        desk.as(SUE).records(new Corrected(oles, "Misread", temperature("24", "room")));
        desk.as(OLE).lacks("not-yours", new Corrected(ines, "Misread", temperature("22", "room")));
        desk.as(MAREK).lacks("not-yours", new Corrected(ines, "Misread", temperature("22", "room")));
        desk.as(ADA).lacks("not-your-role", new Corrected(ines, "Misread", temperature("22", "room")));
    }

    @Test
    void anotherKind_isNoCorrection() {
        TicketFixture desk = plain();
        int symptom = desk.as(INES).records(anySymptom(false));
        assertThrows(Invalid.class, () -> desk.as(INES).does(new Corrected(symptom, "x", temperature("1", "room"))));
        assertThrows(Invalid.class, () -> desk.as(INES).does(new Corrected(99, "x", OTHER)));
        assertThrows(Invalid.class, () -> new Corrected(symptom, " ", OTHER));
    }

    @Test
    void answersOfWhichTheLatestCounts_areGivenAgainInstead() {
        TicketFixture desk = plain();
        int hazards = desk.as(INES).records(noHazard());
        int waiver = desk.as(SUE).records(waive(IdentifyRequirement.LOGS_REVIEWED));
        int refusal = desk.sheet().entries() + 1;
        desk.as(INES).isRefused(new Advanced());
        for (int entry : List.of(hazards, waiver, refusal)) {
            assertThrows(Invalid.class, () -> desk.as(SUE).does(new Corrected(entry, "x", null)));
        }
    }

    @Test
    void whatTheOpeningSaysOfNumberAndHands_stays() {
        TicketFixture desk = plain();
        Opened better = new Opened(
                "40718-6",
                "Switches off",
                "",
                Category.POWER,
                "Workstation",
                "Office",
                17,
                Priority.Impact.SEVERAL,
                Priority.Urgency.STOPPED,
                "ines",
                INES.roles());
        desk.as(INES).records(new Corrected(1, "More exact", better));
        assertEquals(Category.POWER, desk.sheet().opened().category());
        assertEquals(Priority.SAME_DAY, desk.sheet().opened().priority());
        desk.as(SUE).lacks("not-correctable", new Corrected(1, "x", null));
        desk.as(SUE).lacks("not-correctable", new Corrected(1, "x", opened(OLE)));
    }

    @Test
    void theoryThatWasChosenOrChecked_stays() {
        TicketFixture desk = atStep(Step.THEORIZE);
        int dust = desk.as(INES).records(theory("Dust"));
        int paste = desk.as(INES).records(theory("Paste"));
        desk.as(INES).records(new Corrected(dust, "Clearer", theory("Dust in the fins")));
        meet(desk, TheorizeRequirement.SIMPLE_THINGS_FIRST);
        desk.as(INES).records(choose(dust));
        desk.as(INES).lacks("relied-on", new Corrected(dust, "x", null));
        desk.as(SUE).lacks("relied-on", new Corrected(dust, "x", theory("Felt")));
        desk.as(INES).records(new Advanced());
        desk.as(INES).records(check(paste));
        desk.as(INES).lacks("relied-on", new Corrected(paste, "x", null));
    }

    @Test
    void checkThatWasMade_andItsReading_stay() {
        TicketFixture desk = atStep(Step.TEST);
        int theory = desk.latest(TheoryStated.class);
        int check = desk.as(INES).records(check(theory));
        desk.as(INES).records(new Corrected(check, "Clearer", check(theory)));
        int reading = desk.as(INES).records(temperature("97", "processor"));
        desk.as(INES).records(new Corrected(reading, "Misread", temperature("96", "processor")));
        desk.as(INES).records(new ResultRecorded(check, "Hot", CheckOutcome.SUPPORTS, reading));
        desk.as(INES).lacks("relied-on", new Corrected(check, "x", null));
        desk.as(INES).lacks("relied-on", new Corrected(reading, "x", temperature("70", "processor")));
        desk.as(INES).lacks("relied-on", new Corrected(reading, "x", null));
        assertEquals(
                "96",
                desk.sheet().at(reading, ReadingRecorded.class, "r").fact().value());
    }

    @Test
    void correctedCheck_testsATheoryThatIsThere() {
        TicketFixture desk = atStep(Step.TEST);
        int check = desk.as(INES).records(check(desk.latest(TheoryStated.class)));
        assertThrows(Invalid.class, () -> desk.as(INES).does(new Corrected(check, "x", check(999))));
        assertThrows(Invalid.class, () -> desk.as(INES).does(new Corrected(check, "x", check(1))));
        assertEquals(
                desk.latest(TheoryStated.class),
                desk.sheet().at(check, CheckPlanned.class, "c").fact().theory());
    }

    @Test
    void actionThatWasSettled_stays() {
        TicketFixture desk = atStep(Step.PLAN);
        meetAll(desk);
        int action = desk.latest(ActionPlanned.class);
        desk.as(INES).lacks("relied-on", new Corrected(action, "x", anyAction()));
        desk.as(INES).records(new Rethought("No effect", true));
        int idle = action;
        desk.as(INES).lacks("relied-on", new Corrected(idle, "x", null));
    }
}

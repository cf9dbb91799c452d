package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.INES;
import static org.benchtrail.core.method.Sheets.action;
import static org.benchtrail.core.method.Sheets.atStep;
import static org.benchtrail.core.method.Sheets.check;
import static org.benchtrail.core.method.Sheets.choose;
import static org.benchtrail.core.method.Sheets.demanding;
import static org.benchtrail.core.method.Sheets.invasive;
import static org.benchtrail.core.method.Sheets.plain;
import static org.benchtrail.core.method.Sheets.result;
import static org.benchtrail.core.method.Sheets.settled;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.benchtrail.core.method.desk.RuledOut;
import org.benchtrail.core.method.document.DocumentRequirement;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.PlanRequirement;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.TestRequirement;
import org.benchtrail.core.method.theorize.TheorizeRequirement;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.core.method.verify.VerifyRequirement;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Why a requirement asks nothing of a ticket, which a reviewer reads as the reason; and that it asks where there is something. */
class UnaskedTest {
    private static final Set<String> ASKED = new TreeSet<>();
    private static final Set<String> UNASKED = new TreeSet<>();
    private static int ran;

    @AfterEach
    void count() {
        ran++;
    }

    @AfterAll
    static void bothSides_areSeenOfEachThatHasAReason() {
        long tests = Stream.of(UnaskedTest.class.getDeclaredMethods())
                .filter(m -> m.isAnnotationPresent(Test.class))
                .count();
        if (ran == tests) {
            assertEquals(AskedOfSome.codes(), UNASKED, "say here of what ticket each of them asks nothing, and why");
            assertEquals(AskedOfSome.codes(), ASKED, "say here of what ticket each of them asks something");
        }
    }

    private static void assertUnasked(String why, Requirement requirement, TicketFixture desk) {
        (why.isEmpty() ? ASKED : UNASKED).add(requirement.code());
        assertEquals(
                why, requirement.unasked(new Situation(desk.sheet(), desk.policy(), desk.now(), Move.ADVANCE, "")));
    }

    private static void assertAsked(Requirement requirement, TicketFixture desk) {
        assertUnasked("", requirement, desk);
    }

    private static TicketFixture planning(ActionPlanned... actions) {
        TicketFixture desk = atStep(Step.PLAN);
        for (ActionPlanned action : actions) {
            desk.as(INES).records(action);
        }
        return desk;
    }

    /** An action, and the same one when it was found not to be needed. */
    private static void assertAskedByANeededOne(String why, Requirement requirement, ActionPlanned action) {
        assertUnasked(why, requirement, atStep(Step.PLAN));
        assertUnasked(why, requirement, planning(action(false, false, false, false, null, null)));
        TicketFixture desk = planning(action(false, false, false, false, null, null), action);
        assertAsked(requirement, desk);
        desk.as(INES).records(settled(desk.latest(ActionPlanned.class), Settlement.NOT_NEEDED));
        assertUnasked(why, requirement, desk);
    }

    @Test
    void fit_isAskedOfAPart() {
        assertAskedByANeededOne(
                "No action of the plan replaces a part.",
                PlanRequirement.PARTS_FIT,
                action(false, false, false, false, null, "Cooler 92 mm"));
    }

    @Test
    void precautions_areAskedOfWhatCallsForThem() {
        assertAskedByANeededOne(
                "No action of the plan calls for a precaution.",
                PlanRequirement.CAUTIONS_TAKEN,
                action(false, false, false, false, null, null, Caution.MAINS));
    }

    @Test
    void freshData_isAskedOfWhatTouchesStorage() {
        assertAskedByANeededOne(
                "No action of the plan touches storage.",
                PlanRequirement.DATA_STILL_PROTECTED,
                action(false, true, false, false, null, null));
    }

    @Test
    void approval_isAskedAsPolicySays() {
        assertUnasked(
                "Policy asks for no approval of this plan.",
                PlanRequirement.PLAN_APPROVED,
                planning(action(false, false, false, false, null, null)));
        assertAsked(PlanRequirement.PLAN_APPROVED, planning(action(true, false, false, false, null, null)));
    }

    @Test
    void guard_isAskedOfAResult_whoseCheckOpensOrCallsForAPrecaution() {
        String why = "No check of this round opens or changes the device, or calls for a precaution.";
        TicketFixture desk = atStep(Step.TEST);
        int theory = desk.latest(TheoryStated.class);
        assertUnasked(why, TestRequirement.INVASIVE_GUARDED, desk);
        desk.as(INES).forces(invasive(theory, Caution.STATIC));
        assertUnasked(why, TestRequirement.INVASIVE_GUARDED, desk);
        int look = desk.as(INES).forces(check(theory));
        desk.as(INES).forces(result(look, CheckOutcome.SUPPORTS));
        assertUnasked(why, TestRequirement.INVASIVE_GUARDED, desk);
        for (CheckPlanned such : new CheckPlanned[] {
            invasive(theory), new CheckPlanned(theory, "Measure it", "Low", false, Set.of(Caution.LIVE))
        }) {
            TicketFixture other = atStep(Step.TEST);
            int planned = other.as(INES).forces(such);
            other.as(INES).forces(result(planned, CheckOutcome.SUPPORTS));
            assertAsked(TestRequirement.INVASIVE_GUARDED, other);
        }
    }

    @Test
    void newEvidence_isAskedOfATheoryThatWasRuledOut() {
        String why = "No earlier round ruled this theory out.";
        TicketFixture desk = atStep(Step.TEST);
        int theory = desk.latest(TheoryStated.class);
        assertUnasked(why, TheorizeRequirement.NOT_ALREADY_REFUTED, desk);
        int look = desk.as(INES).records(check(theory));
        desk.as(INES).records(result(look, CheckOutcome.REFUTES));
        desk.as(INES).records(new RuledOut());
        assertUnasked(why, TheorizeRequirement.NOT_ALREADY_REFUTED, desk);
        desk.as(INES).forces(choose(theory));
        assertAsked(TheorizeRequirement.NOT_ALREADY_REFUTED, desk);
    }

    @Test
    void mentor_isAskedOfATraineesWork() {
        assertUnasked("No trainee worked on it.", DocumentRequirement.MENTOR_SIGNED, Sheets.closed());
        TicketFixture trainees = demanding();
        Sheets.meetAll(trainees);
        assertAsked(DocumentRequirement.MENTOR_SIGNED, trainees);
    }

    @Test
    void readingsAreAskedBack_whereOneWasOutside_andSoakTime_whereItComesAndGoes() {
        TicketFixture desk = plain();
        assertUnasked("No reading was outside its limit.", VerifyRequirement.READINGS_BACK, desk);
        assertUnasked("Nothing recorded says that the fault comes and goes.", VerifyRequirement.SOAK_TIME_PASSED, desk);
        desk.as(INES).records(new ReadingRecorded("voltage", "11", "V", "plug", "meter", "11.4", "12.6", "label"));
        desk.as(INES).records(Sheets.anySymptom(true));
        assertAsked(VerifyRequirement.READINGS_BACK, desk);
        assertAsked(VerifyRequirement.SOAK_TIME_PASSED, desk);
    }
}

package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Duration;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.Addendum;
import org.benchtrail.core.method.desk.AddendumCountersigned;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.SentBack;
import org.benchtrail.core.method.desk.WorkMark;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What others say of the work: remarks, sending it back, and what is added once the ticket is closed. */
class ReviewTest {
    private static final Addendum CAUSE = new Addendum(Addendum.About.CAUSE, "It was the pump after all");

    private static String refusedField(TicketFixture desk, Actor actor, Fact fact) {
        Invalid e = assertThrows(Invalid.class, () -> desk.as(actor).does(fact));
        return e.problems().get(0).field();
    }

    // ---- remarks

    @Test
    void remark_isAMentorsOrASupervisors() {
        TicketFixture desk = plain();
        Remarked remark = new Remarked(1, "symptom-observed", "Say what can be seen");
        for (Actor actor : List.of(INES, OLE, TOM)) {
            desk.as(actor).lacks("not-your-role", remark);
        }
        desk.as(MAREK).records(remark);
        desk.as(SUE).records(remark);
    }

    @Test
    void mark_isAMentorsWhoHasNotWorkedOnIt_andOfARequirement() {
        TicketFixture desk = plain();
        Remarked mark = new Remarked(null, "symptom-observed", "Seen", WorkMark.SATISFIED);
        for (Actor actor : List.of(INES, OLE, TOM, SUE)) {
            desk.as(actor).lacks("not-your-role", mark);
        }
        desk.as(MAREK).records(mark);
        Invalid e = assertThrows(Invalid.class, () -> new Remarked(1, null, "Seen", WorkMark.SATISFIED));
        assertEquals("requirement", e.problems().get(0).field());
    }

    @Test
    void remark_isOnWhatIsThere() {
        TicketFixture desk = plain();
        assertEquals("entry", refusedField(desk, MAREK, new Remarked(99, null, "Which one?")));
        assertEquals("requirement", refusedField(desk, MAREK, new Remarked(null, "good-luck", "What is that?")));
        desk.as(MAREK).records(new Remarked(null, null, "Well begun"));
    }

    @Test
    void remark_leavesAMentorFreeToWorkAndToJudge() {
        TicketFixture desk = demandingAtStep(Step.DOCUMENT);
        desk.as(MAREK).records(new Remarked(null, null, "Say which cooler"));
        desk.as(TOM).records(anySummary());
        desk.as(MAREK).records(new Signed(Signatory.MENTOR));
    }

    // ---- sent back

    @Test
    void traineesWork_isSentBackByAMentor_andSignedOnceItIsPutRight() {
        TicketFixture desk = demandingAtStep(Step.DOCUMENT);
        meetAll(desk);
        assertEquals("", sentence(desk, "mentor-signed"));
        desk.as(SUE).lacks("not-your-role", new SentBack("Say which cooler"));
        desk.as(TOM).lacks("not-your-role", new SentBack("Say which cooler"));
        desk.as(MAREK).records(new SentBack("Say which cooler"));
        assertEquals(
                "A mentor who has not worked on it has to read and sign what a trainee worked on."
                        + " It was sent back: Say which cooler",
                sentence(desk, "mentor-signed"));
        desk.as(TOM).lacks("mentor-signed", new Closed());
        desk.as(MAREK).records(new Signed(Signatory.MENTOR));
        assertEquals("", sentence(desk, "mentor-signed"));
        desk.as(TOM).records(new Closed());
    }

    @Test
    void workOfNoTrainee_isNotSentBack() {
        TicketFixture desk = atStep(Step.DOCUMENT);
        desk.as(MAREK).lacks("nothing-to-sign", new SentBack("Say which cooler"));
    }

    // ---- addenda

    @Test
    void addendum_isWrittenOnAClosedTicket_byWhoWorkedOnIt() {
        TicketFixture desk = closed();
        desk.as(OLE).lacks("not-yours", CAUSE);
        desk.as(SUE).lacks("not-yours", CAUSE);
        desk.as(INES).records(CAUSE);
        assertEquals(Standing.CLOSED, desk.sheet().course().standing());
        assertEquals(List.of("It was the pump after all"), CAUSE.story());
    }

    @ParameterizedTest
    @EnumSource
    void addendum_isForAClosedTicketOnly(Step step) {
        TicketFixture desk = atStep(step);
        desk.as(INES).lacks("still-open", CAUSE);
    }

    @Test
    void addendum_isCountersignedOnce_byWhoHasNotWorkedOnIt() {
        TicketFixture desk = closed();
        int first = desk.as(INES).records(CAUSE);
        int second = desk.as(INES).records(new Addendum(Addendum.About.PART, "A clip"));
        AddendumCountersigned signed = new AddendumCountersigned(first, "");
        desk.as(INES).lacks("not-your-role", signed);
        desk.as(OLE).lacks("not-your-role", signed);
        assertEquals("addendum", refusedField(desk, SUE, new AddendumCountersigned(1, "")));
        desk.as(SUE).records(signed);
        assertEquals("addendum", refusedField(desk, BORIS, signed));
        desk.as(MAREK).records(new AddendumCountersigned(second, ""));
    }

    @Test
    void handThatIsAMentor_countersignsNothingOfTheirOwn() {
        TicketFixture desk = atStep(Step.DOCUMENT);
        desk.as(SUE).records(new HandedOver("marek", MAREK.roles(), "She is on leave"));
        meetAll(desk);
        desk.as(MAREK).records(new Closed());
        int addendum = desk.as(MAREK).records(CAUSE);
        desk.as(MAREK).lacks("own-work", new AddendumCountersigned(addendum, ""));
    }

    // ---- reopened

    @Test
    void reopened_byAnybodyInTime_laterByASupervisor() {
        TicketFixture desk = closed();
        Duration window = desk.policy().reopenWindow();
        desk.passes(window.minusSeconds(60));
        desk.as(OLE).records(new Reopened("It is back"));
        assertEquals(Step.IDENTIFY, desk.step());
        assertEquals(2, desk.sheet().round());

        TicketFixture late = closed();
        late.passes(window.minusSeconds(59));
        late.as(OLE).lacks("reopen-window-over", new Reopened("It is back"));
        late.as(SUE).records(new Reopened("It is back"));
    }

    @Test
    void reopened_asksForASymptomAnew() {
        TicketFixture desk = closed();
        desk.as(INES).records(new Reopened("It is back"));
        assertEquals(Requirement.State.MISSING, status(desk, "symptom-observed").state());
        desk.as(INES).records(new SymptomRecorded("It is back", "Screen goes dark", false));
        assertEquals(Requirement.State.MET, status(desk, "symptom-observed").state());
    }
}

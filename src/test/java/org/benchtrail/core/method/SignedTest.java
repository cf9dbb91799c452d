package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.function.Consumer;
import java.util.stream.Stream;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.VerifyFailed;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Lesson;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.core.method.document.Sureness;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.verify.SymptomRechecked;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** A signature stands for the papers as they were read: whoever changes them has them signed again. */
class SignedTest {
    private static final String AGAIN =
            "Cause, summary, lesson or effort changed after it was signed: read it and sign it again.";
    private static final String BY_A_MENTOR =
            "A mentor who has not worked on it has to read and sign what a trainee worked on.";

    static Stream<Arguments> changes() {
        return Stream.of(
                row("cause", records(new CauseNamed("Dry paste", null, Sureness.PRESUMED))),
                row("summary", records(new SummaryWritten("Paste", "Renewed", "Runs cool"))),
                row("lesson", records(new KnowledgeLinked(Lesson.PROPOSED, "Paste dries out"))),
                row("effort", records(new EffortRecorded(50, ""))),
                row("effort put right", corrects(new EffortRecorded(50, "Paste"))));
    }

    private static Arguments row(String what, Consumer<TicketFixture> change) {
        return Arguments.of(what, change);
    }

    private static Consumer<TicketFixture> records(Fact fact) {
        return desk -> desk.assignee().records(fact);
    }

    private static Consumer<TicketFixture> corrects(EffortRecorded effort) {
        return desk ->
                desk.assignee().records(new Corrected(desk.latest(EffortRecorded.class), "Counted again", effort));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("changes")
    void papersThatChange_areSignedAgainByBoth(String what, Consumer<TicketFixture> change) {
        TicketFixture desk = demandingAtStep(Step.DOCUMENT);
        meetAll(desk);
        assertEquals("", sentence(desk, "summary-written"));
        assertEquals("", sentence(desk, "mentor-signed"));
        change.accept(desk);
        assertEquals(AGAIN, sentence(desk, "summary-written"));
        assertEquals(BY_A_MENTOR, sentence(desk, "mentor-signed"));
        desk.as(TOM).records(new Signed(Signatory.ASSIGNEE));
        assertEquals("", sentence(desk, "summary-written"));
        assertEquals(BY_A_MENTOR, sentence(desk, "mentor-signed"), "one signature is not the other");
        desk.as(MAREK).records(new Signed(Signatory.MENTOR));
        assertEquals("", sentence(desk, "mentor-signed"));
    }

    @Test
    void effortStruckOut_isAChangeToo() {
        TicketFixture desk = atStep(Step.DOCUMENT);
        desk.as(INES).records(new EffortRecorded(5, ""));
        meetAll(desk);
        int first = desk.sheet().all(EffortRecorded.class).get(0).entry();
        desk.as(INES).records(new Corrected(first, "Counted twice", null));
        assertEquals(AGAIN, sentence(desk, "summary-written"));
        desk.as(INES).records(new Signed(Signatory.ASSIGNEE));
        desk.as(INES).records(new Closed());
    }

    @Test
    void mentorsSignature_isNotTheAssignees() {
        TicketFixture desk = demandingAtStep(Step.DOCUMENT);
        desk.as(TOM).records(anySummary());
        desk.as(MAREK).records(new Signed(Signatory.MENTOR));
        assertEquals("Sign the summary.", sentence(desk, "summary-written"));
    }

    @Test
    void whoHasTheTicket_signs() {
        TicketFixture desk = atStep(Step.DOCUMENT);
        meetAll(desk);
        desk.as(SUE).records(new HandedOver("ole", OLE.roles(), "She is on leave"));
        assertEquals("Sign the summary.", sentence(desk, "summary-written"));
        desk.as(OLE).records(new Signed(Signatory.ASSIGNEE));
        assertEquals("", sentence(desk, "summary-written"));
    }

    @Test
    void whatWasSignedInAnEarlierRound_isWrittenAndSignedAnew() {
        TicketFixture desk = demandingAtStep(Step.DOCUMENT);
        meetAll(desk);
        desk.as(TOM).records(new VerifyFailed("It is back"));
        bring(desk, Step.DOCUMENT);
        assertEquals(
                "Read the draft of findings, actions and outcome, put it right and save it.",
                sentence(desk, "summary-written"));
        assertEquals(BY_A_MENTOR, sentence(desk, "mentor-signed"));
        desk.as(TOM).records(anySummary());
        assertEquals("Sign the summary.", sentence(desk, "summary-written"));
    }

    /** To hand the ticket over afterwards takes nothing away of what a trainee did after the signature. */
    @Test
    void whatATraineeDidAfterTheSignature_isSignedAnew_whoeverHasTheTicketNow() {
        TicketFixture desk = demandingAtStep(Step.DOCUMENT);
        meetAll(desk);
        assertEquals("", sentence(desk, "mentor-signed"));
        int symptom = desk.sheet().latest(SymptomRecorded.class).orElseThrow().entry();
        desk.as(TOM).records(new SymptomRechecked(symptom, true, "Looked again"));
        assertEquals(BY_A_MENTOR, sentence(desk, "mentor-signed"));
        desk.as(SUE).records(new HandedOver("ines", INES.roles(), "He is at school"));
        assertEquals(BY_A_MENTOR, sentence(desk, "mentor-signed"));
    }

    @Test
    void traineesWork_isSignedForByAMentor_whoeverHasTheTicketNow() {
        TicketFixture desk = demandingAtStep(Step.DOCUMENT);
        desk.as(SUE).records(new HandedOver("ines", INES.roles(), "He is at school"));
        assertEquals(BY_A_MENTOR, sentence(desk, "mentor-signed"));
        TicketFixture plain = atStep(Step.DOCUMENT);
        assertEquals("", sentence(plain, "mentor-signed"));
    }

    @Test
    void reopened_isSignedAnew() {
        TicketFixture desk = closed();
        desk.as(INES).records(new Reopened("It is back"));
        bring(desk, Step.DOCUMENT);
        desk.as(INES).records(anySummary());
        assertEquals("Sign the summary.", sentence(desk, "summary-written"));
    }
}

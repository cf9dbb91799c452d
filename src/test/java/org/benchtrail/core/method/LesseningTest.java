package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.LesseningAgreed;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.SoakTimeReckoned;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.verify.VerifyRequirement;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What a correction takes away of what is owed stays owed, until somebody independent agrees. */
class LesseningTest {
    private static ReadingRecorded reading(
            String quantity,
            String value,
            String unit,
            String point,
            @Nullable String lower,
            @Nullable String upper,
            @Nullable String accuracy) {
        return new ReadingRecorded(quantity, value, unit, point, "", lower, upper, "nameplate", accuracy, null, null);
    }

    private static Fact symptom(String words, String observable, boolean intermittent) {
        return new SymptomRecorded(words, observable, intermittent);
    }

    private static Fact tried(Reproduction outcome) {
        return new ReproductionTried(outcome, "Ran it");
    }

    private static Fact reckoned(int minutes) {
        return new SoakTimeReckoned(minutes, "Every ten hours");
    }

    private static Arguments row(boolean lessens, Fact before, @Nullable Fact after) {
        return Arguments.of(lessens, before, after);
    }

    static Stream<Arguments> corrections() {
        Fact hot = reading("temperature", "96", "°C", "processor", "10", "85", null);
        Fact exact = reading("temperature", "96", "°C", "processor", "10", "85", "1");
        Fact dies = symptom("It dies", "Fans stop", false);
        Fact comesAndGoes = symptom("It dies", "Fans stop", true);
        return Stream.of(
                row(true, hot, null),
                row(true, hot, reading("temperature", "69", "°C", "processor", "10", "85", null)),
                row(false, hot, reading("temperature", "97", "°C", "Processor", "10", "85", null)),
                row(false, hot, exact),
                row(true, hot, reading("heat", "97", "°C", "processor", "10", "85", null)),
                row(true, hot, reading("temperature", "97", "°C", "memory", "10", "85", null)),
                row(true, hot, reading("temperature", "97", "K", "processor", "10", "85", null)),
                row(true, hot, reading("temperature", "97", "°C", "processor", null, "85", null)),
                row(true, hot, reading("temperature", "97", "°C", "processor", "10", "95", null)),
                row(true, exact, hot),
                row(false, exact, reading("temperature", "97", "°C", "processor", "10", "85", "2")),
                row(false, reading("temperature", "69", "°C", "processor", "10", "85", null), null),
                row(true, dies, null),
                row(true, dies, symptom("It dies", "Fans slow down", false)),
                row(true, dies, symptom("It is slow", "Fans stop", false)),
                row(false, dies, comesAndGoes),
                row(false, dies, dies),
                row(true, comesAndGoes, dies),
                row(false, comesAndGoes, comesAndGoes),
                row(true, drive(true), null),
                row(true, drive(true), drive(false)),
                row(false, drive(true), drive(true)),
                row(false, drive(false), null),
                row(true, tried(Reproduction.INTERMITTENT), null),
                row(true, tried(Reproduction.INTERMITTENT), tried(Reproduction.NO)),
                row(false, tried(Reproduction.INTERMITTENT), tried(Reproduction.INTERMITTENT)),
                row(false, tried(Reproduction.YES), tried(Reproduction.NO)),
                row(true, reckoned(600), null),
                row(true, reckoned(600), reckoned(599)),
                row(false, reckoned(600), reckoned(600)),
                row(false, reckoned(600), reckoned(601)),
                row(false, opened(INES), opened(INES)),
                row(true, opened(INES), null),
                row(false, theory("Dust"), null));
    }

    @ParameterizedTest
    @MethodSource("corrections")
    void lessOfWhatIsOwed_isSeen(boolean lessens, Fact before, @Nullable Fact after) {
        assertEquals(lessens, before.isLessenedBy(after));
    }

    // ---- on the sheet

    private static final Fact LESS = symptom("It is slow", "Fans slow down", false);

    private static int symptomOf(TicketFixture desk, Actor actor) {
        return desk.as(actor).records(anySymptom(false));
    }

    private static List<String> owed(TicketFixture desk) {
        return desk.sheet().owed(SymptomRecorded.class).stream()
                .map(f -> f.fact().observable())
                .toList();
    }

    private static void isOwedOn(boolean on, TicketFixture desk) {
        assertEquals(on ? 1 : 0, desk.sheet().lessenings().size());
        assertEquals(on, owed(desk).contains("Screen goes dark, fans stop"));
        assertEquals(true, owed(desk).contains("Fans slow down"));
    }

    @Test
    void ownSlip_takenBackAtOnce_isNoLessening() {
        TicketFixture desk = plain();
        int symptom = symptomOf(desk, INES);
        desk.as(INES).records(new OnsetRecorded(false, ""));
        desk.as(INES).records(new Corrected(symptom, "A slip", LESS));
        isOwedOn(false, desk);
    }

    @Test
    void slipOfAnother_isALessening() {
        TicketFixture desk = plain();
        desk.as(SUE).records(new Corrected(symptomOf(desk, INES), "A slip", LESS));
        isOwedOn(true, desk);
    }

    @Test
    void slipThatAnotherHasSeen_isALessening() {
        TicketFixture desk = plain();
        int symptom = symptomOf(desk, INES);
        desk.as(OLE).records(temperature("60", "memory"));
        desk.as(INES).records(new Corrected(symptom, "A slip", LESS));
        isOwedOn(true, desk);
    }

    @Test
    void slipThatWasWorkedOn_isALessening() {
        TicketFixture desk = plain();
        meetAll(desk);
        int symptom = desk.latest(SymptomRecorded.class);
        desk.as(INES).records(new Advanced());
        desk.as(INES).records(new Corrected(symptom, "A slip", LESS));
        isOwedOn(true, desk);
    }

    @Test
    void slipAfterAReopening_isALessening() {
        TicketFixture desk = closed();
        desk.as(INES).records(new Reopened("It is back"));
        desk.as(INES).records(new Corrected(symptomOf(desk, INES), "A slip", LESS));
        assertEquals(1, desk.sheet().lessenings().size());
    }

    @Test
    void putBackAsItWas_nothingIsLessened() {
        TicketFixture desk = atStep(Step.TEST);
        int symptom = desk.latest(SymptomRecorded.class);
        desk.as(INES).records(new Corrected(symptom, "Misheard", LESS));
        isOwedOn(true, desk);
        desk.as(INES).records(new Corrected(symptom, "Heard well", anySymptom(false)));
        assertEquals(List.of(), desk.sheet().lessenings());
        assertEquals(List.of("Screen goes dark, fans stop"), owed(desk));
    }

    @Test
    void lessenedInTwoSteps_isOwedAsItWasAtFirst_untilASupervisorAgreesToTheLast() {
        TicketFixture desk = atStep(Step.TEST);
        int symptom = desk.latest(SymptomRecorded.class);
        int first = desk.as(INES).records(new Corrected(symptom, "Misheard", symptom("It hums", "A hum", false)));
        int second = desk.as(INES).records(new Corrected(symptom, "Misheard", LESS));
        isOwedOn(true, desk);
        desk.as(INES).lacks("not-your-role", new LesseningAgreed(second, "It is so"));
        desk.as(MAREK).lacks("not-your-role", new LesseningAgreed(second, "It is so"));
        Invalid e = assertThrows(Invalid.class, () -> desk.as(SUE).does(new LesseningAgreed(first, "It is so")));
        assertEquals("correction", e.problems().get(0).field());
        desk.as(SUE).records(new LesseningAgreed(second, "It is so"));
        isOwedOn(false, desk);
        assertThrows(Invalid.class, () -> desk.as(SUE).does(new LesseningAgreed(second, "It is so")));
    }

    @Test
    void agreement_isToOneLesseningOnly() {
        TicketFixture desk = atStep(Step.TEST);
        int finding = desk.as(INES).records(drive(true));
        int symptom = desk.as(INES).records(new Corrected(desk.latest(SymptomRecorded.class), "Misheard", LESS));
        desk.as(INES).records(new Corrected(finding, "Misread", drive(false)));
        assertEquals(2, desk.sheet().lessenings().size());
        desk.as(SUE).records(new LesseningAgreed(symptom, "It is so"));
        assertEquals(1, desk.sheet().lessenings().size());
        assertEquals(true, desk.sheet().driveFailure().isPresent());
    }

    @Test
    void answerGivenAnew_owesOn_untilItIsGivenAsItWas() {
        TicketFixture desk = atStep(Step.TEST);
        desk.as(INES).records(tried(Reproduction.INTERMITTENT));
        desk.as(INES).records(tried(Reproduction.NO));
        assertEquals(1, desk.sheet().lessenings().size());
        assertEquals(
                List.of(Reproduction.INTERMITTENT, Reproduction.NO),
                desk.sheet().owed(ReproductionTried.class).stream()
                        .map(f -> f.fact().outcome())
                        .toList());
        desk.as(INES).records(tried(Reproduction.INTERMITTENT));
        assertEquals(List.of(), desk.sheet().lessenings());
        assertEquals(1, desk.sheet().owed(ReproductionTried.class).size());
    }

    @Test
    void answerOfAnotherKind_leavesTheLessening() {
        TicketFixture desk = atStep(Step.TEST);
        desk.as(INES).records(tried(Reproduction.INTERMITTENT));
        desk.as(INES).records(tried(Reproduction.NO));
        desk.as(INES).forces(reckoned(600));
        assertEquals(1, desk.sheet().lessenings().size());
    }

    @Test
    void whatIsOwed_standsInTheOrderOfRecording_asItWasBeforeAsItIsNow() {
        TicketFixture desk = atStep(Step.TEST);
        int first = desk.latest(SymptomRecorded.class);
        int second = desk.as(INES).records(symptom("It smells", "Warm plastic", false));
        desk.as(INES).records(symptom("It hums", "A hum", false));
        desk.as(INES).records(new Corrected(second, "Misheard", symptom("It smells", "Warm dust", false)));
        desk.as(INES).records(new Corrected(first, "Misheard", LESS));
        assertEquals(
                List.of("Screen goes dark, fans stop", "Fans slow down", "Warm plastic", "Warm dust", "A hum"),
                owed(desk));
    }

    private static boolean isBack(TicketFixture desk) {
        return desk.state(VerifyRequirement.READINGS_BACK) == Requirement.State.MET;
    }

    /** Found hot after the repair, and put right to what it should have been: nobody has measured anything. */
    @Test
    void readingCorrectedToWithin_isNotMeasuredAgain() {
        TicketFixture desk = atStep(Step.VERIFY);
        int hot = desk.as(INES).records(temperature("96", "heat sink"));
        desk.as(INES).records(new Corrected(hot, "Misread", temperature("70", "heat sink")));
        assertEquals(false, isBack(desk));
        desk.as(INES).records(temperature("70", "heat sink"));
        assertEquals(true, isBack(desk));
    }

    /** The second look was as hot, but without a limit: no lessening, and no proof either once it is corrected. */
    @Test
    void secondLookCorrectedToWithin_provesNothing() {
        TicketFixture desk = atStep(Step.VERIFY);
        desk.as(INES).records(temperature("96", "heat sink"));
        int again = desk.as(INES).records(reading("temperature", "96", "Cel", "heat sink", null, null, null));
        desk.as(INES).records(new Corrected(again, "Misread", temperature("70", "heat sink")));
        assertEquals(List.of(), desk.sheet().lessenings());
        assertEquals(false, isBack(desk));
    }
}

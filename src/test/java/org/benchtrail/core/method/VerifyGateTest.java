package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.LesseningAgreed;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.VerifyFailed;
import org.benchtrail.core.method.identify.IdentifyRequirement;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.verify.FunctionChecked;
import org.benchtrail.core.method.verify.ItemState;
import org.benchtrail.core.method.verify.PreventionConsidered;
import org.benchtrail.core.method.verify.RequesterAnswered;
import org.benchtrail.core.method.verify.RequesterState;
import org.benchtrail.core.method.verify.SoakRun;
import org.benchtrail.core.method.verify.SoakStarted;
import org.benchtrail.core.method.verify.SymptomRechecked;
import org.benchtrail.core.method.verify.VerifyRequirement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Symptoms, readings, functions, the requester and the soak time: only what came after the last action counts. */
class VerifyGateTest {
    private static void assertMissing(boolean missing, TicketFixture desk, Requirement requirement) {
        assertEquals(
                missing,
                desk.missing().contains(requirement.code()),
                desk.missing().toString());
    }

    @Test
    void everySymptom_isLookedForAgain() {
        TicketFixture desk = atStep(Step.VERIFY);
        int first = desk.latest(SymptomRecorded.class);
        int second = desk.as(INES).records(new SymptomRecorded("It smells", "Warm plastic", false));
        assertTrue(desk.sheet().latest(SymptomRecorded.class).orElseThrow().late());
        desk.as(INES).records(new SymptomRechecked(first, true, "Ran it"));
        assertMissing(true, desk, VerifyRequirement.SYMPTOMS_GONE);
        desk.as(INES).records(new SymptomRechecked(second, false, "Sniffed"));
        assertMissing(true, desk, VerifyRequirement.SYMPTOMS_GONE);
        desk.as(INES).records(new SymptomRechecked(second, true, "Sniffed again"));
        assertMissing(false, desk, VerifyRequirement.SYMPTOMS_GONE);
        desk.as(INES).records(new SymptomRechecked(first, false, "It is back"));
        assertMissing(true, desk, VerifyRequirement.SYMPTOMS_GONE);
        desk.as(INES).records(new VerifyFailed("It is back"));
        assertThrows(Invalid.class, () -> bring(desk, Step.VERIFY).as(INES).does(new SymptomRechecked(1, true, "x")));
        assertMissing(true, desk, VerifyRequirement.SYMPTOMS_GONE);
    }

    @Test
    void symptomPutRightAfterItsRecheck_isLookedForAgain() {
        TicketFixture desk = atStep(Step.VERIFY);
        meet(desk, VerifyRequirement.SYMPTOMS_GONE);
        int symptom = desk.latest(SymptomRecorded.class);
        desk.as(INES).records(new Corrected(symptom, "Misheard", new SymptomRecorded("It hums", "A hum", false)));
        assertMissing(true, desk, VerifyRequirement.SYMPTOMS_GONE);
        meet(desk, VerifyRequirement.SYMPTOMS_GONE);
        assertMissing(false, desk, VerifyRequirement.SYMPTOMS_GONE);
    }

    @Test
    void itemThatTheChecklistLacks_isRefused_andSoIsAnAnswerByPlaces() {
        TicketFixture desk = atStep(Step.VERIFY);
        int entries = desk.sheet().entries();
        String list = String.join("; ", Category.HEAT.functions());
        assertEquals(
                List.of(new Invalid.Problem(
                        "answers", "'All of it' is not on the checklist of this category: " + list + ".")),
                invalid(desk, new FunctionChecked(Map.of("All of it", ItemState.WORKS), "")));
        assertEquals(
                List.of(new Invalid.Problem("answers", "Answer the checklist by its texts: " + list + ".")),
                invalid(desk, new FunctionChecked(Map.of(0, ItemState.WORKS), "", null)));
        assertEquals(entries, desk.sheet().entries());
    }

    private static List<Invalid.Problem> invalid(TicketFixture desk, Fact fact) {
        return assertThrows(Invalid.class, () -> desk.as(INES).does(fact)).problems();
    }

    @Test
    void noSymptomLeft_isAskedFor() {
        TicketFixture desk = atStep(Step.VERIFY);
        int struck = desk.as(INES).records(new Corrected(desk.latest(SymptomRecorded.class), "Wrong ticket", null));
        assertMissing(true, desk, VerifyRequirement.SYMPTOMS_GONE);
        desk.as(SUE).records(new LesseningAgreed(struck, "It is of another ticket"));
        assertMissing(true, desk, VerifyRequirement.SYMPTOMS_GONE);
        assertTrue(sentence(desk, "symptoms-gone").startsWith("There is no symptom left"));
        meet(desk, IdentifyRequirement.SYMPTOM_OBSERVED);
        meet(desk, VerifyRequirement.SYMPTOMS_GONE);
        assertMissing(false, desk, VerifyRequirement.SYMPTOMS_GONE);
    }

    @Test
    void withinBeforeTheLastAction_isNotBack() {
        TicketFixture desk = bring(plain(), Step.PLAN);
        desk.as(INES).records(temperature("96", "processor"));
        desk.as(INES).records(temperature("70", "processor"));
        bring(desk, Step.VERIFY);
        assertMissing(true, desk, VerifyRequirement.READINGS_BACK);
        assertEquals(1, Method.readingsToRepeat(desk.sheet()).size());
        desk.as(INES).records(temperature("85", "Processor"));
        assertMissing(false, desk, VerifyRequirement.READINGS_BACK);
        desk.as(INES).records(temperature("85.1", "processor"));
        assertMissing(true, desk, VerifyRequirement.READINGS_BACK);
    }

    @Test
    void everyPointAndQuantity_isMeasuredAgain() {
        TicketFixture desk = bring(plain(), Step.PLAN);
        desk.as(INES).records(temperature("96", "processor"));
        desk.as(INES).records(temperature("90", "graphics"));
        desk.as(INES).records(new ReadingRecorded("fan speed", "0", "/min", "processor", "", "600", null, "nameplate"));
        desk.as(INES).records(temperature("60", "memory"));
        bring(desk, Step.VERIFY);
        assertEquals(
                List.of("processor", "graphics", "processor"),
                Method.readingsToRepeat(desk.sheet()).stream()
                        .map(r -> r.fact().point())
                        .toList());
        desk.as(INES).records(temperature("66", "processor"));
        desk.as(OLE).records(temperature("66", "graphics"));
        assertMissing(true, desk, VerifyRequirement.READINGS_BACK);
        desk.as(INES).records(new ReadingRecorded("fan speed", "500", "/min", "processor", "", "100", null, "a guess"));
        assertMissing(true, desk, VerifyRequirement.READINGS_BACK);
        desk.as(INES).records(new ReadingRecorded("fan speed", "900", "/min", "processor", "", null, null, ""));
        assertMissing(false, desk, VerifyRequirement.READINGS_BACK);
    }

    @Test
    void pointThatIsNoMore_isWaived() {
        TicketFixture desk = demandingAtStep(Step.VERIFY);
        desk.as(SUE).records(waive(VerifyRequirement.READINGS_BACK));
        assertMissing(false, desk, VerifyRequirement.READINGS_BACK);
    }

    @ParameterizedTest
    @EnumSource
    void checklistOfEveryCategory_isGoneThroughWhole(Category category) {
        TicketFixture desk = atStep(Step.VERIFY);
        Opened o = desk.sheet().opened();
        desk.as(INES)
                .records(new Corrected(
                        1,
                        "Wrong kind",
                        new Opened(
                                o.ticket(),
                                o.title(),
                                o.words(),
                                category,
                                o.device(),
                                o.place(),
                                o.requester(),
                                o.impact(),
                                o.urgency(),
                                o.assignee(),
                                o.assigneeRoles())));
        desk.sheet()
                .lessenings()
                .forEach(l -> desk.as(SUE).records(new LesseningAgreed(l.by().entry(), "It is of that kind")));
        for (String left : category.functions()) {
            Map<String, ItemState> answers =
                    new HashMap<>(Objects.requireNonNull(allWorks(desk.sheet()).answers()));
            answers.put(left, ItemState.FAULTY);
            desk.as(INES).records(new FunctionChecked(answers, ""));
            assertMissing(true, desk, VerifyRequirement.FUNCTION_CHECKED);
            answers.remove(left);
            desk.as(INES).records(new FunctionChecked(answers, ""));
            assertMissing(true, desk, VerifyRequirement.FUNCTION_CHECKED);
        }
        meet(desk, VerifyRequirement.FUNCTION_CHECKED);
        assertMissing(false, desk, VerifyRequirement.FUNCTION_CHECKED);
    }

    @Test
    void checklistOfAnotherCategory_doesNotCount() {
        TicketFixture desk = atStep(Step.VERIFY);
        meet(desk, VerifyRequirement.FUNCTION_CHECKED);
        Opened o = desk.sheet().opened();
        Opened wired = new Opened(
                o.ticket(),
                o.title(),
                "",
                Category.WIRED,
                o.device(),
                o.place(),
                o.requester(),
                o.impact(),
                o.urgency(),
                o.assignee(),
                o.assigneeRoles());
        desk.as(INES).records(new Corrected(1, "Wrong kind", wired));
        assertMissing(true, desk, VerifyRequirement.FUNCTION_CHECKED);
    }

    @ParameterizedTest
    @EnumSource
    void onlyDisagreement_keepsTheStep(RequesterState state) {
        TicketFixture desk = atStep(Step.VERIFY);
        desk.as(INES).records(requester(state, 3));
        assertMissing(state == RequesterState.DISAGREES, desk, VerifyRequirement.REQUESTER_AGREES);
    }

    @Test
    void notReached_saysHowOften() {
        assertThrows(Invalid.class, () -> requester(RequesterState.NOT_REACHED, 0));
        assertThrows(Invalid.class, () -> requester(RequesterState.AGREES, -1));
        assertThrows(Invalid.class, () -> requester(RequesterState.AGREES, 1001));
        assertEquals(1, new RequesterAnswered(RequesterState.NOT_REACHED, 1, "").tries());
    }

    @Test
    void whatWasVerifiedInAnEarlierRound_isVerifiedAgain() {
        TicketFixture desk = demandingAtStep(Step.VERIFY);
        meetAll(desk);
        assertEquals(List.of(), desk.missing());
        desk.as(TOM).records(new VerifyFailed("Another fault appeared"));
        bring(desk, Step.VERIFY);
        assertEquals(
                Requirements.of(Step.VERIFY).stream().map(Requirement::code).toList(), desk.missing());
    }

    @Test
    void soakTime_isReachedToTheMinute() {
        TicketFixture desk = demandingAtStep(Step.VERIFY);
        int needed = (int) desk.policy().soakTime().toMinutes();
        desk.as(TOM).records(new SoakStarted(""));
        desk.passes(Duration.ofDays(9));
        desk.as(TOM).records(new SoakRun(needed - 1, false, ""));
        assertMissing(true, desk, VerifyRequirement.SOAK_TIME_PASSED);
        desk.as(TOM).records(new SoakRun(1, false, ""));
        assertMissing(false, desk, VerifyRequirement.SOAK_TIME_PASSED);
    }

    @Test
    void runsAreNoLongerThanTheTimeThatPassed() {
        TicketFixture desk = demandingAtStep(Step.VERIFY);
        desk.passes(Duration.ofDays(2));
        assertThrows(Invalid.class, () -> desk.as(TOM).does(new SoakRun(1, false, "")), "no run was started");
        desk.as(TOM).records(new SoakStarted(""));
        desk.as(TOM).lacks("soak-running", new SoakStarted(""));
        desk.passes(Duration.ofMinutes(60));
        // the fixture's clock goes on by one minute with every act: the refused start, the refused run, this one
        assertThrows(Invalid.class, () -> desk.as(TOM).does(new SoakRun(63, false, "")));
        desk.as(TOM).records(new SoakRun(63, false, ""));
        assertThrows(Invalid.class, () -> desk.as(TOM).does(new SoakRun(2, false, "")));
    }

    @Test
    void recurrence_endsTheSoak() {
        TicketFixture desk = demandingAtStep(Step.VERIFY);
        desk.as(TOM).records(new SoakStarted(""));
        desk.passes(Duration.ofDays(9));
        desk.as(TOM).records(new SoakRun(60, true, "Once"));
        desk.as(TOM).records(new SoakStarted(""));
        desk.passes(Duration.ofDays(9));
        desk.as(TOM).records(new SoakRun(5000, false, ""));
        assertMissing(true, desk, VerifyRequirement.SOAK_TIME_PASSED);
        desk.as(TOM).records(new VerifyFailed("It came back"));
        bring(desk, Step.VERIFY);
        meet(desk, VerifyRequirement.SOAK_TIME_PASSED);
        assertMissing(false, desk, VerifyRequirement.SOAK_TIME_PASSED);
    }

    @Test
    void intermittentByReproduction_asksForASoakToo() {
        TicketFixture desk = atStep(Step.VERIFY);
        assertMissing(false, desk, VerifyRequirement.SOAK_TIME_PASSED);
        desk.as(INES).records(new ReproductionTried(Reproduction.INTERMITTENT, "Now and then"));
        assertMissing(true, desk, VerifyRequirement.SOAK_TIME_PASSED);
    }

    @Test
    void reopened_needsAnotherThoughtOnPrevention() {
        TicketFixture desk = closed();
        desk.as(INES).records(new Reopened("It is back"));
        bring(desk, Step.VERIFY);
        assertMissing(true, desk, VerifyRequirement.PREVENTION_CONSIDERED);
        assertFalse(desk.sheet().all(PreventionConsidered.class).isEmpty());
    }

    @Test
    void requesterWhoSaidNo_isAskedUntilTheyAgree_inWhateverRound() {
        TicketFixture desk = atStep(Step.VERIFY);
        desk.as(INES).records(requester(RequesterState.DISAGREES, 0));
        desk.as(INES).records(requester(RequesterState.NOT_REACHED, 2));
        assertMissing(true, desk, VerifyRequirement.REQUESTER_AGREES);
        desk.as(INES).records(new VerifyFailed("They still see it"));
        bring(desk, Step.PLAN);
        desk.as(INES).records(anyAction());
        meetAll(desk);
        desk.as(INES).records(new Advanced());
        desk.as(INES).records(requester(RequesterState.NO_USER, 0));
        assertEquals(
                "The requester did not agree before: only that they agree now, or a waiver, answers that.",
                sentence(desk, "requester-agrees"));
        desk.as(INES).records(requester(RequesterState.AGREES, 0));
        assertMissing(false, desk, VerifyRequirement.REQUESTER_AGREES);
        desk.as(INES).records(requester(RequesterState.NOT_REACHED, 2));
        assertMissing(false, desk, VerifyRequirement.REQUESTER_AGREES);
    }

    @Test
    void requesterWhoWasNotAsked_isAsked() {
        assertTrue(sentence(atStep(Step.VERIFY), "requester-agrees").startsWith("Ask the requester"));
    }

    @Test
    void checklistOfWhichNothingApplies_isNoFunctionSeen() {
        TicketFixture desk = atStep(Step.VERIFY);
        Map<String, ItemState> answers =
                new HashMap<>(Objects.requireNonNull(allWorks(desk.sheet()).answers()));
        answers.replaceAll((text, state) -> ItemState.NOT_APPLICABLE);
        desk.as(INES).records(new FunctionChecked(answers, ""));
        assertTrue(sentence(desk, "function-checked").startsWith("Nothing of the checklist was seen working"));
    }

    /** As it was answered in earlier times: by the places in the list, of which some may be no more. */
    @Test
    void checklistAnsweredByPlaces_countsForTheTextsAtThosePlaces() {
        TicketFixture desk = atStep(Step.VERIFY);
        Map<Integer, ItemState> places = new HashMap<>();
        for (int place = -1; place <= Category.HEAT.functions().size(); place++) {
            places.put(place, ItemState.WORKS);
        }
        desk.as(INES).forces(new FunctionChecked(places, "", null));
        assertMissing(false, desk, VerifyRequirement.FUNCTION_CHECKED);
        places.put(0, ItemState.FAULTY);
        desk.as(INES).forces(new FunctionChecked(places, "", null));
        assertTrue(sentence(desk, "function-checked").startsWith("A function is faulty"));
    }

    @Test
    void whatComesUpWhileItIsWrittenDown_keepsTheTicketFromBeingClosed() {
        TicketFixture desk = atStep(Step.DOCUMENT);
        meetAll(desk);
        desk.as(INES).records(requester(RequesterState.DISAGREES, 0));
        desk.as(INES).lacks("requester-agrees", new Closed());
        desk.as(INES).records(requester(RequesterState.AGREES, 0));
        desk.as(INES).records(temperature("97", "processor"));
        desk.as(INES).lacks("readings-back", new Closed());
        desk.as(INES).records(temperature("70", "processor"));
        desk.as(INES).records(new Closed());
    }
}

package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.RuledOut;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.SoakTimeReckoned;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.Fit;
import org.benchtrail.core.method.plan.PartFitChecked;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.TestRequirement;
import org.benchtrail.core.method.theorize.TheorizeRequirement;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.core.method.verify.FunctionChecked;
import org.benchtrail.core.method.verify.ItemState;
import org.benchtrail.core.method.verify.RequesterState;
import org.benchtrail.core.method.verify.SoakRun;
import org.benchtrail.core.method.verify.SoakStarted;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** A waiver covers what was known when it was given: what is found afterwards is answered by itself, or waived anew. */
class WaivedBeforeTest {
    /** Nothing that is found later ends a waiver of these. */
    private static final Set<String> LASTING = Set.of(
            "changes-asked",
            "reproduced",
            "evidence-attached",
            "logs-reviewed",
            "simple-things-first",
            "maker-consulted",
            "knowledge-linked",
            "effort-recorded");

    private static Arguments row(
            Step step, String code, String what, Consumer<TicketFixture> lacking, Consumer<TicketFixture> afterwards) {
        return Arguments.of(code, what, step, lacking, afterwards);
    }

    private static Consumer<TicketFixture> records(Fact... facts) {
        return desk -> Stream.of(facts).forEach(desk.as(INES)::records);
    }

    private static Fact function(TicketFixture desk, ItemState first) {
        Map<String, ItemState> answers =
                new HashMap<>(Objects.requireNonNull(allWorks(desk.sheet()).answers()));
        answers.put(desk.sheet().checkedAs().functions().get(0), first);
        return new FunctionChecked(answers, "");
    }

    private static void checksFunctions(TicketFixture desk) {
        desk.as(INES).records(function(desk, ItemState.FAULTY));
    }

    private static void runsAgain(TicketFixture desk, boolean recurs) {
        desk.as(INES).records(new SoakStarted(""));
        desk.passes(Duration.ofHours(2));
        desk.as(INES).records(new SoakRun(60, recurs, ""));
    }

    private static Consumer<TicketFixture> corrects(Class<? extends Fact> kind, Fact replacement) {
        return desk -> desk.as(INES).records(new Corrected(desk.latest(kind), "Misheard", replacement));
    }

    private static Fact smell(boolean intermittent) {
        return new SymptomRecorded("It smells", "Warm plastic", intermittent);
    }

    private static ActionPlanned onStorage() {
        return action(false, true, false, false, null, null);
    }

    private static ActionPlanned with(String part) {
        return action(false, false, false, false, null, part);
    }

    private static void findsOldAnswer(TicketFixture desk) {
        desk.as(INES).records(onStorage());
        desk.passes(Duration.ofDays(3));
    }

    private static Consumer<TicketFixture> fit(Fit fit) {
        return desk -> desk.as(INES)
                .records(new PartFitChecked(desk.latest(ActionPlanned.class), fit, "Held one beside the other"));
    }

    private static void rulesOut(TicketFixture desk, String theory) {
        meet(desk, TheorizeRequirement.SIMPLE_THINGS_FIRST);
        desk.as(INES).records(choose(desk.as(INES).records(theory(theory))));
        desk.as(INES).records(new Advanced());
        meet(desk, TestRequirement.EXPECTATION_FIRST);
        desk.as(INES).records(result(desk.latest(CheckPlanned.class), CheckOutcome.REFUTES));
        desk.as(INES).records(new RuledOut());
    }

    /** Of two that were ruled out, the later one. */
    private static void choosesWhatWasRuledOut(TicketFixture desk) {
        rulesOut(desk, "Dust");
        rulesOut(desk, "Dry paste");
        meet(desk, TheorizeRequirement.SIMPLE_THINGS_FIRST);
        desk.as(INES).records(choose(desk.latest(TheoryStated.class)));
    }

    private static void choosesTheOther(TicketFixture desk) {
        desk.as(INES).records(choose(desk.sheet().all(TheoryStated.class).get(0).entry()));
    }

    static Stream<Arguments> whatEndsAWaiver() {
        Consumer<TicketFixture> hot = records(temperature("96", "processor"));
        Consumer<TicketFixture> comesAndGoes = records(anySymptom(true));
        return Stream.of(
                row(Step.VERIFY, "readings-back", "another point", hot, records(temperature("90", "memory"))),
                row(Step.VERIFY, "readings-back", "the same point", hot, records(temperature("97", "processor"))),
                row(Step.VERIFY, "function-checked", "a fault", d -> {}, WaivedBeforeTest::checksFunctions),
                row(Step.VERIFY, "requester-agrees", "a no", d -> {}, records(requester(RequesterState.DISAGREES, 0))),
                row(Step.VERIFY, "soak-time-passed", "another symptom", comesAndGoes, records(smell(true))),
                row(
                        Step.VERIFY,
                        "soak-time-passed",
                        "the symptom again",
                        comesAndGoes,
                        corrects(SymptomRecorded.class, smell(true))),
                row(
                        Step.VERIFY,
                        "soak-time-passed",
                        "a trial",
                        comesAndGoes,
                        records(new ReproductionTried(Reproduction.INTERMITTENT, "Twice in five"))),
                row(Step.VERIFY, "soak-time-passed", "it came back", comesAndGoes, d -> runsAgain(d, true)),
                row(
                        Step.VERIFY,
                        "soak-time-passed",
                        "a calculation",
                        comesAndGoes,
                        records(new SoakTimeReckoned(6_000, "Every ten hours"))),
                row(
                        Step.PLAN,
                        "data-still-protected",
                        "another action",
                        WaivedBeforeTest::findsOldAnswer,
                        records(onStorage())),
                row(Step.PLAN, "parts-fit", "another part", records(with("Fan")), records(with("Filter"))),
                row(
                        Step.PLAN,
                        "parts-fit",
                        "a part put in its place",
                        records(with("Fan")),
                        corrects(ActionPlanned.class, with("Filter"))),
                row(Step.PLAN, "parts-fit", "it does not fit", records(with("Fan")), fit(Fit.DOES_NOT_FIT)),
                row(
                        Step.THEORIZE,
                        "not-already-refuted",
                        "another theory",
                        WaivedBeforeTest::choosesWhatWasRuledOut,
                        WaivedBeforeTest::choosesTheOther),
                row(
                        Step.IDENTIFY,
                        "data-protected",
                        "another answer",
                        records(data(DataState.NOT_YET)),
                        records(data(DataState.NOT_YET))));
    }

    static Stream<Arguments> whatLeavesAWaiver() {
        Consumer<TicketFixture> hot = records(temperature("96", "processor"));
        Consumer<TicketFixture> comesAndGoes = records(anySymptom(true));
        return Stream.of(
                row(Step.VERIFY, "readings-back", "within", hot, records(temperature("60", "memory"))),
                row(
                        Step.VERIFY,
                        "requester-agrees",
                        "no answer",
                        records(requester(RequesterState.DISAGREES, 0)),
                        records(requester(RequesterState.NOT_REACHED, 2))),
                row(Step.VERIFY, "soak-time-passed", "a steady symptom", comesAndGoes, records(smell(false))),
                row(
                        Step.VERIFY,
                        "soak-time-passed",
                        "a trial that failed",
                        comesAndGoes,
                        records(new ReproductionTried(Reproduction.NO, "Not once in five"))),
                row(Step.VERIFY, "soak-time-passed", "a clean run", comesAndGoes, d -> runsAgain(d, false)),
                row(
                        Step.PLAN,
                        "data-still-protected",
                        "an action elsewhere",
                        WaivedBeforeTest::findsOldAnswer,
                        records(anyAction())),
                row(Step.PLAN, "parts-fit", "an action without a part", records(with("Fan")), records(anyAction())),
                row(Step.PLAN, "parts-fit", "one of two fits", records(with("Fan"), with("Filter")), fit(Fit.FITS)));
    }

    @Test
    void whatEndsItsWaiver_isSaidOfEveryRequirement() {
        Set<Object> rows = whatEndsAWaiver().map(row -> row.get()[0]).collect(Collectors.toSet());
        assertEquals(
                LASTING,
                Requirements.all().stream()
                        .filter(r -> r.waivable() && !rows.contains(r.code()))
                        .map(Requirement::code)
                        .collect(Collectors.toSet()),
                "say by 'waivableSince' what ends its waiver, and give it a row; or name it in LASTING");
    }

    private static TicketFixture waived(Step step, String code, Consumer<TicketFixture> lacking) {
        TicketFixture desk = atStep(step);
        lacking.accept(desk);
        assertEquals(Requirement.State.MISSING, status(desk, code).state(), "before the waiver");
        desk.as(SUE).records(waive(Requirements.of(code).orElseThrow()));
        assertEquals(Requirement.State.WAIVED, status(desk, code).state(), "after it");
        return desk;
    }

    @ParameterizedTest(name = "{0}: {1}")
    @MethodSource
    void whatEndsAWaiver(
            String code, String what, Step step, Consumer<TicketFixture> lacking, Consumer<TicketFixture> afterwards) {
        TicketFixture desk = waived(step, code, lacking);
        afterwards.accept(desk);
        assertEquals(Requirement.State.MISSING, status(desk, code).state(), what);
        desk.as(SUE).records(waive(Requirements.of(code).orElseThrow()));
        assertEquals(Requirement.State.WAIVED, status(desk, code).state(), "waived anew");
    }

    @ParameterizedTest(name = "{0}: {1}")
    @MethodSource
    void whatLeavesAWaiver(
            String code, String what, Step step, Consumer<TicketFixture> lacking, Consumer<TicketFixture> afterwards) {
        TicketFixture desk = waived(step, code, lacking);
        afterwards.accept(desk);
        assertEquals(Requirement.State.WAIVED, status(desk, code).state(), what);
    }
}

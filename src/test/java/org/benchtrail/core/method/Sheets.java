package org.benchtrail.core.method;

import java.time.Duration;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Lesson;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.core.method.document.Sureness;
import org.benchtrail.core.method.identify.ChangeAnswer;
import org.benchtrail.core.method.identify.ChangeKind;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.LikenessChecked;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.core.method.identify.StopWorkCleared;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.Fit;
import org.benchtrail.core.method.plan.MakerConsulted;
import org.benchtrail.core.method.plan.PartFitChecked;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.Inspection;
import org.benchtrail.core.method.theorize.Obvious;
import org.benchtrail.core.method.theorize.ObviousQuestioned;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.core.method.verify.FunctionChecked;
import org.benchtrail.core.method.verify.ItemState;
import org.benchtrail.core.method.verify.PreventionConsidered;
import org.benchtrail.core.method.verify.RequesterAnswered;
import org.benchtrail.core.method.verify.RequesterState;
import org.benchtrail.core.method.verify.SoakRun;
import org.benchtrail.core.method.verify.SoakStarted;
import org.benchtrail.core.method.verify.SymptomRechecked;

/** People, facts and ready-made sheets of the method's tests; {@code any...} where the content does not matter. */
final class Sheets {
    static final Actor INES = new Actor("ines", "Ines", Set.of(Role.TECHNICIAN));
    static final Actor OLE = new Actor("ole", "Ole", Set.of(Role.TECHNICIAN));
    static final Actor TOM = new Actor("tom", "Tom", Set.of(Role.TRAINEE));
    static final Actor MAREK = new Actor("marek", "Marek", Set.of(Role.TECHNICIAN, Role.MENTOR));
    static final Actor SUE = new Actor("sue", "Sue", Set.of(Role.SUPERVISOR));
    static final Actor BORIS = new Actor("boris", "Boris", Set.of(Role.SUPERVISOR));
    static final Actor ADA = new Actor("ada", "Ada", Set.of(Role.ADMINISTRATOR));
    static final List<Actor> EVERYBODY = List.of(INES, OLE, TOM, MAREK, SUE, BORIS, ADA);

    private Sheets() {}

    static Actor person(String account) {
        return EVERYBODY.stream()
                .filter(a -> a.account().equals(account))
                .findFirst()
                .orElseThrow();
    }

    /** A ticket of Ines of which no conditional requirement asks anything. */
    static TicketFixture plain() {
        return TicketFixture.open(opened(INES), INES);
    }

    /** A trainee's ticket on which every requirement of the table has something to ask. */
    static TicketFixture demanding() {
        return TicketFixture.open(opened(TOM), TOM);
    }

    static TicketFixture unassigned() {
        return TicketFixture.open(
                new Opened(
                        "40718-6",
                        "Nobody has it",
                        "",
                        Category.HEAT,
                        "Laptop",
                        "Desk",
                        1,
                        Priority.Impact.ONE_PERSON,
                        Priority.Urgency.HINDERED,
                        null,
                        Set.of()),
                INES);
    }

    static Opened opened(Actor assignee) {
        return new Opened(
                "40718-6",
                "Switches off after ten minutes",
                "",
                Category.HEAT,
                "Workstation by the window",
                "Drawing office",
                17,
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.HINDERED,
                assignee.account(),
                assignee.roles());
    }

    /** The plain ticket, brought to that step honestly. */
    static TicketFixture atStep(Step step) {
        return bring(plain(), step);
    }

    static TicketFixture demandingAtStep(Step step) {
        return bring(demanding(), step);
    }

    static TicketFixture closed() {
        TicketFixture desk = atStep(Step.DOCUMENT);
        meetAll(desk);
        desk.assignee().records(new Closed());
        return desk;
    }

    static TicketFixture cancelled() {
        TicketFixture desk = atStep(Step.TEST);
        desk.as(SUE).records(new Cancelled("Withdrawn", null));
        return desk;
    }

    static TicketFixture bring(TicketFixture desk, Step step) {
        while (desk.step() != step) {
            meetAll(desk);
            desk.assignee().records(new Advanced());
            if (desk.step() == Step.PLAN && isDemanding(desk)) {
                desk.passes(Duration.ofHours(25)); // the answer about data has grown old
            }
        }
        return desk;
    }

    static void meetAll(TicketFixture desk) {
        Requirements.of(desk.step()).forEach(r -> meet(desk, r));
    }

    static boolean isDemanding(TicketFixture desk) {
        return desk.sheet().workedBy(Role.TRAINEE);
    }

    /** Does what meets that requirement, by the person whose work it is. */
    static void meet(TicketFixture desk, Requirement requirement) {
        TicketFixture.Person worker = desk.assignee();
        JobSheet sheet = desk.sheet();
        boolean demanding = isDemanding(desk);
        switch (requirement.name()) {
            case "SYMPTOM_OBSERVED" -> worker.records(anySymptom(demanding));
            case "ONSET_KNOWN" -> worker.records(new OnsetRecorded(false, ""));
            case "CHANGES_ASKED" -> worker.records(anyChanges());
            case "SCOPE_KNOWN" -> worker.records(new ScopeRecorded(Scope.ONE, ""));
            case "REPRODUCED" -> worker.records(new ReproductionTried(Reproduction.YES, "Ran it for ten minutes"));
            case "HAZARDS_SCREENED" -> worker.records(noHazard());
            case "DATA_PROTECTED", "DATA_STILL_PROTECTED" -> worker.records(data(DataState.BACKUP_VERIFIED));
            case "EVIDENCE_ATTACHED" -> worker.records(temperature(demanding ? "96" : "71", "processor"));
            case "LOGS_REVIEWED" -> worker.records(new LogsReviewed(true, "Nothing"));
            case "LIKENESS_CHECKED" -> worker.records(new LikenessChecked(List.of()));
            case "SIMPLE_THINGS_FIRST" -> worker.records(anyObvious());
            case "THEORY_STATED" -> worker.records(theory("Cooler clogged with dust"));
            case "THEORY_CHOSEN" -> worker.records(choose(desk.latest(TheoryStated.class)));
            case "EXPECTATION_FIRST" -> worker.records(check(activeTheory(sheet)));
            case "RESULT_RECORDED" -> worker.records(result(desk.latest(CheckPlanned.class), CheckOutcome.SUPPORTS));
            case "NOT_ALREADY_REFUTED", "THEORY_SUPPORTED", "INVASIVE_GUARDED" -> {} // hold on an honest way
            case "ACTION_PLANNED" -> worker.records(demanding ? demandingAction() : anyAction());
            case "MAKER_CONSULTED" -> worker.records(new MakerConsulted(true, "Service manual, chapter 4"));
            case "PARTS_FIT" ->
                sheet.actions().forEach(a -> worker.records(new PartFitChecked(a.entry(), Fit.FITS, "Same socket")));
            case "PLAN_APPROVED" -> {
                if (demanding) {
                    desk.as(SUE).records(approve(sheet));
                }
            }
            case "CAUTIONS_TAKEN" ->
                sheet.actions()
                        .forEach(a -> worker.records(
                                new CautionsAcknowledged(a.entry(), a.fact().cautions())));
            case "ACTIONS_SETTLED" -> sheet.actions().forEach(a -> worker.records(carriedOut(a.entry())));
            case "SYMPTOMS_GONE" ->
                sheet.all(SymptomRecorded.class)
                        .forEach(s -> worker.records(new SymptomRechecked(s.entry(), true, "Two hours at full load")));
            case "READINGS_BACK" -> worker.records(temperature("68", "processor"));
            case "FUNCTION_CHECKED" -> worker.records(allWorks(sheet));
            case "REQUESTER_AGREES" -> worker.records(requester(RequesterState.AGREES, 0));
            case "PREVENTION_CONSIDERED" -> worker.records(new PreventionConsidered(true, "Clean it every half year"));
            case "SOAK_TIME_PASSED" -> {
                if (demanding) {
                    worker.records(new SoakStarted(""));
                    desk.passes(Duration.ofHours(48));
                    worker.records(new SoakRun(48 * 60, false, ""));
                }
            }
            case "CAUSE_NAMED" -> {
                worker.records(new CauseNamed("Clogged cooler", null, Sureness.BY_REPAIR));
                signAgain(desk);
            }
            case "SUMMARY_WRITTEN" -> {
                worker.records(anySummary());
                signAgain(desk);
            }
            case "KNOWLEDGE_LINKED" -> {
                worker.records(new KnowledgeLinked(Lesson.NOTHING, "A common cause"));
                signAgain(desk);
            }
            case "EFFORT_RECORDED" -> {
                worker.records(new EffortRecorded(45, ""));
                signAgain(desk);
            }
            case "MENTOR_SIGNED" -> {
                if (demanding) {
                    desk.as(MAREK).records(new Signed(Signatory.MENTOR));
                }
            }
            default -> throw new AssertionError("say in Sheets.meet how a test meets " + requirement);
        }
    }

    /** A signature is void as soon as what it stands for changes. */
    private static void signAgain(TicketFixture desk) {
        boolean summed = desk.sheet().latestOfRound(SummaryWritten.class).isPresent();
        if (summed) {
            desk.assignee().records(new Signed(Signatory.ASSIGNEE));
        }
        if (summed
                && desk.sheet()
                                .all(Signed.class, s -> s.fact().signatory() == Signatory.MENTOR)
                                .size()
                        > 0) {
            desk.as(MAREK).records(new Signed(Signatory.MENTOR));
        }
    }

    private static int activeTheory(JobSheet sheet) {
        return sheet.activeTheory().orElseThrow().entry();
    }

    static SymptomRecorded anySymptom(boolean intermittent) {
        return new SymptomRecorded("It dies on me", "Screen goes dark, fans stop", intermittent);
    }

    static ChangesAsked anyChanges() {
        Map<ChangeKind, ChangeAnswer> answers = new EnumMap<>(ChangeKind.class);
        for (ChangeKind change : ChangeKind.values()) {
            answers.put(change, ChangeAnswer.NO);
        }
        return new ChangesAsked(answers, "");
    }

    static HazardsScreened noHazard() {
        return new HazardsScreened(screen(null));
    }

    static HazardsScreened hazard(Hazard present) {
        return new HazardsScreened(screen(present));
    }

    private static Map<Hazard, Boolean> screen(@org.jspecify.annotations.Nullable Hazard present) {
        Map<Hazard, Boolean> answers = new EnumMap<>(Hazard.class);
        for (Hazard hazard : Hazard.values()) {
            answers.put(hazard, hazard == present);
        }
        return answers;
    }

    static StopWorkCleared cleared() {
        return new StopWorkCleared("Unplugged and aired", true);
    }

    static DataAnswered data(DataState state) {
        return new DataAnswered(state, "The encrypted disk cannot be read");
    }

    static FindingRecorded drive(boolean failing) {
        return new FindingRecorded("Reallocated sectors grow", failing);
    }

    /** In degrees Celsius, with 85 as the highest value that conforms. */
    static ReadingRecorded temperature(String value, String point) {
        return new ReadingRecorded("temperature", value, "Cel", point, "sensor", null, "85", "nameplate");
    }

    static ObviousQuestioned anyObvious() {
        Map<Obvious, Inspection> looks = new EnumMap<>(Obvious.class);
        for (Obvious obvious : Obvious.values()) {
            looks.put(obvious, Inspection.IN_ORDER);
        }
        return new ObviousQuestioned(looks, "");
    }

    static TheoryStated theory(String text) {
        return new TheoryStated(text, null);
    }

    static TheoryChosen choose(int theory) {
        return new TheoryChosen(theory, "", "");
    }

    static CheckPlanned check(int theory) {
        return new CheckPlanned(theory, "Open the cover and look", "Dust between the fins", false, Set.of());
    }

    static CheckPlanned invasive(int theory, Caution... cautions) {
        return new CheckPlanned(theory, "Take the cooler off", "Dry paste", true, Set.of(cautions));
    }

    static ResultRecorded result(int check, CheckOutcome outcome) {
        return new ResultRecorded(check, "A felt of dust", outcome, null);
    }

    static ActionPlanned anyAction() {
        return action(false, false, false, false, null, null);
    }

    static ActionPlanned action(
            boolean irreversible,
            boolean storage,
            boolean several,
            boolean risk,
            @org.jspecify.annotations.Nullable String cost,
            @org.jspecify.annotations.Nullable String part,
            Caution... cautions) {
        return new ActionPlanned(
                "Clean the cooler",
                "Temperature under load falls",
                "One person, half an hour",
                irreversible ? "" : "Put the cover back",
                irreversible,
                storage,
                several,
                risk,
                cost,
                part,
                Set.of(cautions));
    }

    static ActionPlanned demandingAction() {
        return action(true, true, false, false, "300", "Cooler 92 mm", Caution.MAINS, Caution.STATIC);
    }

    static ActionSettled carriedOut(int action) {
        return settled(action, Settlement.CARRIED_OUT);
    }

    static ActionSettled settled(int action, Settlement how) {
        return new ActionSettled(action, how, "As planned, or why not");
    }

    static PlanApproved approve(JobSheet sheet) {
        return new PlanApproved(
                sheet.actions().stream().map(StandingFact::entry).toList(), "");
    }

    static FunctionChecked allWorks(JobSheet sheet) {
        Map<String, ItemState> answers = new HashMap<>();
        for (String function : sheet.checkedAs().functions()) {
            answers.put(function, answers.isEmpty() ? ItemState.WORKS : ItemState.NOT_APPLICABLE);
        }
        return new FunctionChecked(answers, "");
    }

    static RequesterAnswered requester(RequesterState state, int tries) {
        return new RequesterAnswered(state, tries, "");
    }

    static SummaryWritten anySummary() {
        return new SummaryWritten("Dust", "Cleaned", "Runs cool");
    }

    static Waived waive(Requirement requirement) {
        return new Waived(requirement.code(), "Not possible on this device");
    }

    /** How a requirement of the present step stands. */
    static Requirement.Status status(TicketFixture desk, String code) {
        return Method.gate(desk.sheet(), desk.policy(), desk.now()).stream()
                .filter(s -> s.requirement().code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    /** What is said to be lacking; empty if nothing is. */
    static String sentence(TicketFixture desk, String code) {
        return status(desk, code).sentence();
    }
}

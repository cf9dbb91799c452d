package org.benchtrail.core.method;

import java.time.Duration;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.DeskFact.CautionsAcknowledged;
import org.benchtrail.core.method.DeskFact.Opened;
import org.benchtrail.core.method.DeskFact.Waived;
import org.benchtrail.core.method.DocumentFact.CauseNamed;
import org.benchtrail.core.method.DocumentFact.EffortRecorded;
import org.benchtrail.core.method.DocumentFact.KnowledgeLinked;
import org.benchtrail.core.method.DocumentFact.Signatory;
import org.benchtrail.core.method.DocumentFact.Signed;
import org.benchtrail.core.method.DocumentFact.SummaryWritten;
import org.benchtrail.core.method.IdentifyFact.Answer;
import org.benchtrail.core.method.IdentifyFact.Change;
import org.benchtrail.core.method.IdentifyFact.DataAnswered;
import org.benchtrail.core.method.IdentifyFact.DataState;
import org.benchtrail.core.method.IdentifyFact.FindingRecorded;
import org.benchtrail.core.method.IdentifyFact.Hazard;
import org.benchtrail.core.method.IdentifyFact.HazardsScreened;
import org.benchtrail.core.method.IdentifyFact.ReadingRecorded;
import org.benchtrail.core.method.IdentifyFact.SymptomRecorded;
import org.benchtrail.core.method.PlanFact.ActionPlanned;
import org.benchtrail.core.method.PlanFact.ActionSettled;
import org.benchtrail.core.method.PlanFact.Fit;
import org.benchtrail.core.method.PlanFact.Settlement;
import org.benchtrail.core.method.TestFact.CheckPlanned;
import org.benchtrail.core.method.TestFact.Outcome;
import org.benchtrail.core.method.TestFact.ResultRecorded;
import org.benchtrail.core.method.TheorizeFact.Look;
import org.benchtrail.core.method.TheorizeFact.Obvious;
import org.benchtrail.core.method.TheorizeFact.TheoryChosen;
import org.benchtrail.core.method.TheorizeFact.TheoryStated;
import org.benchtrail.core.method.VerifyFact.FunctionChecked;
import org.benchtrail.core.method.VerifyFact.ItemState;
import org.benchtrail.core.method.VerifyFact.RequesterState;
import org.benchtrail.core.method.VerifyFact.SoakRun;
import org.benchtrail.core.method.VerifyFact.SymptomRechecked;

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
        desk.assignee().records(new MoveFact.Closed());
        return desk;
    }

    static TicketFixture cancelled() {
        TicketFixture desk = atStep(Step.TEST);
        desk.as(SUE).records(new MoveFact.Cancelled("Withdrawn", null));
        return desk;
    }

    static TicketFixture bring(TicketFixture desk, Step step) {
        while (desk.step() != step) {
            meetAll(desk);
            desk.assignee().records(new MoveFact.Advanced());
            if (desk.step() == Step.PLAN && isDemanding(desk)) {
                desk.passes(Duration.ofHours(25)); // the answer about data has grown old
            }
        }
        return desk;
    }

    static void meetAll(TicketFixture desk) {
        Requirement.of(desk.step()).forEach(r -> meet(desk, r));
    }

    static boolean isDemanding(TicketFixture desk) {
        return desk.sheet().course().isTrainees();
    }

    /** Does what meets that requirement, by the person whose work it is. */
    static void meet(TicketFixture desk, Requirement requirement) {
        TicketFixture.Person worker = desk.assignee();
        JobSheet sheet = desk.sheet();
        boolean demanding = isDemanding(desk);
        switch (requirement) {
            case SYMPTOM_OBSERVED -> worker.records(anySymptom(demanding));
            case ONSET_KNOWN -> worker.records(new IdentifyFact.OnsetRecorded(false, ""));
            case CHANGES_ASKED -> worker.records(anyChanges());
            case SCOPE_KNOWN -> worker.records(new IdentifyFact.ScopeRecorded(IdentifyFact.Scope.ONE, ""));
            case REPRODUCED ->
                worker.records(
                        new IdentifyFact.ReproductionTried(IdentifyFact.Reproduction.YES, "Ran it for ten minutes"));
            case HAZARDS_SCREENED -> worker.records(noHazard());
            case DATA_PROTECTED, DATA_STILL_PROTECTED -> worker.records(data(DataState.BACKUP_VERIFIED));
            case EVIDENCE_ATTACHED -> worker.records(temperature(demanding ? "96" : "71", "processor"));
            case LOGS_REVIEWED -> worker.records(new IdentifyFact.LogsReviewed(true, "Nothing"));
            case LIKENESS_CHECKED -> worker.records(new IdentifyFact.LikenessChecked(List.of()));
            case OBVIOUS_QUESTIONED -> worker.records(anyObvious());
            case THEORY_STATED -> worker.records(theory("Cooler clogged with dust"));
            case THEORY_CHOSEN -> worker.records(choose(desk.latest(TheoryStated.class)));
            case EXPECTATION_FIRST -> worker.records(check(activeTheory(sheet)));
            case RESULT_RECORDED -> worker.records(result(desk.latest(CheckPlanned.class), Outcome.SUPPORTS));
            case NOT_ALREADY_REFUTED, THEORY_SUPPORTED, INVASIVE_GUARDED -> {} // hold on an honest way
            case ACTION_PLANNED -> worker.records(demanding ? demandingAction() : anyAction());
            case MAKER_CONSULTED -> worker.records(new PlanFact.MakerConsulted(true, "Service manual, chapter 4"));
            case PARTS_FIT ->
                sheet.actions()
                        .forEach(a -> worker.records(new PlanFact.PartFitChecked(a.entry(), Fit.FITS, "Same socket")));
            case PLAN_APPROVED -> {
                if (demanding) {
                    desk.as(SUE).records(approve(sheet));
                }
            }
            case CAUTIONS_TAKEN ->
                sheet.actions()
                        .forEach(a -> worker.records(
                                new CautionsAcknowledged(a.entry(), a.fact().cautions())));
            case ACTIONS_SETTLED -> sheet.actions().forEach(a -> worker.records(carriedOut(a.entry())));
            case SYMPTOMS_GONE ->
                sheet.all(SymptomRecorded.class)
                        .forEach(s -> worker.records(new SymptomRechecked(s.entry(), true, "Two hours at full load")));
            case READINGS_BACK -> worker.records(temperature("68", "processor"));
            case FUNCTION_CHECKED -> worker.records(allWorks(sheet));
            case REQUESTER_AGREES -> worker.records(requester(RequesterState.AGREES, 0));
            case PREVENTION_CONSIDERED ->
                worker.records(new VerifyFact.PreventionConsidered(true, "Clean it every half year"));
            case SOAK_TIME_PASSED -> {
                if (demanding) {
                    desk.passes(Duration.ofHours(48));
                    worker.records(new SoakRun(48 * 60, false, ""));
                }
            }
            case CAUSE_NAMED -> worker.records(new CauseNamed("Clogged cooler", null, DocumentFact.Sureness.BY_REPAIR));
            case SUMMARY_WRITTEN -> {
                worker.records(anySummary());
                worker.records(new Signed(Signatory.ASSIGNEE));
            }
            case KNOWLEDGE_LINKED ->
                worker.records(new KnowledgeLinked(DocumentFact.Learned.NOTHING, "A common cause"));
            case EFFORT_RECORDED -> worker.records(new EffortRecorded(45, ""));
            case MENTOR_SIGNED -> {
                if (demanding) {
                    desk.as(MAREK).records(new Signed(Signatory.MENTOR));
                }
            }
        }
    }

    private static int activeTheory(JobSheet sheet) {
        return sheet.activeTheory().orElseThrow().entry();
    }

    static SymptomRecorded anySymptom(boolean intermittent) {
        return new SymptomRecorded("It dies on me", "Screen goes dark, fans stop", intermittent);
    }

    static IdentifyFact.ChangesAsked anyChanges() {
        Map<Change, Answer> answers = new EnumMap<>(Change.class);
        for (Change change : Change.values()) {
            answers.put(change, Answer.NO);
        }
        return new IdentifyFact.ChangesAsked(answers, "");
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

    static IdentifyFact.StopWorkCleared cleared() {
        return new IdentifyFact.StopWorkCleared("Unplugged and aired", true);
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

    static TheorizeFact.ObviousQuestioned anyObvious() {
        Map<Obvious, Look> looks = new EnumMap<>(Obvious.class);
        for (Obvious obvious : Obvious.values()) {
            looks.put(obvious, Look.IN_ORDER);
        }
        return new TheorizeFact.ObviousQuestioned(looks, "");
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

    static ResultRecorded result(int check, Outcome outcome) {
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

    static PlanFact.PlanApproved approve(JobSheet sheet) {
        return new PlanFact.PlanApproved(
                sheet.actions().stream().map(Noted::entry).toList(), "");
    }

    static FunctionChecked allWorks(JobSheet sheet) {
        Map<Integer, ItemState> items = new HashMap<>();
        for (int i = 0; i < sheet.opened().category().functions().size(); i++) {
            items.put(i, i == 0 ? ItemState.WORKS : ItemState.NOT_APPLICABLE);
        }
        return new FunctionChecked(items, "");
    }

    static VerifyFact.RequesterAnswered requester(RequesterState state, int tries) {
        return new VerifyFact.RequesterAnswered(state, tries, "");
    }

    static SummaryWritten anySummary() {
        return new SummaryWritten("Dust", "Cleaned", "Runs cool");
    }

    static Waived waive(Requirement requirement) {
        return new Waived(requirement.code(), "Not possible on this device");
    }
}

package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;

import java.time.Duration;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.benchtrail.core.method.desk.*;
import org.benchtrail.core.method.document.*;
import org.benchtrail.core.method.identify.*;
import org.benchtrail.core.method.plan.*;
import org.benchtrail.core.method.test.*;
import org.benchtrail.core.method.theorize.*;
import org.benchtrail.core.method.verify.*;

/** Acts by chance from a seed: of every kind, sound and unsound, by anybody; some of them helpful, so that tickets get on. */
final class Gen {
    record Act(Actor actor, Fact fact) {}

    private final RandomGenerator random;

    Gen(long seed) {
        random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    }

    boolean chance(int percent) {
        return random.nextInt(100) < percent;
    }

    int below(int bound) {
        return random.nextInt(bound);
    }

    <T> T one(List<T> list) {
        return list.get(random.nextInt(list.size()));
    }

    <E extends Enum<E>> E one(Class<E> kind) {
        return one(List.of(kind.getEnumConstants()));
    }

    private String text() {
        return chance(3) ? " " : one(List.of("Dust", "dust", "Paste", "Supply", "Fan", "Board"));
    }

    /** Mostly an entry of that kind; now and then any number at all. */
    private int entry(JobSheet sheet, Class<? extends Fact> kind) {
        var fit = sheet.all(kind);
        return fit.isEmpty() || chance(5) ? random.nextInt(sheet.entries() + 3) : one(fit).entry();
    }

    private Set<Caution> cautions() {
        return chance(60) ? Set.of() : EnumSet.of(one(Caution.class));
    }

    /**
     * @throws org.benchtrail.core.Invalid now and then, as forms do
     */
    Act any(TicketFixture desk) {
        Actor actor = chance(50) ? desk.assigneeActor() : one(EVERYBODY);
        Supplier<Fact> kind = one(kinds(desk.sheet(), desk));
        return new Act(actor, kind.get());
    }

    private List<Supplier<Fact>> kinds(JobSheet s, TicketFixture desk) {
        return List.of(
                () -> new SymptomRecorded(text(), text(), chance(10)),
                () -> new OnsetRecorded(chance(50), text()),
                Sheets::anyChanges,
                () -> new ScopeRecorded(one(Scope.class), ""),
                () -> new ReproductionTried(one(Reproduction.class), text()),
                () -> chance(60) ? noHazard() : hazard(one(Hazard.class)),
                () -> new StopWorkCleared(text(), chance(90)),
                () -> data(one(DataState.class)),
                this::reading,
                () -> new ExtractRecorded(text(), text()),
                () -> new AttachmentAdded("a", "b", random.nextInt(9), "a".repeat(64), "c"),
                () -> new EvidenceImpossible(text()),
                () -> new LogsReviewed(chance(50), text()),
                () -> new LikenessChecked(List.of()),
                () -> drive(chance(20)),
                Sheets::anyObvious,
                () -> new TheoryStated(text(), chance(30) ? text() : null),
                () -> new TheoriesRanked(List.of(entry(s, TheoryStated.class)), text()),
                () -> new TheoryChosen(
                        entry(s, TheoryStated.class), chance(50) ? "" : text(), chance(80) ? "" : text()),
                () -> new CheckPlanned(
                        entry(s, TheoryStated.class), text(), chance(20) ? "" : text(), chance(30), cautions()),
                () -> new ResultRecorded(
                        entry(s, CheckPlanned.class),
                        text(),
                        one(CheckOutcome.class),
                        chance(80) ? null : entry(s, ReadingRecorded.class)),
                this::action,
                () -> new MakerConsulted(chance(50), text()),
                () -> new PartFitChecked(entry(s, ActionPlanned.class), one(Fit.class), text()),
                () -> new PartOverrideApproved(entry(s, ActionPlanned.class), text()),
                () -> chance(50) ? approve(s) : new PlanApproved(List.of(entry(s, ActionPlanned.class)), ""),
                () -> new PlanDeclined(text()),
                () -> new ActionSettled(entry(s, ActionPlanned.class), one(Settlement.class), text()),
                () -> new CautionsAcknowledged(random.nextInt(s.entries() + 2), cautions()),
                () -> new SymptomRechecked(entry(s, SymptomRecorded.class), chance(70), text()),
                () -> functions(s),
                () -> requester(one(RequesterState.class), random.nextInt(3)),
                () -> new PreventionConsidered(chance(50), text()),
                () -> new SoakStarted(""),
                () -> new SoakRun(random.nextInt(4000), chance(20), ""),
                () -> new LossAccepted(text(), text()),
                () -> new LesseningAgreed(lessening(s), text()),
                () -> new HandOverOffered(one(EVERYBODY).account(), ""),
                () -> new OfferWithdrawn(""),
                () -> new Asked(
                        one(AskKind.class),
                        chance(50) ? null : one(Requirements.all()).code(),
                        text()),
                () -> new Remarked(entry(s, Fact.class), null, text()),
                () -> new SentBack(text()),
                () -> new ForecastCommitted(ForecastKind.CAUSES, null, s.round(), "ab".repeat(32)),
                () -> new ForecastSkipped(ForecastKind.CAUSES_EARLY, "tom", text()),
                () -> new PresenceSigned(entry(s, Fact.class), "tom"),
                () -> new PresenceEnded(entry(s, PresenceSigned.class), chance(50), text()),
                () -> new Addendum(one(Addendum.About.class), text()),
                () -> new AddendumCountersigned(entry(s, Addendum.class), ""),
                () -> new CauseNamed(text(), null, one(Sureness.class)),
                Sheets::anySummary,
                () -> new Signed(one(Signatory.class)),
                () -> new KnowledgeLinked(one(Lesson.class), text()),
                () -> new EffortRecorded(random.nextInt(90), ""),
                () -> new Waived(one(Requirements.all()).code(), text()),
                () -> chance(50) && !desk.missing().isEmpty()
                        ? new Waived(one(desk.missing()), text())
                        : new Waived("unheard-of", text()),
                () -> correction(s),
                () -> correction(s),
                () -> opened(one(EVERYBODY)),
                () -> new Refused("Advanced", List.of("onset-known")),
                Advanced::new,
                Advanced::new,
                RuledOut::new,
                () -> new Rethought(text(), chance(50)),
                () -> new VerifyFailed(text()),
                Closed::new,
                () -> new Reopened(text()),
                () -> MovesTest.fact(Move.HOLD, desk),
                Resumed::new,
                this::handOver,
                () -> new Escalated(text(), text()),
                () -> new Returned(text()),
                () -> new Cancelled(text(), chance(97) ? "40718-6" : null));
    }

    private int lessening(JobSheet sheet) {
        List<Lessening> waiting = sheet.lessenings();
        return waiting.isEmpty() ? below(40) : one(waiting).by().entry();
    }

    private MoveFact handOver() {
        Actor to = one(List.of(INES, OLE, TOM, MAREK, SUE));
        return new HandedOver(to.account(), to.roles(), "");
    }

    private ReadingRecorded reading() {
        return temperature(Integer.toString(60 + random.nextInt(40)), one(List.of("processor", "Processor", "room")));
    }

    private ActionPlanned action() {
        Caution[] asked = cautions().toArray(new Caution[0]);
        return Sheets.action(
                chance(15),
                chance(25),
                chance(10),
                chance(10),
                chance(70) ? null : one(List.of("250", "250.01", "200")),
                chance(70) ? null : "Fan",
                asked);
    }

    private FunctionChecked functions(JobSheet sheet) {
        Map<String, ItemState> answers = new HashMap<>();
        for (String function : sheet.checkedAs().functions()) {
            if (chance(90)) {
                answers.put(function, chance(90) ? ItemState.WORKS : one(ItemState.class));
            }
        }
        return new FunctionChecked(answers, "");
    }

    private Corrected correction(JobSheet sheet) {
        StandingFact<?> old = one(sheet.facts());
        Fact now = old.fact();
        if (now instanceof FindingRecorded) {
            now = drive(chance(50));
        } else if (now instanceof SymptomRecorded) {
            now = anySymptom(chance(20));
        } else if (now instanceof ReadingRecorded) {
            now = reading();
        } else if (now instanceof ActionPlanned) {
            now = action();
        } else if (now instanceof CheckPlanned check) {
            now = chance(80) ? check(check.theory()) : check(entry(sheet, TheoryStated.class));
        } else if (now instanceof TheoryStated) {
            now = theory(text());
        }
        return new Corrected(chance(97) ? old.entry() : below(99), text(), chance(20) ? null : now);
    }

    /** What brings the ticket on, by who may do it. */
    Act helpful(TicketFixture desk) {
        JobSheet sheet = desk.sheet();
        Actor worker = desk.assigneeActor();
        if (sheet.course().standing() == Standing.CLOSED) {
            return new Act(one(EVERYBODY), new Reopened("It is back"));
        }
        if (sheet.course().hold() != null) {
            return new Act(worker, new Resumed());
        }
        if (sheet.course().offered() != null && chance(50)) {
            Actor taker = person(String.valueOf(sheet.course().offered()));
            return new Act(taker, new HandedOver(taker.account(), taker.roles(), ""));
        }
        if (!sheet.lessenings().isEmpty() && chance(30)) {
            return new Act(one(List.of(SUE, BORIS)), new LesseningAgreed(lessening(sheet), "It was a slip"));
        }
        List<String> missing = desk.missing();
        if (missing.isEmpty()) {
            return new Act(worker, sheet.step() == Step.DOCUMENT ? new Closed() : new Advanced());
        }
        Requirement first =
                Requirements.of(chance(70) ? missing.get(0) : one(missing)).orElseThrow();
        if (first.waivable() && chance(10)) {
            return new Act(chance(50) ? SUE : BORIS, waive(first));
        }
        return help(first, desk, worker);
    }

    private Act help(Requirement missing, TicketFixture desk, Actor worker) {
        JobSheet s = desk.sheet();
        return switch (missing.name()) {
            case "SYMPTOM_OBSERVED" -> new Act(worker, anySymptom(chance(10)));
            case "ONSET_KNOWN" -> new Act(worker, new OnsetRecorded(false, ""));
            case "CHANGES_ASKED" -> new Act(worker, anyChanges());
            case "SCOPE_KNOWN" -> new Act(worker, new ScopeRecorded(one(Scope.class), ""));
            case "REPRODUCED" -> new Act(worker, new ReproductionTried(Reproduction.YES, "Ran it"));
            case "HAZARDS_SCREENED" -> new Act(worker, s.workStopped() ? cleared() : noHazard());
            case "DATA_PROTECTED", "DATA_STILL_PROTECTED" -> new Act(worker, data(DataState.TAKEN_NOW));
            case "EVIDENCE_ATTACHED" -> new Act(worker, reading());
            case "LOGS_REVIEWED" -> new Act(worker, new LogsReviewed(true, "Nothing"));
            case "LIKENESS_CHECKED" -> new Act(worker, new LikenessChecked(List.of()));
            case "SIMPLE_THINGS_FIRST" -> new Act(worker, anyObvious());
            case "THEORY_STATED" -> new Act(worker, theory("Cause " + below(1000)));
            case "THEORY_CHOSEN", "NOT_ALREADY_REFUTED" -> new Act(worker, choice(s));
            case "EXPECTATION_FIRST" -> new Act(worker, planCheck(s));
            case "RESULT_RECORDED", "INVASIVE_GUARDED" -> new Act(worker, makeCheck(s));
            case "THEORY_SUPPORTED" -> new Act(worker, settleTheory(s));
            case "ACTION_PLANNED" -> new Act(worker, action());
            case "MAKER_CONSULTED" -> new Act(worker, new MakerConsulted(true, "Manual"));
            case "PARTS_FIT" -> new Act(worker, new PartFitChecked(entry(s, ActionPlanned.class), Fit.FITS, "Socket"));
            case "PLAN_APPROVED" -> new Act(one(List.of(SUE, BORIS, MAREK)), approve(s));
            case "CAUTIONS_TAKEN" -> acknowledge(s, worker);
            case "ACTIONS_SETTLED" -> new Act(worker, carryOut(s));
            case "SYMPTOMS_GONE" -> new Act(worker, new SymptomRechecked(owedSymptom(s), true, "Ran it"));
            case "READINGS_BACK" -> new Act(worker, temperature("65", one(List.of("processor", "room"))));
            case "FUNCTION_CHECKED" -> new Act(worker, allWorks(s));
            case "REQUESTER_AGREES" -> new Act(worker, requester(RequesterState.AGREES, 0));
            case "PREVENTION_CONSIDERED" -> new Act(worker, new PreventionConsidered(true, "Filters"));
            case "SOAK_TIME_PASSED" -> soak(desk, worker);
            case "CAUSE_NAMED" -> new Act(worker, new CauseNamed("Dust", null, Sureness.PRESUMED));
            case "SUMMARY_WRITTEN" ->
                new Act(
                        worker,
                        s.latestOfRound(SummaryWritten.class).isEmpty()
                                ? anySummary()
                                : new Signed(Signatory.ASSIGNEE));
            case "KNOWLEDGE_LINKED" -> new Act(worker, new KnowledgeLinked(Lesson.NOTHING, "Common"));
            case "EFFORT_RECORDED" -> new Act(worker, new EffortRecorded(30, ""));
            case "MENTOR_SIGNED" -> new Act(MAREK, new Signed(Signatory.MENTOR));
            default -> throw new AssertionError("say in Gen.help how a walk meets " + missing);
        };
    }

    private int owedSymptom(JobSheet s) {
        var owed = s.owed(SymptomRecorded.class);
        return owed.isEmpty() ? 1 : one(owed).entry();
    }

    private Fact choice(JobSheet s) {
        var open = s.openTheories();
        return open.isEmpty()
                ? theory("Cause " + below(1000))
                : new TheoryChosen(one(open).entry(), "Easiest to see", chance(50) ? "" : "Something new");
    }

    private Fact planCheck(JobSheet s) {
        return s.activeTheory()
                .<Fact>map(t -> chance(70) ? check(t.entry()) : invasive(t.entry(), Caution.STATIC))
                .orElseGet(() -> theory("Cause " + below(1000)));
    }

    private Fact makeCheck(JobSheet s) {
        var open = s.all(
                CheckPlanned.class,
                c -> c.round() == s.round() && s.result(c.entry()).isEmpty());
        if (open.isEmpty()) {
            return planCheck(s);
        }
        var check = one(open);
        boolean cautions = !check.fact().cautions().isEmpty() && chance(50);
        return cautions
                ? new CautionsAcknowledged(check.entry(), check.fact().cautions())
                : result(check.entry(), chance(80) ? CheckOutcome.SUPPORTS : one(CheckOutcome.class));
    }

    private Fact settleTheory(JobSheet s) {
        return chance(30) ? new RuledOut() : makeCheck(s);
    }

    private Act acknowledge(JobSheet s, Actor worker) {
        return s.actions().isEmpty() ? new Act(worker, action()) : new Act(worker, acknowledgement(one(s.actions())));
    }

    private static CautionsAcknowledged acknowledgement(StandingFact<ActionPlanned> action) {
        return new CautionsAcknowledged(action.entry(), action.fact().cautions());
    }

    private Fact carryOut(JobSheet s) {
        var open = s.actions().stream()
                .filter(a -> s.settlement(a.entry()).isEmpty())
                .toList();
        if (open.isEmpty()) {
            return chance(50) ? new Rethought("It failed", chance(50)) : action();
        }
        return settled(one(open).entry(), chance(90) ? Settlement.CARRIED_OUT : one(Settlement.class));
    }

    private Act soak(TicketFixture desk, Actor worker) {
        boolean recurred = desk
                .sheet()
                .all(SoakRun.class, r -> r.entry() > desk.sheet().lastWork())
                .stream()
                .anyMatch(r -> r.fact().recurred());
        if (recurred) {
            return new Act(worker, new VerifyFailed("It came back"));
        }
        if (SoakTime.running(desk.sheet()).isEmpty()) {
            return new Act(worker, new SoakStarted(""));
        }
        desk.passes(Duration.ofHours(49));
        return new Act(worker, new SoakRun(48 * 60, false, ""));
    }
}

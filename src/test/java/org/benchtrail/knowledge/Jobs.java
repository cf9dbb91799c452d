package org.benchtrail.knowledge;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.core.method.document.Sureness;
import org.benchtrail.core.method.identify.ChangeAnswer;
import org.benchtrail.core.method.identify.ChangeKind;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.LikenessChecked;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.MakerConsulted;
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
import org.benchtrail.core.method.verify.SymptomRechecked;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.TicketActs;

/** Tickets brought to their end the honest way. */
final class Jobs {
    static final Actor INES = new Actor("know-ines", "Ines", Set.of(Role.TECHNICIAN));
    static final Actor OLE = new Actor("know-ole", "Ole", Set.of(Role.TECHNICIAN));
    static final Actor SUE = new Actor("know-sue", "Sue", Set.of(Role.SUPERVISOR));

    private final TicketActs acts;

    Jobs(TicketActs acts) {
        this.acts = acts;
    }

    /** What a ticket is about. */
    record Job(String title, String device, String symptom, String cause, String observation, String cure) {}

    TicketNumber close(Actor who, Job job, KnowledgeLinked linked, Fact... more) {
        TicketNumber number = open(who, job);
        work(number, 1, who, job, linked, more);
        return number;
    }

    /** Opened, and its first symptom recorded. */
    TicketNumber begin(Actor who, Job job, Fact... more) {
        TicketNumber number = open(who, job);
        List<Act> all = new ArrayList<>(List.of(s -> new SymptomRecorded("It fails", job.symptom(), false)));
        for (Fact fact : more) {
            all.add(s -> fact);
        }
        done(acts.perform(number, 1, all, who));
        return number;
    }

    private TicketNumber open(Actor who, Job job) {
        return open(who, job, false);
    }

    /** Opened, and left to whoever takes it. */
    TicketNumber queue(Actor who, Job job) {
        return open(who, job, true);
    }

    private TicketNumber open(Actor who, Job job, boolean queued) {
        NewTicket report = new NewTicket(
                job.title(),
                "",
                Category.HEAT,
                job.device(),
                "Drawing office",
                "Rae",
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                queued);
        return acts.open(report, who).number();
    }

    void reopen(TicketNumber number, int version, Actor who, String reason) {
        done(acts.perform(number, version, List.<Act>of(s -> new Reopened(reason)), who));
    }

    int version(TicketNumber number, org.benchtrail.ticket.TicketQueries look) {
        return look.ticket(number, INES).sheet().entries();
    }

    /** From identify to the end. */
    void work(TicketNumber number, int version, Actor who, Job job, KnowledgeLinked linked, Fact... findings) {
        List<Act> all = new ArrayList<>();
        identify(all, job);
        for (Fact finding : findings) {
            all.add(s -> finding);
        }
        all.add(s -> new Advanced());
        theorizeAndTest(all, job);
        // the result takes a later request than the check, and what was done one later than its cautions
        int checked = does(number, version, all, all.size() - 2, who);
        planAndVerify(all, job);
        int ready = does(number, checked, all, 2 + 3, who);
        all.add(s -> new CauseNamed(job.cause(), null, Sureness.MEASURED));
        all.add(s -> new SummaryWritten("Found " + job.observation(), job.cure(), "Runs"));
        all.add(s -> linked);
        all.add(s -> new EffortRecorded(45, ""));
        all.add(s -> new Signed(Signatory.ASSIGNEE));
        all.add(s -> new Closed());
        does(number, ready, all, all.size(), who);
    }

    /** Does the first acts of the list, and takes them off it; answers with the version. */
    private int does(TicketNumber number, int version, List<Act> all, int first, Actor who) {
        Outcome outcome = acts.perform(number, version, List.copyOf(all.subList(0, first)), who);
        done(outcome);
        all.subList(0, first).clear();
        return outcome.sheet().entries();
    }

    private static void done(Outcome outcome) {
        if (outcome.refused()) {
            throw new AssertionError(outcome.missing().toString());
        }
    }

    private static void identify(List<Act> all, Job job) {
        all.add(s -> new SymptomRecorded("It fails", job.symptom(), false));
        all.add(s -> new OnsetRecorded(false, ""));
        all.add(s -> new ChangesAsked(each(ChangeKind.class, ChangeAnswer.NO), ""));
        all.add(s -> new ScopeRecorded(Scope.ONE, ""));
        all.add(s -> new ReproductionTried(Reproduction.YES, "Tried"));
        all.add(s -> new HazardsScreened(each(Hazard.class, false)));
        all.add(s -> new DataAnswered(DataState.BACKUP_VERIFIED, "Restored a file"));
        all.add(s -> new ExtractRecorded("system log", "Warm air"));
        all.add(s -> new LogsReviewed(true, "Nothing"));
        all.add(s -> new LikenessChecked(List.of()));
    }

    private static void theorizeAndTest(List<Act> all, Job job) {
        all.add(s -> new ObviousQuestioned(each(Obvious.class, Inspection.IN_ORDER), ""));
        all.add(s -> new TheoryStated(job.cause() + " (round " + s.round() + ")", null));
        all.add(s -> new TheoryChosen(s.entries(), "First", ""));
        all.add(s -> new Advanced());
        all.add(s -> new CheckPlanned(s.activeTheory().orElseThrow().entry(), "Look", "It is so", false, Set.of()));
        all.add(s -> new ResultRecorded(s.entries(), job.observation(), CheckOutcome.SUPPORTS, null));
        all.add(s -> new Advanced());
    }

    private static void planAndVerify(List<Act> all, Job job) {
        all.add(s -> new ActionPlanned(
                job.cure(), "Works", "One person", "Undo it", false, false, false, false, null, null, Set.of()));
        all.add(s -> new MakerConsulted(true, "Manual, chapter 4"));
        all.add(s -> new CautionsAcknowledged(
                s.actions().get(0).entry(), s.actions().get(0).fact().cautions()));
        all.add(s -> new ActionSettled(s.actions().get(0).entry(), Settlement.CARRIED_OUT, ""));
        all.add(s -> new Advanced());
        all.add(s -> new SymptomRechecked(s.all(SymptomRecorded.class).get(0).entry(), true, "An hour"));
        all.add(s -> new SymptomRechecked(
                s.latest(SymptomRecorded.class).orElseThrow().entry(), true, "An hour"));
        Map<String, ItemState> works = new HashMap<>();
        Category.HEAT.functions().forEach(function -> works.put(function, ItemState.WORKS));
        all.add(s -> new FunctionChecked(works, ""));
        all.add(s -> new RequesterAnswered(RequesterState.AGREES, 0, ""));
        all.add(s -> new PreventionConsidered(true, "Clean it"));
        all.add(s -> new Advanced());
    }

    private static <K extends Enum<K>, V> Map<K, V> each(Class<K> keys, V value) {
        Map<K, V> map = new EnumMap<>(keys);
        for (K key : keys.getEnumConstants()) {
            map.put(key, value);
        }
        return map;
    }
}

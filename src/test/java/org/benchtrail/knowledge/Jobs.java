package org.benchtrail.knowledge;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.DocumentFact;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.IdentifyFact;
import org.benchtrail.core.method.MoveFact;
import org.benchtrail.core.method.PlanFact;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TestFact;
import org.benchtrail.core.method.TheorizeFact;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.VerifyFact;
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

    TicketNumber close(Actor who, Job job, DocumentFact.KnowledgeLinked linked, Fact... more) {
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
                false);
        TicketNumber number = acts.open(report, who).number();
        work(number, 1, who, job, linked, more);
        return number;
    }

    void reopen(TicketNumber number, int version, Actor who, String reason) {
        done(acts.perform(number, version, List.<Act>of(s -> new MoveFact.Reopened(reason)), who));
    }

    int version(TicketNumber number, org.benchtrail.ticket.TicketLook look) {
        return look.ticket(number, INES).sheet().entries();
    }

    /** From identify to the end. */
    void work(
            TicketNumber number,
            int version,
            Actor who,
            Job job,
            DocumentFact.KnowledgeLinked linked,
            Fact... findings) {
        List<Act> all = new ArrayList<>();
        identify(all, job);
        for (Fact finding : findings) {
            all.add(s -> finding);
        }
        all.add(s -> new MoveFact.Advanced());
        theorizeAndTest(all, job);
        planAndVerify(all, job);
        all.add(s -> new DocumentFact.CauseNamed(job.cause(), null, DocumentFact.Sureness.MEASURED));
        all.add(s -> new DocumentFact.SummaryWritten("Found " + job.observation(), job.cure(), "Runs"));
        all.add(s -> new DocumentFact.Signed(DocumentFact.Signatory.ASSIGNEE));
        all.add(s -> linked);
        all.add(s -> new DocumentFact.EffortRecorded(45, ""));
        all.add(s -> new MoveFact.Closed());
        done(acts.perform(number, version, all, who));
    }

    private static void done(Outcome outcome) {
        if (outcome.refused()) {
            throw new AssertionError(outcome.missing().toString());
        }
    }

    private static void identify(List<Act> all, Job job) {
        all.add(s -> new IdentifyFact.SymptomRecorded("It fails", job.symptom(), false));
        all.add(s -> new IdentifyFact.OnsetRecorded(false, ""));
        all.add(s -> new IdentifyFact.ChangesAsked(each(IdentifyFact.Change.class, IdentifyFact.Answer.NO), ""));
        all.add(s -> new IdentifyFact.ScopeRecorded(IdentifyFact.Scope.ONE, ""));
        all.add(s -> new IdentifyFact.ReproductionTried(IdentifyFact.Reproduction.YES, "Tried"));
        all.add(s -> new IdentifyFact.HazardsScreened(each(IdentifyFact.Hazard.class, false)));
        all.add(s -> new IdentifyFact.DataAnswered(IdentifyFact.DataState.BACKUP_VERIFIED, "Restored a file"));
        all.add(s -> new IdentifyFact.ExtractRecorded("system log", "Warm air"));
        all.add(s -> new IdentifyFact.LogsReviewed(true, "Nothing"));
        all.add(s -> new IdentifyFact.LikenessChecked(List.of()));
    }

    private static void theorizeAndTest(List<Act> all, Job job) {
        all.add(s ->
                new TheorizeFact.ObviousQuestioned(each(TheorizeFact.Obvious.class, TheorizeFact.Look.IN_ORDER), ""));
        all.add(s -> new TheorizeFact.TheoryStated(job.cause() + " (round " + s.round() + ")", null));
        all.add(s -> new TheorizeFact.TheoryChosen(s.entries(), "First", ""));
        all.add(s -> new MoveFact.Advanced());
        all.add(s ->
                new TestFact.CheckPlanned(s.activeTheory().orElseThrow().entry(), "Look", "It is so", false, Set.of()));
        all.add(s -> new TestFact.ResultRecorded(s.entries(), job.observation(), TestFact.Outcome.SUPPORTS, null));
        all.add(s -> new MoveFact.Advanced());
    }

    private static void planAndVerify(List<Act> all, Job job) {
        all.add(s -> new PlanFact.ActionPlanned(
                job.cure(), "Works", "One person", "Undo it", false, false, false, false, null, null, Set.of()));
        all.add(s -> new PlanFact.MakerConsulted(true, "Manual, chapter 4"));
        all.add(s -> new PlanFact.ActionSettled(s.actions().get(0).entry(), PlanFact.Settlement.CARRIED_OUT, ""));
        all.add(s -> new MoveFact.Advanced());
        all.add(s -> new VerifyFact.SymptomRechecked(
                s.all(IdentifyFact.SymptomRecorded.class).get(0).entry(), true, "An hour"));
        all.add(s -> new VerifyFact.SymptomRechecked(
                s.latest(IdentifyFact.SymptomRecorded.class).orElseThrow().entry(), true, "An hour"));
        Map<Integer, VerifyFact.ItemState> works = new HashMap<>();
        for (int i = 0; i < Category.HEAT.functions().size(); i++) {
            works.put(i, VerifyFact.ItemState.WORKS);
        }
        all.add(s -> new VerifyFact.FunctionChecked(works, ""));
        all.add(s -> new VerifyFact.RequesterAnswered(VerifyFact.RequesterState.AGREES, 0, ""));
        all.add(s -> new VerifyFact.PreventionConsidered(true, "Clean it"));
        all.add(s -> new MoveFact.Advanced());
    }

    private static <K extends Enum<K>, V> Map<K, V> each(Class<K> keys, V value) {
        Map<K, V> map = new EnumMap<>(keys);
        for (K key : keys.getEnumConstants()) {
            map.put(key, value);
        }
        return map;
    }
}

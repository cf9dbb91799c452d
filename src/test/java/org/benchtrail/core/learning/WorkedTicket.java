package org.benchtrail.core.learning;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Opened;
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
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.FindingAnswered;
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
import org.jspecify.annotations.Nullable;

/** A ticket worked from report to closure, as far as the tests care: what it answers, what it tests, what cause it names. */
public final class WorkedTicket {
    static final Instant START = Instant.parse("2031-03-03T08:00:00Z");

    private final String cause;
    private final @Nullable String causeId;
    private final List<Fact> intake = new ArrayList<>();
    private final List<Fact> beforeTest = new ArrayList<>();
    private final List<Fact> afterRepair = new ArrayList<>();
    private Category category = Category.HEAT;
    private String place = "Larkfield Surveyors, drawing office";
    private Sureness sureness = Sureness.MEASURED;
    private @Nullable String checked;
    private @Nullable String answer;

    public WorkedTicket(String cause, @Nullable String causeId) {
        this.cause = cause;
        this.causeId = causeId;
    }

    public WorkedTicket of(Category kind) {
        category = kind;
        return this;
    }

    public WorkedTicket at(String where) {
        place = where;
        return this;
    }

    public WorkedTicket sure(Sureness how) {
        sureness = how;
        return this;
    }

    /** Answered while the problem is identified. */
    public WorkedTicket answers(String finding, String value) {
        return identifies(new FindingAnswered(finding, finding + "?", value, Source.SEEN));
    }

    public WorkedTicket identifies(Fact fact) {
        intake.add(fact);
        return this;
    }

    /** Recorded in theorize, before the theory is chosen. */
    public WorkedTicket theorizes(Fact fact) {
        beforeTest.add(fact);
        return this;
    }

    /** The finding that the decisive check answers. */
    public WorkedTicket checks(String finding, String value) {
        checked = finding;
        answer = value;
        return this;
    }

    public WorkedTicket verifies(Fact fact) {
        afterRepair.add(fact);
        return this;
    }

    public Category category() {
        return category;
    }

    public String place() {
        return place;
    }

    /** Everything after the opening, each fact made when its turn comes. */
    public List<Function<JobSheet, Fact>> facts() {
        List<Function<JobSheet, Fact>> all = untilTest();
        test(all);
        plan(all);
        verify(all);
        document(all);
        return all;
    }

    /**
     * The facts from one place to another, parted into requests: the result of the check takes a later request than the check, and
     * what was done a later one than its cautions.
     */
    public List<List<Function<JobSheet, Fact>>> requests(int from, int to) {
        int result = untilTest().size() + 2;
        int settled = result + 5;
        List<List<Function<JobSheet, Fact>>> requests = new ArrayList<>();
        int begin = from;
        for (int cut : new int[] {result, settled, to}) {
            if (begin < Math.min(cut, to)) {
                requests.add(facts().subList(begin, Math.min(cut, to)));
                begin = Math.min(cut, to);
            }
        }
        return requests;
    }

    private List<Function<JobSheet, Fact>> untilTest() {
        List<Function<JobSheet, Fact>> all = new ArrayList<>();
        identify(all);
        intake.forEach(f -> all.add(s -> f));
        all.add(s -> new Advanced());
        theorize(all);
        return all;
    }

    private static void identify(List<Function<JobSheet, Fact>> all) {
        all.add(s -> new SymptomRecorded("It dies on me", "Screen goes dark", false));
        all.add(s -> new OnsetRecorded(false, ""));
        all.add(s -> new ChangesAsked(same(ChangeKind.class, ChangeAnswer.NO), ""));
        all.add(s -> new ScopeRecorded(Scope.ONE, ""));
        all.add(s -> new ReproductionTried(Reproduction.YES, "Ten minutes of load"));
        all.add(s -> new HazardsScreened(same(Hazard.class, false)));
        all.add(s -> new DataAnswered(DataState.BACKUP_VERIFIED, ""));
        all.add(s -> new ExtractRecorded("system log", "thermal trip"));
        all.add(s -> new LogsReviewed(true, "Thermal trips"));
        all.add(s -> new LikenessChecked(List.of()));
    }

    private static <K extends Enum<K>, V> Map<K, V> same(Class<K> keys, V value) {
        Map<K, V> map = new EnumMap<>(keys);
        for (K key : keys.getEnumConstants()) {
            map.put(key, value);
        }
        return map;
    }

    private void theorize(List<Function<JobSheet, Fact>> all) {
        all.add(s -> new ObviousQuestioned(same(Obvious.class, Inspection.IN_ORDER), ""));
        beforeTest.forEach(f -> all.add(s -> f));
        all.add(s -> new TheoryStated(cause, causeId));
        all.add(s -> new TheoryChosen(latest(s, TheoryStated.class), "Most likely here", ""));
        all.add(s -> new Advanced());
    }

    private static int latest(JobSheet sheet, Class<? extends Fact> kind) {
        return sheet.latest(kind).orElseThrow().entry();
    }

    private void test(List<Function<JobSheet, Fact>> all) {
        all.add(s ->
                new CheckPlanned(latest(s, TheoryStated.class), "Look", "It shows", false, Set.of(), checked, null));
        all.add(s -> new CautionsAcknowledged(
                latest(s, CheckPlanned.class),
                s.latest(CheckPlanned.class).orElseThrow().fact().cautions()));
        all.add(s -> new ResultRecorded(
                latest(s, CheckPlanned.class), "It shows", CheckOutcome.SUPPORTS, null, answer, null));
        all.add(s -> new Advanced());
    }

    private static void plan(List<Function<JobSheet, Fact>> all) {
        all.add(s -> new ActionPlanned(
                "Put it right",
                "It runs",
                "One person, ten minutes",
                "Put it back",
                false,
                false,
                false,
                false,
                null,
                null,
                Set.of()));
        all.add(s -> new MakerConsulted(false, "No instructions for this"));
        all.add(s -> new CautionsAcknowledged(
                latest(s, ActionPlanned.class),
                s.latest(ActionPlanned.class).orElseThrow().fact().cautions()));
        all.add(s -> new ActionSettled(latest(s, ActionPlanned.class), Settlement.CARRIED_OUT, ""));
        all.add(s -> new Advanced());
    }

    private void verify(List<Function<JobSheet, Fact>> all) {
        afterRepair.forEach(f -> all.add(s -> f));
        all.add(s -> new SymptomRechecked(latest(s, SymptomRecorded.class), true, "Two hours of load"));
        all.add(WorkedTicket::everythingWorks);
        all.add(s -> new RequesterAnswered(RequesterState.AGREES, 0, ""));
        all.add(s -> new PreventionConsidered(false, "Nothing to add"));
        all.add(s -> new Advanced());
    }

    private static Fact everythingWorks(JobSheet sheet) {
        Map<String, ItemState> answers = new HashMap<>();
        sheet.checkedAs().functions().forEach(function -> answers.put(function, ItemState.WORKS));
        return new FunctionChecked(answers, "");
    }

    private void document(List<Function<JobSheet, Fact>> all) {
        all.add(s -> new CauseNamed(cause, causeId, sureness));
        all.add(s -> new SummaryWritten("Found", "Done", "Runs"));
        all.add(s -> new KnowledgeLinked(Lesson.NOTHING, "Common"));
        all.add(s -> new EffortRecorded(30, ""));
        all.add(s -> new Signed(Signatory.ASSIGNEE));
        all.add(s -> new Closed());
    }

    /** The closed sheet, worked by that account a minute an entry; nobody asks the method. */
    JobSheet sheet(String by) {
        Opened opened = new Opened(
                "40718-6",
                "Switches off",
                "",
                category,
                "Workstation",
                place,
                1,
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.HINDERED,
                by,
                Set.of(Role.TECHNICIAN));
        JobSheet sheet = JobSheet.open(new Entry(stamp(1, by), opened));
        for (Function<JobSheet, Fact> fact : facts()) {
            sheet = sheet.with(new Entry(stamp(sheet.entries() + 1, by), fact.apply(sheet)));
        }
        return sheet;
    }

    static Stamp stamp(int entry, String by) {
        return new Stamp(entry, START.plusSeconds(60L * entry), by, Set.of(Role.TECHNICIAN));
    }
}

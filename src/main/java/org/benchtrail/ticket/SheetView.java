package org.benchtrail.ticket;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.advice.BenchFacts;
import org.benchtrail.core.bench.Bench;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.measure.LimitLibrary;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Method;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Escalated;
import org.benchtrail.core.method.desk.Hold;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.RuledOut;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.document.DocumentRequirement;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.LikenessChecked;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.PartFitChecked;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.plan.PlanDeclined;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.core.method.verify.SymptomRechecked;
import org.benchtrail.core.method.verify.VerifyRequirement;
import org.benchtrail.platform.Option;
import org.jspecify.annotations.Nullable;

/** The job sheet as its page shows it to one viewer: every text ready, and what this viewer may do. */
public final class SheetView {
    private final TicketLook.Whole ticket;
    private final JobSheet sheet;
    private final Actor viewer;
    private final ZoneId zone;
    private final Policy policy;
    private final Instant now;
    private final Map<String, String> names;
    private final List<Actor> workers;
    private final List<TicketLine> alike;
    private final @Nullable RankingView ranking;
    private final LimitLibrary limits;
    private final List<KnownCauses.Line> known;
    private final List<Requirement.Status> gate;

    SheetView(
            TicketLook.Whole ticket,
            Actor viewer,
            ZoneId zone,
            Policy policy,
            Instant now,
            Map<String, String> names,
            List<Actor> workers,
            List<TicketLine> alike,
            @Nullable RankingView ranking,
            LimitLibrary limits,
            List<KnownCauses.Line> known) {
        this.ticket = ticket;
        this.sheet = ticket.sheet();
        this.viewer = viewer;
        this.zone = zone;
        this.policy = policy;
        this.now = now;
        this.names = names;
        this.workers = workers;
        this.alike = alike;
        this.ranking = ranking;
        this.limits = limits;
        this.known = known;
        this.gate = Method.gate(sheet, policy, now);
    }

    // ---- the head of the sheet

    public String number() {
        return ticket.number().toString();
    }

    public int version() {
        return sheet.entries();
    }

    public Opened report() {
        return sheet.opened();
    }

    public String category() {
        return report().category().title();
    }

    public String requester() {
        return ticket.requester() + ", " + ticket.contact();
    }

    public String impact() {
        return report().impact().words() + ", " + report().urgency().words();
    }

    public String due() {
        return Times.text(ticket.line().due(), zone)
                + (isOpen() ? " (" + Times.distance(ticket.line().due(), now) + ")" : "");
    }

    public boolean overdue() {
        return isOpen() && ticket.line().due().isBefore(now);
    }

    public String openedAt() {
        return Times.text(ticket.line().opened(), zone);
    }

    public String assignee() {
        return course().assignee() == null ? "nobody yet" : name(course().assignee());
    }

    public Course course() {
        return sheet.course();
    }

    public String standing() {
        return switch (course().standing()) {
            case OPEN -> course().hold() == null ? "open" : "on hold";
            case CLOSED -> "closed " + Times.text(Objects.requireNonNull(course().closed()), zone);
            case CANCELLED -> "cancelled";
        };
    }

    public boolean isOpen() {
        return course().isOpen();
    }

    public boolean isClosed() {
        return course().standing() == Standing.CLOSED;
    }

    // ---- what the viewer may do

    public boolean mine() {
        return viewer.account().equals(course().assignee());
    }

    /** Whether the forms of the step are offered. */
    public boolean working() {
        return isOpen() && mine() && course().hold() == null;
    }

    public boolean takeable() {
        return isOpen() && course().assignee() == null && viewer.works();
    }

    public boolean supervising() {
        return viewer.is(Role.SUPERVISOR);
    }

    public boolean adding() {
        return isOpen() && viewer.works();
    }

    public boolean handing() {
        return isOpen() && (mine() || supervising());
    }

    public boolean approving() {
        return isOpen() && !mine() && (supervising() || viewer.is(Role.MENTOR)) && sheet.step() == Step.PLAN;
    }

    public boolean mentoring() {
        return isOpen()
                && !mine()
                && viewer.is(Role.MENTOR)
                && course().isTrainees()
                && sheet.step() == Step.DOCUMENT
                && sheet.latestOfRound(SummaryWritten.class).isPresent();
    }

    public boolean reopening() {
        return isClosed() && viewer.works();
    }

    public String viewer() {
        return viewer.account();
    }

    public List<Option> takers() {
        return workers.stream()
                .filter(w -> !w.account().equals(course().assignee()))
                .map(w -> new Option(w.account(), w.name()))
                .toList();
    }

    // ---- the six steps

    public String step() {
        return sheet.step().name().toLowerCase(java.util.Locale.ROOT);
    }

    public boolean at(String step) {
        return isOpen() && sheet.step() == Step.valueOf(step);
    }

    public String nextStep() {
        return sheet.step() == Step.DOCUMENT ? "" : sheet.step().next().title();
    }

    /** One of the six rows. */
    public record Row(
            int place, String title, String question, String state, String line, String stamp, List<Line> facts) {}

    public List<Row> rows() {
        return Stream.of(Step.values()).map(this::row).toList();
    }

    private Row row(Step step) {
        boolean signed = step.isBefore(sheet.step()) || !isOpen();
        boolean current = isOpen() && step == sheet.step();
        String stamp = sheet.latest(MoveFact.class, m -> m.during() == step && leaves(m.fact()))
                .filter(m -> signed)
                .map(m -> stamp(m))
                .orElse("");
        List<Line> facts = sheet.facts().stream()
                .filter(n -> belongs(n, step))
                .map(this::line)
                .toList();
        String state = current ? "now" : signed && !stamp.isEmpty() ? "signed" : "later";
        return new Row(step.place(), step.title(), step.question(), state, summary(step), stamp, facts);
    }

    private static boolean leaves(MoveFact move) {
        return move instanceof Advanced || move instanceof RuledOut || move instanceof Closed;
    }

    private static boolean belongs(StandingFact<?> noted, Step step) {
        return noted.fact().shownUnder() == step;
    }

    private String summary(Step step) {
        return switch (step) {
            case IDENTIFY ->
                count(sheet.all(SymptomRecorded.class), "symptom")
                        + ", "
                        + count(sheet.all(ReadingRecorded.class), "reading")
                        + sheet.latest(DataAnswered.class)
                                .map(d -> ", data: " + d.fact().state().words())
                                .orElse("");
            case THEORIZE ->
                sheet.activeTheory().map(t -> t.fact().text()).orElse(count(sheet.all(TheoryStated.class), "theory"));
            case TEST -> count(sheet.ofRound(ResultRecorded.class), "result");
            case PLAN -> count(sheet.actions(), "action");
            case VERIFY -> count(sheet.ofRound(SymptomRechecked.class), "re-check");
            case DOCUMENT ->
                sheet.latestOfRound(CauseNamed.class).map(c -> c.fact().cause()).orElse("");
        };
    }

    private static String count(Collection<?> list, String noun) {
        String many = noun.endsWith("y") ? noun.substring(0, noun.length() - 1) + "ies" : noun + "s";
        return list.size() == 1 ? "1 " + noun : list.size() + " " + many;
    }

    /** What must be true before the step is left. */
    public record GateLine(String code, String title, String text, String state, boolean waivable) {}

    public List<GateLine> gate() {
        return gate.stream()
                .map(s -> new GateLine(
                        s.requirement().code(),
                        s.requirement().title(),
                        s.state() == Requirement.State.MISSING
                                ? s.sentence()
                                : s.requirement().title(),
                        s.state().name().toLowerCase(java.util.Locale.ROOT),
                        s.requirement().waivable() && supervising() && !mine()))
                .toList();
    }

    public long stillMissing() {
        return gate.stream().filter(s -> s.state() == Requirement.State.MISSING).count();
    }

    // ---- facts as lines

    /** One fact as a line. */
    public record Line(int entry, String kind, String text, String stamp, boolean late, boolean corrected) {}

    private Line line(StandingFact<?> noted) {
        String text = FactText.parts(noted.fact(), zone).stream()
                .map(p -> p.name() + ": " + p.text())
                .collect(Collectors.joining("; "));
        return new Line(
                noted.entry(),
                FactText.kind(noted.fact()),
                text,
                stamp(noted),
                noted.late(),
                noted.corrected() != null);
    }

    private String stamp(StandingFact<?> noted) {
        return name(noted.stamp().by()) + ", " + Times.text(noted.stamp().at(), zone);
    }

    private String name(String account) {
        return names.getOrDefault(account, account);
    }

    // ---- identify

    public record Symptom(int entry, String words, String observable, boolean intermittent) {}

    public List<Symptom> symptoms() {
        return sheet.all(SymptomRecorded.class).stream()
                .map(n -> new Symptom(
                        n.entry(),
                        n.fact().words(),
                        n.fact().observable(),
                        n.fact().intermittent()))
                .toList();
    }

    /** A reading; the verdict has a word and a shape. */
    public record Reading(
            int entry,
            String what,
            String point,
            String value,
            String verdict,
            String shape,
            String word,
            String limit,
            String source,
            String stamp) {}

    public List<Reading> readings() {
        return sheet.all(ReadingRecorded.class).stream().map(this::reading).toList();
    }

    /** Readings that were outside and have to be taken again. */
    public List<Reading> again() {
        return Method.readingsToRepeat(sheet).stream().map(this::reading).toList();
    }

    private Reading reading(StandingFact<ReadingRecorded> n) {
        ReadingWords words = ReadingWords.of(n.fact());
        return new Reading(
                n.entry(),
                n.fact().quantity(),
                n.fact().point(),
                words.value(),
                words.verdict(),
                words.shape(),
                words.word(),
                words.limit(),
                n.fact().limitSource(),
                stamp(n));
    }

    public record Item(int entry, String title, String text, String link) {}

    public List<Item> evidence() {
        List<Item> items = new ArrayList<>();
        sheet.all(FindingRecorded.class)
                .forEach(n -> items.add(new Item(
                        n.entry(),
                        n.fact().driveFailure() ? "Finding: drive failure" : "Finding",
                        n.fact().text(),
                        "")));
        sheet.all(ExtractRecorded.class)
                .forEach(n -> items.add(
                        new Item(n.entry(), n.fact().source(), n.fact().text(), "")));
        sheet.all(AttachmentAdded.class)
                .forEach(n -> items.add(new Item(
                        n.entry(),
                        n.fact().fileName(),
                        n.fact().shows(),
                        "/tickets/" + number() + "/attachments/" + n.fact().sha256())));
        return items;
    }

    /** What calculations said. */
    public record BenchResult(
            int entry, String title, String verdict, String shape, String level, String reason, String link) {}

    public List<BenchResult> benchResults() {
        return sheet.all(BenchResultAttached.class).stream()
                .map(n -> new BenchResult(
                        n.entry(),
                        n.fact().title(),
                        n.fact().verdict(),
                        shape(n.fact().level()),
                        n.fact().level().name().toLowerCase(java.util.Locale.ROOT),
                        n.fact().reason(),
                        "/tickets/" + number() + "/entries/" + n.entry()))
                .toList();
    }

    private static String shape(Result.Level level) {
        return switch (level) {
            case GOOD -> "\u25cf";
            case BAD -> "\u25b2";
            case CAREFUL, UNDECIDED -> "\u25c6";
            case NONE -> "";
        };
    }

    /** A question of the catalogue as it was answered. */
    public record Answered(int entry, String question, String value, String source) {}

    public List<Answered> answers() {
        Map<String, Answered> latest = new java.util.LinkedHashMap<>();
        sheet.all(FindingAnswered.class)
                .forEach(n -> latest.put(
                        n.fact().finding(),
                        new Answered(
                                n.entry(),
                                n.fact().question(),
                                n.fact().value(),
                                Choices.words(n.fact().source()))));
        return List.copyOf(latest.values());
    }

    // ---- the ranked causes

    /** Null if the catalogue has nothing for the category. */
    public @Nullable RankingView ranking() {
        return ranking;
    }

    /** Whether the ranking is of use at this step: until a theory is supported. */
    public boolean ranked() {
        return ranking != null && isOpen() && sheet.step().isBefore(Step.PLAN);
    }

    /** The causes that can be chosen as they stand: those not stated before. */
    public List<RankingView.Line> causesToChoose() {
        List<@Nullable String> stated = sheet.all(TheoryStated.class).stream()
                .map(t -> t.fact().causeId())
                .toList();
        return ranking == null
                ? List.of()
                : ranking.choices().stream()
                        .filter(c -> !stated.contains(c.id()))
                        .toList();
    }

    /** The causes of the category by name, to say which one it was. */
    public List<Option> causeNames() {
        return ranking == null
                ? List.of()
                : ranking.choices().stream()
                        .map(c -> new Option(c.id(), c.name()))
                        .toList();
    }

    public String causeChoice(String id) {
        return "cause:" + id;
    }

    /** Whether a theory can only be written, not chosen. */
    public boolean nothingToChoose() {
        return theories().isEmpty() && causesToChoose().isEmpty();
    }

    public String measureLabel(String unit) {
        return unit.isEmpty() ? "Value with its unit" : "Value, in " + unit + " or with its unit";
    }

    /** The calculations that say whether a part fits. */
    public List<Option> partChecks() {
        return BenchFacts.PART_CHECKS.stream()
                .sorted()
                .flatMap(id -> Bench.find(id).stream())
                .map(c -> new Option(c.id(), c.title()))
                .toList();
    }

    /** The limits that can be picked for a reading. */
    public List<Option> limits() {
        return limits.rows().stream()
                .sorted(java.util.Comparator.comparing((LimitLibrary.Row r) -> r.mark() != LimitLibrary.Mark.SITE)
                        .thenComparing(LimitLibrary.Row::quantity))
                .map(r -> new Option(r.id(), r.quantity() + ": " + r.limit().words() + " (" + source(r) + ")"))
                .toList();
    }

    private static String source(LimitLibrary.Row row) {
        String source = row.limit().source().replaceAll(",.*", "");
        return row.edition().equals("-") ? source : source + " " + row.edition();
    }

    /** The readings that the causes are told apart by; empty without a catalogue. */
    public List<Option> measurable() {
        return ranking == null ? List.of() : ranking.measurable();
    }

    public boolean likenessChecked() {
        return sheet.latest(LikenessChecked.class).isPresent();
    }

    public List<TicketLine> alike() {
        return alike;
    }

    /** Known causes that fit, the likest first. */
    public List<KnownCauses.Line> known() {
        return known;
    }

    /** What was shown as alike, to be kept with the answer that it was looked at. */
    public String alikeNumbers() {
        return Stream.concat(
                        alike.stream().map(TicketLine::number), known.stream().map(k -> "known-cause-" + k.id()))
                .collect(Collectors.joining(" "));
    }

    public boolean stopped() {
        return isOpen() && sheet.workStopped();
    }

    public String hazards() {
        return sheet.latest(HazardsScreened.class)
                .map(n -> n.fact().present().entrySet().stream()
                        .filter(Map.Entry::getValue)
                        .map(e -> e.getKey().words())
                        .collect(Collectors.joining(", ")))
                .orElse("");
    }

    public String data() {
        return sheet.latest(DataAnswered.class)
                .map(n -> n.fact().state().words()
                        + (n.fact().note().isEmpty() ? "" : ": " + n.fact().note()) + " (" + stamp(n) + ")")
                .orElse("not answered yet");
    }

    public boolean driveFailing() {
        return sheet.driveFailure().isPresent();
    }

    // ---- theorize and test

    public record Theory(int entry, String text, String state, boolean active) {}

    public List<Theory> theories() {
        List<Integer> out = sheet.ruledOut().stream().map(StandingFact::entry).toList();
        int active = sheet.activeTheory().map(StandingFact::entry).orElse(0);
        return sheet.all(TheoryStated.class).stream()
                .map(t -> new Theory(
                        t.entry(),
                        t.fact().text(),
                        t.entry() == active ? "active" : out.contains(t.entry()) ? "ruled out" : "open",
                        t.entry() == active))
                .toList();
    }

    public String activeTheory() {
        return sheet.activeTheory().map(t -> t.fact().text()).orElse("");
    }

    public record Check(
            int entry,
            String what,
            String expectation,
            boolean invasive,
            List<Caution> cautions,
            String cautionNames,
            String result,
            String outcome,
            boolean made,
            String finding,
            boolean measured,
            List<Option> answers) {}

    public List<Check> checks() {
        return sheet.ofRound(CheckPlanned.class).stream().map(this::check).toList();
    }

    public List<Check> checksToMake() {
        return checks().stream().filter(c -> !c.made()).toList();
    }

    private Check check(StandingFact<CheckPlanned> n) {
        var result = sheet.result(n.entry());
        return new Check(
                n.entry(),
                n.fact().what(),
                n.fact().expectation(),
                n.fact().invasive(),
                List.copyOf(n.fact().cautions()),
                names(n.fact().cautions()),
                result.map(r -> r.fact().observation()).orElse(""),
                result.map(r -> r.fact().outcome().words()).orElse(""),
                result.isPresent(),
                n.fact().finding() == null ? "" : n.fact().finding(),
                asked(n).map(RankingView.Question::reading).orElse(false),
                asked(n).map(RankingView.Question::values).orElse(List.of()));
    }

    /** The question of the catalogue that a check answers. */
    private Optional<RankingView.Question> asked(StandingFact<CheckPlanned> check) {
        return ranking == null
                ? Optional.empty()
                : ranking.questions().stream()
                        .filter(q -> q.id().equals(check.fact().finding()))
                        .findFirst();
    }

    private static String names(Collection<Caution> cautions) {
        return cautions.stream().map(Caution::name).collect(Collectors.joining(","));
    }

    /** Whether the latest conclusive result rules the theory out, so that the way leads back. */
    public boolean refuted() {
        return sheet.ofRound(ResultRecorded.class).stream()
                .map(r -> r.fact().outcome())
                .filter(o -> o != CheckOutcome.INCONCLUSIVE)
                .reduce((a, b) -> b)
                .filter(o -> o == CheckOutcome.REFUTES)
                .isPresent();
    }

    // ---- plan

    public record PlannedAction(
            int entry,
            ActionPlanned plan,
            List<Caution> cautions,
            String cautionNames,
            String fit,
            String outcome,
            boolean settled) {}

    public List<PlannedAction> actions() {
        return sheet.actions().stream().map(this::action).toList();
    }

    public List<PlannedAction> actionsToDo() {
        return actions().stream().filter(a -> !a.settled()).toList();
    }

    private PlannedAction action(StandingFact<ActionPlanned> n) {
        var settlement = sheet.settlement(n.entry());
        return new PlannedAction(
                n.entry(),
                n.fact(),
                List.copyOf(n.fact().cautions()),
                names(n.fact().cautions()),
                sheet.latest(PartFitChecked.class, f -> f.fact().action() == n.entry())
                        .map(f -> f.fact().fit().words() + ": " + f.fact().basis())
                        .orElse(""),
                settlement
                        .map(s -> s.fact().settlement().words()
                                + (s.fact().note().isEmpty()
                                        ? ""
                                        : ": " + s.fact().note()))
                        .orElse(""),
                settlement.isPresent());
    }

    public List<String> approvalReasons() {
        return Method.approvalReasons(sheet, policy);
    }

    public String approval() {
        return sheet.latestOfRound(PlanApproved.class)
                .map(a -> "Approved by " + stamp(a)
                        + (a.fact().note().isEmpty() ? "" : ": " + a.fact().note()))
                .orElse("");
    }

    public String declined() {
        return sheet.latestOfRound(PlanDeclined.class)
                .map(d -> "Declined by " + stamp(d) + ": " + d.fact().reason())
                .orElse("");
    }

    // ---- verify and document

    public record FunctionLine(String field, String words) {}

    public List<FunctionLine> functions() {
        List<String> functions = report().category().functions();
        return java.util.stream.IntStream.range(0, functions.size())
                .mapToObj(i -> new FunctionLine("function.items." + i, functions.get(i)))
                .toList();
    }

    /** What the latest re-check of each symptom after the last action said. */
    public String recheck(int symptom) {
        return sheet.latest(SymptomRechecked.class, r -> r.fact().symptom() == symptom)
                .filter(r -> r.entry() > sheet.lastWork())
                .map(r -> (r.fact().gone() ? "gone: " : "still there: ")
                        + r.fact().how())
                .orElse("");
    }

    public boolean soaking() {
        return gate.stream()
                .anyMatch(s ->
                        s.requirement() == VerifyRequirement.SOAK_TIME_PASSED && s.state() != Requirement.State.MET);
    }

    public String soakHours() {
        return java.math.BigDecimal.valueOf(Method.soakMinutes(sheet, policy) / 60.0)
                .setScale(1, java.math.RoundingMode.UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    public boolean signed() {
        return gate.stream()
                .anyMatch(s ->
                        s.requirement() == DocumentRequirement.SUMMARY_WRITTEN && s.state() == Requirement.State.MET);
    }

    // ---- desk

    public String held() {
        Hold hold = course().hold();
        return hold == null
                ? ""
                : "Waits for " + hold.waitingFor().words() + "; to be looked at again "
                        + Times.text(hold.followUp(), zone) + (hold.note().isEmpty() ? "" : ". " + hold.note());
    }

    public String escalated() {
        Escalated escalation = course().escalation();
        return escalation == null ? "" : "With " + escalation.to() + ". Tried: " + escalation.tried();
    }

    public String zone() {
        return zone.getId();
    }

    public String lastEntry() {
        StandingFact<?> last = sheet.facts().get(sheet.facts().size() - 1);
        return FactText.kind(last.fact()) + ", " + stamp(last);
    }

    /** What others did since that version, for somebody whose form was older. */
    public List<Line> since(int version) {
        return sheet.facts().stream()
                .filter(n -> n.entry() > version)
                .map(this::line)
                .toList();
    }

    /** All entries, for the record at the foot of the printed sheet. */
    public List<Line> waivers() {
        List<Line> lines = new ArrayList<>();
        for (StandingFact<Waived> n : sheet.all(Waived.class)) {
            lines.add(line(n));
        }
        return lines;
    }

    // ---- names of fields

    /** A field of a map: {@code group.key}. */
    public String key(String group, String key) {
        return group + "." + key;
    }

    /** A field of the form's part about that entry: {@code group-entry.component}. */
    public String field(String group, int entry, String component) {
        return group + "-" + entry + "." + component;
    }

    // ---- answers to choose from

    public Choices choose() {
        return Choices.ALL;
    }

    /** Whether the page of an entry offers to put it right; the report that opened the ticket is left to the API. */
    static boolean correctable(Fact fact) {
        return !(fact instanceof Opened) && fact.correctable() != Correctable.NEVER;
    }
}

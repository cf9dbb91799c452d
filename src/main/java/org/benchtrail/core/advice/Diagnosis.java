package org.benchtrail.core.advice;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Advice;
import org.benchtrail.core.diagnosis.BenchSituation;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Discrimination;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.Explanation;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Making;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.PlanSettings;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Repair;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Risk;
import org.benchtrail.core.diagnosis.SharedRepair;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.diagnosis.Surprise;
import org.benchtrail.core.diagnosis.path.CategoryPaths;
import org.benchtrail.core.diagnosis.path.Cues;
import org.benchtrail.core.diagnosis.path.GenericTest;
import org.benchtrail.core.diagnosis.path.Known;
import org.benchtrail.core.diagnosis.path.Localisation;
import org.benchtrail.core.diagnosis.path.Localiser;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.theorize.RankedCause;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.jspecify.annotations.Nullable;

/**
 * What the evidence on a job sheet makes of its causes: where the fault is, the ranking, why, and what to do next. Advice only;
 * it closes no step and chooses nothing.
 *
 * @param ifWordsHold the same with every answer that the words of the sheet suggest taken as given. It only says which test comes
 *     first, so that nobody is sent to call from a phone that is said to be dark. Null where the words suggest nothing, and once
 *     anybody has answered or checked something: what then is still open was left on purpose
 */
public record Diagnosis(
        Localisation where,
        Explanation explanation,
        double repairOdds,
        @Nullable Diagnosis ifWordsHold) {
    private static final double TEN = 10;

    /** Most tests that are shown. */
    private static final int SHOWN = 3;

    /** A repair that is as small as a test: at most so long, without risk, and taken back at once. Common practice, no source. */
    private static final double TRIAL_MINUTES = 5;

    /** Below this belief a repair waits for what settles its cause, if that takes no longer than a look. Our choice. */
    private static final double SETTLED = 0.95;

    private static final double LOOK_MINUTES = 10;
    private static final double WORTH_TRYING = 0.2;

    /** By the causes alone. */
    public static Diagnosis of(JobSheet sheet, Model model) {
        CauseCategory c = model.category();
        Localiser places = new Localiser(c, CategoryPaths.none(c.id()), model.settings(), PlanSettings.STANDARD);
        return of(sheet, places, SheetReader.PLAIN);
    }

    /** @param reader what is known beside the sheet */
    public static Diagnosis of(JobSheet sheet, Localiser catalogue, SheetReader reader) {
        Localiser localiser = catalogue.over(OwnChecks.with(sheet, catalogue.category()));
        Evidence evidence = SheetEvidence.of(
                sheet, localiser.askable(), localiser.settings().unlisted(), reader);
        Cues cues = Suggestions.cues(sheet, localiser.category(), localiser.paths(), evidence);
        Known known = OnTheBench.known(sheet, localiser, evidence, cues);
        Diagnosis plain = of(localiser.locate(known), reader, null);
        Evidence said = Suggestions.supposed(sheet, plain);
        return said.equals(evidence)
                ? plain
                : of(plain.where, reader, of(localiser.locate(known.with(said)), reader, null));
    }

    private static Diagnosis of(Localisation where, SheetReader reader, @Nullable Diagnosis ifWordsHold) {
        return new Diagnosis(where, new Explanation(where.ranking()), reader.repairOdds(), ifWordsHold);
    }

    public Ranking ranking() {
        return where.ranking();
    }

    public Surprise surprise() {
        return where.surprise();
    }

    public Advice advice() {
        return where.advice();
    }

    /**
     * What to do next. A repair is advised only if what it covers stands at least at the site's odds and no short look that settles
     * its cause is left, or if it is itself as small as a test; before that a test is, if there is one.
     */
    public Optional<Action> next() {
        return byWhatWeighs()
                .flatMap(own -> supposed()
                        .findFirst()
                        .filter(test -> own.type() == Action.Type.TEST)
                        .or(() -> Optional.of(own)));
    }

    /**
     * The tests that would be shown if the words held. Where a repair would be advised then: what shows best whether they hold, if it
     * is more than to ask again, and else the next one.
     */
    private Stream<Action> supposed() {
        return Stream.ofNullable(ifWordsHold)
                .flatMap(d -> d.tests().isEmpty() ? confirming(d).stream() : d.tests().stream())
                .filter(test -> SheetEvidence.finding(model(), test.id()).isPresent());
    }

    private Optional<Action> confirming(Diagnosis ifSo) {
        List<Report> said = ifSo.evidence().reports().stream()
                .filter(Suggestions::isSupposed)
                .filter(r -> !r.finding().equals(GenericTest.LOG))
                .sorted(Comparator.comparingDouble(r -> -ifSo.tells(r.finding(), r.value())))
                .toList();
        return said.stream()
                .filter(r -> !isAsked(r.finding()))
                .flatMap(r -> offered(r.finding()))
                .findFirst()
                .or(() -> byWhatWeighs()
                        .filter(a -> said.stream().noneMatch(r -> r.finding().equals(a.id()))))
                .or(() -> said.stream().flatMap(r -> offered(r.finding())).findFirst());
    }

    private boolean isAsked(String finding) {
        return SheetEvidence.finding(model(), finding)
                .filter(f -> f.way() == Making.Way.ASK)
                .isPresent();
    }

    private Stream<Action> offered(String test) {
        return advice().actions().stream().filter(a -> a.type() == Action.Type.TEST && a.id().equals(test));
    }

    /** Whole minutes that a shown test saves on average against acting at once; empty if that is not worth naming. */
    public OptionalLong saves(Action test) {
        return ifWordsHold != null && ifWordsHold.tests().contains(test)
                ? ifWordsHold.advice().saves(test)
                : advice().saves(test);
    }

    /** Whether the next test is one for which the words were taken as meant. */
    public boolean goesByWords() {
        return supposed().findFirst().equals(next());
    }

    private Optional<Action> byWhatWeighs() {
        Optional<Action> best = advice().recommended();
        if (best.isPresent() && !where.mended().isEmpty()) {
            return left();
        }
        Optional<Action> proven = best.flatMap(a -> proven());
        if (proven.isPresent()) {
            return proven;
        }
        if (best.filter(a -> a.type() == Action.Type.TEST).isPresent()) {
            return where.order().stream().findFirst().or(this::likeliest).or(() -> best);
        }
        Optional<Action> early = best.filter(a -> a.type() != Action.Type.ESCALATE && !isSmall(a));
        Optional<Action> test = early.filter(a -> !isLikely(a)).isPresent()
                ? where.order().stream().findFirst()
                : early.filter(a -> covered(a) < SETTLED)
                        .flatMap(a -> where.settling())
                        .filter(t -> t.minutes() <= LOOK_MINUTES);
        return test.or(() -> best);
    }

    /**
     * The tests to show, best first: none where to act is better, and only the one that settles it where a repair would be advised
     * otherwise.
     */
    public List<Action> tests() {
        Optional<Action> next = next().filter(a -> a.type() == Action.Type.TEST);
        boolean settles = advice().recommended()
                .filter(a -> a.type() != Action.Type.TEST && a.type() != Action.Type.ESCALATE && isLikely(a))
                .isPresent();
        List<Action> others = supposed().toList();
        return next.isEmpty() || settles
                ? next.stream().toList()
                : Stream.concat(next.stream(), (others.isEmpty() ? where.near() : others).stream())
                        .distinct()
                        .limit(SHOWN)
                        .toList();
    }

    /**
     * Once something that was tried took the fault away: the repair that covers most of what can have been wrong there; none where
     * that was done to several places and no repair covers more than half of it, and then it is left as it is.
     */
    private Optional<Action> left() {
        Set<String> mended = where.mended();
        double all = mended.stream()
                .mapToDouble(s -> where.masses().getOrDefault(s, 0.0))
                .sum();
        return repairs()
                .max(Comparator.comparingDouble(a -> where.beliefIn(mended, fixed(a))))
                .filter(a -> where.beliefIn(mended, fixed(a)) >= all / 2);
    }

    /** The repair of a cause that was proven: its own, if it is on offer. */
    private Optional<Action> proven() {
        return where.proven()
                .flatMap(cause -> repairs()
                        .filter(a -> fixed(a).contains(cause))
                        .min(Comparator.comparing(a -> !a.id().equals(cause))));
    }

    /** The repair that covers most of the belief, if its odds are those at which one repairs. */
    private Optional<Action> likeliest() {
        return repairs().filter(this::isLikely).max(Comparator.comparingDouble(this::covered));
    }

    private Stream<Action> repairs() {
        return advice().actions().stream()
                .filter(a -> a.type() == Action.Type.REPAIR || a.type() == Action.Type.PREPARE);
    }

    /** Ids of what a repair mends. */
    private Set<String> fixed(Action repair) {
        return shared(repair.id()).map(s -> s.fixes().keySet()).orElse(Set.of(repair.id()));
    }

    private boolean isLikely(Action repair) {
        return covered(repair) >= repairOdds * (1 - covered(repair));
    }

    private boolean isSmall(Action repair) {
        return isTrial(repair) && covered(repair) >= WORTH_TRYING;
    }

    /** Whether to try a repair costs no more than to test for it. */
    public boolean isTrial(Action action) {
        return repair(action.id())
                .filter(r -> r.risk() == Risk.NONE && r.reversible() && action.minutes() <= TRIAL_MINUTES)
                .isPresent();
    }

    /** Belief in what a repair covers. */
    public double covered(Action repair) {
        if (isCause(repair.id())) {
            return ranking().probability(repair.id());
        }
        Optional<SharedRepair> shared = shared(repair.id());
        return shared.map(s -> where.belief(s.fixes().keySet())).orElse(0.0);
    }

    /** Whether an id names one of the causes. */
    public boolean isCause(String id) {
        return SheetEvidence.isCause(model().category(), id);
    }

    private Optional<SharedRepair> shared(String id) {
        return model().category().sharedRepairs().stream()
                .filter(s -> s.id().equals(id))
                .findFirst();
    }

    private Optional<Repair> repair(String id) {
        return cause(id).map(Cause::repair).or(() -> shared(id).map(SharedRepair::repair));
    }

    /**
     * Whether anything recorded bears on the causes: an answer, something tried in vain, or something out of the ordinary; that
     * all is as usual says too little. Without it the order is nearly how frequent they are.
     */
    public boolean hasEvidence() {
        return !evidence().failedRepairs().isEmpty()
                || evidence().reports().stream().anyMatch(r -> !r.id().contains("/") || isUnusual(r));
    }

    private boolean isUnusual(Report r) {
        return SheetEvidence.finding(model(), r.finding())
                .filter(f -> !f.usual().equals(r.value()))
                .isPresent();
    }

    public Evidence evidence() {
        return ranking().evidence();
    }

    public Model model() {
        return ranking().model();
    }

    /** The cause with that id; empty for the one that is not listed. */
    public Optional<Cause> cause(@Nullable String id) {
        return model().category().cause(id);
    }

    /**
     * The ranking as it is recorded when a theory is chosen, so that it can be held against what came of it.
     *
     * @param sheet that was ranked
     * @param version of the catalogue
     * @param label where its figures come from
     */
    public TheoriesRanked recorded(JobSheet sheet, int version, String label) {
        List<RankedCause> causes = ranking().all().stream()
                .map(r -> new RankedCause(
                        named(sheet, r.cause()),
                        cause(r.cause()).map(Cause::name).orElse("something not listed"),
                        String.format(Locale.ROOT, "%.4f", r.probability())))
                .toList();
        Optional<String> test = next().filter(a -> a.type() == Action.Type.TEST).map(Action::id);
        return new TheoriesRanked(
                List.of(),
                "catalogue version " + version + ", " + label,
                causes,
                version,
                test.orElse(null),
                test.map(finding -> Discrimination.favoured(ranking(), finding))
                        .map(id -> named(sheet, id))
                        .orElse(null));
    }

    /** By the id that the sheet knows the cause by already: one that was stated under its old id goes on under it. */
    private String named(JobSheet sheet, String id) {
        return cause(id).stream()
                .flatMap(c -> sheet.all(TheoryStated.class).stream()
                        .map(t -> t.fact().causeId())
                        .filter(c::isKnownAs))
                .flatMap(Stream::ofNullable)
                .findFirst()
                .orElse(id);
    }

    /** How far a value of a finding tells the leading listed cause from what is usual, dB. */
    private double tells(String finding, String value) {
        String leader = ranking().all().stream()
                .map(Ranking.Ranked::cause)
                .filter(id -> !id.equals(Model.UNLISTED))
                .findFirst()
                .orElseThrow();
        double usual = SheetEvidence.finding(model(), finding)
                .map(f -> f.background().getOrDefault(value, 1.0))
                .orElse(1.0);
        return TEN * Math.log10(model().likelihood(finding, value, leader) / usual);
    }

    /**
     * How far an answer would move the belief over the causes, bit: the Kullback-Leibler divergence of what is believed with it from
     * what is believed now. It is large where the answer singles out a cause that does not lead yet.
     *
     * @param value one of the finding's values
     */
    public double moves(String finding, String value) {
        double all = 0;
        double weighed = 0;
        for (Ranking.Ranked r : ranking().all()) {
            double likelihood = model().likelihood(finding, value, r.cause());
            if (r.probability() > 0 && likelihood > 0) {
                all += r.probability() * likelihood;
                weighed += r.probability() * likelihood * Math.log(likelihood);
            }
        }
        return all == 0 ? 0 : (weighed / all - Math.log(all)) / Math.log(2);
    }

    /** The tests that wait for something, each with what it waits for. */
    public Map<String, List<String>> waiting() {
        Map<String, List<String>> waiting = new TreeMap<>();
        BenchSituation now = where.situation();
        for (Finding finding : model().category().findings()) {
            List<String> lacking = now.lacking(finding);
            if (!lacking.isEmpty()) {
                waiting.put(finding.id(), lacking);
            }
        }
        return waiting;
    }

    /** The tests that would tell the active theory from its rivals; empty where it is no cause of the catalogue. */
    public List<Discrimination.Offer> checks(JobSheet sheet) {
        return sheet.activeTheory()
                .flatMap(t -> cause(t.fact().causeId()))
                .map(Cause::id)
                .map(id -> new Discrimination(ranking(), id, Source.SEEN.reliability())
                        .offers(PlanSettings.STANDARD, where.situation()))
                .orElse(List.of());
    }
}

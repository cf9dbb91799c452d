package org.benchtrail.core.advice;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Advice;
import org.benchtrail.core.diagnosis.BenchSituation;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.Discrimination;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.Explanation;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.NextTest;
import org.benchtrail.core.diagnosis.PlanSettings;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.diagnosis.Surprise;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.RankedCause;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.jspecify.annotations.Nullable;

/**
 * What the evidence on a job sheet makes of its causes: the ranking, why, and what to do next. Advice only; it closes no step
 * and chooses nothing.
 */
public record Diagnosis(Ranking ranking, Explanation explanation, Surprise surprise, Advice advice) {
    private static final double TEN = 10;

    public static Diagnosis of(JobSheet sheet, Model model) {
        return of(sheet, model, SheetReader.PLAIN);
    }

    /** @param reader what is known beside the sheet */
    public static Diagnosis of(JobSheet sheet, Model catalogue, SheetReader reader) {
        Model model = OwnChecks.with(sheet, catalogue);
        Ranking ranking = Ranking.of(model, SheetEvidence.of(sheet, model, reader));
        Advice advice = new NextTest(model, PlanSettings.STANDARD).advise(ranking, situation(sheet, model));
        return new Diagnosis(ranking, new Explanation(ranking), Surprise.of(ranking), advice);
    }

    /** Whether anything recorded bears on the causes; without it the order is only how frequent they are. */
    public boolean hasEvidence() {
        return !evidence().isEmpty();
    }

    public Evidence evidence() {
        return ranking.evidence();
    }

    public Model model() {
        return ranking.model();
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
        List<RankedCause> causes = ranking.all().stream()
                .map(r -> new RankedCause(
                        named(sheet, r.cause()),
                        cause(r.cause()).map(Cause::name).orElse("something not listed"),
                        String.format(Locale.ROOT, "%.4f", r.probability())))
                .toList();
        Optional<String> test =
                advice.recommended().filter(a -> a.type() == Action.Type.TEST).map(Action::id);
        return new TheoriesRanked(
                List.of(),
                "catalogue version " + version + ", " + label,
                causes,
                version,
                test.orElse(null),
                test.map(finding -> Discrimination.favoured(ranking, finding)).map(id -> named(sheet, id)).orElse(null));
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
    public double tells(String finding, String value) {
        String leader = ranking.all().stream()
                .map(Ranking.Ranked::cause)
                .filter(id -> !id.equals(Model.UNLISTED))
                .findFirst()
                .orElseThrow();
        double usual = SheetEvidence.finding(model(), finding)
                .map(f -> f.background().getOrDefault(value, 1.0))
                .orElse(1.0);
        return TEN * Math.log10(model().likelihood(finding, value, leader) / usual);
    }

    /** The tests that wait for something, each with what it waits for. */
    public Map<String, List<String>> waiting(JobSheet sheet) {
        Map<String, List<String>> waiting = new TreeMap<>();
        BenchSituation now = situation(sheet, model());
        for (Finding finding : model().category().findings()) {
            if (now.withheld().contains(finding.id())) {
                waiting.put(finding.id(), now.lacking(finding));
            }
        }
        return waiting;
    }

    /** The tests that would tell the active theory from its rivals; empty where it is no cause of the catalogue. */
    public List<Discrimination.Offer> checks(JobSheet sheet) {
        return sheet.activeTheory()
                .flatMap(t -> cause(t.fact().causeId()))
                .map(Cause::id)
                .map(id -> new Discrimination(ranking, id, Source.SEEN.reliability())
                        .offers(PlanSettings.STANDARD, situation(sheet, model())))
                .orElse(List.of());
    }

    private static BenchSituation situation(JobSheet sheet, Model model) {
        Set<String> met = new TreeSet<>();
        if (sheet.latest(DataAnswered.class)
                .filter(d -> d.fact().state().backedUp() || d.fact().state() == DataState.NO_USER_DATA)
                .isPresent()) {
            met.add("backup-done");
        }
        if (sheet.latestOfRound(PlanApproved.class).isPresent()) {
            met.add("change-approved");
        }
        if (!sheet.workStopped()) {
            met.add("hazard-cleared");
        }
        Set<String> hazards = sheet.workStopped() ? Set.of("stop-work") : Set.of();
        Set<String> held = new TreeSet<>();
        for (Finding finding : model.category().findings()) {
            if (!met.containsAll(finding.needs())) {
                held.add(finding.id());
            }
        }
        return new BenchSituation(met, confirmed(sheet, model), hazards, Map.of(), held);
    }

    private static Set<String> confirmed(JobSheet sheet, Model model) {
        boolean supported = sheet.latestOfRound(ResultRecorded.class)
                .filter(r -> r.fact().outcome() == CheckOutcome.SUPPORTS)
                .isPresent();
        return sheet.activeTheory()
                .filter(t -> supported)
                .map(StandingFact::fact)
                .flatMap(t -> model.category().cause(t.causeId()))
                .map(c -> Set.of(c.id()))
                .orElse(Set.of());
    }
}

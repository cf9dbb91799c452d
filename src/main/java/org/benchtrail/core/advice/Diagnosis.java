package org.benchtrail.core.advice;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.benchtrail.core.diagnosis.Advice;
import org.benchtrail.core.diagnosis.BenchSituation;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.Explanation;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.NextTest;
import org.benchtrail.core.diagnosis.PlanSettings;
import org.benchtrail.core.diagnosis.Ranking;
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

/**
 * What the evidence on a job sheet makes of its causes: the ranking, why, and what to do next. Advice only; it closes no step
 * and chooses nothing.
 */
public record Diagnosis(Ranking ranking, Explanation explanation, Surprise surprise, Advice advice) {

    public static Diagnosis of(JobSheet sheet, Model model) {
        Ranking ranking = Ranking.of(model, SheetEvidence.of(sheet, model));
        Advice advice = new NextTest(model, PlanSettings.STANDARD).advise(ranking, situation(sheet));
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
    public Optional<Cause> cause(String id) {
        return model().category().causes().stream()
                .filter(c -> c.id().equals(id))
                .findFirst();
    }

    /**
     * The ranking as it is recorded when a theory is chosen, so that it can be held against what came of it.
     *
     * @param version of the catalogue
     * @param label where its figures come from
     */
    public TheoriesRanked recorded(int version, String label) {
        List<RankedCause> causes = ranking.all().stream()
                .map(r -> new RankedCause(
                        r.cause(),
                        cause(r.cause()).map(Cause::name).orElse("something not listed"),
                        String.format(Locale.ROOT, "%.4f", r.probability())))
                .toList();
        return new TheoriesRanked(List.of(), "catalogue version " + version + ", " + label, causes, version);
    }

    private static BenchSituation situation(JobSheet sheet) {
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
        return new BenchSituation(met, confirmed(sheet), hazards, java.util.Map.of());
    }

    private static Set<String> confirmed(JobSheet sheet) {
        boolean supported = sheet.latestOfRound(ResultRecorded.class)
                .filter(r -> r.fact().outcome() == CheckOutcome.SUPPORTS)
                .isPresent();
        return sheet.activeTheory()
                .filter(t -> supported)
                .map(StandingFact::fact)
                .flatMap(t -> Optional.ofNullable(t.causeId()))
                .map(Set::of)
                .orElse(Set.of());
    }
}

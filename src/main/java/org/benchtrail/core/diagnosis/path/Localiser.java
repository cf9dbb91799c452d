package org.benchtrail.core.diagnosis.path;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Advice;
import org.benchtrail.core.diagnosis.BenchSituation;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.FailedRepair;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.NextTest;
import org.benchtrail.core.diagnosis.PlanSettings;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.SharedRepair;
import org.benchtrail.core.diagnosis.Surprise;

/**
 * Says where a fault is, what it is and what to do next, for one category of one version of the catalogue. Serves any number
 * of tickets; what depends only on which segments are there is computed once.
 *
 * <p>Order of computation: which segments are there; what can be wrong with them; belief from listed findings, from tests made
 * from the structure and from repairs that failed; mass of each segment; tests on offer; the next best act.
 * <p>Guarantee: the same input gives the same bits; without segments, or with no share for what nobody listed and no test made
 * from the structure recorded, beliefs are those of the catalogue alone.
 * <p>Source: half-splitting of a path as taught in the trade; choosing the measurement by what it does to a set of candidates:
 * J. de Kleer, B. Williams, "Diagnosing multiple faults", Artificial Intelligence 32, 1987 (from memory, not checked). Differs:
 * one fault at a time, expected minutes instead of entropy, and places whose inner workings nobody models.
 */
public final class Localiser {
    /** Before a segment's id: whatever nobody listed there, as a cause. */
    public static final String SOMETHING_ELSE = "else:";

    /** Before a segment's id: whether it is there, as a question. */
    public static final String THERE = "there:";

    /** What opening the case costs, once a ticket, minutes. Common practice, no source. */
    private static final double OPENING_MINUTES = 5;

    private final CauseCategory category;
    private final CategoryPaths paths;
    private final ModelSettings settings;
    private final PlanSettings plan;
    private final Map<Layout.Key, PlacedModel> placed = new ConcurrentHashMap<>();

    private final CauseCategory askable;

    public Localiser(CauseCategory category, CategoryPaths paths, ModelSettings settings, PlanSettings plan) {
        this.category = category;
        this.paths = paths;
        this.settings = settings;
        this.plan = plan;
        askable = Askable.of(category, paths, settings);
    }

    /** The same over other questions of the category. */
    public Localiser over(CauseCategory other) {
        return other == category ? this : new Localiser(other, paths, settings, plan);
    }

    public ModelSettings settings() {
        return settings;
    }

    public PlanSettings plan() {
        return plan;
    }

    public CategoryPaths paths() {
        return paths;
    }

    /** The listed causes with the listed questions. */
    public CauseCategory category() {
        return category;
    }

    /**
     * The category with everything that can be answered on a ticket: the listed questions, the tests that the structure makes,
     * and for each segment that may be absent whether it is there.
     */
    public CauseCategory askable() {
        return askable;
    }

    /**
     * What is known of a ticket, made into advice. Reports and repairs that make no sense with the segments that are there weigh
     * nothing; they are named in the answer.
     *
     * @throws org.benchtrail.core.Invalid if a report names a value that its finding does not have
     */
    public Localisation locate(Known all) {
        Known known = all.heard();
        Equipment equipment = Equipment.of(paths, known.equipment(), known.evidence());
        PlacedModel m = placed(equipment.present(), known.changes());
        List<Report> aside = new ArrayList<>();
        Evidence evidence = weighed(m, known.evidence(), aside);
        Ranking ranking = Ranking.of(m.model(), evidence);
        Offers offers = Offers.of(m, ranking, known.without(Askable.lacking(known.evidence(), m.tests())));
        BenchSituation situation = situation(m, known, offers);
        Advice advice = new NextTest(m.model(), plan).advise(ranking, situation);
        Optional<Action> placing = Placing.test(m, ranking, advice, plan);
        return new Localisation(
                m,
                ranking,
                Surprise.of(ranking),
                Placing.advice(advice, placing, m.masses(ranking.partProbabilities())),
                situation,
                placing,
                TestOrder.of(m, ranking, advice, known.cues(), known.opened()),
                offers.withheld(),
                equipment.open(),
                Contradicted.segments(paths, equipment.present(), aside),
                aside);
    }

    private PlacedModel placed(Set<String> present, Set<String> changes) {
        Layout layout = new Layout(paths, present);
        List<String> touched = layout.touched(changes);
        return placed.computeIfAbsent(
                new Layout.Key(present, touched),
                k -> new PlacedModelBuilder(category, layout, settings, touched).build());
    }

    private Evidence weighed(PlacedModel m, Evidence all, List<Report> aside) {
        Set<String> askable = new HashSet<>();
        m.model().category().findings().stream().map(Finding::id).forEach(askable::add);
        askable.removeAll(m.gone());
        List<Report> reports = new ArrayList<>();
        for (Report r : all.reports()) {
            (askable.contains(r.finding()) ? reports : aside).add(r);
        }
        Set<String> repairable = new HashSet<>();
        m.model().category().causes().stream().map(Cause::id).forEach(repairable::add);
        m.model().category().sharedRepairs().stream().map(SharedRepair::id).forEach(repairable::add);
        List<FailedRepair> failed = new ArrayList<>();
        for (FailedRepair f : all.failedRepairs()) {
            String id = Places.repairOf(f.repair());
            if (repairable.contains(id)) {
                failed.add(new FailedRepair(id, f.beliefThen(), f.at()));
            }
        }
        return new Evidence(reports, failed);
    }

    private static BenchSituation situation(PlacedModel m, Known known, Offers offers) {
        BenchSituation s = known.situation();
        Map<String, Double> setUp = new HashMap<>(s.setUpMinutes());
        if (!known.opened()) {
            m.tests().stream()
                    .filter(GenericTest::inside)
                    .forEach(t -> setUp.merge(t.id(), OPENING_MINUTES, Double::sum));
        }
        Set<String> withheld = new HashSet<>(s.withheld());
        withheld.addAll(offers.withheld().keySet());
        m.model().category().findings().stream()
                .filter(f -> !s.lacking(f).isEmpty())
                .map(Finding::id)
                .forEach(withheld::add);
        return new BenchSituation(s.met(), s.confirmed(), s.hazards(), setUp, withheld);
    }
}

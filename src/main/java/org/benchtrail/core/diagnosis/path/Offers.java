package org.benchtrail.core.diagnosis.path;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.diagnosis.Answers;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Needs;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.path.GenericRules.Where;

/**
 * Which tests are not offered, and why.
 *
 * @param withheld by id of a listed finding or a test made from the structure, the reason in words
 */
record Offers(Map<String, String> withheld) {
    /** From this belief on a drive is suspected, and what may hurt its data is barred. */
    private static final double SUSPECTED = 0.2;

    /** A side with nothing of at least this belief on it: the test cannot tell. */
    private static final double TELLING = 0.01;

    /** Once the part was out, none of these says anything new of it. */
    private static final Set<PathAct> REMOVING = Set.of(PathAct.RESEAT, PathAct.SUBSTITUTE, PathAct.BYPASS);

    private static final Set<PathAct> PARTING = Set.of(PathAct.POINT, PathAct.MOVE, PathAct.MINIMAL);

    static Offers of(PlacedModel m, Ranking ranking, Known known) {
        Answers answers = Answers.of(m.model(), ranking.evidence());
        double[] p = ranking.partProbabilities();
        Set<Bar> bars = bars(m, p, known);
        Map<String, String> withheld = new LinkedHashMap<>();
        m.gone().stream().sorted().forEach(f -> withheld.put(f, "what it asks about is not there"));
        Set<String> asked = onOffer(m, answers, bars, withheld);
        for (GenericTest t : m.tests()) {
            String why = why(m, t, p, answers, bars, known);
            if (why.isEmpty() && asked.contains(t.id())) {
                why = "a listed question is the same test";
            }
            if (!why.isEmpty()) {
                withheld.put(t.id(), why);
            }
        }
        return new Offers(withheld);
    }

    /** Unsaved data bar acts only while the drive is suspected: the parts of the path where they could be hurt. */
    private static Set<Bar> bars(PlacedModel m, double[] p, Known known) {
        Set<Bar> bars = new HashSet<>(known.bars());
        if (bars.contains(Bar.UNSAVED_DATA) && !known.driveFailing()) {
            Map<String, Double> masses = m.masses(p);
            double suspected = m.layout().segments().stream()
                    .filter(s -> s.acts().stream().anyMatch(a -> a.never().contains(Bar.UNSAVED_DATA)))
                    .mapToDouble(s -> masses.getOrDefault(s.id(), 0.0))
                    .sum();
            if (suspected < SUSPECTED) {
                bars.remove(Bar.UNSAVED_DATA);
            }
        }
        return bars;
    }

    /** The tests of single segments that a listed question takes together which is not answered yet; barred ones are withheld. */
    private static Set<String> onOffer(PlacedModel m, Answers answers, Set<Bar> bars, Map<String, String> withheld) {
        Set<String> ids = new HashSet<>();
        m.model().category().findings().stream().map(Finding::id).forEach(ids::add);
        Set<String> asked = new HashSet<>();
        for (StandsFor s : m.layout().paths().stands()) {
            if (!ids.contains(s.finding()) || withheld.containsKey(s.finding())) {
                continue;
            }
            boolean barred = s.segments().stream()
                    .flatMap(id -> m.layout().paths().segment(id).orElseThrow().act(s.act()).stream())
                    .anyMatch(a -> a.never().stream().anyMatch(bars::contains));
            if (barred) {
                withheld.put(s.finding(), "not in this state");
            }
            if (answers.offers(s.finding())) {
                s.segments().forEach(id -> asked.add(GenericTest.id(s.act(), id)));
            }
        }
        return asked;
    }

    /** Why a test made from the structure is not offered; empty if it is. */
    private static String why(PlacedModel m, GenericTest t, double[] p, Answers answers, Set<Bar> bars, Known known) {
        if (t.never().stream().anyMatch(bars::contains)) {
            return "not in this state";
        }
        if (known.lacking().contains(t.with())) {
            return "it needs what is not at hand";
        }
        List<String> missing = Needs.missing(t.needs(), true, known.situation().met());
        if (!missing.isEmpty()) {
            return "first: " + String.join(", ", missing).replace('-', ' ');
        }
        boolean wasOut = (t.act() != PathAct.SUBSTITUTE && answered(m, answers, PathAct.SUBSTITUTE, t))
                || (t.act() != PathAct.BYPASS && answered(m, answers, PathAct.BYPASS, t));
        if (REMOVING.contains(t.act()) && wasOut) {
            return "it was replaced or left out already";
        }
        return PARTING.contains(t.act()) && !tells(m, t, p) ? "it cannot tell any more" : "";
    }

    private static boolean answered(PlacedModel m, Answers answers, PathAct act, GenericTest test) {
        String id = GenericTest.id(act, test.segments().get(0));
        boolean made = m.tests().stream().anyMatch(t -> t.id().equals(id)) && answers.isAnswered(id);
        return made
                || m.layout().paths().stands().stream()
                        .anyMatch(s -> s.act() == act
                                && s.segments().equals(test.segments())
                                && answers.isAnswered(s.finding()));
    }

    /** Something to be told apart lies on either side. */
    private static boolean tells(PlacedModel m, GenericTest t, double[] p) {
        boolean in = false;
        boolean beyond = false;
        for (int k = 0; k < m.places().size(); k++) {
            if (p[k] >= TELLING) {
                boolean here = t.where(m.places().get(k).segment()) == Where.IN;
                in |= here;
                beyond |= !here;
            }
        }
        return in && beyond;
    }
}

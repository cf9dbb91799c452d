package org.benchtrail.core.diagnosis.path;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.LikelihoodTable;
import org.benchtrail.core.diagnosis.path.GenericRules.Where;
import org.jspecify.annotations.Nullable;

/**
 * Likelihood tables of the listed findings over the parts. Listed causes keep the rows of the catalogue; what nobody listed in
 * a place looks half like what is listed there and half like anything, unless the finding is itself a test of places.
 */
final class ListedRows {
    /** Groups that share a row: listed causes; residuals beside listed causes; residuals alone in their segment. */
    private static final int BESIDE = 1;

    private static final int ALONE = 2;

    /** How much of a residual's row looks like the listed causes of its place. Our choice. */
    private static final double LIKE_THE_PLACE = 0.5;

    private final Layout layout;
    private final List<PlacedPart> places;
    private final double[] priors;
    private final int[] group;
    private final int[] causeOf;
    /** The listed parts of each segment. */
    private final Map<String, List<Integer>> listedIn = new HashMap<>();

    ListedRows(Layout layout, List<PlacedPart> places, double[] priors) {
        this.layout = layout;
        this.places = places;
        this.priors = priors;
        group = new int[places.size()];
        causeOf = new int[places.size()];
        int cause = -1;
        for (int p = 0; p < places.size(); p++) {
            PlacedPart place = places.get(p);
            cause += p == 0 || !place.cause().equals(places.get(p - 1).cause()) ? 1 : 0;
            causeOf[p] = cause;
            if (place.isListed()) {
                listedIn.computeIfAbsent(place.segment(), s -> new ArrayList<>())
                        .add(p);
            } else {
                group[p] = listedIn.containsKey(place.segment()) ? BESIDE : ALONE;
            }
        }
    }

    /** @param catalogue the finding's table over the causes that are left */
    LikelihoodTable table(Finding f, LikelihoodTable catalogue, List<Cause> left) {
        double[] background = catalogue.background();
        double[] outside = catalogue.unlisted();
        double[][] base = {
            background, half(background, outside), half(catalogue.marginal(), outside),
        };
        Rule rule = rule(f);
        int[] deviators = new int[places.size()];
        double[][] rows = new double[places.size()][];
        int k = 0;
        for (int p = 0; p < places.size(); p++) {
            double[] row = row(p, catalogue, outside, rule, background);
            if (row != null) {
                deviators[k] = p;
                rows[k++] = row;
            }
        }
        boolean noResiduals = places.stream().allMatch(PlacedPart::isListed);
        int[] named = Arrays.copyOf(deviators, k);
        double[][] own = Arrays.copyOf(rows, k);
        double[] m = noResiduals ? catalogue.marginal() : marginal(base, named, own);
        double[][] used = noResiduals ? new double[][] {background} : base;
        return LikelihoodTable.of(f.values(), group, used, named, own, m, outside);
    }

    private static double[] half(double[] place, double[] outside) {
        double[] row = new double[place.length];
        for (int v = 0; v < row.length; v++) {
            row[v] = LIKE_THE_PLACE * place[v] + (1 - LIKE_THE_PLACE) * outside[v];
        }
        return row;
    }

    private double @Nullable [] row(
            int p, LikelihoodTable catalogue, double[] outside, Rule rule, double[] background) {
        PlacedPart place = places.get(p);
        if (place.isListed()) {
            return catalogue.deviates(causeOf[p]) ? catalogue.row(causeOf[p]) : null;
        }
        if (!rule.isNone()) {
            return rule.row(place.segment(), background);
        }
        List<Integer> here = listedIn.getOrDefault(place.segment(), List.of());
        return here.stream().noneMatch(l -> catalogue.deviates(causeOf[l]))
                ? null
                : half(mixture(here, catalogue), outside);
    }

    private double[] mixture(List<Integer> parts, LikelihoodTable catalogue) {
        double[] m = catalogue.background();
        Arrays.fill(m, 0);
        double mass = 0;
        for (int p : parts) {
            double[] row = catalogue.row(causeOf[p]);
            mass += priors[p];
            for (int v = 0; v < m.length; v++) {
                m[v] += priors[p] * row[v];
            }
        }
        for (int v = 0; v < m.length; v++) {
            m[v] /= mass;
        }
        return m;
    }

    private double[] marginal(double[][] base, int[] deviators, double[][] rows) {
        double[] m = new double[base[0].length];
        double mass = 0;
        int k = 0;
        for (int p = 0; p < priors.length; p++) {
            boolean own = k < deviators.length && deviators[k] == p;
            double[] row = own ? rows[k++] : base[group[p]];
            mass += priors[p];
            for (int v = 0; v < m.length; v++) {
                m[v] += priors[p] * row[v];
            }
        }
        for (int v = 0; v < m.length; v++) {
            m[v] /= mass;
        }
        return m;
    }

    /**
     * What a finding that is itself a test of places says to a residual.
     *
     * @param positive the finding's values that are the positive outcome, by index
     * @param chances of it, by segment; the highest of all tests that the finding is
     */
    private record Rule(Set<Integer> positive, Map<String, Double> chances) {
        static final Rule NONE = new Rule(Set.of(), Map.of());

        boolean isNone() {
            return chances.isEmpty();
        }

        double[] row(String segment, double[] background) {
            double p = chances.getOrDefault(segment, 0.0);
            double[] row = new double[background.length];
            double rest = 0;
            for (int v = 0; v < row.length; v++) {
                rest += positive.contains(v) ? 0 : background[v];
            }
            for (int v = 0; v < row.length; v++) {
                row[v] = positive.contains(v) ? p / positive.size() : (1 - p) * background[v] / rest;
            }
            return row;
        }
    }

    private Rule rule(Finding f) {
        Set<Integer> positive = new TreeSet<>();
        Map<String, Double> chances = new HashMap<>();
        for (FaultPath path : layout.paths().paths()) {
            for (Point p : path.points()) {
                if (p.same().isPresent() && p.same().get().finding().equals(f.id()) && layout.has(p.after())) {
                    positive.addAll(values(f, p.same().get().bad()));
                    raise(chances, PathAct.POINT, layout.parted(path, p));
                }
            }
        }
        for (StandsFor s : layout.paths().stands()) {
            List<String> in = layout.left(s.segments());
            if (s.finding().equals(f.id()) && !in.isEmpty()) {
                positive.addAll(values(f, s.positive()));
                if (s.act() == PathAct.CHANGE) {
                    changed(chances, in, f);
                } else {
                    raise(chances, s.act(), layout.around(in));
                }
            }
        }
        for (Change c : layout.paths().changes()) {
            if (c.finding().equals(f.id()) && chances.isEmpty()) {
                positive.addAll(values(f, Point.ABNORMAL));
                changed(chances, layout.left(c.touches()), f);
            }
        }
        return chances.isEmpty() ? Rule.NONE : new Rule(positive, chances);
    }

    private static Set<Integer> values(Finding f, String word) {
        Set<Integer> values = new TreeSet<>();
        for (int v = 0; v < f.values().size(); v++) {
            if (word.equals(Point.ABNORMAL) ? v > 0 : f.values().get(v).equals(word)) {
                values.add(v);
            }
        }
        return values;
    }

    private void raise(Map<String, Double> chances, PathAct act, Map<String, Where> where) {
        for (Segment s : layout.segments()) {
            chances.merge(s.id(), GenericRules.odds(act).at(where.getOrDefault(s.id(), Where.ELSE)), Math::max);
        }
    }

    /** What began with a change is likelier where the change touched something. */
    private void changed(Map<String, Double> chances, List<String> touched, Finding f) {
        double usual = 1 - f.background().getOrDefault(f.usual(), 0.0);
        for (Segment s : layout.segments()) {
            double p = touched.contains(s.id()) ? Math.max(usual, GenericRules.CHANGED) : usual;
            chances.merge(s.id(), p, Math::max);
        }
    }
}

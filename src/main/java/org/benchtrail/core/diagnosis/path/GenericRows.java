package org.benchtrail.core.diagnosis.path;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.benchtrail.core.diagnosis.LikelihoodTable;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.path.GenericRules.Where;

/** Likelihood tables of the tests that are made from the structure. */
final class GenericRows {
    /** Parts are few if they are at most this share of all: one in so many. */
    private static final int FEW = 4;

    private final List<PlacedPart> places;
    private final double[] priors;
    private final ModelSettings settings;
    /** All parts in one group, for the acts that touch few of them. */
    private final int[] alike;

    GenericRows(List<PlacedPart> places, double[] priors, ModelSettings settings) {
        this.places = places;
        this.priors = priors;
        this.settings = settings;
        alike = new int[places.size()];
    }

    LikelihoodTable table(GenericTest test) {
        if (test.act() == PathAct.LOG) {
            return grouped(test, p -> logRow(test, p), logRow(test, ""));
        }
        double[] otherwise = row(GenericRules.odds(test.act()).at(Where.ELSE));
        if (PathAct.OF_A_SEGMENT.contains(test.act()) || test.act() == PathAct.UNDO) {
            return touching(test, otherwise);
        }
        return grouped(test, segment -> row(GenericRules.odds(test.act()).at(test.where(segment))), otherwise);
    }

    static double[] row(double positive) {
        return new double[] {1 - positive, positive};
    }

    static double[] logRow(GenericTest test, String segment) {
        int named = test.values().size() - 1;
        int own = test.values().indexOf(segment);
        double[] row = new double[named + 1];
        if (own < 1) {
            Arrays.fill(row, (1 - GenericRules.LOG_NAMELESS) / named);
            row[0] = GenericRules.LOG_NAMELESS;
            return row;
        }
        double others = named == 1 ? 0 : (1 - GenericRules.LOG_OWN - GenericRules.LOG_NONE) / (named - 1);
        Arrays.fill(row, others);
        row[0] = GenericRules.LOG_NONE;
        row[own] = 1 - row[0] - others * (named - 1);
        return row;
    }

    private interface RowOf {
        double[] of(String segment);
    }

    private LikelihoodTable touching(GenericTest test, double[] otherwise) {
        double[][] rows = new double[places.size()][];
        for (int p = 0; p < rows.length; p++) {
            Where where = test.where(places.get(p).segment());
            rows[p] = where == Where.ELSE ? otherwise : row(GenericRules.positive(test.act(), where, places.get(p)));
        }
        return deviating(test, rows, otherwise);
    }

    /** Few parts differ from the rest: each has its row. */
    private LikelihoodTable deviating(GenericTest test, double[][] rows, double[] otherwise) {
        int[] deviators = IntStream.range(0, rows.length)
                .filter(p -> rows[p] != otherwise)
                .toArray();
        double[][] theirs = Arrays.stream(deviators).mapToObj(p -> rows[p]).toArray(double[][]::new);
        return table(test, alike, new double[][] {otherwise}, deviators, theirs);
    }

    /** All parts fall into a few groups; unless nearly all are in one, for to deal them costs more than a few deviators. */
    private LikelihoodTable grouped(GenericTest test, RowOf rows, double[] otherwise) {
        Map<String, Integer> groups = new LinkedHashMap<>();
        List<double[]> base = new ArrayList<>(List.of(otherwise));
        groups.put(Arrays.toString(otherwise), 0);
        int[] group = new int[places.size()];
        double[][] own = new double[places.size()][];
        int outside = 0;
        for (int p = 0; p < places.size(); p++) {
            double[] row = rows.of(places.get(p).segment());
            group[p] = groups.computeIfAbsent(Arrays.toString(row), r -> {
                base.add(row);
                return base.size() - 1;
            });
            own[p] = base.get(group[p]);
            outside += group[p] == 0 ? 0 : 1;
        }
        if (outside * FEW <= places.size()) {
            return deviating(test, own, otherwise);
        }
        return table(test, group, base.toArray(double[][]::new), new int[0], new double[0][]);
    }

    private LikelihoodTable table(GenericTest test, int[] group, double[][] base, int[] deviators, double[][] rows) {
        double[] m = new double[base[0].length];
        for (int v = 0; v < m.length; v++) {
            double sum = 0;
            double mass = 0;
            int k = 0;
            for (int p = 0; p < priors.length; p++) {
                boolean own = k < deviators.length && deviators[k] == p;
                sum += priors[p] * (own ? rows[k][v] : base[group[p]][v]);
                mass += priors[p];
                k += own ? 1 : 0;
            }
            m[v] = sum / mass;
        }
        double[] outside = outside(m, settings);
        return LikelihoodTable.of(test.values(), group, base, deviators, rows, m, outside);
    }

    /** What the cause that is in no place makes of it. */
    static double[] outside(double[] m, ModelSettings settings) {
        return Arrays.stream(m)
                .map(x -> (1 - settings.epsilon()) * x + settings.epsilon() / m.length)
                .toArray();
    }
}

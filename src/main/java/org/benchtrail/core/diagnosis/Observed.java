package org.benchtrail.core.diagnosis;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * All valid reports on one finding, taken together.
 *
 * <p>Several reports share one hidden true value: repeating an answer is not double evidence, and opposite answers of equal
 * reliability cancel exactly.
 *
 * @param finding index in the model
 * @param reports informative ones only, by time, then id
 * @param channel for each true value, the product of the reports' channels
 * @param exponent correlation discount times calibration
 */
record Observed(int finding, List<Report> reports, double[] channel, double exponent) {
    private static final Comparator<Report> ORDER =
            Comparator.comparing(Report::at).thenComparing(Report::id);

    /** The findings that have informative reports, in model order. */
    static List<Observed> of(Model model, Evidence evidence) {
        Map<Integer, List<Report>> byFinding = new TreeMap<>();
        for (Report r : evidence.reports()) {
            if (r.isInformative()) {
                byFinding
                        .computeIfAbsent(model.findingIndex(r.finding()), f -> new ArrayList<>())
                        .add(r);
            }
        }
        Map<String, Integer> inGroup = new HashMap<>();
        byFinding.keySet().forEach(f -> {
            String group = model.finding(f).group();
            if (group != null) {
                inGroup.merge(group, 1, Integer::sum);
            }
        });
        List<Observed> all = new ArrayList<>();
        byFinding.forEach((f, reports) -> all.add(of(model, f, reports, inGroup)));
        return all;
    }

    private static Observed of(Model model, int finding, List<Report> reports, Map<String, Integer> inGroup) {
        List<Report> sorted = reports.stream().sorted(ORDER).toList();
        double exponent = model.settings().beta();
        String group = model.finding(finding).group();
        if (group != null) {
            exponent /= 1 + model.correlation(group) * (inGroup.getOrDefault(group, 1) - 1);
        }
        return new Observed(finding, sorted, channel(model.table(finding), sorted), exponent);
    }

    static double[] channel(LikelihoodTable table, List<Report> reports) {
        double[] g = new double[table.size()];
        Arrays.fill(g, 1);
        for (Report r : reports) {
            double[] one = LikelihoodTable.channel(table.values.indexOf(r.value()), r.reliability(), table.size());
            for (int v = 0; v < g.length; v++) {
                g[v] *= one[v];
            }
        }
        return g;
    }

    Instant since() {
        return reports.get(0).at();
    }

    /** Natural logarithm of the likelihood of the reports under a row, without exponent. */
    double logLikelihood(double[] row) {
        return StrictMath.log(LikelihoodTable.likelihood(row, channel));
    }

    /** Adds {@code exponent * ln l(i)} to every log weight; deviating causes and the unlisted one (last) differ. */
    void addTo(double[] score, LikelihoodTable table) {
        int n = score.length - 1;
        double[] common = new double[table.base.length];
        for (int g = 0; g < common.length; g++) {
            common[g] = logLikelihood(table.base[g]);
        }
        for (int k = 0; k < table.deviators.length; k++) {
            int i = table.deviators[k];
            score[i] += exponent * (logLikelihood(table.rows[k]) - common[table.group[i]]);
        }
        for (int i = 0; i < n; i++) {
            score[i] += exponent * common[table.group[i]];
        }
        score[n] += exponent * (logLikelihood(table.unlisted) - common[0]);
        score[n] += exponent * common[0];
    }

    /** Weight of one finding for part a against part b, decibans. */
    double decibans(Model model, int a, int b) {
        LikelihoodTable t = model.table(finding);
        int n = model.parts();
        return exponent * Decibans.PER_NAT * (logLikelihood(t.row(a, n)) - logLikelihood(t.row(b, n)));
    }

    /** The same without discount. */
    Observed alone() {
        return new Observed(finding, reports, channel, 1);
    }

    /** As if this report had settled the matter. */
    Observed only(Report report, Model model) {
        return new Observed(finding, List.of(report), channel(model.table(finding), List.of(report)), exponent);
    }

    /**
     * Probability of every combination of values these reports could have had, given a row; of the first report's values
     * alone if {@code everyTuple} is off or the combinations are more than {@code most}.
     */
    double[] predicted(double[] row, boolean everyTuple, int most) {
        boolean all = everyTuple && StrictMath.pow(row.length, reports.size()) <= most;
        int k = all ? reports.size() : 1;
        double[][] joint = {row};
        for (Report r : reports.subList(0, k)) {
            joint = spread(joint, r.reliability());
        }
        double[] u = new double[joint.length];
        for (int t = 0; t < u.length; t++) {
            for (double x : joint[t]) {
                u[t] += x;
            }
        }
        return u;
    }

    /** Splits every partial combination by the next report's value, keeping the hidden true value's weights. */
    private static double[][] spread(double[][] joint, double reliability) {
        int size = joint[0].length;
        double[][] next = new double[joint.length * size][size];
        for (int t = 0; t < joint.length; t++) {
            for (int x = 0; x < size; x++) {
                double[] g = LikelihoodTable.channel(x, reliability, size);
                for (int v = 0; v < size; v++) {
                    next[t * size + x][v] = joint[t][v] * g[v];
                }
            }
        }
        return next;
    }
}

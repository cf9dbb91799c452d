package org.benchtrail.core.diagnosis;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The likelihood table of one finding, sparse: causes fall into a few groups that share a row, and only those that deviate
 * from their group have a row of their own. In a plain category all causes are one group, whose row is the background.
 *
 * <p>Row of the unlisted cause: {@code (1-eps) m + eps/|V|}, where m is the mixture of the listed causes by their priors.
 */
public final class LikelihoodTable {
    final List<String> values;
    /** For each cause the group it falls into. Tables with the same array are dealt once. */
    final int[] group;
    /** The row of each group; the first is the background. */
    final double[][] base;

    final double[] background;
    /** Indices of the deviating causes, ascending, with their rows. */
    final int[] deviators;

    final double[][] rows;
    final double[] marginal;
    final double[] unlisted;

    private LikelihoodTable(
            List<String> values, int[] group, double[][] base, int[] deviators, double[][] rows, double[][] mixed) {
        this.values = values;
        this.group = group;
        this.base = base;
        this.background = base[0];
        this.deviators = deviators;
        this.rows = rows;
        this.marginal = mixed[0];
        this.unlisted = mixed[1];
    }

    /**
     * A table that is known row by row.
     *
     * @param group for each cause an index into {@code base}
     * @param base rows of the groups, the background first
     * @param deviators ascending indices of causes with a row of their own
     * @param rows theirs
     * @param marginal what is expected before anything is known, the unlisted cause aside
     * @param unlisted row of the unlisted cause
     */
    public static LikelihoodTable of(
            List<String> values,
            int[] group,
            double[][] base,
            int[] deviators,
            double[][] rows,
            double[] marginal,
            double[] unlisted) {
        return new LikelihoodTable(values, group, base, deviators, rows, new double[][] {marginal, unlisted});
    }

    /**
     * The table that the catalogue gives.
     *
     * @param share prior of each listed cause among the listed ones; sums to 1
     */
    public static LikelihoodTable of(Finding f, List<Cause> causes, double[] share, ModelSettings settings) {
        double[] background = row(f.background(), f.values(), settings);
        int[] deviators = new int[causes.size()];
        double[][] rows = new double[causes.size()][];
        int k = 0;
        for (int i = 0; i < causes.size(); i++) {
            Map<String, Double> p = deviation(causes.get(i), f.id());
            if (p != null) {
                deviators[k] = i;
                rows[k++] = row(p, f.values(), settings);
            }
        }
        int[] named = Arrays.copyOf(deviators, k);
        double[][] table = Arrays.copyOf(rows, k);
        return new LikelihoodTable(
                f.values(),
                new int[causes.size()],
                new double[][] {background},
                named,
                table,
                mixed(background, named, table, share, settings));
    }

    private static @Nullable Map<String, Double> deviation(Cause cause, String finding) {
        for (Deviation d : cause.deviations()) {
            if (d.finding().equals(finding)) {
                return d.probabilities();
            }
        }
        return null;
    }

    private static double[] row(Map<String, Double> p, List<String> values, ModelSettings s) {
        double[] row = values.stream().mapToDouble(p::get).toArray();
        double sum = 0;
        for (int v = 0; v < row.length; v++) {
            row[v] = Math.min(s.clampHigh(), Math.max(s.clampLow(), row[v]));
            sum += row[v];
        }
        for (int v = 0; v < row.length; v++) {
            row[v] /= sum;
        }
        return row;
    }

    private static double[][] mixed(double[] b, int[] deviators, double[][] rows, double[] share, ModelSettings s) {
        double[] m = new double[b.length];
        double[] unlisted = new double[b.length];
        for (int v = 0; v < b.length; v++) {
            double named = 0;
            double sum = 0;
            for (int k = 0; k < deviators.length; k++) {
                named += share[deviators[k]];
                sum += share[deviators[k]] * rows[k][v];
            }
            m[v] = sum + Math.max(0, 1 - named) * b[v];
            unlisted[v] = (1 - s.epsilon()) * m[v] + s.epsilon() / b.length;
        }
        return new double[][] {m, unlisted};
    }

    int size() {
        return background.length;
    }

    /** Row of a cause; {@code cause} equal to {@code unlistedIndex} asks for the unlisted one. */
    double[] row(int cause, int unlistedIndex) {
        if (cause == unlistedIndex) {
            return unlisted;
        }
        int k = Arrays.binarySearch(deviators, cause);
        return k >= 0 ? rows[k] : base[group[cause]];
    }

    /** How probable a value is under each cause, the unlisted one last. */
    double[] column(int value, int causes) {
        double[] column = new double[causes + 1];
        for (int i = 0; i < causes; i++) {
            column[i] = base[group[i]][value];
        }
        for (int k = 0; k < deviators.length; k++) {
            column[deviators[k]] = rows[k][value];
        }
        column[causes] = unlisted[value];
        return column;
    }

    /** Whether a cause has a row of its own. */
    public boolean deviates(int cause) {
        return Arrays.binarySearch(deviators, cause) >= 0;
    }

    /** Row of a listed cause, a copy. */
    public double[] row(int cause) {
        return row(cause, -1).clone();
    }

    public double[] background() {
        return background.clone();
    }

    public double[] marginal() {
        return marginal.clone();
    }

    public double[] unlisted() {
        return unlisted.clone();
    }

    /** Probability of what was reported, given a row and the weight each true value has in the reports. */
    static double likelihood(double[] row, double[] channel) {
        double sum = 0;
        for (int v = 0; v < row.length; v++) {
            sum += row[v] * channel[v];
        }
        return sum;
    }

    /** One report's channel: {@code rho [v = x] + (1-rho)/|V|} for each true value v. */
    static double[] channel(int value, double reliability, int size) {
        double[] g = new double[size];
        Arrays.fill(g, (1 - reliability) / size);
        g[value] += reliability;
        return g;
    }
}

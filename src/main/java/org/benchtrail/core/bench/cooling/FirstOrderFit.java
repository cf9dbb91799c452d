package org.benchtrail.core.bench.cooling;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Least-squares fit of a first-order step response, T(t) = T_inf - (T_inf - T0) e^(-(t - t_1) / tau), to samples.
 *
 * <p>Shape: n samples, times strictly increasing. Units: {@code settled}, {@code start}, {@code sigma} and {@code settledError}
 * as the values; {@code tau} and {@code tauError} as the times. {@code start} belongs to the first sample's time. Errors are
 * standard errors from the linearized covariance s^2 (J'J)^-1 with s^2 = SSE / degrees; {@code degrees} is n minus the number of
 * fitted parameters (3, or 2 when the start is known).
 *
 * <p>Domain: n at least one more than the parameters; values not all alike; the series must bend: a time constant beyond twenty
 * times the span cannot be told from a straight line and is refused.
 *
 * <p>Source: lumped-capacitance model, textbooks on heat transfer; for a given tau the rest is linear, so tau is sought alone
 * on a grid and refined, then all parameters are polished by Gauss-Newton steps (variable projection).
 */
record FirstOrderFit(
        double settled, double start, double tau, double sse, int degrees, double settledError, double tauError) {
    private static final double LONGEST_IN_SPANS = 20;
    private static final int GRID = 240;
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

    /** @throws IllegalArgumentException if the series is too short, flat, or does not bend */
    static FirstOrderFit of(double[] times, double[] values) {
        return new Search(times, values, Double.NaN).fit();
    }

    /** As {@link #of} with the value at the first sample's time known. */
    static FirstOrderFit from(double start, double[] times, double[] values) {
        return new Search(times, values, start).fit();
    }

    /** Standard deviation of the samples around the curve. */
    double sigma() {
        return Math.sqrt(sse / degrees);
    }

    /** The fitted value {@code since} after the first sample. */
    double at(double since) {
        return settled - (settled - start) * Math.exp(-since / tau);
    }

    /** Time since the first sample at which {@code value}, strictly between start and settled, is reached. */
    double reaches(double value) {
        return tau * Math.log((settled - start) / (settled - value));
    }

    private static final class Search {
        private final double[] since;
        private final double[] values;
        private final double knownStart;
        private final double span;

        Search(double[] times, double[] values, double knownStart) {
            this.since = IntStream.range(0, times.length)
                    .mapToDouble(i -> times[i] - times[0])
                    .toArray();
            this.values = values;
            this.knownStart = knownStart;
            int needed = parameters() + 1;
            if (times.length < needed || values.length != times.length) {
                throw new IllegalArgumentException("a fit needs at least " + needed + " samples, each with its time");
            }
            this.span = since[since.length - 1];
        }

        private boolean startKnown() {
            return !Double.isNaN(knownStart);
        }

        private int parameters() {
            return startKnown() ? 2 : 3;
        }

        FirstOrderFit fit() {
            double[] p = linear(bestTau());
            for (int i = 0; i < 30; i++) {
                double[] next = polished(p);
                if (!(next[2] > 0) || !(sse(next) <= sse(p))) {
                    break;
                }
                p = next;
            }
            return withErrors(p);
        }

        private double bestTau() {
            double shortest = IntStream.range(1, since.length)
                            .mapToDouble(i -> since[i] - since[i - 1])
                            .min()
                            .orElse(span)
                    / 10;
            double low = Math.log(shortest);
            double step = (Math.log(LONGEST_IN_SPANS * span) - low) / GRID;
            int best = 0;
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i <= GRID; i++) {
                double sse = sse(linear(Math.exp(low + i * step)));
                if (sse < least) {
                    least = sse;
                    best = i;
                }
            }
            if (best == 0 || best == GRID) {
                throw new IllegalArgumentException("the samples do not bend towards an end value");
            }
            return golden(low + (best - 1) * step, low + (best + 1) * step);
        }

        private double golden(double from, double to) {
            double low = from;
            double high = to;
            for (int i = 0; i < 60; i++) {
                double left = high - GOLDEN * (high - low);
                double right = low + GOLDEN * (high - low);
                if (sse(linear(Math.exp(left))) < sse(linear(Math.exp(right)))) {
                    high = right;
                } else {
                    low = left;
                }
            }
            return Math.exp((low + high) / 2);
        }

        /** The best settled and start values for a given tau: linear least squares on the exponential. */
        private double[] linear(double tau) {
            return startKnown() ? linearFromStart(tau) : linearBoth(tau);
        }

        private double[] linearFromStart(double tau) {
            double top = 0;
            double bottom = 0;
            for (int i = 0; i < since.length; i++) {
                double risen = -Math.expm1(-since[i] / tau);
                top += risen * (values[i] - knownStart);
                bottom += risen * risen;
            }
            return new double[] {knownStart + top / bottom, knownStart, tau};
        }

        private double[] linearBoth(double tau) {
            int n = since.length;
            double meanRisen = IntStream.range(0, n)
                    .mapToDouble(i -> -Math.expm1(-since[i] / tau))
                    .average()
                    .orElseThrow();
            double meanValue =
                    IntStream.range(0, n).mapToDouble(i -> values[i]).average().orElseThrow();
            double top = 0;
            double bottom = 0;
            for (int i = 0; i < n; i++) {
                double risen = -Math.expm1(-since[i] / tau) - meanRisen;
                top += risen * (values[i] - meanValue);
                bottom += risen * risen;
            }
            double rise = top / bottom;
            double start = meanValue - rise * meanRisen;
            return new double[] {start + rise, start, tau};
        }

        private static double value(double[] p, double since) {
            return p[0] - (p[0] - p[1]) * Math.exp(-since / p[2]);
        }

        private double sse(double[] p) {
            double sum = 0;
            for (int i = 0; i < since.length; i++) {
                double off = values[i] - value(p, since[i]);
                sum += off * off;
            }
            return sum;
        }

        /** Derivatives by settled, tau and, unless it is known, start. */
        private double[] gradient(double[] p, double since) {
            double left = Math.exp(-since / p[2]);
            double byTau = -(p[0] - p[1]) * left * since / (p[2] * p[2]);
            return startKnown() ? new double[] {1 - left, byTau} : new double[] {1 - left, byTau, left};
        }

        private double[][] normal(double[] p) {
            int m = parameters();
            double[][] normal = new double[m][m];
            for (double t : since) {
                double[] g = gradient(p, t);
                for (int i = 0; i < m; i++) {
                    for (int j = 0; j < m; j++) {
                        normal[i][j] += g[i] * g[j];
                    }
                }
            }
            return normal;
        }

        private double[] polished(double[] p) {
            int m = parameters();
            double[] right = new double[m];
            for (int k = 0; k < since.length; k++) {
                double off = values[k] - value(p, since[k]);
                double[] g = gradient(p, since[k]);
                for (int i = 0; i < m; i++) {
                    right[i] += g[i] * off;
                }
            }
            double[] step = new double[m];
            double[][] inverse = inverse(normal(p));
            for (int i = 0; i < m; i++) {
                for (int j = 0; j < m; j++) {
                    step[i] += inverse[i][j] * right[j];
                }
            }
            return new double[] {p[0] + step[0], startKnown() ? knownStart : p[1] + step[2], p[2] + step[1]};
        }

        private FirstOrderFit withErrors(double[] p) {
            double[][] inverse = inverse(normal(p));
            int degrees = since.length - parameters();
            double variance = sse(p) / degrees;
            double settledError = Math.sqrt(variance * inverse[0][0]);
            double tauError = Math.sqrt(variance * inverse[1][1]);
            if (!Double.isFinite(settledError) || !Double.isFinite(tauError)) {
                throw new IllegalArgumentException("the samples do not fix an end value and a time constant");
            }
            return new FirstOrderFit(p[0], p[1], p[2], sse(p), degrees, settledError, tauError);
        }

        /** Gauss-Jordan with pivoting; a singular matrix gives entries that are not finite, which the caller refuses. */
        private static double[][] inverse(double[][] matrix) {
            int m = matrix.length;
            double[][] a = new double[m][];
            for (int i = 0; i < m; i++) {
                a[i] = Arrays.copyOf(matrix[i], 2 * m);
                a[i][m + i] = 1;
            }
            for (int c = 0; c < m; c++) {
                pivot(a, c);
                for (int r = 0; r < m; r++) {
                    if (r != c) {
                        subtract(a[r], a[c], a[r][c] / a[c][c], 1);
                    }
                }
                subtract(a[c], a[c], 0, a[c][c]);
            }
            double[][] inverse = new double[m][];
            for (int i = 0; i < m; i++) {
                inverse[i] = Arrays.copyOfRange(a[i], m, 2 * m);
            }
            return inverse;
        }

        private static void pivot(double[][] a, int column) {
            int best = column;
            for (int r = column + 1; r < a.length; r++) {
                if (Math.abs(a[r][column]) > Math.abs(a[best][column])) {
                    best = r;
                }
            }
            double[] row = a[best];
            a[best] = a[column];
            a[column] = row;
        }

        private static void subtract(double[] row, double[] other, double factor, double divisor) {
            for (int i = 0; i < row.length; i++) {
                row[i] = (row[i] - factor * other[i]) / divisor;
            }
        }
    }
}

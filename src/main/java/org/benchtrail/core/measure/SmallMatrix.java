package org.benchtrail.core.measure;

import org.jspecify.annotations.Nullable;

/** Inverse of a small symmetric positive matrix, brought to unit diagonal first so that mixed units do not spoil it. */
final class SmallMatrix {
    private static final double LEAST_PIVOT = 1e-14;

    private SmallMatrix() {}

    /** The inverse; null if the matrix is singular to working precision. */
    static double @Nullable [][] inverse(double[][] matrix) {
        int n = matrix.length;
        double[] scale = new double[n];
        for (int i = 0; i < n; i++) {
            if (!(matrix[i][i] > 0)) {
                return null;
            }
            scale[i] = 1 / Math.sqrt(matrix[i][i]);
        }
        double[][] work = new double[n][2 * n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                work[i][j] = matrix[i][j] * scale[i] * scale[j];
            }
            work[i][n + i] = 1;
        }
        return eliminate(work) ? unscaled(work, scale) : null;
    }

    /** Gauss-Jordan; a positive matrix needs no exchange of rows. */
    private static boolean eliminate(double[][] work) {
        for (int k = 0; k < work.length; k++) {
            double pivot = work[k][k];
            if (!(pivot > LEAST_PIVOT)) {
                return false;
            }
            for (int j = 0; j < work[k].length; j++) {
                work[k][j] /= pivot;
            }
            clearColumn(work, k);
        }
        return true;
    }

    private static void clearColumn(double[][] work, int k) {
        for (int i = 0; i < work.length; i++) {
            double factor = work[i][k];
            for (int j = 0; i != k && j < work[i].length; j++) {
                work[i][j] -= factor * work[k][j];
            }
        }
    }

    private static double[][] unscaled(double[][] work, double[] scale) {
        int n = scale.length;
        double[][] inverse = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                inverse[i][j] = work[i][n + j] * scale[i] * scale[j];
            }
        }
        return inverse;
    }
}

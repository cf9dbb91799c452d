package org.benchtrail.core.measure;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.measure.WarmUpFit.Flag;
import org.jspecify.annotations.Nullable;

/**
 * Finds the first-order course of least squares.
 *
 * <p>At a given τ the model is linear in T∞ and T₀ with columns 1 − e and e, e = exp(−(t − start)/τ); so only τ is searched:
 * first over a grid on a thinned series, then from each valley found there by Gauss-Newton steps in ln τ on all rows, led
 * by the secant rule and halved until the squares do not rise. The search is bounded (a tenth of the smallest step
 * to a thousand records), so that a straight line ends at the bound and is flagged instead of running off.
 */
final class WarmUpSolver {
    private static final int GRID = 60;
    private static final int THINNED = 240;
    private static final int MOST_STEPS = 60;
    private static final double LEAST_STEP = 1e-11;
    /** Near the bottom the squares are flat to rounding while the step still has digits to give. */
    private static final double FLATNESS = 1e-12;

    private final double[] ages;
    private final double[] values;
    private final double start;
    private final @Nullable Double fixedInitial;
    private final double smallestStep;
    private final double span;
    private final double[] decay;

    // The state at the time constant last tried.
    private double settled;
    private double initial;
    private double squares;

    private WarmUpSolver(double[] ages, double[] values, double start, @Nullable Double fixedInitial) {
        this.ages = ages;
        this.values = values;
        this.start = start;
        this.fixedInitial = fixedInitial;
        this.decay = new double[ages.length];
        this.span = ages[ages.length - 1] - ages[0];
        double least = span;
        for (int i = 1; i < ages.length; i++) {
            least = Math.min(least, ages[i] - ages[i - 1]);
        }
        this.smallestStep = least;
    }

    static WarmUpSolver free(Series series) {
        return new WarmUpSolver(ages(series, series.time(0)), series.values(), series.time(0), null);
    }

    static WarmUpSolver fixed(Series series, double start, double initial) {
        return new WarmUpSolver(ages(series, start), series.values(), start, initial);
    }

    private static double[] ages(Series series, double start) {
        double[] ages = series.times();
        for (int i = 0; i < ages.length; i++) {
            ages[i] -= start;
        }
        return ages;
    }

    WarmUpFit solve() {
        double log = best(thinned().valleys());
        tryAt(log);
        double tau = Math.exp(log);
        int degrees = ages.length - (fixedInitial == null ? 3 : 2);
        double[][] covariance = covariance(tau, squares / degrees);
        FirstOrder curve = new FirstOrder(settled, initial, tau, start);
        return new WarmUpFit(curve, squares, degrees, covariance, flags(tau));
    }

    private double shortest() {
        return Math.log(smallestStep / 10);
    }

    private double longest() {
        return Math.log(1000 * span);
    }

    /** Every k-th row, enough to find the valley; bounds stay those of the full series by their span, nearly. */
    private WarmUpSolver thinned() {
        int every = Math.max(1, ages.length / THINNED);
        if (every == 1) {
            return this;
        }
        int n = (ages.length - 1) / every + 1;
        double[] fewAges = new double[n];
        double[] fewValues = new double[n];
        for (int i = 0; i < n; i++) {
            fewAges[i] = ages[i * every];
            fewValues[i] = values[i * every];
        }
        return new WarmUpSolver(fewAges, fewValues, start, fixedInitial);
    }

    /** Places on the grid that lie lower than their neighbours: with much scatter there is more than one valley. */
    private List<Double> valleys() {
        double[] logs = new double[GRID + 1];
        double[] depths = new double[GRID + 1];
        for (int i = 0; i <= GRID; i++) {
            logs[i] = shortest() + (longest() - shortest()) * i / GRID;
            tryAt(logs[i]);
            depths[i] = squares;
        }
        List<Double> valleys = new ArrayList<>();
        for (int i = 0; i <= GRID; i++) {
            boolean left = i == 0 || depths[i] <= depths[i - 1];
            boolean right = i == GRID || depths[i] < depths[i + 1];
            if (left && right) {
                valleys.add(logs[i]);
            }
        }
        return valleys.isEmpty() ? List.of(shortest()) : valleys;
    }

    /** The lowest place that any of the valleys leads to. */
    private double best(List<Double> valleys) {
        double best = valleys.get(0);
        double least = Double.POSITIVE_INFINITY;
        for (double valley : valleys) {
            double log = refine(valley);
            tryAt(log);
            if (squares < least) {
                least = squares;
                best = log;
            }
        }
        return best;
    }

    private double refine(double begin) {
        double log = begin;
        double way = 0;
        double stepBefore = 0;
        tryAt(log);
        for (int i = 0; i < MOST_STEPS; i++) {
            double step = newtonStep(Math.exp(log));
            double next = improved(log, squares, secant(step, stepBefore, way));
            if (Math.abs(next - log) <= LEAST_STEP) {
                return log;
            }
            way = next - log;
            stepBefore = step;
            log = next;
        }
        return log;
    }

    /**
     * The step to try. Where residuals are large, Gauss-Newton steps overshoot to and fro, or creep; the secant through the last two
     * steps then leads to where they become zero, if it leads downhill.
     */
    private static double secant(double step, double stepBefore, double way) {
        double led = step * way / (stepBefore - step);
        return Math.max(-1, Math.min(1, led * step > 0 ? led : step));
    }

    /** The step, halved until the squares do not rise; the same place if none lowers them. */
    private double improved(double log, double before, double first) {
        double step = first;
        while (Math.abs(step) > LEAST_STEP) {
            double next = Math.max(shortest(), Math.min(longest(), log + step));
            tryAt(next);
            if (squares < before * (1 + FLATNESS)) {
                return next;
            }
            step /= 2;
        }
        tryAt(log);
        return log;
    }

    /** Sets the linear parameters that fit best at this ln τ, and the squares left over. */
    private void tryAt(double log) {
        double rate = -Math.exp(-log);
        double s11 = 0;
        double s12 = 0;
        double s22 = 0;
        double b1 = 0;
        double b2 = 0;
        // Values are taken from the first one, so that a large offset costs no digits.
        double offset = values[0];
        for (int i = 0; i < ages.length; i++) {
            double e = Math.exp(rate * ages[i]);
            double rise = 1 - e;
            double y = values[i] - offset;
            decay[i] = e;
            s11 += rise * rise;
            s12 += rise * e;
            s22 += e * e;
            b1 += rise * y;
            b2 += e * y;
        }
        solveLinear(offset, s11, s12, s22, b1, b2);
        squares = sumOfSquares();
    }

    private void solveLinear(double offset, double s11, double s12, double s22, double b1, double b2) {
        if (fixedInitial != null) {
            double known = fixedInitial - offset;
            settled = offset + (b1 - known * s12) / s11;
            initial = fixedInitial;
            return;
        }
        double determinant = s11 * s22 - s12 * s12;
        settled = offset + (b1 * s22 - b2 * s12) / determinant;
        initial = offset + (b2 * s11 - b1 * s12) / determinant;
    }

    private double sumOfSquares() {
        double sum = 0;
        double way = settled - initial;
        for (int i = 0; i < ages.length; i++) {
            double residual = values[i] - (settled - way * decay[i]);
            sum += residual * residual;
        }
        return sum;
    }

    /** The step in ln τ of the full Gauss-Newton equations: the gradient against what the linear columns leave of it. */
    private double newtonStep(double tau) {
        double[][] normal = normalMatrix(tau);
        double right = 0;
        double way = settled - initial;
        for (int i = 0; i < ages.length; i++) {
            double residual = values[i] - (settled - way * decay[i]);
            right += residual * slope(way, tau, i);
        }
        // At the linear optimum the residuals are orthogonal to the linear columns: their right-hand sides are zero.
        double[][] inverse = SmallMatrix.inverse(normal);
        return inverse == null ? 0 : inverse[normal.length - 1][normal.length - 1] * right;
    }

    /** Derivative of the model by ln τ at row i. */
    private double slope(double way, double tau, int i) {
        return -way * decay[i] * ages[i] / tau;
    }

    /** JᵀJ with columns T∞, T₀ (unless fixed), ln τ. */
    private double[][] normalMatrix(double tau) {
        double way = settled - initial;
        double[] s = new double[6];
        for (int i = 0; i < ages.length; i++) {
            double e = decay[i];
            double rise = 1 - e;
            double g = slope(way, tau, i);
            s[0] += rise * rise;
            s[1] += rise * e;
            s[2] += rise * g;
            s[3] += e * e;
            s[4] += e * g;
            s[5] += g * g;
        }
        return fixedInitial == null
                ? new double[][] {{s[0], s[1], s[2]}, {s[1], s[3], s[4]}, {s[2], s[4], s[5]}}
                : new double[][] {{s[0], s[2]}, {s[2], s[5]}};
    }

    /** s²(JᵀJ)⁻¹ of T∞, T₀, τ; infinite on the diagonal where the rows do not determine them. */
    private double[][] covariance(double tau, double variance) {
        double[][] full = new double[3][3];
        double[][] inverse = SmallMatrix.inverse(normalMatrix(tau));
        int[] place = fixedInitial == null ? new int[] {0, 1, 2} : new int[] {0, 2};
        for (int i = 0; i < place.length; i++) {
            for (int j = 0; j < place.length; j++) {
                double scale = (place[i] == 2 ? tau : 1) * (place[j] == 2 ? tau : 1);
                double undetermined = i == j ? Double.POSITIVE_INFINITY : 0;
                full[place[i]][place[j]] = inverse == null ? undetermined : variance * scale * inverse[i][j];
            }
        }
        return full;
    }

    private Set<Flag> flags(double tau) {
        Set<Flag> flags = EnumSet.noneOf(Flag.class);
        if (ages[ages.length - 1] < 2 * tau) {
            flags.add(Flag.SHORT_RECORD);
        }
        if (tau > 10 * span) {
            flags.add(Flag.STRAIGHT);
        }
        if (tau < ages[1] - ages[0]) {
            flags.add(Flag.COARSE);
        }
        if (runsDeviation() < -2.58) {
            flags.add(Flag.SYSTEMATIC);
        }
        return flags;
    }

    /** Standardised number of runs of sign among the residuals; 0 below twenty rows, where the normal law is no guide. */
    private double runsDeviation() {
        int above = 0;
        int runs = 0;
        boolean last = false;
        for (int i = 0; i < ages.length; i++) {
            boolean up = values[i] > settled - (settled - initial) * decay[i];
            runs += i == 0 || up != last ? 1 : 0;
            above += up ? 1 : 0;
            last = up;
        }
        double n = ages.length;
        double below = n - above;
        if (n < 20 || above == 0 || below == 0) {
            return 0;
        }
        double mean = 2 * above * below / n + 1;
        return (runs - mean) / Math.sqrt((mean - 1) * (mean - 2) / (n - 1));
    }
}

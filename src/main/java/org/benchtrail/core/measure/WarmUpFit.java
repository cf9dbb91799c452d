package org.benchtrail.core.measure;

import java.util.EnumSet;
import java.util.OptionalDouble;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.statistics.Interval;

/**
 * First-order course fitted to a series by least squares, with standard errors.
 *
 * <p>The two values enter linearly and are solved for at each time constant; the time constant is found by Gauss-Newton steps
 * on its logarithm (see {@link WarmUpSolver}). Standard errors come from the linearised model, s²(JᵀJ)⁻¹ with s² = SSE/(n − p),
 * intervals from Student's t. Residuals are taken as independent.
 *
 * <p>Source: Golub and Pereyra, SIAM J. Numer. Anal. 10 (1973), for the separation; Seber and Wild, Nonlinear Regression, for
 * the errors.
 */
public final class WarmUpFit {

    /** What has to be known before the numbers are believed. */
    public enum Flag {
        /** The record is shorter than 2τ: where it settles is extrapolated. */
        SHORT_RECORD("The record is shorter than two time constants, so the final value is extrapolated."),
        /** τ is more than ten records long: the rows lie on a straight line. */
        STRAIGHT(
                "The readings lie on a straight line: neither the final value nor the time constant can be told from them."),
        /** τ is shorter than the first step between rows. */
        COARSE("Most of the change is over before the second reading: the time constant is only a rough bound."),
        /** Too few runs of sign in the residuals (Wald and Wolfowitz 1940, z below −2.58). */
        SYSTEMATIC(
                "The readings wander about the curve in long runs: the course is not of first order, or something changed.");

        private final String sentence;

        Flag(String sentence) {
            this.sentence = sentence;
        }

        public String sentence() {
            return sentence;
        }
    }

    private final FirstOrder curve;
    private final double squares;
    private final int degrees;
    /** Of T∞, T₀, τ in this order; a fixed T₀ has zeros. */
    private final double[][] covariance;

    private final Set<Flag> flags;

    WarmUpFit(FirstOrder curve, double squares, int degrees, double[][] covariance, Set<Flag> flags) {
        this.curve = curve;
        this.squares = squares;
        this.degrees = degrees;
        this.covariance = covariance;
        this.flags = flags;
    }

    /**
     * Fits T∞, T₀ (at the first row's time) and τ.
     *
     * @throws Invalid if there are fewer than four rows or all values are the same
     */
    public static WarmUpFit of(Series series) {
        require(series, 4);
        return WarmUpSolver.free(series).solve();
    }

    /**
     * Fits T∞ and τ to a course that begins at a known value.
     *
     * @param start time at which the value was {@code initial}, not after the first row
     * @throws Invalid if there are fewer than three rows, all values are the same, or the start is after the first row
     */
    public static WarmUpFit from(double start, double initial, Series series) {
        require(series, 3);
        if (!(start <= series.time(0)) || !Double.isFinite(initial)) {
            throw new Invalid(
                    "start", "Give a start that is not after the first row, and its value as a finite number.");
        }
        return WarmUpSolver.fixed(series, start, initial).solve();
    }

    private static void require(Series series, int rows) {
        if (series.size() < rows) {
            throw new Invalid("rows", "Give at least " + rows + " rows; got " + series.size() + ".");
        }
        if (series.isConstant()) {
            throw new Invalid("rows", "All values are the same: there is no warming or cooling to fit.");
        }
    }

    public FirstOrder curve() {
        return curve;
    }

    public Set<Flag> flags() {
        Set<Flag> copy = EnumSet.noneOf(Flag.class);
        copy.addAll(flags);
        return copy;
    }

    /** Sum of squared residuals. */
    public double squares() {
        return squares;
    }

    /** Rows minus fitted parameters. */
    public int degreesOfFreedom() {
        return degrees;
    }

    /** Standard deviation of a reading about the curve. */
    public double residualDeviation() {
        return Math.sqrt(squares / degrees);
    }

    public double settledError() {
        return error(0);
    }

    /** 0 if the initial value was given. */
    public double initialError() {
        return error(1);
    }

    public double timeConstantError() {
        return error(2);
    }

    public Interval settled(double confidence) {
        return about(curve.settled(), settledError(), confidence);
    }

    public Interval initial(double confidence) {
        return about(curve.initial(), initialError(), confidence);
    }

    public Interval timeConstant(double confidence) {
        return about(curve.timeConstant(), timeConstantError(), confidence);
    }

    /** When the threshold is reached, with an interval by propagation of the parameters' covariance (GUM 5.2). */
    public Crossing timeTo(double threshold, double confidence) {
        OptionalDouble time = curve.timeTo(threshold);
        if (time.isPresent()) {
            double error = timeError(threshold);
            // Parameters that the rows do not determine have infinite errors, and no interval can be made of them.
            Interval interval = Double.isFinite(error) ? about(time.getAsDouble(), error, confidence) : null;
            return new Crossing.At(time.getAsDouble(), interval);
        }
        if (curve.progress(threshold) <= 0) {
            return new Crossing.AlreadyThere();
        }
        return new Crossing.Never(!settled(confidence).contains(threshold));
    }

    private double timeError(double threshold) {
        double way = curve.settled() - curve.initial();
        double left = curve.settled() - threshold;
        double tau = curve.timeConstant();
        double[] gradient = {tau * (1 / way - 1 / left), -tau / way, Math.log(way / left)};
        double variance = 0;
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                variance += gradient[i] * covariance[i][j] * gradient[j];
            }
        }
        return Math.sqrt(variance < 0 ? 0 : variance);
    }

    private double error(int i) {
        return Math.sqrt(covariance[i][i]);
    }

    private Interval about(double estimate, double error, double confidence) {
        double reach = error * Uncertainty.coverageFactor(degrees, confidence);
        return new Interval(estimate - reach, estimate + reach, confidence);
    }
}

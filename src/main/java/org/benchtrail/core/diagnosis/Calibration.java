package org.benchtrail.core.diagnosis;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.benchtrail.core.statistics.Sample;
import org.jspecify.annotations.Nullable;

/**
 * How well stated probabilities held.
 *
 * <p>To be computed on accepted cases by time, never on those that were learned from, with the probabilities as shown before
 * the last decisive test.
 * <p>Sources: G. W. Brier, Monthly Weather Review 78, 1950 (multiclass form); I. J. Good, "Rational decisions", 1952
 * (logarithmic score); E. B. Wilson, JASA 22, 1927 (interval).
 */
public final class Calibration {
    /** Probability below which the log score does not look. */
    static final double FLOOR = 1e-4;

    static final int BINS = 10;
    static final int LEAST_CASES = 50;
    private static final double TOLERANCE = 1e-3;
    private static final double GOLDEN = (StrictMath.sqrt(5) - 1) / 2;

    private Calibration() {}

    /**
     * One stated forecast and what came of it.
     *
     * @param probabilities of all causes, the unlisted one included; sum to 1
     * @param truth index of the verified cause
     */
    public record Forecast(List<Double> probabilities, int truth) {
        public Forecast {
            probabilities = List.copyOf(probabilities);
        }

        public static Forecast of(Ranking shown, String verified) {
            List<Double> p = new ArrayList<>();
            for (double x : shown.probabilities()) {
                p.add(x);
            }
            return new Forecast(p, shown.model().index(verified));
        }

        /** Sum over all causes of (stated - happened) squared; in [0, 2]. */
        public double brier() {
            double sum = 0;
            for (int i = 0; i < probabilities.size(); i++) {
                double miss = probabilities.get(i) - (i == truth ? 1 : 0);
                sum += miss * miss;
            }
            return sum;
        }

        /** Bits: -log2 of what was stated for the truth, at least 1e-4 of it. */
        public double logScore() {
            return -StrictMath.log(Math.max(FLOOR, probabilities.get(truth))) / StrictMath.log(2);
        }

        int leader() {
            int best = 0;
            for (int i = 1; i < probabilities.size(); i++) {
                best = probabilities.get(i) > probabilities.get(best) ? i : best;
            }
            return best;
        }

        double leaderProbability() {
            return probabilities.get(leader());
        }

        boolean isHit() {
            return leader() == truth;
        }
    }

    /** Where a proportion or a mean lies, by its interval. */
    public record ScoreRange(double low, double high) {}

    /** Leaders whose stated probability fell in [from, to), the last bin including 1. */
    public record Bin(double from, double to, int cases, int hits, double meanStated, ScoreRange hitRate) {}

    /**
     * Figures over a set of forecasts.
     *
     * @param brier mean multiclass Brier score
     * @param logScore mean, bits
     * @param overconfidence mean stated probability of the leader less its hit rate
     * @param brierRange interval of the mean, 95 %, by Student's t; null for a single forecast
     * @param logRange the same for the log score
     */
    public record Figures(
            int cases,
            double brier,
            double logScore,
            double overconfidence,
            List<Bin> bins,
            @Nullable ScoreRange brierRange,
            @Nullable ScoreRange logRange) {}

    /** @throws IllegalArgumentException if there are no forecasts */
    public static Figures figures(List<Forecast> forecasts) {
        if (forecasts.isEmpty()) {
            throw new IllegalArgumentException("forecasts are empty");
        }
        double stated = mean(forecasts.stream().map(Forecast::leaderProbability).toList());
        double hits = forecasts.stream().filter(Forecast::isHit).count();
        List<Double> brier = forecasts.stream().map(Forecast::brier).toList();
        List<Double> log = forecasts.stream().map(Forecast::logScore).toList();
        return new Figures(
                forecasts.size(),
                mean(brier),
                mean(log),
                stated - hits / forecasts.size(),
                bins(forecasts),
                range(brier, 0, 2),
                range(log, 0, Double.POSITIVE_INFINITY));
    }

    /** No score lies outside its bounds, and so neither does its mean. */
    private static @Nullable ScoreRange range(List<Double> scores, double least, double most) {
        if (scores.size() < 2) {
            return null;
        }
        double[] x = scores.stream().mapToDouble(v -> v).toArray();
        var interval = Sample.of("scores", x).meanInterval(0.95);
        return new ScoreRange(Math.max(least, interval.lower()), Math.min(most, interval.upper()));
    }

    private static double mean(List<Double> x) {
        return x.stream().mapToDouble(v -> v).sum() / x.size();
    }

    private static List<Bin> bins(List<Forecast> forecasts) {
        List<Bin> bins = new ArrayList<>();
        for (int k = 0; k < BINS; k++) {
            int bin = k;
            List<Forecast> in = forecasts.stream().filter(f -> bin(f) == bin).toList();
            int hits = (int) in.stream().filter(Forecast::isHit).count();
            double stated = in.isEmpty()
                    ? 0
                    : mean(in.stream().map(Forecast::leaderProbability).toList());
            bins.add(new Bin((double) k / BINS, (k + 1.0) / BINS, in.size(), hits, stated, wilson(hits, in.size())));
        }
        return bins;
    }

    private static int bin(Forecast f) {
        return (int) Math.min(BINS - 1.0, Math.floor(f.leaderProbability() * BINS));
    }

    /** Wilson score interval for a proportion, 95 %; [0, 1] for no trials. */
    public static ScoreRange wilson(int hits, int trials) {
        if (trials == 0) {
            return new ScoreRange(0, 1);
        }
        double z = 1.959963984540054;
        double p = (double) hits / trials;
        double zz = z * z / trials;
        double middle = (p + zz / 2) / (1 + zz);
        double half = z / (1 + zz) * StrictMath.sqrt(p * (1 - p) / trials + zz / (4 * trials));
        return new ScoreRange(Math.max(0, middle - half), Math.min(1, middle + half));
    }

    /** A closed case to be ranked again with another exponent, by the version of the figures it was ranked with. */
    public record Replay(Model model, Evidence evidence, String verified) {}

    /** The exponent with the least mean log score on these cases, within 1e-3; 1 if they are fewer than 50. */
    public static double beta(List<Replay> cases) {
        return cases.size() < LEAST_CASES
                ? 1
                : minimum(beta -> logScore(cases, beta), ModelSettings.LEAST_BETA, 1, TOLERANCE);
    }

    private static double logScore(List<Replay> cases, double beta) {
        Map<Model, Model> tempered = new IdentityHashMap<>();
        double sum = 0;
        for (Replay c : cases) {
            Model model = tempered.computeIfAbsent(c.model(), m -> m.withBeta(beta));
            sum += Forecast.of(Ranking.of(model, c.evidence()), c.verified()).logScore();
        }
        return sum / cases.size();
    }

    /**
     * Golden section search.
     *
     * <p>Source: J. Kiefer, "Sequential minimax search for a maximum", Proc. AMS 4, 1953.
     *
     * @param f with one minimum between low and high
     * @return middle of the last bracket, which is no wider than the tolerance
     */
    static double minimum(DoubleUnaryOperator f, double low, double high, double tolerance) {
        double a = low;
        double b = high;
        double c = b - GOLDEN * (b - a);
        double d = a + GOLDEN * (b - a);
        double fc = f.applyAsDouble(c);
        double fd = f.applyAsDouble(d);
        while (b - a > tolerance) {
            if (fc < fd) {
                b = d;
                d = c;
                fd = fc;
                c = b - GOLDEN * (b - a);
                fc = f.applyAsDouble(c);
            } else {
                a = c;
                c = d;
                fc = fd;
                d = a + GOLDEN * (b - a);
                fd = f.applyAsDouble(d);
            }
        }
        return (a + b) / 2;
    }
}

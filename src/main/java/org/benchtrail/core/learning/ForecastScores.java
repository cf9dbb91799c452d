package org.benchtrail.core.learning;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.apache.commons.statistics.distribution.TDistribution;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.statistics.Interval;
import org.benchtrail.core.statistics.Proportion;
import org.benchtrail.core.statistics.Scores;

/**
 * How good somebody's forecasts were, and how sure they were of them.
 *
 * <p>Sources: A. H. Murphy, "A new vector partition of the probability score", J. Appl. Meteorol. 12, 1973 (the parts of
 * Brier's score); C. J. Clopper and E. S. Pearson, Biometrika 26, 1934 (interval of a cell).
 */
public final class ForecastScores {
    /** With fewer jobs nothing is said of how sure somebody is. */
    static final int LEAST_JOBS = 5;

    /** A cell with fewer forecasts is shown without words. */
    static final int LEAST_IN_CELL = 5;

    private static final double CONFIDENCE = 0.95;

    /** Which chances are picked by themselves, in words. */
    public static final String OFFERED = "Choose 1, 5, 10, 15 and so on to 95, or 99 %.";

    /** Whether a chance is one of the 21 that are offered. */
    public static boolean isOffered(int percent) {
        return percent == 1 || percent == 99 || (percent % 5 == 0 && percent >= 5 && percent <= 95);
    }

    private final List<Forecast> forecasts;

    /** @throws Invalid if there is none */
    public ForecastScores(List<Forecast> forecasts) {
        new Invalid.Collector()
                .require(!forecasts.isEmpty(), "forecasts", "Give at least one forecast.")
                .throwIfAny();
        this.forecasts = List.copyOf(forecasts);
    }

    /**
     * One chance that was stated before it could be known, and what came.
     *
     * @param job forecasts of one job stand or fall together
     * @param percent whole, 0 to 100
     */
    public record Forecast(int job, int percent, boolean met) {
        public Forecast {
            new Invalid.Collector()
                    .require(percent >= 0 && percent <= 100, "percent", "Give a whole per cent from 0 to 100.")
                    .throwIfAny();
        }

        /** A chance that is picked by itself: 1, 5, 10, 15 ... 95 or 99, without false precision. */
        public static Forecast picked(int job, int percent, boolean met) {
            new Invalid.Collector()
                    .require(isOffered(percent), "percent", OFFERED)
                    .throwIfAny();
            return new Forecast(job, percent, met);
        }

        double stated() {
            return percent / 100.0;
        }

        /** Above 0 where more was stated than came. */
        double over() {
            return stated() - (met ? 1 : 0);
        }
    }

    /** The parts of Brier's score: reliability - resolution + uncertainty. */
    public record Parts(double reliability, double resolution, double uncertainty) {
        public double brier() {
            return reliability - resolution + uncertainty;
        }
    }

    /**
     * All forecasts of one stated value.
     *
     * @param came how many were met, with the exact interval of their share
     */
    public record Cell(int percent, Proportion came, Interval interval) {
        public boolean isSpokenOf() {
            return came.trials() >= LEAST_IN_CELL;
        }
    }

    /** @param interval of the mean, from jobs and not from forecasts */
    public record Overconfidence(double mean, double standardError, Interval interval) {}

    private double[] stated() {
        return forecasts.stream().mapToDouble(Forecast::stated).toArray();
    }

    private boolean[] met() {
        boolean[] met = new boolean[forecasts.size()];
        for (int i = 0; i < met.length; i++) {
            met[i] = forecasts.get(i).met();
        }
        return met;
    }

    /** In [0, 1]; smaller is better. */
    public double brier() {
        return Scores.brier(stated(), met());
    }

    /** Nats. */
    public double logarithmic() {
        return Scores.logarithmic(stated(), met());
    }

    public double baseRate() {
        return forecasts.stream().filter(Forecast::met).count() / (double) forecasts.size();
    }

    /** By stated value, ascending. */
    public List<Cell> cells() {
        Map<Integer, List<Forecast>> byValue =
                new TreeMap<>(forecasts.stream().collect(Collectors.groupingBy(Forecast::percent)));
        return byValue.entrySet().stream()
                .map(e -> {
                    long met = e.getValue().stream().filter(Forecast::met).count();
                    Proportion came = new Proportion(met, e.getValue().size());
                    return new Cell(e.getKey(), came, came.clopperPearson(CONFIDENCE));
                })
                .toList();
    }

    public Parts parts() {
        double base = baseRate();
        double reliability = 0;
        double resolution = 0;
        for (Cell cell : cells()) {
            double share = cell.came().share();
            double miss = cell.percent() / 100.0 - share;
            reliability += cell.came().trials() * miss * miss;
            resolution += cell.came().trials() * (share - base) * (share - base);
        }
        int n = forecasts.size();
        return new Parts(reliability / n, resolution / n, base * (1 - base));
    }

    /**
     * How much better than a reference; below 0 worse. To be shown, never rewarded: a ratio tempts to state what is not
     * thought.
     *
     * @param reference Brier's score of the reference for the same events, more than 0
     */
    public double skill(double reference) {
        return 1 - brier() / reference;
    }

    /** Against always stating the base rate. */
    public double skillAgainstBaseRate() {
        return skill(parts().uncertainty());
    }

    /** Mean of stated less came; empty with fewer than five jobs. */
    public Optional<Overconfidence> overconfidence() {
        double mean = forecasts.stream().mapToDouble(Forecast::over).average().orElseThrow();
        Map<Integer, Double> byJob = new LinkedHashMap<>();
        forecasts.forEach(f -> byJob.merge(f.job(), f.over() - mean, Double::sum));
        int jobs = byJob.size();
        if (jobs < LEAST_JOBS) {
            return Optional.empty();
        }
        double squares = byJob.values().stream().mapToDouble(d -> d * d).sum();
        double error = Math.sqrt(jobs / (jobs - 1.0) * squares) / forecasts.size();
        double reach = TDistribution.of(jobs - 1.0).inverseSurvivalProbability((1 - CONFIDENCE) / 2) * error;
        return Optional.of(new Overconfidence(mean, error, new Interval(mean - reach, mean + reach, CONFIDENCE)));
    }
}

package org.benchtrail.core.training;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.benchtrail.core.learning.CauseForecast;
import org.benchtrail.core.learning.ForecastScores;
import org.benchtrail.core.statistics.Interval;

/**
 * What somebody's forecasts of causes say of them, once the causes are accepted. Each counts once, by the cause that it gave the
 * most: its chance, and whether it was the cause.
 */
public record ForecastsMade(List<Scored> scored) {
    private static final int POINTS = 100;

    public ForecastsMade {
        scored = List.copyOf(scored);
    }

    /**
     * A forecast and what came.
     *
     * @param job ticket: its forecasts stand or fall together
     * @param percents of causes by id, {@code other} among them, which is every cause that is not named
     * @param truth id of the accepted cause
     * @param reference chances of the catalogue at that moment by id of the cause
     */
    public record Scored(int job, Map<String, Integer> percents, String truth, Map<String, Double> reference) {
        public Scored {
            percents = new TreeMap<>(percents);
            reference = Map.copyOf(reference);
        }

        /** The class of the forecast that the truth is in. */
        private String came() {
            return percents.containsKey(truth) ? truth : ForecastContent.OTHER;
        }

        /** From 0 to 1; smaller is better. */
        public double brier() {
            return new CauseForecast(percents).brier(came());
        }

        public boolean isRuledOut() {
            return new CauseForecast(percents).ruledOut(came());
        }

        /** Nats; infinite if it was ruled out. */
        public double logarithmic() {
            return new CauseForecast(percents).logarithmic(came());
        }

        /** Of the catalogue's own chances for the same classes. */
        public double referenceBrier() {
            double named = 0;
            double sum = 0;
            for (String cause : percents.keySet()) {
                if (!cause.equals(ForecastContent.OTHER)) {
                    double p = reference.getOrDefault(cause, 0.0);
                    named += p;
                    sum += square(p - (cause.equals(came()) ? 1 : 0));
                }
            }
            return (sum + square(1 - named - (came().equals(ForecastContent.OTHER) ? 1 : 0))) / 2;
        }

        /** The cause that was given the most; of several the first by id. */
        public String leading() {
            return percents.entrySet().stream()
                    .max(Comparator.comparing((Map.Entry<String, Integer> e) -> e.getValue())
                            .thenComparing(Map.Entry::getKey, Comparator.reverseOrder()))
                    .orElseThrow()
                    .getKey();
        }

        private ForecastScores.Forecast asOne() {
            return new ForecastScores.Forecast(
                    job, percents.getOrDefault(leading(), 0), leading().equals(came()));
        }
    }

    private static double square(double x) {
        return x * x;
    }

    /** Empty while nothing is scored. */
    public Optional<ForecastScores> scores() {
        return scored.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        new ForecastScores(scored.stream().map(Scored::asOne).toList()));
    }

    /** Mean over all causes, from 0 to 1; 0 while nothing is scored. */
    public double brier() {
        return scored.stream().mapToDouble(Scored::brier).average().orElse(0);
    }

    /** Against the catalogue's own chances; below 0 is worse than they. Empty where they were never wrong. */
    public Optional<Double> skill() {
        double reference =
                scored.stream().mapToDouble(Scored::referenceBrier).average().orElse(0);
        return reference > 0 ? Optional.of(1 - brier() / reference) : Optional.empty();
    }

    /** How many had given the true cause 0 %. */
    public long ruledOut() {
        return scored.stream().filter(Scored::isRuledOut).count();
    }

    /** How sure against how right, in plain words. */
    public String words() {
        if (scored.isEmpty()) {
            return "Nothing is scored yet: a forecast is scored once the cause of its ticket is accepted as a case.";
        }
        ForecastScores all = scores().orElseThrow();
        Optional<ForecastScores.Overconfidence> over = all.overconfidence();
        if (over.isEmpty()) {
            return "Too few tickets to hold how sure against how right: from five on it is said.";
        }
        return words(over.get().mean(), over.get().interval());
    }

    /** @param mean of stated less came, with its interval; 0.1 is ten points */
    public static String words(double mean, Interval interval) {
        String range = " With 95 % it lies between " + points(interval.lower()) + " and " + points(interval.upper())
                + " points.";
        if (interval.lower() > 0) {
            return "Surer than right, by " + points(mean) + " points." + range;
        }
        if (interval.upper() < 0) {
            return "Right more often than stated, by " + points(-mean) + " points." + range;
        }
        return "As sure as right, as far as these tell: the difference is " + points(mean) + " points." + range;
    }

    private static String points(double share) {
        return String.format(Locale.ROOT, "%.1f", share * POINTS + 0.0);
    }
}

package org.benchtrail.core.statistics;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.benchtrail.core.Invalid;

/**
 * Share that survives over time when some units were still running when last seen.
 *
 * <p>Source: Kaplan and Meier, J. Amer. Statist. Assoc. 53 (1958), with Greenwood's standard error; NIST/SEMATECH e-Handbook
 * 8.2.1.5; intervals after Kalbfleisch and Prentice. At the same time, failures count before units that leave.
 *
 * @param steps one per time at which something failed, in order
 */
public record KaplanMeier(List<Step> steps) {
    private static final double ROUNDING = 1e-9;

    /**
     * One unit: how long it was watched, and whether it failed at the end of it or was still running.
     *
     * @param time 0 or more, finite
     */
    public record Observation(double time, boolean failed) {
        public Observation {
            if (!(time >= 0) || Double.isInfinite(time)) {
                throw new Invalid("time", "Give the time a unit was watched as 0 or more.");
            }
        }

        public static Observation failed(double time) {
            return new Observation(time, true);
        }

        public static Observation running(double time) {
            return new Observation(time, false);
        }
    }

    /**
     * From this time on, until the next step.
     *
     * @param atRisk units still watched just before
     * @param survival share that survives, in [0, 1]
     * @param standardError Greenwood's; 0 where nothing survives, as its formula has no value there
     */
    public record Step(double time, int atRisk, int failures, double survival, double standardError) {

        /**
         * Interval of the share that survives, by the logarithm of its logarithm, so that it stays between 0 and 1. Where nothing
         * survives it has no width.
         */
        public Interval interval(double confidence) {
            if (survival <= 0 || survival >= 1) {
                return new Interval(survival, survival, confidence);
            }
            double z = NormalDistribution.of(0, 1).inverseSurvivalProbability((1 - Domain.confidence(confidence)) / 2);
            double reach = z * standardError / survival / Math.abs(Math.log(survival));
            return new Interval(Math.pow(survival, Math.exp(reach)), Math.pow(survival, Math.exp(-reach)), confidence);
        }
    }

    public KaplanMeier {
        steps = List.copyOf(steps);
    }

    /**
     * Estimates survival from the units in any order.
     *
     * @throws Invalid if there is no observation
     */
    public static KaplanMeier of(List<Observation> observations) {
        if (observations.isEmpty()) {
            throw new Invalid("observations", "Give at least one unit.");
        }
        List<Observation> ordered = observations.stream()
                .sorted(Comparator.comparingDouble(Observation::time))
                .toList();
        return new KaplanMeier(steps(ordered));
    }

    private static List<Step> steps(List<Observation> ordered) {
        List<Step> steps = new ArrayList<>();
        double survival = 1;
        double greenwood = 0;
        int at = 0;
        while (at < ordered.size()) {
            double time = ordered.get(at).time();
            int atRisk = ordered.size() - at;
            int failures = 0;
            for (; at < ordered.size() && ordered.get(at).time() == time; at++) {
                failures += ordered.get(at).failed() ? 1 : 0;
            }
            if (failures > 0) {
                survival *= (double) (atRisk - failures) / atRisk;
                greenwood += failures / ((double) atRisk * (atRisk - failures));
                steps.add(new Step(time, atRisk, failures, survival, error(survival, greenwood)));
            }
        }
        return steps;
    }

    private static double error(double survival, double greenwood) {
        return survival == 0 ? 0 : survival * Math.sqrt(greenwood);
    }

    /** Share that survives up to and including this time. */
    public double survivalAt(double time) {
        double survival = 1;
        for (Step step : steps) {
            if (step.time() > time) {
                break;
            }
            survival = step.survival();
        }
        return survival;
    }

    /** First time at which half or fewer survive; empty if it was not reached. */
    public OptionalDouble median() {
        return whenLeft(0.5);
    }

    /**
     * First time at which that share or less survives; empty if it was not reached. With nothing still running it is the
     * (1 - share) quantile by nearest rank, item ceil((1 - share) n) of the sorted.
     *
     * @param share in [0, 1); what is reached but for rounding of the product counts as reached
     */
    public OptionalDouble whenLeft(double share) {
        return steps.stream()
                .filter(s -> s.survival() <= share + ROUNDING)
                .mapToDouble(Step::time)
                .findFirst();
    }
}

package org.benchtrail.core.training;

import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.TDistribution;
import org.benchtrail.core.statistics.Interval;
import org.benchtrail.core.statistics.Proportion;
import org.benchtrail.core.statistics.Sample;

/**
 * What a test of the coach came to, over all of its people.
 *
 * @param difference mean over people of the share met with the coach less the share without, -1 to 1
 * @param error standard error of it, from the scatter between people
 * @param upper one-sided 95 % upper bound of it
 * @param notWorse whether the bound is below the plan's margin; a bound at the margin is not
 */
public record TrialOutcome(int people, double difference, double error, double upper, boolean notWorse) {
    private static final double CONFIDENCE = 0.95;

    /** What double arithmetic may be off by: a bound at the margin stays at it. */
    private static final double ROUNDING = 1e-12;

    /** What one person met, over their jobs with the coach and over those without. */
    public record Shares(Proportion with, Proportion without) {
        double difference() {
            return with.share() - without.share();
        }
    }

    /**
     * Empty before the size of the plan is reached. Later people than it takes are left out.
     *
     * <p>Source of the bound: Student's t of paired differences, NIST/SEMATECH e-Handbook 1.3.5.2, one-sided.
     *
     * @param ended people all of whose jobs are over, in the order in which they came to an end
     */
    public static Optional<TrialOutcome> of(CoachTrial plan, List<Shares> ended) {
        if (ended.size() < plan.people()) {
            return Optional.empty();
        }
        double[] differences = ended.stream()
                .limit(plan.people())
                .mapToDouble(Shares::difference)
                .toArray();
        Sample sample = Sample.of("people", differences);
        double error = sample.deviation() / Math.sqrt(sample.size());
        double upper =
                sample.mean() + TDistribution.of(sample.size() - 1.0).inverseCumulativeProbability(CONFIDENCE) * error;
        return Optional.of(
                new TrialOutcome(sample.size(), sample.mean(), error, upper, upper < plan.margin() / 100.0 - ROUNDING));
    }

    /**
     * The interval of one person's share: exact, with both numbers divided by the design effect, because the requirements of a job
     * are not so many looks at different jobs.
     *
     * <p>Source: Clopper and Pearson, with an effective number as in Korn and Graubard 1998, from memory.
     */
    public static Interval alone(Proportion met, double design) {
        double looks = met.trials() / design;
        double hits = met.hits() / design;
        double tail = (1 - CONFIDENCE) / 2;
        double lower = met.hits() == 0
                ? 0
                : BetaDistribution.of(hits, looks - hits + 1).inverseCumulativeProbability(tail);
        double upper = met.hits() == met.trials()
                ? 1
                : BetaDistribution.of(hits + 1, looks - hits).inverseSurvivalProbability(tail);
        return new Interval(lower, upper, CONFIDENCE);
    }
}

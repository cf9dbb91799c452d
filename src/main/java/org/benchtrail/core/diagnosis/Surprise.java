package org.benchtrail.core.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.stream.IntStream;

/**
 * How badly the answers fit the listed causes.
 *
 * <p>That nothing is said means nothing: with four to eight findings a minority of unlisted causes is noticed. Two failed
 * repairs are the better alarm.
 *
 * @param conflict decibans; above 0 the answers pull apart, below 0 they support each other; exactly one finding gives 0.
 *     Source: F. V. Jensen et al., "Analysis in HUGIN of data conflict", 1990 (from memory, not checked)
 * @param topListed the most probable listed cause
 * @param z standard deviations by which that cause predicts these answers worse than answers of its own; may be negative
 * @param contradictions findings with reports that differ
 * @param misfits the two findings the leader explains worst, when the conflict is 5 dB or more; otherwise empty
 */
public record Surprise(
        double conflict,
        String topListed,
        double z,
        Level level,
        List<Contradiction> contradictions,
        List<String> misfits) {

    /** What the technician is told. */
    public enum Level {
        NONE(""),
        AMBER("The answers fit no listed cause well."),
        RED("Probably a cause that is not listed.");

        private final String sentence;

        Level(String sentence) {
            this.sentence = sentence;
        }

        public String sentence() {
            return sentence;
        }
    }

    /**
     * Reports on one finding that differ: please look again.
     *
     * @param effect decibans by which settling it may move the leader against the runner-up
     */
    public record Contradiction(String finding, double effect) {
        /** Whether looking again is offered without weighing its minutes. */
        public boolean offered() {
            return effect > OFFER_ABOVE;
        }
    }

    private static final double OFFER_ABOVE = 3;
    private static final double MISFIT_FROM = 5;
    private static final double AMBER_Z = 1.5;
    private static final double RED_Z = 2.5;
    private static final double AMBER_UNLISTED = 0.15;
    private static final double RED_UNLISTED = 0.5;
    private static final double RED_FAILED = 0.7;
    /** More combinations of reports on one finding than this are taken by the first report alone. */
    private static final int MOST_TUPLES = 4096;

    public static Surprise of(Ranking ranking) {
        int top = ranking.topIndex();
        double conflict = conflict(ranking);
        double z = z(ranking, top);
        return new Surprise(
                conflict,
                ranking.model().id(top),
                z,
                level(ranking, z),
                contradictions(ranking),
                conflict >= MISFIT_FROM ? misfits(ranking, top) : List.of());
    }

    private static double conflict(Ranking ranking) {
        Model model = ranking.model();
        double[] score = model.logPriors();
        score[model.parts()] = Double.NEGATIVE_INFINITY;
        double apart = 0;
        for (Observed o : ranking.observed()) {
            LikelihoodTable table = model.table(o.finding());
            apart += o.logLikelihood(table.marginal);
            o.alone().addTo(score, table);
        }
        double together = logSum(score) - StrictMath.log1p(-model.prior(model.size()));
        return Decibans.PER_NAT * (apart - together);
    }

    private static double logSum(double[] score) {
        double max = Double.NEGATIVE_INFINITY;
        for (double s : score) {
            max = Math.max(max, s);
        }
        double sum = 0;
        for (double s : score) {
            sum += StrictMath.exp(s - max);
        }
        return max + StrictMath.log(sum);
    }

    private static double z(Ranking ranking, int top) {
        Model model = ranking.model();
        double seen = 0;
        double mean = 0;
        double variance = 0;
        for (Observed o : ranking.observed()) {
            LikelihoodTable table = model.table(o.finding());
            double[] row = table.row(ranking.heaviest(top), model.parts());
            double[] moments = moments(o.predicted(row, model.settings().everyTuple(), MOST_TUPLES));
            seen += o.logLikelihood(row);
            mean += moments[0];
            variance += moments[1];
        }
        return variance > 0 ? (mean - seen) / StrictMath.sqrt(variance) : 0;
    }

    /** Mean and variance of ln u under u. */
    private static double[] moments(double[] u) {
        double mean = 0;
        double square = 0;
        for (double x : u) {
            double log = StrictMath.log(x);
            mean += x * log;
            square += x * log * log;
        }
        return new double[] {mean, Math.max(0, square - mean * mean)};
    }

    private static Level level(Ranking ranking, double z) {
        if (ranking.evidence().isEmpty()) {
            return Level.NONE;
        }
        double unlisted = ranking.probability(Model.UNLISTED);
        if (z >= RED_Z
                || unlisted >= RED_UNLISTED
                || ranking.leader().equals(Model.UNLISTED)
                || twoFailed(ranking.evidence()) >= RED_FAILED) {
            return Level.RED;
        }
        return z >= AMBER_Z || unlisted >= AMBER_UNLISTED ? Level.AMBER : Level.NONE;
    }

    /** Belief that the two most believed failed repairs had together, each at its time; 0 if fewer failed. */
    private static double twoFailed(Evidence evidence) {
        List<Double> beliefs = evidence.failedRepairs().stream()
                .map(FailedRepair::beliefThen)
                .sorted(Comparator.reverseOrder())
                .toList();
        return beliefs.size() < 2 ? 0 : beliefs.get(0) + beliefs.get(1);
    }

    private static List<Contradiction> contradictions(Ranking ranking) {
        List<Contradiction> found = new ArrayList<>();
        for (Observed o : ranking.observed()) {
            if (new HashSet<>(o.reports().stream().map(Report::value).toList()).size() > 1) {
                found.add(new Contradiction(ranking.model().finding(o.finding()).id(), effect(ranking, o)));
            }
        }
        return found;
    }

    private static double effect(Ranking ranking, Observed o) {
        Model model = ranking.model();
        List<Ranking.Ranked> all = ranking.all();
        int a = ranking.heaviest(model.index(all.get(0).cause()));
        int b = ranking.heaviest(model.index(all.get(1).cause()));
        double now = o.decibans(model, a, b);
        return o.reports().stream()
                .mapToDouble(r -> Math.abs(o.only(r, model).decibans(model, a, b) - now))
                .max()
                .orElse(0);
    }

    private static List<String> misfits(Ranking ranking, int top) {
        Model model = ranking.model();
        List<Observed> all = ranking.observed();
        double[] fit = all.stream()
                .mapToDouble(o -> {
                    LikelihoodTable t = model.table(o.finding());
                    return o.logLikelihood(t.row(ranking.heaviest(top), model.parts())) - o.logLikelihood(t.marginal);
                })
                .toArray();
        return IntStream.range(0, fit.length)
                .boxed()
                .sorted(Comparator.comparingDouble(k -> fit[k]))
                .limit(2)
                .map(k -> model.finding(all.get(k).finding()).id())
                .toList();
    }
}

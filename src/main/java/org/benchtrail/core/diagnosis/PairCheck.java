package org.benchtrail.core.diagnosis;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Looks for two faults that together explain what no single listed cause does. A hint in words only: it never enters the
 * percentages.
 *
 * @param gain decibans of likelihood by which the pair beats the best single cause
 */
public record PairCheck(String first, String second, double gain) {
    private static final int TOP = 12;
    private static final double GAIN_ABOVE = 10;

    public String sentence(Model model) {
        return "Two faults together would explain all: " + name(model, first) + " and " + name(model, second) + ".";
    }

    private static String name(Model model, String cause) {
        return model.category().causes().get(model.index(cause)).name();
    }

    /** The best pair among the top twelve causes, if the answers are surprising and it beats every single one by > 10 dB. */
    public static Optional<PairCheck> of(Ranking ranking, Surprise surprise) {
        int n = ranking.model().listed();
        if (surprise.level() == Surprise.Level.NONE || n == 0) {
            return Optional.empty();
        }
        double single = IntStream.range(0, n)
                .mapToDouble(i -> likelihood(ranking, i, i))
                .max()
                .orElseThrow();
        int[] top = top(ranking);
        PairCheck best = null;
        double weight = Double.NEGATIVE_INFINITY;
        for (int a = 0; a < top.length; a++) {
            for (int b = a + 1; b < top.length; b++) {
                double l = likelihood(ranking, top[a], top[b]);
                double w =
                        l + ranking.model().logPrior(top[a]) + ranking.model().logPrior(top[b]);
                if (w > weight) {
                    weight = w;
                    best = pair(ranking.model(), top[a], top[b], Decibans.PER_NAT * (l - single));
                }
            }
        }
        return Optional.ofNullable(best).filter(p -> p.gain > GAIN_ABOVE);
    }

    private static PairCheck pair(Model model, int a, int b, double gain) {
        return new PairCheck(model.id(a), model.id(b), gain);
    }

    private static int[] top(Ranking ranking) {
        List<Integer> listed = IntStream.range(0, ranking.model().listed())
                .boxed()
                .sorted(Comparator.<Integer>comparingDouble(i -> -ranking.probability(i))
                        .thenComparing(ranking.model()::id))
                .toList();
        return listed.stream().limit(TOP).mapToInt(i -> i).toArray();
    }

    /** Log likelihood of all reports under two causes together; under one if both are the same. */
    private static double likelihood(Ranking ranking, int a, int b) {
        double sum = 0;
        int n = ranking.model().parts();
        for (Observed o : ranking.observed()) {
            LikelihoodTable t = ranking.model().table(o.finding());
            double[] one = t.row(ranking.heaviest(a), n);
            double[] row = a == b ? one : together(one, t.row(ranking.heaviest(b), n), t.background);
            sum += o.logLikelihood(row);
        }
        return sum;
    }

    /**
     * Row of two causes together. The first value is the normal one; the abnormal ones share their probability in proportion
     * to what the two causes give them.
     */
    static double[] together(double[] a, double[] b, double[] background) {
        double abnormal = abnormal(1 - a[0], 1 - b[0], 1 - background[0]);
        double[] row = new double[a.length];
        row[0] = 1 - abnormal;
        for (int v = 1; v < row.length; v++) {
            row[v] = abnormal * (a[v] + b[v]) / (2 - a[0] - b[0]);
        }
        return row;
    }

    /** Noisy-OR over the background as leak; where a cause makes the abnormal value rarer, the rarer of the two holds. */
    private static double abnormal(double a, double b, double leak) {
        if (a < leak || b < leak) {
            return Math.min(a, b);
        }
        return NoisyOr.probability(leak, NoisyOr.strength(a, leak), NoisyOr.strength(b, leak));
    }
}

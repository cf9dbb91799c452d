package org.benchtrail.core.statistics;

import java.math.BigDecimal;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.statistics.LotBounds.Seen;

/**
 * How many of a lot have a defect where its parts were sampled each by itself.
 *
 * <p>{@link #simple}: each part at the level (1 − a)^(1/H), the bounds added; always valid, and wide. {@link #exactUpper} and
 * {@link #exactLower}, of two parts of at most 500: the statistic T = Σ N x/n, the test turned round over all ways in which a
 * number can be spread over the parts. Source: Wendell and Schmee 1996.
 */
public final class StratifiedBounds {
    /** The largest part for which all ways are gone through. */
    public static final int LARGEST = 500;

    /** A probability nearer to a than this counts as more than it, so that rounding makes bounds wider and never narrower. */
    private static final double ROUNDING = 1e-12;

    private StratifiedBounds() {}

    /** Whether all ways can be gone through. */
    public static boolean isExact(List<Seen> parts) {
        return parts.size() == 2 && parts.stream().allMatch(p -> p.items() <= LARGEST && p.looked() > 0);
    }

    /** The sum of the parts' upper bounds, each at the level that lets them hold together with the confidence. */
    public static int simpleUpper(List<Seen> parts, double confidence) {
        BigDecimal each = level(parts, confidence);
        return parts.stream().mapToInt(p -> LotBounds.upperBound(p, each)).sum();
    }

    /** As {@link #simpleUpper}, from below. */
    public static int simpleLower(List<Seen> parts, double confidence) {
        BigDecimal each = level(parts, confidence);
        return parts.stream().mapToInt(p -> LotBounds.lowerBound(p, each)).sum();
    }

    private static BigDecimal level(List<Seen> parts, double confidence) {
        return BigDecimal.valueOf(Math.pow(Domain.confidence(confidence), 1.0 / parts.size()));
    }

    /**
     * The largest number of defects in both parts with P(T <= t) above 1 − confidence for some way to spread it.
     *
     * @throws Invalid if the parts are not two, too large, or not looked at
     */
    public static int exactUpper(List<Seen> parts, double confidence) {
        Two two = Two.of(parts);
        double tail = 1 - Domain.confidence(confidence) - ROUNDING;
        int best = two.first.found() + two.second.found();
        for (int m1 = two.first.found(); m1 <= top(two.first); m1++) {
            for (int m2 = top(two.second); m2 >= two.second.found() && m1 + m2 > best; m2--) {
                if (two.atMost(m1, m2) > tail) {
                    best = m1 + m2;
                }
            }
        }
        return best;
    }

    /**
     * The smallest number of defects in both parts with P(T >= t) above 1 − confidence for some way to spread it.
     *
     * @throws Invalid as {@link #exactUpper}
     */
    public static int exactLower(List<Seen> parts, double confidence) {
        Two two = Two.of(parts);
        double tail = 1 - Domain.confidence(confidence) - ROUNDING;
        int best = top(two.first) + top(two.second);
        for (int m1 = two.first.found(); m1 <= top(two.first); m1++) {
            for (int m2 = two.second.found(); m2 <= top(two.second) && m1 + m2 < best; m2++) {
                if (two.atLeast(m1, m2) > tail) {
                    best = m1 + m2;
                }
            }
        }
        return best;
    }

    private static int top(Seen part) {
        return part.items() - (part.looked() - part.found());
    }

    /** Two parts, with the chance of each count in each of them for each number of defects. */
    private static final class Two {
        private final Seen first;
        private final Seen second;
        private final double[][] chance;
        private final double[][] upTo;

        private Two(Seen first, Seen second) {
            this.first = first;
            this.second = second;
            chance = chances(first);
            upTo = chances(second);
            for (double[] row : upTo) {
                for (int x = 1; x < row.length; x++) {
                    row[x] += row[x - 1];
                }
            }
        }

        static Two of(List<Seen> parts) {
            if (!isExact(parts)) {
                throw new Invalid("parts", "Give two parts of at most " + LARGEST + ", each looked at.");
            }
            return new Two(parts.get(0), parts.get(1));
        }

        /** T of these counts, times both sample sizes, so that it is whole. */
        private long statistic(int x1, int x2) {
            return (long) first.items() * x1 * second.looked() + (long) second.items() * x2 * first.looked();
        }

        double atMost(int m1, int m2) {
            long t = statistic(first.found(), second.found());
            double sum = 0;
            for (int x1 = 0; x1 <= first.looked(); x1++) {
                long left = t - statistic(x1, 0);
                if (left < 0) {
                    break;
                }
                long most = Math.min(second.looked(), left / ((long) second.items() * first.looked()));
                sum += chance[m1][x1] * upTo[m2][(int) most];
            }
            return sum;
        }

        double atLeast(int m1, int m2) {
            long t = statistic(first.found(), second.found());
            long each = (long) second.items() * first.looked();
            double sum = 0;
            for (int x1 = 0; x1 <= first.looked(); x1++) {
                long lacking = Math.max(0, t - statistic(x1, 0));
                long least = (lacking + each - 1) / each;
                double below = least == 0 ? 0 : least > second.looked() ? 1 : upTo[m2][(int) least - 1];
                sum += chance[m1][x1] * Math.max(0, 1 - below);
            }
            return sum;
        }

        private static double[][] chances(Seen part) {
            double[] logs = new double[part.items() + 1];
            for (int i = 1; i <= part.items(); i++) {
                logs[i] = logs[i - 1] + Math.log(i);
            }
            double[][] chances = new double[part.items() + 1][part.looked() + 1];
            double all = choose(logs, part.items(), part.looked());
            for (int m = 0; m <= part.items(); m++) {
                for (int x = Math.max(0, part.looked() - (part.items() - m)); x <= Math.min(m, part.looked()); x++) {
                    chances[m][x] =
                            Math.exp(choose(logs, m, x) + choose(logs, part.items() - m, part.looked() - x) - all);
                }
            }
            return chances;
        }

        private static double choose(double[] logs, int n, int k) {
            return logs[n] - logs[k] - logs[n - k];
        }
    }
}

package org.benchtrail.core.statistics;

import org.apache.commons.statistics.distribution.BinomialDistribution;

/**
 * The distribution of how many of {@code trials} hit, summed once: for who asks for many tail probabilities of the same size. Each
 * probability is made from the one beside it, outwards from the largest; what is below 1e-30 counts as none.
 */
final class BinomialSums {
    private static final double NONE = 1e-30;

    private final int first;
    private final double[] upTo;

    /**
     * Sums.
     *
     * @param trials at least 1
     * @param chance of each, in (0, 1)
     */
    BinomialSums(int trials, double chance) {
        int mode = (int) Math.min(trials, Math.floor((trials + 1) * chance));
        double odds = chance / (1 - chance);
        double largest = BinomialDistribution.of(trials, chance).probability(mode);
        int low = mode;
        double[] below = new double[mode + 1];
        below[mode] = largest;
        while (low > 0 && below[low] > NONE) {
            below[low - 1] = below[low] * low / ((trials - low + 1) * odds);
            low--;
        }
        int high = mode;
        double[] above = new double[trials - mode + 1];
        above[0] = largest;
        while (high < trials && above[high - mode] > NONE) {
            above[high - mode + 1] = above[high - mode] * (trials - high) * odds / (high + 1);
            high++;
        }
        first = low;
        upTo = new double[high - low + 1];
        double sum = 0;
        for (int i = low; i <= high; i++) {
            sum += i <= mode ? below[i] : above[i - mode];
            upTo[i - low] = sum;
        }
    }

    /** P(X &lt;= hits). */
    double upTo(int hits) {
        return hits < first ? 0 : Math.min(1, upTo[Math.min(upTo.length - 1, hits - first)]);
    }

    /** The smallest number of hits with P(X &lt;= hits) above {@code p}, which is in (0, 1). */
    int above(double p) {
        int low = 0;
        int high = upTo.length - 1;
        while (low < high) {
            int middle = (low + high) / 2;
            if (upTo[middle] > p) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return first + low;
    }
}

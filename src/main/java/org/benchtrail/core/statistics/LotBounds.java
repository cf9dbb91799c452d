package org.benchtrail.core.statistics;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.function.IntPredicate;
import org.benchtrail.core.Invalid;

/**
 * How many of a finite lot have a defect, from a sample without replacement: the exact bounds that come from turning the
 * hypergeometric tests round.
 *
 * <p>Upper bound: the largest M with P(X <= x | M) > a; lower bound: the smallest M with P(X >= x | M) > a, where a is one minus
 * the confidence, or half of that for two sides. Both bounds are values that are not excluded. Compared as fractions of whole
 * numbers, since probabilities land on a exactly. Source: Katz 1953; Konijn 1973.
 *
 * @param lower of the number in the lot, x to {@code upper}
 * @param upper at most N − (n − x)
 */
public record LotBounds(int lower, int upper) {
    /**
     * What was seen of a lot.
     *
     * @param items N, at least 1
     * @param looked n, 0 to N
     * @param found x, 0 to n
     */
    public record Seen(int items, int looked, int found) {
        public Seen {
            new Invalid.Collector()
                    .require(items >= 1, "items", "Give the number of items, at least 1.")
                    .require(looked >= 0 && looked <= items, "looked", "Give how many were looked at, 0 to all.")
                    .require(found >= 0 && found <= looked, "found", "Give how many were found, 0 to all looked at.")
                    .throwIfAny();
        }

        private int most() {
            return items - (looked - found);
        }
    }

    /** Both bounds, each with half of what the confidence leaves. */
    public static LotBounds twoSided(Seen seen, BigDecimal confidence) {
        BigDecimal tail = BigDecimal.ONE.subtract(checked(confidence)).divide(BigDecimal.valueOf(2));
        return new LotBounds(lower(seen, tail), upper(seen, tail));
    }

    /** The upper bound alone, with all that the confidence leaves. */
    public static int upperBound(Seen seen, BigDecimal confidence) {
        return upper(seen, BigDecimal.ONE.subtract(checked(confidence)));
    }

    /** The lower bound alone, with all that the confidence leaves. */
    public static int lowerBound(Seen seen, BigDecimal confidence) {
        return lower(seen, BigDecimal.ONE.subtract(checked(confidence)));
    }

    private static BigDecimal checked(BigDecimal confidence) {
        Domain.confidence(confidence.doubleValue());
        return confidence;
    }

    private static int upper(Seen seen, BigDecimal tail) {
        return last(seen.found(), seen.most(), m -> exceeds(atMost(seen, m), seen, tail));
    }

    private static int lower(Seen seen, BigDecimal tail) {
        return last(seen.found(), seen.most(), m -> m == seen.found() || !exceeds(atLeast(seen, m - 1), seen, tail));
    }

    /** The last of a range for which it holds, where it holds for the first ones and for none after them. */
    private static int last(int from, int to, IntPredicate holds) {
        int low = from;
        int high = to;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (holds.test(middle)) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }

    private static boolean exceeds(BigInteger ways, Seen seen, BigDecimal tail) {
        BigInteger all = choose(seen.items(), seen.looked());
        return new BigDecimal(ways).compareTo(tail.multiply(new BigDecimal(all))) > 0;
    }

    /** Number of samples with at most x of M. */
    private static BigInteger atMost(Seen seen, int defects) {
        return ways(seen, defects, 0, seen.found());
    }

    private static BigInteger atLeast(Seen seen, int defects) {
        return ways(seen, defects, seen.found(), Math.min(defects, seen.looked()));
    }

    private static BigInteger ways(Seen seen, int defects, int from, int to) {
        BigInteger sum = BigInteger.ZERO;
        for (int k = from; k <= to; k++) {
            sum = sum.add(choose(defects, k).multiply(choose(seen.items() - defects, seen.looked() - k)));
        }
        return sum;
    }

    /**
     * P(X <= x | M), as near as a double can say it.
     *
     * @param defects M, 0 to N
     */
    public static double atMostProbability(Seen seen, int defects) {
        return ratio(atMost(seen, defects), choose(seen.items(), seen.looked()));
    }

    /** P(X >= x | M), as near as a double can say it. */
    public static double atLeastProbability(Seen seen, int defects) {
        return ratio(atLeast(seen, defects), choose(seen.items(), seen.looked()));
    }

    private static double ratio(BigInteger part, BigInteger all) {
        return new BigDecimal(part)
                .divide(new BigDecimal(all), java.math.MathContext.DECIMAL64)
                .doubleValue();
    }

    /** Ways to choose k of n; none if k is below 0 or above n. */
    static BigInteger choose(int n, int k) {
        if (k < 0 || k > n) {
            return BigInteger.ZERO;
        }
        BigInteger ways = BigInteger.ONE;
        int shorter = Math.min(k, n - k);
        for (int i = 0; i < shorter; i++) {
            ways = ways.multiply(BigInteger.valueOf(n - (long) i)).divide(BigInteger.valueOf(i + 1L));
        }
        return ways;
    }

    /** The same bounds with as many more that are known. */
    public LotBounds plus(int known) {
        return new LotBounds(lower + known, upper + known);
    }
}

package org.benchtrail.core.statistics;

import java.math.BigDecimal;
import java.math.BigInteger;
import org.benchtrail.core.Invalid;

/**
 * How many of N items to look at in order to find at least one of the D that have a fault.
 *
 * <p>Exact: P(n) = 1 − C(N−D, n)/C(N, n) is compared with the confidence as a fraction of whole numbers, because N = 20, D = 1,
 * n = 19 is exactly 0.95. Source: hypergeometric distribution, any textbook.
 */
public final class DiscoverySampling {
    private static final int LARGEST = 1_000_000;

    private DiscoverySampling() {}

    /**
     * The smallest n with P(n) at least the confidence.
     *
     * @param items N, 1 to 1,000,000
     * @param faulty D, 1 to N; with none, nothing can be found
     * @param confidence in (0, 1), taken as the decimal it is written as
     */
    public static int sampleSize(int items, int faulty, double confidence) {
        requireLot(items, faulty);
        BigDecimal wanted = BigDecimal.valueOf(Domain.confidence(confidence));
        int n = estimate(items, faulty, 1 - confidence);
        // The estimate is right but for rounding; the exact comparison settles it.
        while (!finds(items, faulty, n, wanted)) {
            n++;
        }
        while (n > 1 && finds(items, faulty, n - 1, wanted)) {
            n--;
        }
        return n;
    }

    /**
     * Probability that n items looked at hold at least one faulty one.
     *
     * @param looked n, 0 to N
     */
    public static double probability(int items, int faulty, int looked) {
        requireLot(items, faulty);
        if (looked < 0 || looked > items) {
            throw new Invalid("looked", "Give how many are looked at, from none to all " + items + ".");
        }
        if (looked > items - faulty) {
            return 1;
        }
        double logMiss = 0;
        int shorter = Math.min(looked, faulty);
        int longer = Math.max(looked, faulty);
        for (int i = 0; i < shorter; i++) {
            logMiss += Math.log1p(-(double) longer / (items - i));
        }
        return 0.0 - Math.expm1(logMiss);
    }

    /**
     * The smallest n for a lot without end: ln(1 − confidence)/ln(1 − share), rounded up.
     *
     * @param share faulty, in (0, 1)
     */
    public static int sampleSizeWithoutEnd(double share, double confidence) {
        if (!(share > 0 && share < 1)) {
            throw new Invalid("share", "Give the share that is faulty between 0 and 1.");
        }
        double n = Math.log1p(-Domain.confidence(confidence)) / Math.log1p(-share);
        if (n > LARGEST * 1000.0) {
            throw new Invalid("share", "So small a share cannot be found by looking at samples: give a larger one.");
        }
        // A whole number missed by rounding alone is that number.
        return (int) Math.ceil(n - 1e-9);
    }

    private static void requireLot(int items, int faulty) {
        new Invalid.Collector()
                .require(items >= 1 && items <= LARGEST, "items", "Give the number of items, 1 to " + LARGEST + ".")
                .require(
                        faulty >= 1 && faulty <= items,
                        "faulty",
                        "Give how many are faulty, at least 1 and at most all: where there is none, none can be found.")
                .throwIfAny();
    }

    /** Smallest n by floating-point probabilities, by halving. */
    private static int estimate(int items, int faulty, double miss) {
        int low = 1;
        int high = items - faulty + 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (probability(items, faulty, middle) >= 1 - miss) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }

    /** P(n) >= wanted, exactly: (1 − wanted)·Π(N−i) >= Π(N−longer−i), the shorter of n and D factors each. */
    private static boolean finds(int items, int faulty, int looked, BigDecimal wanted) {
        if (looked > items - faulty) {
            return true;
        }
        int shorter = Math.min(looked, faulty);
        int longer = Math.max(looked, faulty);
        BigInteger all = falling(items, shorter);
        BigInteger missing = falling(items - longer, shorter);
        BigDecimal allowed = BigDecimal.ONE.subtract(wanted).multiply(new BigDecimal(all));
        return allowed.compareTo(new BigDecimal(missing)) >= 0;
    }

    /** n·(n−1)·… with so many factors. */
    private static BigInteger falling(int n, int factors) {
        BigInteger product = BigInteger.ONE;
        for (int i = 0; i < factors; i++) {
            product = product.multiply(BigInteger.valueOf(n - (long) i));
        }
        return product;
    }
}

package org.benchtrail.core.bench.judging;

import java.math.BigDecimal;
import java.math.BigInteger;
import org.apache.commons.statistics.distribution.HypergeometricDistribution;

/**
 * Discovery sampling without replacement: the chance that n items drawn from N, of which D are faulty, hold none is C(N - D, n) /
 * C(N, n).
 *
 * <p>Domain: 1 <= D <= N, 0 <= n <= N. The smallest n is decided in integers, because the boundary can be met exactly (N = 20, D
 * = 1, n = 19 finds it with exactly 0.95); the chance that is shown is a double.
 */
record Discovery(int size, int faulty) {
    /** Smallest n that finds at least one faulty item with at least {@code confidence}, a share in (0, 1]. */
    int needed(BigDecimal confidence) {
        BigDecimal miss = BigDecimal.ONE.subtract(confidence);
        int most = size - faulty + 1;
        if (miss.signum() == 0) {
            return most;
        }
        // doubling first: the numbers stay short, because n × D is about N ln(1 / miss) at the answer
        int high = 1;
        while (high < most && !finds(high, miss)) {
            high = Math.min(most, 2 * high);
        }
        return between(high / 2 + 1, high, miss);
    }

    private int between(int from, int to, BigDecimal miss) {
        int low = Math.min(from, to);
        int high = to;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (finds(middle, miss)) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }

    /** The chance to miss as a fraction, its product running over the smaller of n and D, which gives the same. */
    private boolean finds(int n, BigDecimal miss) {
        if (n > size - faulty) {
            return true;
        }
        int factors = Math.min(n, faulty);
        BigInteger missing = product(size - Math.max(n, faulty), factors);
        return new BigDecimal(missing).compareTo(miss.multiply(new BigDecimal(product(size, factors)))) <= 0;
    }

    /** Chance to find at least one among n. */
    double chance(int n) {
        return -Math.expm1(HypergeometricDistribution.of(size, faulty, n).logProbability(0));
    }

    /** from (from - 1) ... with {@code count} factors, split in halves so that the numbers multiplied are of like length. */
    private static BigInteger product(int from, int count) {
        if (count == 1) {
            return BigInteger.valueOf(from);
        }
        int half = count / 2;
        return product(from, half).multiply(product(from - half, count - half));
    }
}

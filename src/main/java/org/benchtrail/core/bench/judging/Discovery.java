package org.benchtrail.core.bench.judging;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;

/**
 * Discovery sampling without replacement, exact: the chance that n items drawn from N, of which D are faulty, hold none is
 * C(N - D, n) / C(N, n).
 *
 * <p>Domain: 1 <= D <= N, 0 <= n <= N. Integers throughout, because the boundary can be met exactly (N = 20, D = 1, n = 19
 * finds it with exactly 0.95).
 */
record Discovery(int size, int faulty) {
    /** Smallest n that finds at least one faulty item with at least {@code confidence}, a share in (0, 1]. */
    int needed(BigDecimal confidence) {
        int low = 1;
        int high = size - faulty + 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (finds(middle, confidence)) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }

    private boolean finds(int n, BigDecimal confidence) {
        BigDecimal miss = BigDecimal.ONE.subtract(confidence);
        BigInteger[] chance = missing(n);
        return new BigDecimal(chance[0]).compareTo(miss.multiply(new BigDecimal(chance[1]))) <= 0;
    }

    /** Chance to find at least one, to the nearest double. */
    double chance(int n) {
        BigInteger[] missing = missing(n);
        BigDecimal found = new BigDecimal(missing[1].subtract(missing[0]));
        return found.divide(new BigDecimal(missing[1]), MathContext.DECIMAL64).doubleValue();
    }

    /** Numerator and denominator of the chance to miss; the product runs over the smaller of n and D, which gives the same. */
    private BigInteger[] missing(int n) {
        int factors = Math.min(n, faulty);
        int larger = Math.max(n, faulty);
        return new BigInteger[] {product(size - larger, factors), product(size, factors)};
    }

    /** from (from - 1) ... with {@code count} factors, split in halves so that the numbers multiplied are of like length. */
    private static BigInteger product(int from, int count) {
        if (count == 0) {
            return BigInteger.ONE;
        }
        if (count == 1) {
            return BigInteger.valueOf(Math.max(0, from));
        }
        int half = count / 2;
        return product(from, half).multiply(product(from - half, count - half));
    }
}

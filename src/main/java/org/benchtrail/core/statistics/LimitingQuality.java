package org.benchtrail.core.statistics;

import java.math.BigDecimal;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.statistics.LotBounds.Seen;

/**
 * A plan for one lot that stands by itself: so few are looked at that a lot as bad as the limiting quality is still accepted
 * with a small chance only.
 *
 * <p>Calculated, exact (hypergeometric); ISO 2859-2 indexes its plans in the same way and rounds their sizes.
 *
 * @param items N
 * @param defects D: the limiting quality times N, rounded up
 * @param looked n
 * @param acceptance the lot is accepted with at most so many found
 */
public record LimitingQuality(int items, int defects, int looked, int acceptance) {
    private static final BigDecimal RISK = new BigDecimal("0.10");

    /**
     * The smallest n with a risk of at most 10 %.
     *
     * @param quality share in (0, 1), taken as the decimal it is written as
     * @param acceptance 0 or more, less than the number that the quality means
     */
    public static LimitingQuality of(int items, double quality, int acceptance) {
        int defects = BigDecimal.valueOf(quality)
                .multiply(BigDecimal.valueOf(items))
                .setScale(0, java.math.RoundingMode.CEILING)
                .intValue();
        new Invalid.Collector()
                .require(quality > 0 && quality < 1, "quality", "Give the limiting quality between 0 and 1.")
                .require(
                        acceptance >= 0 && acceptance < defects,
                        "acceptance",
                        "With so many accepted, a lot of that quality always passes: accept fewer.")
                .throwIfAny();
        int low = acceptance + 1;
        int high = items;
        while (low < high) {
            int middle = (low + high) >>> 1;
            // At most the risk: what is left for finding more is at least the rest.
            if (LotBounds.upperBound(new Seen(items, middle, acceptance), BigDecimal.ONE.subtract(RISK)) < defects) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return new LimitingQuality(items, defects, low, acceptance);
    }

    /**
     * Chance that a lot with so many defects is accepted: a point of the operating curve.
     *
     * @param actual 0 to N
     */
    public double acceptanceProbability(int actual) {
        return LotBounds.atMostProbability(new Seen(items, looked, acceptance), actual);
    }
}

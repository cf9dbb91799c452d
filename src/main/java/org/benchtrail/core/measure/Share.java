package org.benchtrail.core.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.Optional;

/**
 * A share in percent near its ends. What is next to nothing, or next to all, is said to be so and never rounded to it,
 * wherever a share is written; the texts stand without the percent sign.
 */
public final class Share {
    private static final BigDecimal ALL = BigDecimal.valueOf(100);

    private Share() {}

    /**
     * A probability in percent. It is taken as neither none nor certain, however near it comes: nobody trusts the tails of a
     * distribution so far.
     *
     * @param probability from 0 to 1
     * @return above 0 and below 100
     */
    public static double ofChance(double probability) {
        return Math.min(Math.nextDown(100.0), Math.max(Double.MIN_VALUE, 100 * probability));
    }

    /**
     * A probability in percent as a sentence says it, rounded half up to a multiple of {@code step}: {@code 97.7}, {@code less
     * than 0.1}, {@code more than 99.9}.
     *
     * @param probability from 0 to 1
     * @param step a power of ten in percent, and the least that is told from none or from certainty
     */
    public static String chance(double probability, double step) {
        double percent = ofChance(probability);
        return edge(percent, step)
                .orElseGet(() -> BigDecimal.valueOf(percent)
                        .setScale(BigDecimal.valueOf(step).stripTrailingZeros().scale(), RoundingMode.HALF_UP)
                        .toPlainString());
    }

    /**
     * What is said of a share next to nothing or next to all.
     *
     * @param percent the share
     * @param least in percent: what is less far than this from none or from all is next to it
     * @param limits with one of them beside it there, the share has to be written out
     * @return empty for any other share
     */
    public static Optional<String> edge(double percent, double least, double... limits) {
        if (isBetween(percent, 0, least, limits)) {
            return Optional.of("less than " + plain(BigDecimal.valueOf(least)));
        }
        return isBetween(percent, 100 - least, 100, limits)
                ? Optional.of("more than " + plain(ALL.subtract(BigDecimal.valueOf(least))))
                : Optional.empty();
    }

    /** Whether the value lies between two others with no limit there beside it. */
    private static boolean isBetween(double value, double low, double high, double... limits) {
        return value > low && value < high && Arrays.stream(limits).noneMatch(limit -> limit > low && limit < high);
    }

    private static String plain(BigDecimal number) {
        return number.stripTrailingZeros().toPlainString();
    }
}

package org.benchtrail.core.statistics;

import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.benchtrail.core.Invalid;

/**
 * How many of a lot to inspect, and how many defective ones still accept it: single sampling, normal inspection, general
 * level II. The arrows of the table are already followed.
 *
 * <p>Source: ISO 2859-1, tables 1 and 2-A (the same as ANSI/ASQ Z1.4 and MIL-STD-105E, tables I and II-A).
 *
 * @param codeLetter of the lot's size, A to Q without I and O
 * @param sampleSize how many to inspect; the whole lot if the table asks for as many or more
 * @param acceptance the lot is accepted with at most so many defective ones
 * @param wholeLot whether everything is inspected
 */
public record SamplingPlan(char codeLetter, int sampleSize, int acceptance, boolean wholeLot) {

    /** Acceptance quality limit: percent defective that is accepted most of the time. */
    public enum Aql {
        ONE(1.0, 0),
        TWO_AND_A_HALF(2.5, 1),
        FOUR(4.0, 2);

        private final double percent;
        private final int row;

        Aql(double percent, int row) {
            this.percent = percent;
            this.row = row;
        }

        public double percent() {
            return percent;
        }
    }

    // One row per quality limit, one column per code letter.
    private static final int[][] SIZES = {
        {13, 13, 13, 13, 13, 13, 50, 50, 80, 125, 200, 315, 500, 800, 1250},
        {5, 5, 5, 5, 20, 20, 32, 50, 80, 125, 200, 315, 500, 500, 500},
        {3, 3, 3, 13, 13, 20, 32, 50, 80, 125, 200, 315, 315, 315, 315}
    };
    private static final int[][] ACCEPTANCES = {
        {0, 0, 0, 0, 0, 0, 1, 1, 2, 3, 5, 7, 10, 14, 21},
        {0, 0, 0, 0, 1, 1, 2, 3, 5, 7, 10, 14, 21, 21, 21},
        {0, 0, 0, 1, 1, 2, 3, 5, 7, 10, 14, 21, 21, 21, 21}
    };
    private static final String LETTERS = "ABCDEFGHJKLMNPQ";
    private static final int[] LARGEST_LOT = {
        8, 15, 25, 50, 90, 150, 280, 500, 1200, 3200, 10_000, 35_000, 150_000, 500_000, Integer.MAX_VALUE
    };

    /**
     * The plan for a lot.
     *
     * @param lot number of items, at least 2, where the standard's table begins
     */
    public static SamplingPlan of(int lot, Aql aql) {
        if (lot < 2) {
            throw new Invalid("lot", "Give a lot of at least 2; a single item is simply inspected.");
        }
        int letter = 0;
        while (lot > LARGEST_LOT[letter]) {
            letter++;
        }
        int size = SIZES[aql.row][letter];
        int acceptance = ACCEPTANCES[aql.row][letter];
        return new SamplingPlan(LETTERS.charAt(letter), Math.min(size, lot), acceptance, size >= lot);
    }

    /**
     * Probability that a long run of items with this share defective is accepted (binomial).
     *
     * @param defective share in [0, 1]
     */
    public double acceptanceProbability(double defective) {
        Domain.probability("defective", defective);
        return BinomialDistribution.of(sampleSize, defective).cumulativeProbability(acceptance);
    }
}

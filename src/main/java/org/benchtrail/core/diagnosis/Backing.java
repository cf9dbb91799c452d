package org.benchtrail.core.diagnosis;

/**
 * What stands behind one figure: how much the catalogue's own value counts in it, and how much this site's cases.
 *
 * @param practice pseudo-count of the catalogue's value, in cases; zero or more
 * @param cases accepted cases, decayed and capped, so seldom whole; zero or more
 */
public record Backing(double practice, double cases) {
    /** Below this share of a figure the catalogue's value is no longer worth naming. Our choice. */
    private static final double NEGLIGIBLE = 0.05;

    /** Where a figure comes from. */
    public enum Origin {
        PRACTICE("practice"),
        CASES("this shop's cases"),
        BOTH("both");

        private final String words;

        Origin(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public Origin origin() {
        if (cases <= 0) {
            return Origin.PRACTICE;
        }
        return practice < NEGLIGIBLE * (practice + cases) ? Origin.CASES : Origin.BOTH;
    }
}

package org.benchtrail.core.training;

import org.benchtrail.core.statistics.Proportion;

/** How much the coach shows beside a requirement, from nothing to all. */
public enum CoachLevel {
    SILENT("nothing, until it is asked for", 1),
    PROMPT("what good looks like", 0.95),
    COMPLETION("the example with a part left open", 0.90),
    EXAMPLE("the whole example", 0.80);

    /** Share of the occasions that has to be met without help of that level before it goes. */
    public static final double MET = 0.80;

    /** The same on a site where a test of the coach did not show that work is no worse without it. */
    public static final double STRICTER = 0.85;

    private final String words;
    private final double confidence;

    CoachLevel(String words, double confidence) {
        this.words = words;
        this.confidence = confidence;
    }

    public String words() {
        return words;
    }

    /**
     * Whether so many met of so many looked at show that this level is needed no longer: the exact one-sided lower bound of the share
     * is above {@code bound}, with confidence 0.80, 0.90 and 0.95 from the whole example down.
     *
     * <p>Source of the bound: Clopper and Pearson, see {@link Proportion#exactLowerBound}; of the levels: a choice of this project.
     *
     * @param bound {@link #MET} or {@link #STRICTER}
     */
    public boolean isLeftBy(int met, int looked, double bound) {
        return this != SILENT && looked > 0 && new Proportion(met, looked).exactLowerBound(confidence) > bound;
    }

    /** One less; the same at the bottom. */
    public CoachLevel down() {
        return values()[Math.max(0, ordinal() - 1)];
    }

    /** One more; the same at the top. */
    public CoachLevel up() {
        return values()[Math.min(values().length - 1, ordinal() + 1)];
    }

    public CoachLevel atLeast(CoachLevel floor) {
        return ordinal() < floor.ordinal() ? floor : this;
    }
}

package org.benchtrail.core.statistics;

import java.util.EnumSet;
import java.util.Set;

/**
 * Rules that a control chart is read by together, and what they cost: each one more finds a change sooner, and rings more often for
 * nothing.
 */
public enum ChartRules {
    USUAL(
            "the usual two rules",
            153,
            "outside the limits, or eight in a row on one side",
            ChartRule.BEYOND_THREE,
            ChartRule.EIGHT_IN_A_ROW),
    ALL(
            "all four rules",
            92,
            "outside the limits, eight in a row on one side, two of three far out, or four of five off the middle",
            ChartRule.BEYOND_THREE,
            ChartRule.TWO_OF_THREE,
            ChartRule.FOUR_OF_FIVE,
            ChartRule.EIGHT_IN_A_ROW);

    private final String title;
    private final int betweenFalseAlarms;
    private final String words;
    private final Set<ChartRule> rules;

    ChartRules(String title, int betweenFalseAlarms, String words, ChartRule first, ChartRule... others) {
        this.title = title;
        this.betweenFalseAlarms = betweenFalseAlarms;
        this.words = words;
        rules = EnumSet.of(first, others);
    }

    public String title() {
        return title;
    }

    /** Points between two false alarms on average where only chance varies, normal and independent. */
    public int betweenFalseAlarms() {
        return betweenFalseAlarms;
    }

    /** What a point has to be for a look, with the price. */
    public String words() {
        return words + " (one false alarm in about " + betweenFalseAlarms + " points)";
    }

    public Set<ChartRule> rules() {
        return EnumSet.copyOf(rules);
    }
}

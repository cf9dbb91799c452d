package org.benchtrail.core.figures;

import java.time.Instant;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.statistics.SpreadChart;

/**
 * Limits of a share from week to week that somebody froze. Weeks of them that lie outside are kept among them.
 *
 * @param from the weeks that it is made of begin here
 * @param until and end before here
 * @param frozenAt from when on weeks are judged by it
 * @param points of how many weeks, or joined weeks, it is made
 * @param outside how many of them lie outside
 * @param target the share that is usual; more than 0 and less than 1
 * @param wider how much wider the limits are than chance alone makes them: 1 where it explains how the weeks differ
 */
public record ShareBaseline(
        Instant from, Instant until, Instant frozenAt, int points, int outside, double target, double wider)
        implements FrozenLimits {
    /**
     * Freezes.
     *
     * @param weeks of that time, in order
     * @throws Invalid naming {@code weeksFirst} or {@code weeksLast}, where the time is not over or too little happened in it
     */
    public static ShareBaseline of(Instant from, Instant until, List<Count> weeks, Instant now) {
        new Invalid.Collector()
                .require(from.isBefore(until), "weeksFirst", "The first day is not later than the last.")
                .require(!until.isAfter(now), "weeksLast", "Choose a last day that is over.")
                .throwIfAny();
        ShareOverTime share = ShareOverTime.of(weeks);
        SpreadChart chart = share.chart();
        if (chart == null) {
            throw new Invalid(
                    "weeksFirst",
                    "Limits that stand need " + ShareOverTime.ENOUGH
                            + " weeks, or joined weeks, each with enough tickets to expect 5 late ones and 5 others, and this"
                            + " time has " + share.groups().size() + ".");
        }
        boolean more = chart.dispersion().isMoreThanChance();
        List<Integer> outside = more ? chart.outside() : chart.plain().outside();
        return new ShareBaseline(
                from,
                until,
                now,
                share.groups().size(),
                outside.size(),
                chart.plain().meanShare(),
                more ? chart.sigmaZ() : 1);
    }

    /** For so many tickets. */
    SpreadChart.Limits limits(long tickets) {
        return SpreadChart.limits(tickets, target, wider);
    }

    /** Whether that many of them are fewer or more than the limits leave to chance; on a limit is within. */
    boolean isOutside(Count count) {
        SpreadChart.Limits limits = limits(count.of());
        double share = count.share().share();
        return share < limits.lower() || share > limits.upper();
    }
}

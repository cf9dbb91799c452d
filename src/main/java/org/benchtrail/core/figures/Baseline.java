package org.benchtrail.core.figures;

import java.time.Instant;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.statistics.ChartRule;
import org.benchtrail.core.statistics.ChartRules;

/**
 * Limits that somebody froze: made once from the closings of a stated time that is over, and never again. Those of them that lie
 * outside are kept among them.
 *
 * @param from the closings that it is made of begin here
 * @param until and end before here
 * @param frozenAt from when on closings are judged by it, whatever is frozen later
 * @param points how many closings it is made of
 * @param outside how many of them lie outside its limits
 */
public record Baseline(
        Instant from, Instant until, Instant frozenAt, int points, int outside, Level level, ChartRules rules)
        implements FrozenLimits {
    /** More are not read. */
    public static final int MOST = 1000;

    /**
     * Freezes.
     *
     * @param hours of all closings of that time, in order
     * @throws Invalid naming {@code first} or {@code last}, where the time is not over or its closings make no limits that stand
     */
    public static Baseline of(Instant from, Instant until, List<Double> hours, ChartRules rules, Instant now) {
        new Invalid.Collector()
                .require(from.isBefore(until), "first", "The first day is not later than the last.")
                .require(
                        !until.isAfter(now),
                        "last",
                        "Choose a last day that is over: limits come from closings to which no more are added.")
                .throwIfAny();
        new Invalid.Collector()
                .require(
                        hours.size() >= Level.ENOUGH,
                        "first",
                        "Limits that stand need " + Level.ENOUGH + " closings, and this time has " + hours.size() + ".")
                .require(
                        hours.size() <= MOST,
                        "first",
                        "This time has more than " + MOST + " closings. Choose a shorter one.")
                .throwIfAny();
        Level level = Level.of(hours)
                .orElseThrow(() -> new Invalid(
                        "first",
                        "All closings of this time took the same: nothing varies, so there are" + " no limits."));
        int outside = ChartRule.BEYOND_THREE
                .broken(hours.stream().mapToDouble(level::distance).toArray())
                .size();
        return new Baseline(from, until, now, hours.size(), outside, level, rules);
    }

    /** As {@link FrozenLimits#at}, of a closing. */
    static int at(Instant closing, List<Baseline> frozen) {
        return FrozenLimits.at(closing, closing, frozen);
    }
}

package org.benchtrail.core.figures;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.statistics.SpreadChart;
import org.jspecify.annotations.Nullable;

/**
 * Shares from week to week, each held against the limits that were frozen by its time. Weeks with little are joined, and only with weeks
 * that are held against the same limits.
 *
 * @param points in order
 */
public record HeldShares(List<Point> points) {
    /** @param by the limits; null where nothing says what is usual */
    public record Point(ShareOverTime.Group group, @Nullable ShareBaseline by) {
        public boolean isOutside() {
            return by != null && by.isOutside(group.count());
        }

        /** Null where there are none. */
        public SpreadChart.@Nullable Limits limits() {
            return by == null ? null : by.limits(group.count().of());
        }
    }

    public HeldShares {
        points = List.copyOf(points);
    }

    /**
     * @param weeks in order; those in which nothing happened are no point by themselves
     * @param begins of each week, and the end of the last
     * @param frozen limits, in the order in which they were frozen
     */
    public static HeldShares of(List<Count> weeks, List<Instant> begins, List<ShareBaseline> frozen) {
        List<Point> points = new ArrayList<>();
        int first = 0;
        for (int i = 1; i <= weeks.size(); i++) {
            int now = FrozenLimits.at(begins.get(first), begins.get(first + 1), frozen);
            if (i == weeks.size() || FrozenLimits.at(begins.get(i), begins.get(i + 1), frozen) != now) {
                points.addAll(held(weeks.subList(first, i), first, now < 0 ? null : frozen.get(now)));
                first = i;
            }
        }
        return new HeldShares(points);
    }

    private static List<Point> held(List<Count> weeks, int first, @Nullable ShareBaseline by) {
        List<ShareOverTime.Group> groups =
                by == null ? ShareOverTime.join(weeks) : ShareOverTime.join(weeks, by.target());
        return groups.stream()
                .filter(g -> g.count().of() > 0)
                .map(g -> new Point(new ShareOverTime.Group(first + g.first(), first + g.last(), g.count()), by))
                .toList();
    }

    public boolean isJudged() {
        return points.stream().anyMatch(p -> p.by() != null);
    }
}

package org.benchtrail.core.figures;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.benchtrail.core.statistics.SpreadChart;
import org.jspecify.annotations.Nullable;

/**
 * A share from week to week, held against what chance would make of it. Weeks in which too little happened are joined with those
 * after them.
 *
 * @param groups in order
 * @param chart null where there are too few groups
 */
public record ShareOverTime(List<Group> groups, @Nullable SpreadChart chart) {
    /** So many groups make limits; common practice. */
    public static final int ENOUGH = 12;

    /** So many hits, and others, are expected of a group by the share of all; common practice. */
    private static final int EXPECTED = 5;

    /** Weeks that are one point: from the first to the last of the given ones, both by index. */
    public record Group(int first, int last, Count count) {}

    public ShareOverTime {
        groups = List.copyOf(groups);
    }

    /** @param weeks in order */
    public static ShareOverTime of(List<Count> weeks) {
        List<Group> groups = join(weeks);
        boolean enough = groups.size() >= ENOUGH;
        return new ShareOverTime(
                groups,
                enough
                        ? SpreadChart.of(
                                groups.stream().map(g -> g.count().share()).toList())
                        : null);
    }

    static List<Group> join(List<Count> weeks) {
        Count all = Count.together(weeks);
        return join(weeks, count -> isLarge(count, all));
    }

    /** @param share by which hits are expected */
    static List<Group> join(List<Count> weeks, double share) {
        return join(weeks, count -> count.of() * share >= EXPECTED && count.of() * (1 - share) >= EXPECTED);
    }

    private static List<Group> join(List<Count> weeks, Predicate<Count> large) {
        List<Group> groups = new ArrayList<>();
        int first = 0;
        for (int i = 0; i < weeks.size(); i++) {
            Count sum = Count.together(weeks.subList(first, i + 1));
            if (large.test(sum)) {
                groups.add(new Group(first, i, sum));
                first = i + 1;
            }
        }
        if (first < weeks.size()) {
            // what is left is too small by itself
            int from = groups.isEmpty() ? 0 : groups.remove(groups.size() - 1).first();
            groups.add(new Group(from, weeks.size() - 1, Count.together(weeks.subList(from, weeks.size()))));
        }
        return groups;
    }

    /** n p >= 5 and n (1 - p) >= 5, in whole numbers. */
    private static boolean isLarge(Count count, Count all) {
        return count.of() > 0
                && count.of() * all.hits() >= EXPECTED * all.of()
                && count.of() * (all.of() - all.hits()) >= EXPECTED * all.of();
    }
}

package org.benchtrail.core.figures;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.statistics.ChartRule;
import org.benchtrail.core.statistics.ChartRules;
import org.jspecify.annotations.Nullable;

/**
 * One time after the other, held against what is usual: against frozen limits, where somebody froze some, else against those of these
 * times themselves.
 *
 * @param points in the order of time
 * @param frozen whether limits were frozen
 * @param rules by which the latest are read
 */
public record ClosingTimes(List<Point> points, boolean frozen, ChartRules rules) {

    /** @param hours of working time */
    public record Closing(Instant at, double hours) {}

    /**
     * A closing.
     *
     * @param level what is usual then; null where nothing says it
     * @param broken rules by which it is worth a look
     */
    public record Point(double hours, @Nullable Level level, Set<ChartRule> broken) {
        public Point {
            broken = Set.copyOf(broken);
        }

        public boolean isSlow() {
            return level != null && hours > level.middle();
        }
    }

    public ClosingTimes {
        points = List.copyOf(points);
    }

    /**
     * @param closings in the order of time
     * @param frozen limits, in the order in which they were frozen; none if the times' own are wanted
     */
    public static ClosingTimes of(List<Closing> closings, List<Baseline> frozen) {
        if (frozen.isEmpty()) {
            Optional<Level> own = Level.of(closings.stream().map(Closing::hours).toList());
            return new ClosingTimes(judged(closings, own.orElse(null), ChartRules.USUAL), false, ChartRules.USUAL);
        }
        List<Point> points = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= closings.size(); i++) {
            int now = Baseline.at(closings.get(from).at(), frozen);
            if (i == closings.size() || Baseline.at(closings.get(i).at(), frozen) != now) {
                List<Closing> same = closings.subList(from, i);
                points.addAll(
                        now < 0
                                ? judged(same, null, ChartRules.USUAL)
                                : judged(
                                        same,
                                        frozen.get(now).level(),
                                        frozen.get(now).rules()));
                from = i;
            }
        }
        return new ClosingTimes(points, true, frozen.get(frozen.size() - 1).rules());
    }

    /** Of closings with the same limits; a row on one side begins with them. */
    private static List<Point> judged(List<Closing> closings, @Nullable Level level, ChartRules rules) {
        List<Set<ChartRule>> broken = new ArrayList<>();
        closings.forEach(c -> broken.add(EnumSet.noneOf(ChartRule.class)));
        if (level != null) {
            double[] distances = closings.stream()
                    .mapToDouble(c -> level.distance(c.hours()))
                    .toArray();
            rules.rules()
                    .forEach(rule ->
                            rule.broken(distances).forEach(i -> broken.get(i).add(rule)));
        }
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < closings.size(); i++) {
            points.add(new Point(closings.get(i).hours(), level, broken.get(i)));
        }
        return points;
    }

    public boolean isJudged() {
        return points.stream().anyMatch(p -> p.level() != null);
    }

    /** Whether the limits come from too few to stand. */
    public boolean isProvisional() {
        return !frozen && points.size() < Level.ENOUGH;
    }
}

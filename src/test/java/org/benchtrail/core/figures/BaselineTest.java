package org.benchtrail.core.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.figures.ClosingTimes.Closing;
import org.benchtrail.core.figures.ClosingTimes.Point;
import org.benchtrail.core.statistics.ChartRule;
import org.benchtrail.core.statistics.ChartRules;
import org.junit.jupiter.api.Test;

/** Limits that are frozen: from how much, of what time, and that none of them judges anything again. */
class BaselineTest {
    private static final Level SLOW = new Level(Math.log(10), 0.1);
    private static final Level QUICK = new Level(Math.log(2), 0.1);

    private static Instant day(double day) {
        return Instant.EPOCH.plusSeconds(Math.round(day * 86_400));
    }

    private static List<Double> hours(int count) {
        return IntStream.range(0, count).mapToObj(i -> 1.0 + i % 3).toList();
    }

    private static Invalid refused(Instant until, List<Double> hours) {
        return assertThrows(Invalid.class, () -> Baseline.of(day(0), until, hours, ChartRules.USUAL, day(30)));
    }

    @Test
    void twentyClosings_makeLimits_andNineteenDoNot() {
        assertTrue(refused(day(30), hours(19)).getMessage().contains("need 20 closings, and this time has 19"));
        Baseline made = Baseline.of(day(0), day(30), hours(20), ChartRules.ALL, day(30));
        assertEquals(20, made.points());
        assertEquals(Level.of(hours(20)).orElseThrow(), made.level());
        assertEquals(
                1000,
                Baseline.of(day(0), day(30), hours(1000), ChartRules.ALL, day(30))
                        .points());
        assertTrue(refused(day(30), hours(1001)).getMessage().contains("more than 1000"));
        assertTrue(refused(day(30), Collections.nCopies(20, 3.0)).getMessage().contains("nothing varies"));
    }

    @Test
    void itsTime_isOver() {
        assertTrue(refused(day(30).plusNanos(1000), hours(20)).getMessage().contains("a last day that is over"));
        assertTrue(refused(day(0), hours(20)).getMessage().contains("not later"));
    }

    /** Whatever makes the limits stays among them, and how many lie outside is told. */
    @Test
    void whatIsOutside_isKept() {
        List<Double> one = new ArrayList<>(hours(40));
        one.set(20, 90.0);
        Baseline made = Baseline.of(day(0), day(30), one, ChartRules.USUAL, day(30));
        assertEquals(1, made.outside());
        assertEquals(40, made.points());
        assertTrue(made.level().centre() > Level.of(hours(40)).orElseThrow().centre());
    }

    private static Baseline frozen(double from, double until, double at, Level level, ChartRules rules) {
        return new Baseline(day(from), day(until), day(at), 20, 0, level, rules);
    }

    private static ClosingTimes chart(List<Baseline> frozen, double... days) {
        return ClosingTimes.of(
                DoubleStream.of(days).mapToObj(d -> new Closing(day(d), 10)).toList(), frozen);
    }

    private static List<Double> middles(ClosingTimes times) {
        return times.points().stream()
                .map(p -> (double) Math.round(Objects.requireNonNull(p.level()).middle()))
                .toList();
    }

    @Test
    void eachClosing_isHeldAgainstTheLimitsOfItsTime() {
        Baseline first = frozen(10, 20, 25, SLOW, ChartRules.USUAL);
        Baseline second = frozen(30, 40, 45, QUICK, ChartRules.USUAL);
        List<Baseline> both = List.of(first, second);
        ClosingTimes times = chart(both, 10, 22, 35, 44.9, 45, 60);
        assertEquals(List.of(10.0, 10.0, 10.0, 10.0, 2.0, 2.0), middles(times));
        assertNull(chart(both, 9.9, 10).points().get(0).level(), "before the first time nothing says what is usual");
        // what is frozen later changes no word about what was
        List<Point> before = chart(List.of(first), 10, 22, 35, 44.9).points();
        assertEquals(before, times.points().subList(0, 4));
        // nor does one that is made of an earlier time
        Baseline older = frozen(0, 9, 70, QUICK, ChartRules.ALL);
        assertEquals(
                times.points(),
                chart(List.of(first, second, older), 10, 22, 35, 44.9, 45, 60).points());
        assertEquals(ChartRules.ALL, chart(List.of(first, second, older), 10).rules());
    }

    /** Frozen limits need no more than one closing to say something of it; limits of their own need twelve. */
    @Test
    void oneClosing_isJudgedByFrozenLimits() {
        ClosingTimes times = chart(List.of(frozen(10, 20, 25, QUICK, ChartRules.USUAL)), 30);
        assertEquals(Set.of(ChartRule.BEYOND_THREE), times.points().get(0).broken());
        assertTrue(times.points().get(0).isSlow());
        assertEquals(false, times.isProvisional());
        assertEquals(Set.of(), chart(List.of(), 30).points().get(0).broken());
    }

    private static List<Set<ChartRule>> broken(List<Baseline> frozen, double... distances) {
        return ClosingTimes.of(
                        IntStream.range(0, distances.length)
                                .mapToObj(i -> new Closing(
                                        day(50 + i), Math.exp(SLOW.centre() + distances[i] * SLOW.spread())))
                                .toList(),
                        frozen)
                .points()
                .stream()
                .map(Point::broken)
                .toList();
    }

    @Test
    void rulesThatWereFrozen_areThoseThatCount() {
        Baseline usual = frozen(10, 20, 25, SLOW, ChartRules.USUAL);
        Baseline all = frozen(10, 20, 25, SLOW, ChartRules.ALL);
        double[] far = {2.5, 0, 2.5};
        assertEquals(List.of(Set.of(), Set.of(), Set.of()), broken(List.of(usual), far));
        assertEquals(List.of(Set.of(), Set.of(), Set.of(ChartRule.TWO_OF_THREE)), broken(List.of(all), far));
        double[] off = {1.5, 1.5, 1.5, 1.5};
        assertEquals(Set.of(), broken(List.of(usual), off).get(3));
        assertEquals(Set.of(ChartRule.FOUR_OF_FIVE), broken(List.of(all), off).get(3));
    }

    @Test
    void aRow_beginsAnewWithNewLimits() {
        double[] eight = {0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5};
        Baseline first = frozen(10, 20, 25, SLOW, ChartRules.USUAL);
        assertEquals(
                Set.of(ChartRule.EIGHT_IN_A_ROW), broken(List.of(first), eight).get(7));
        Baseline again = frozen(10, 20, 52, SLOW, ChartRules.USUAL);
        assertEquals(Set.of(), broken(List.of(first, again), eight).get(7));
    }
}

package org.benchtrail.core.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.benchtrail.core.figures.Lasting.Lasted;
import org.benchtrail.core.statistics.ChartRule;
import org.benchtrail.core.statistics.IndividualsChart;
import org.junit.jupiter.api.Test;

/** No figure is shown from too few: each at the boundary, one under, and over. */
class MinimumSizesTest {
    private static List<Lasted> ended(int count) {
        return IntStream.rangeClosed(1, count)
                .mapToObj(i -> new Lasted(i, Leaving.FORWARD))
                .toList();
    }

    @Test
    void times_fromTenEnds() {
        List<Lasted> nine = new ArrayList<>(ended(9));
        nine.addAll(Collections.nCopies(50, new Lasted(3, Leaving.OPEN)));
        nine.add(new Lasted(3, Leaving.CANCELLED));
        nine.add(new Lasted(3, Leaving.BACK));
        Lasting few = Lasting.of(nine);
        assertEquals(61, few.all());
        assertFalse(few.isEnough());
        assertEquals(OptionalDouble.empty(), few.median());
        assertEquals(OptionalDouble.empty(), few.ninetieth());
        assertEquals(List.of(), few.curve());
        Lasting ten = Lasting.of(ended(10));
        assertEquals(5, ten.median().orElseThrow());
        assertEquals(9, ten.ninetieth().orElseThrow());
        assertEquals(10, ten.curve().size());
        assertEquals(0, Lasting.of(List.of()).all());
    }

    @Test
    void twoGroups_areHeldAgainstEachOther_fromTenEndsOfEach() {
        List<Lasted> nine = new ArrayList<>(ended(9));
        nine.addAll(Collections.nCopies(50, new Lasted(30, Leaving.OPEN)));
        assertTrue(TwoLastings.of(ended(10), nine).difference().isEmpty());
        assertTrue(TwoLastings.of(nine, ended(10)).difference().isEmpty());
        assertTrue(TwoLastings.of(List.of(), ended(10)).difference().isEmpty());
        assertEquals(
                0,
                TwoLastings.of(ended(10), ended(10)).difference().orElseThrow().statistic(),
                1e-12);
    }

    /** As the published table of the remissions has them: 21 at week 6, 17 at 7, 15 at 10, 7 at 22, 6 at 23. */
    @Test
    void numbersAtRisk_areThoseStillWatchedJustBefore() {
        List<Lasted> treated = Stream.of(
                        "6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+".split(" "))
                .map(w -> new Lasted(
                        Double.parseDouble(w.replace("+", "")), w.endsWith("+") ? Leaving.OPEN : Leaving.FORWARD))
                .toList();
        long[][] table = {{0, 21}, {6, 21}, {7, 17}, {10, 15}, {13, 12}, {16, 11}, {22, 7}, {23, 6}, {36, 0}};
        for (long[] row : table) {
            Published.check(
                    "6-mercaptopurine remissions (Gehan 1965), numbers at risk",
                    row[1],
                    Lasting.watched(treated, row[0]),
                    0);
        }
    }

    /** Ten have ended soon and ninety are still open after a long time: half have not ended, whatever the ten say. */
    @Test
    void whatIsOpen_isNotForgotten() {
        List<Lasted> all = new ArrayList<>(ended(10));
        all.addAll(Collections.nCopies(90, new Lasted(1000, Leaving.OPEN)));
        Lasting lasting = Lasting.of(all);
        assertEquals(OptionalDouble.empty(), lasting.median());
        assertEquals(0.9, lasting.estimate().survivalAt(500), 1e-12);
    }

    @Test
    void aLongCurve_isThinned_andKeepsItsEnd() {
        Lasting many = Lasting.of(ended(5000));
        assertTrue(many.curve().size() <= 41, "steps " + many.curve().size());
        assertEquals(5000, many.curve().get(many.curve().size() - 1).time());
    }

    private static List<Double> hours(int count) {
        return IntStream.range(0, count).mapToObj(i -> 1.0 + i % 3).toList();
    }

    private static ClosingTimes chart(List<Double> hours) {
        return ClosingTimes.of(
                IntStream.range(0, hours.size())
                        .mapToObj(i -> new ClosingTimes.Closing(Instant.EPOCH.plusSeconds(i), hours.get(i)))
                        .toList(),
                List.of());
    }

    @Test
    void limits_fromTwelve_provisionalBelowTwenty() {
        assertFalse(chart(hours(11)).isJudged());
        assertTrue(chart(hours(12)).isJudged());
        assertTrue(chart(hours(19)).isProvisional());
        assertFalse(chart(hours(20)).isProvisional());
        assertFalse(chart(Collections.nCopies(30, 2.0)).isJudged());
        assertTrue(chart(IntStream.range(0, 20).mapToObj(i -> (double) (i % 2)).toList())
                .isJudged());
        assertFalse(chart(List.of()).isJudged());
    }

    /** On the logarithms the limits are those of the individuals chart, which {@code ControlChartsTest} checks. */
    @Test
    void limits_areThoseOfTheLogarithms() {
        double[] logs = {4.96, 4.76, 4.99, 5.13, 4.78, 5.12, 5.26, 5.24, 5.36, 5.21, 5.2, 5.1};
        Level level = Level.of(
                        IntStream.range(0, 12).mapToObj(i -> Math.exp(logs[i])).toList())
                .orElseThrow();
        IndividualsChart plain = IndividualsChart.of(logs);
        assertEquals(plain.mean(), Math.log(level.middle()), 1e-9);
        assertEquals(plain.upper(), Math.log(level.upper()), 1e-9);
        assertEquals(plain.lower(), Math.log(level.lower()), 1e-9);
        List<Double> shifted = new ArrayList<>(Collections.nCopies(10, 1.0));
        shifted.addAll(List.of(1.1, 0.9, 1.1, 0.9, 1.1, 0.9, 1.1, 0.9, 1.1, 0.9, 50.0));
        List<ClosingTimes.Point> points = chart(shifted).points();
        assertEquals(
                List.of(20),
                IntStream.range(0, 21)
                        .filter(i -> points.get(i).broken().contains(ChartRule.BEYOND_THREE))
                        .boxed()
                        .toList());
        assertTrue(points.get(20).isSlow());
        assertFalse(points.get(0).isSlow());
    }

    private static List<Count> weeks(int count, int hits, int of) {
        return Collections.nCopies(count, new Count(hits, of));
    }

    @Test
    void shares_fromTwelveGroups_eachWithFiveExpectedOnBothSides() {
        assertNull(ShareOverTime.of(weeks(11, 5, 10)).chart());
        assertNotNull(ShareOverTime.of(weeks(12, 5, 10)).chart());
        // 4 of 10 expected to hit: joined by two
        ShareOverTime joined = ShareOverTime.of(weeks(24, 4, 10));
        assertEquals(12, joined.groups().size());
        assertEquals(
                new ShareOverTime.Group(0, 1, new Count(8, 20)), joined.groups().get(0));
        // the other side counts as well
        assertEquals(12, ShareOverTime.of(weeks(24, 6, 10)).groups().size());
        // what is left over joins the last
        assertEquals(
                new ShareOverTime.Group(22, 24, new Count(12, 30)),
                ShareOverTime.of(weeks(25, 4, 10)).groups().get(11));
    }

    @Test
    void weeksInWhichNothingHappened_areNoGroup_norAnyFailure() {
        assertEquals(1, ShareOverTime.of(weeks(30, 0, 0)).groups().size());
        assertNull(ShareOverTime.of(weeks(30, 0, 0)).chart());
        assertNull(ShareOverTime.of(List.of()).chart());
        assertNull(ShareOverTime.of(weeks(30, 0, 50)).chart());
        assertNull(ShareOverTime.of(weeks(30, 50, 50)).chart());
        assertThrows(Invalid.class, () -> new Count(2, 1));
    }

    private static List<ShareByUnit.Unit> places(int count, int hits, int of) {
        return IntStream.range(0, count)
                .mapToObj(i -> new ShareByUnit.Unit("Place " + i, new Count(hits, of), false))
                .toList();
    }

    @Test
    void funnel_fromFiveUnitsOfTen() {
        assertNull(ShareByUnit.of(places(4, 2, 10)).funnel());
        assertNotNull(ShareByUnit.of(places(5, 2, 10)).funnel());
        assertNull(ShareByUnit.of(places(5, 2, 9)).funnel());
        assertNull(ShareByUnit.of(places(5, 0, 20)).funnel());
        assertNull(ShareByUnit.of(places(5, 20, 20)).funnel());
        assertNull(ShareByUnit.of(List.of()).funnel());
    }

    /** A unit keeps its place in the list and its own verdict, also where one too small stands before it; none is sorted. */
    @Test
    void units_keepTheirOrder() {
        List<ShareByUnit.Unit> units = new ArrayList<>(places(20, 50, 100));
        units.add(3, new ShareByUnit.Unit("Small", new Count(9, 9), false));
        units.add(7, new ShareByUnit.Unit("Far", new Count(80, 100), false));
        ShareByUnit judged = ShareByUnit.of(units);
        assertEquals(
                units.stream().map(ShareByUnit.Unit::name).toList(),
                judged.units().stream().map(ShareByUnit.Unit::name).toList());
        assertEquals(
                List.of("Far"),
                judged.units().stream()
                        .filter(ShareByUnit.Unit::out)
                        .map(ShareByUnit.Unit::name)
                        .toList());
        assertEquals(21, judged.large());
    }
}

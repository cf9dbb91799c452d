package org.benchtrail.core.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.benchtrail.core.statistics.SpreadChart;
import org.junit.jupiter.api.Test;

/** Limits of weeks that are frozen: from how much, of what time, the word at, under and over them, and that none judges anything again. */
class HeldSharesTest {
    private static final String HANDBOOK = "NIST/SEMATECH e-Handbook 6.3.3.2, its 30 samples of 50";

    /** Defectives in the handbook's samples. */
    private static final int[] FOUND = {
        12, 15, 8, 10, 4, 7, 16, 9, 14, 10, 5, 6, 17, 12, 22, 8, 10, 5, 13, 11, 20, 18, 24, 15, 9, 12, 7, 13, 9, 6
    };

    private static Instant week(double week) {
        return Instant.EPOCH.plusSeconds(Math.round(week * 7 * 86_400));
    }

    private static List<Count> weeks(int count, long hits, long of) {
        return Collections.nCopies(count, new Count(hits, of));
    }

    private static Invalid refused(double until, List<Count> weeks) {
        return assertThrows(Invalid.class, () -> ShareBaseline.of(week(0), week(until), weeks, week(12)));
    }

    @Test
    void twelveWeeks_makeLimits_andElevenDoNot() {
        assertTrue(refused(12, weeks(11, 10, 40)).getMessage().contains("and this time has 11"));
        ShareBaseline made = ShareBaseline.of(week(0), week(12), weeks(12, 10, 40), week(12));
        assertEquals(12, made.points());
        assertEquals(0.25, made.target(), 1e-15);
        assertEquals(1, made.wider(), "alike: chance is more than enough");
        // 5 expected of a week are enough; where it is 4, two weeks are joined
        assertEquals(
                12,
                ShareBaseline.of(week(0), week(12), weeks(12, 5, 20), week(12)).points());
        assertTrue(refused(12, weeks(12, 4, 20)).getMessage().contains("and this time has 6"));
        assertTrue(refused(12, weeks(40, 0, 100)).getMessage().contains("and this time has 1"), "nothing varies");
        assertEquals(
                "weeksLast", refused(12.01, weeks(12, 10, 40)).problems().get(0).field());
        assertEquals(
                "weeksFirst", refused(0, weeks(12, 10, 40)).problems().get(0).field());
    }

    /** As by the chart that is not frozen, whose limits are checked against the handbook. */
    @Test
    void whatIsFrozen_isWhatWasDrawn() {
        List<Count> weeks = Arrays.stream(FOUND).mapToObj(f -> new Count(f, 50)).toList();
        ShareBaseline made = ShareBaseline.of(week(0), week(30), weeks, week(30));
        Published.check(HANDBOOK, 0.231333, made.target(), 5e-7);
        Published.check(
                "Laney (2002), formula from memory, on the data of NIST 6.3.3.2, recomputed",
                1.660867,
                made.wider(),
                5e-7);
        SpreadChart.Limits limits = made.limits(50);
        Published.check(
                "Laney (2002), formula from memory, on the data of NIST 6.3.3.2, recomputed",
                0.528472,
                limits.upper(),
                5e-7);
        assertEquals(0, limits.lower());
        assertEquals(0, made.outside());
    }

    private static ShareBaseline frozen(double from, double at, double target) {
        return new ShareBaseline(week(from), week(from + 12), week(at), 12, 0, target, 1);
    }

    private static HeldShares held(List<Count> weeks, ShareBaseline... frozen) {
        List<Instant> begins = IntStream.rangeClosed(0, weeks.size())
                .mapToObj(HeldSharesTest::week)
                .toList();
        return HeldShares.of(weeks, begins, List.of(frozen));
    }

    /** 3 s of 1/2 in 100 is 0.15: 65 of 100 lies on the limit. */
    @Test
    void onALimit_isWithin() {
        ShareBaseline half = frozen(0, 12, 0.5);
        assertEquals(new SpreadChart.Limits(0.35, 0.65), half.limits(100));
        for (long[] word : new long[][] {{34, 1}, {35, 0}, {36, 0}, {64, 0}, {65, 0}, {66, 1}}) {
            HeldShares one = held(weeks(1, word[0], 100), half);
            assertEquals(word[1] == 1, one.points().get(0).isOutside(), word[0] + " of 100");
        }
        // limits of their own need twelve groups; frozen ones need no more than a week
        assertTrue(held(weeks(1, 66, 100), half).isJudged());
        assertFalse(held(weeks(1, 66, 100)).isJudged());
    }

    @Test
    void eachWeek_isHeldAgainstTheLimitsOfItsTime() {
        ShareBaseline first = frozen(2, 14, 0.5);
        ShareBaseline second = frozen(20, 33, 0.2);
        List<Count> weeks = weeks(40, 40, 100);
        HeldShares once = held(weeks, first);
        HeldShares twice = held(weeks, first, second);
        assertEquals(once.points().subList(0, 32), twice.points().subList(0, 32), "what was judged stays judged");
        assertNull(twice.points().get(1).by());
        assertEquals(first, twice.points().get(2).by());
        assertEquals(first, twice.points().get(31).by(), "it was over before");
        assertEquals(second, twice.points().get(32).by(), "it ends with the freezing");
        assertFalse(twice.points().get(31).isOutside());
        assertTrue(twice.points().get(32).isOutside());
        // one that is made of an earlier time judges from when it was frozen on, and nothing before
        ShareBaseline older = frozen(0, 39, 0.5);
        assertEquals(
                twice.points().subList(0, 38),
                held(weeks, first, second, older).points().subList(0, 38));
    }

    /** Weeks with little are joined until the frozen share lets 5 late and 5 others be expected; never across limits. */
    @Test
    void joining_isByTheFrozenShare_andNeverAcrossLimits() {
        ShareBaseline first = frozen(0, 12, 0.5);
        ShareBaseline second = frozen(0, 15, 0.5);
        List<Count> little = new ArrayList<>(weeks(20, 2, 5));
        HeldShares joined = held(little, first, second);
        assertEquals(
                List.of(0, 2, 4, 6, 8, 10, 12, 14, 16, 18),
                joined.points().stream().map(p -> p.group().first()).toList());
        assertEquals(13, joined.points().get(6).group().last(), "14 is the first week that the second judges");
        little.set(3, new Count(0, 0));
        assertEquals(
                20 * 5 - 5L,
                held(little, first, second).points().stream()
                        .mapToLong(p -> p.group().count().of())
                        .sum(),
                "none is lost");
        assertEquals(List.of(), held(weeks(5, 0, 0), first).points(), "weeks in which nothing happened are no point");
    }
}

package org.benchtrail.core.audit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.statistics.DiscoverySampling;
import org.benchtrail.core.statistics.LimitingQuality;
import org.benchtrail.core.statistics.LotBounds;
import org.benchtrail.core.statistics.LotBounds.Seen;

/**
 * What a random sample can show and what it cannot, said before it is drawn.
 *
 * @param items N
 * @param looked n
 * @param ifNone at most so many of N have a defect if none is found, with 95 % confidence
 * @param discovery chance of finding one, by how many there are
 * @param plans for a limiting quality of 5 %, by what is accepted
 * @param curve chance that the lot is accepted by the plan, by how many defects it has
 */
public record Outlook(
        int items, int looked, int ifNone, List<Discovery> discovery, List<LimitingQuality> plans, List<Point> curve) {
    /** How many defects the curve goes up to. */
    public int mostShown() {
        return curve.get(curve.size() - 1).defects();
    }

    /** @param atNinetyFive how many to look at to find one of them with 95 % confidence */
    public record Discovery(int defects, double chance, int atNinetyFive) {}

    public record Point(int defects, double accepted) {}

    private static final BigDecimal CONFIDENCE = new BigDecimal("0.95");
    private static final double QUALITY = 0.05;
    private static final int MOST_ACCEPTED = 3;
    private static final int POINTS = 24;

    /**
     * @param items at least 1
     * @param looked 1 to {@code items}
     * @param acceptance of the plan
     */
    public static Outlook of(int items, int looked, int acceptance) {
        List<Discovery> discovery = new ArrayList<>();
        for (int defects : numbers(items)) {
            discovery.add(new Discovery(
                    defects,
                    DiscoverySampling.probability(items, defects, looked),
                    DiscoverySampling.sampleSize(items, defects, CONFIDENCE.doubleValue())));
        }
        List<LimitingQuality> plans = new ArrayList<>();
        int limiting = (int) Math.ceil(QUALITY * items - 1e-9);
        for (int accepted = 0; accepted <= MOST_ACCEPTED && accepted < limiting; accepted++) {
            plans.add(LimitingQuality.of(items, QUALITY, accepted));
        }
        return new Outlook(
                items,
                looked,
                LotBounds.upperBound(new Seen(items, looked, 0), CONFIDENCE),
                discovery,
                plans,
                curve(new LimitingQuality(items, limiting, looked, Math.min(acceptance, looked))));
    }

    /** One, and 1, 2, 5 and 10 % of them. */
    private static Set<Integer> numbers(int items) {
        Set<Integer> numbers = new LinkedHashSet<>();
        numbers.add(1);
        for (int percent : new int[] {1, 2, 5, 10}) {
            numbers.add(Math.max(1, (items * percent + 99) / 100));
        }
        return numbers;
    }

    private static List<Point> curve(LimitingQuality plan) {
        int most = Math.min(plan.items(), Math.max(4, plan.items() / 4));
        int step = Math.max(1, most / POINTS);
        List<Point> points = new ArrayList<>();
        for (int defects = 0; defects <= most; defects += step) {
            points.add(new Point(defects, plan.acceptanceProbability(defects)));
        }
        return points;
    }
}

package org.benchtrail.core.statistics;

import java.util.ArrayList;
import java.util.List;

/**
 * What makes a point of a control chart worth a look: it and enough of those before it lie far on the same side of the centre.
 *
 * <p>Source: Western Electric handbook (1956), from memory; the average number of points between false alarms is published for all
 * four together (Champ and Woodall 1987: 91.75).
 */
public enum ChartRule {
    BEYOND_THREE(1, 1, 3),
    TWO_OF_THREE(2, 3, 2),
    FOUR_OF_FIVE(4, 5, 1),
    EIGHT_IN_A_ROW(8, 8, 0);

    private final int many;
    private final int last;
    private final double reach;

    ChartRule(int many, int last, double reach) {
        this.many = many;
        this.last = last;
        this.reach = reach;
    }

    /**
     * Indices of the points that break the rule by themselves and with those before them. What lies on a bound is not beyond it.
     *
     * @param distances from the centre in standard deviations, in time order
     */
    public List<Integer> broken(double... distances) {
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < distances.length; i++) {
            double side = Math.signum(distances[i]);
            int beyond = 0;
            for (int j = Math.max(0, i - last + 1); j <= i; j++) {
                beyond += side * distances[j] > reach ? 1 : 0;
            }
            if (side * distances[i] > reach && beyond >= many) {
                found.add(i);
            }
        }
        return found;
    }
}

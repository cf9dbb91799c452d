package org.benchtrail.core.statistics;

import java.util.ArrayList;
import java.util.List;

/** Points of a control chart that lie on one side of its centre again and again, one by one within its limits. */
public final class Runs {
    /** As many in a row on one side are a special cause. Source: Western Electric handbook (1956), from memory. */
    public static final int LONG = 8;

    /** Points between two false alarms on average where only chance varies, by this rule and that of the limits together. */
    public static final int BETWEEN_FALSE_ALARMS = 153;

    private Runs() {}

    /** Indices of the values that are at least the eighth in a row on one side; one on the centre itself ends a row. */
    public static List<Integer> oneSided(double centre, double... values) {
        List<Integer> found = new ArrayList<>();
        int length = 0;
        double side = 0;
        for (int i = 0; i < values.length; i++) {
            double now = Math.signum(values[i] - centre);
            length = now != 0 && now == side ? length + 1 : Math.abs((int) now);
            side = now;
            if (length >= LONG) {
                found.add(i);
            }
        }
        return found;
    }
}

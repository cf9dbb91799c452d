package org.benchtrail.packaged;

import java.util.List;

/**
 * How long one thing took.
 *
 * @param ms each time
 * @param perSecond how many were done a second by all clients together while they were timed
 */
record SpeedFigures(List<Double> ms, double perSecond) {
    SpeedFigures {
        ms = ms.stream().sorted().toList();
    }

    /** What so many of a hundred stay within. */
    double percentile(int of100) {
        return ms.get(Math.max(0, (int) Math.ceil(of100 / 100.0 * ms.size()) - 1));
    }
}
